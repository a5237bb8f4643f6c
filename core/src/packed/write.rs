//! Values into bytes.

use super::{names, number, tag};
use crate::Document;
use alloc::vec::Vec;

pub fn value(bytes: &mut Vec<u8>, document: &Document) {
    match document {
        Document::Null => bytes.push(tag::NULL),
        Document::Bool(false) => bytes.push(tag::FALSE),
        Document::Bool(true) => bytes.push(tag::TRUE),
        Document::Number(value) => number::write(bytes, *value),
        Document::Text(text) => match names::number_of(text) {
            Some(place) => {
                bytes.push(tag::WORD);
                names::write(bytes, place);
            }
            None => {
                bytes.push(tag::TEXT);
                plain(bytes, text);
            }
        },
        Document::List(items) => {
            bytes.push(tag::LIST);
            number::write_varint(bytes, items.len() as u64);
            items.iter().for_each(|item| value(bytes, item));
        }
        Document::Object(entries) => {
            let said = || entries.iter().filter(|(_, inner)| *inner != Document::Null);
            bytes.push(tag::OBJECT);
            number::write_varint(bytes, said().count() as u64);
            for (key, inner) in said() {
                match names::number_of(key) {
                    Some(place) => names::write(bytes, place),
                    None => {
                        bytes.push(names::SPELT);
                        plain(bytes, key);
                    }
                }
                value(bytes, inner);
            }
        }
    }
}

/// Length and UTF-8.
fn plain(bytes: &mut Vec<u8>, text: &str) {
    number::write_varint(bytes, text.len() as u64);
    bytes.extend(text.as_bytes());
}
