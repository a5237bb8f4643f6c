//! A document in as few bytes as a link can carry, and back without a bit of difference.
//!
//! A packed document is a format version, one value, and a CRC-16 of everything before it; as text it is base64url without padding.
//! Names and words that jobs use cost one byte each ([`NAMES`], append-only), numbers are kept as somebody typed them where that
//! is shorter than their eight bytes. Anything else a document may hold is carried too, only longer: what this version does not
//! know by name is still not lost. The outer frame (version first, check last) holds for every version to come, so that an older
//! page can tell a newer link from a damaged one.
//!
//! ```
//! use pintle_core::{Document, packed::{pack, unpack}};
//!
//! let document: Document = serde_json::from_str(r#"{ "schema": 2, "leaf": { "mass_kg": 160 } }"#)?;
//! let text = pack(&document);
//! assert!(text.len() < 24, "{text}");
//! assert_eq!(unpack(&text)?, document);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod base64url;
mod check;
mod names;
mod number;
mod read;
mod write;

pub use names::NAMES;

use crate::Document;
use crate::fault::{Fault, FaultCode, Invalid};
use alloc::{string::String, vec};

/// The format this version writes, and the newest it reads.
const FORMAT: u8 = 1;

/// Most characters of a packed text that are looked at; the address bars at hand take no more.
pub const LONGEST_PACKED: usize = 32_000;

/// What the first byte of a value says. Numbers have all tags from [`number::FIRST`] on.
mod tag {
    pub const NULL: u8 = 0;
    pub const FALSE: u8 = 1;
    pub const TRUE: u8 = 2;
    pub const LIST: u8 = 3;
    pub const OBJECT: u8 = 4;
    pub const TEXT: u8 = 5;
    pub const WORD: u8 = 6;
    pub const RAW: u8 = 7;
}

/// Packs a document into a text of letters, digits, `-` and `_`.
///
/// Every value comes back as it was, numbers to the bit, objects with their order and repetitions; only fields that are `null` are
/// left out, since in a job that is the same as absent. Nesting deeper than a document can be read with does not come back.
#[must_use]
pub fn pack(document: &Document) -> String {
    let mut bytes = vec![FORMAT];
    write::value(&mut bytes, document);
    let sum = check::crc16(&bytes);
    bytes.extend(sum.to_be_bytes());
    base64url::encode(&bytes)
}

/// The document of a packed text.
///
/// # Errors
/// One fault without a path: [`FaultCode::DamagedLink`] where the text is cut, mistyped or not a packed document at all,
/// [`FaultCode::NewerLink`] where it is whole but of a format this version does not know.
pub fn unpack(text: &str) -> Result<Document, Invalid> {
    let fault = |code| Invalid { errors: vec![Fault { found: Some(beginning(text)), ..Fault::new("", code) }] };
    let bytes = (text.len() <= LONGEST_PACKED).then(|| base64url::decode(text)).flatten();
    let Some((format, body)) = bytes.as_deref().and_then(checked) else { return Err(fault(FaultCode::DamagedLink)) };
    if format > FORMAT {
        return Err(fault(FaultCode::NewerLink));
    }
    read::whole(body).filter(|_| format == FORMAT).ok_or_else(|| fault(FaultCode::DamagedLink))
}

/// Format and value, where the check holds.
fn checked(bytes: &[u8]) -> Option<(u8, &[u8])> {
    let (covered, sum) = bytes.split_last_chunk::<2>()?;
    let (&format, body) = covered.split_first()?;
    (check::crc16(covered).to_be_bytes() == *sum).then_some((format, body))
}

/// Enough of a text to see what it was.
fn beginning(text: &str) -> String {
    let short: String = text.chars().take(24).collect();
    if short.len() < text.len() { short + "…" } else { short }
}
