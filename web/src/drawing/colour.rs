//! A colour of the page.

use plotters::style::RGBColor;

/// A colour.
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "describe", derive(ts_rs::TS), ts(type = "string"))]
pub struct Colour(pub(super) RGBColor);

impl Colour {
    /// From `"#rrggbb"`.
    pub(super) fn from_hex(text: &str) -> Option<Colour> {
        let digits = text.strip_prefix('#').filter(|d| d.len() == 6 && d.bytes().all(|b| b.is_ascii_hexdigit()))?;
        let [_, red, green, blue] = u32::from_str_radix(digits, 16).ok()?.to_be_bytes();
        Some(Colour(RGBColor(red, green, blue)))
    }
}
