//! Bytes into values. Nothing is believed: every length is held to what is left, every level counts.

use super::{names, number, tag};
use crate::{Document, document::DEEPEST};
use alloc::{string::String, vec::Vec};

/// The one value the bytes hold; `None` where they hold anything else, or more.
pub fn whole(bytes: &[u8]) -> Option<Document> {
    let mut rest = Bytes(bytes);
    let document = rest.value(DEEPEST)?;
    rest.0.is_empty().then_some(document)
}

/// What is left to read.
struct Bytes<'b>(&'b [u8]);

impl Bytes<'_> {
    fn one(&mut self) -> Option<u8> {
        let (&first, rest) = self.0.split_first()?;
        self.0 = rest;
        Some(first)
    }

    fn take(&mut self, count: usize) -> Option<&[u8]> {
        let (taken, rest) = self.0.split_at_checked(count)?;
        self.0 = rest;
        Some(taken)
    }

    /// Up to eight bytes of seven bits, in the only way they are written.
    fn varint(&mut self) -> Option<u64> {
        let mut value = 0;
        for shift in (0..56).step_by(7) {
            let byte = self.one()?;
            value |= u64::from(byte & 0x7F) << shift;
            if byte < 0x80 {
                return (byte != 0 || shift == 0).then_some(value);
            }
        }
        None
    }

    /// A count of things that take at least a byte each, so that it cannot ask for more memory than the text is long.
    fn count(&mut self) -> Option<usize> {
        let count = usize::try_from(self.varint()?).ok()?;
        (count <= self.0.len()).then_some(count)
    }

    fn text(&mut self) -> Option<String> {
        let length = self.count()?;
        core::str::from_utf8(self.take(length)?).ok().map(String::from)
    }

    fn key(&mut self) -> Option<String> {
        match self.one()? {
            names::SPELT => self.text(),
            first => self.name(first),
        }
    }

    fn name(&mut self, first: u8) -> Option<String> {
        let place = match first.checked_sub(names::SHORT) {
            None => usize::from(first),
            Some(page) => usize::from(names::SHORT) + usize::from(page) * 256 + usize::from(self.one()?),
        };
        names::at(place).map(String::from)
    }

    fn value(&mut self, levels: u8) -> Option<Document> {
        Some(match self.one()? {
            tag::NULL => Document::Null,
            tag::FALSE => Document::Bool(false),
            tag::TRUE => Document::Bool(true),
            tag::TEXT => Document::Text(self.text()?),
            tag::WORD => {
                let first = self.one().filter(|&first| first != names::SPELT)?;
                Document::Text(self.name(first)?)
            }
            tag::RAW => Document::Number(f64::from_bits(u64::from_be_bytes(self.take(8)?.try_into().ok()?))),
            tag::LIST => {
                let inner = levels.checked_sub(1)?;
                let mut items = Vec::new();
                for _ in 0..self.count()? {
                    items.push(self.value(inner)?);
                }
                Document::List(items)
            }
            tag::OBJECT => {
                let inner = levels.checked_sub(1)?;
                let mut entries = Vec::new();
                for _ in 0..self.count()? {
                    entries.push((self.key()?, self.value(inner)?));
                }
                Document::Object(entries)
            }
            first if first >= number::FIRST => Document::Number(number::read(first, self.varint()?)),
            _ => return None,
        })
    }
}
