//! A text as a QR code (ISO/IEC 18004), drawn as one path, so that it prints sharp at any size.

use qrcodegen::{QrCode, QrCodeEcc};
use serde::Serialize;
use std::fmt::Write;

/// Light modules on every side; the standard asks for four.
const QUIET: i32 = 4;

/// A QR code to be drawn: dark on light, in a square of `side` × `side` units.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(ts_rs::TS))]
pub struct QrPath {
    /// Side of the whole square in modules, the quiet zone included.
    pub side: u32,
    /// Path data of the dark modules, one unit a module.
    pub path: String,
}

/// The code of a text, with about 15 % of it restorable; `None` where the text is too long for any code (2,331 bytes at most).
pub fn qr(text: &str) -> Option<QrPath> {
    let code = QrCode::encode_binary(text.as_bytes(), QrCodeEcc::Medium).ok()?;
    let mut path = String::new();
    for y in 0..code.size() {
        let mut x = 0;
        while x < code.size() {
            let dark = (x..code.size()).take_while(|&x| code.get_module(x, y)).count() as i32;
            if dark > 0 {
                // Writing to a string cannot fail.
                let _ = write!(path, "M{} {}h{dark}v1h-{dark}z", x + QUIET, y + QUIET);
            }
            x += dark.max(1);
        }
    }
    Some(QrPath { side: (code.size() + 2 * QUIET) as u32, path })
}
