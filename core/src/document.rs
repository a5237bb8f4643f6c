//! A document as it arrives: the tree every format (JSON, a browser object) is read into before a job is made of it.
//!
//! Reading in two steps lets one reader find every fault at once, with its path, whatever the format was; a repeated key and a
//! number that is not finite survive into the tree, so that they can be refused instead of vanishing.

use alloc::{string::String, vec::Vec};
use core::fmt;
use serde::{
    Deserialize, Serialize, Serializer,
    de::{DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Visitor},
    ser::{SerializeMap, SerializeSeq},
};

/// Deeper nesting than any job has; beyond it a hostile document is refused before the stack runs out.
pub(crate) const DEEPEST: u8 = 32;

/// A tree of plain values. Objects keep the order and the repetition of their keys.
#[derive(Clone, Debug, PartialEq)]
pub enum Document {
    /// `null`, or a value that is absent.
    Null,
    /// `true` or `false`.
    Bool(bool),
    /// Any number, not necessarily finite.
    Number(f64),
    /// Text.
    Text(String),
    /// An array.
    List(Vec<Document>),
    /// An object: keys and values in the order they came.
    Object(Vec<(String, Document)>),
}

impl Document {
    /// What stands under a key of an object, or at a place of a list.
    pub(crate) fn entry(&self, key: &str) -> Option<&Document> {
        match self {
            Document::Object(entries) => entries.iter().find(|(name, _)| name == key).map(|(_, value)| value),
            Document::List(items) => items.get(key.parse::<usize>().ok()?),
            _ => None,
        }
    }
}

impl<'de> Deserialize<'de> for Document {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Level(DEEPEST).deserialize(deserializer)
    }
}

/// How many more levels may be opened.
#[derive(Clone, Copy)]
struct Level(u8);

impl Level {
    fn inner<E: Error>(self) -> Result<Level, E> {
        self.0.checked_sub(1).map(Level).ok_or_else(|| E::custom("nested too deeply for a job"))
    }
}

impl<'de> DeserializeSeed<'de> for Level {
    type Value = Document;
    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Document, D::Error> {
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Level {
    type Value = Document;
    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a plain value")
    }
    fn visit_unit<E>(self) -> Result<Document, E> {
        Ok(Document::Null)
    }
    fn visit_none<E>(self) -> Result<Document, E> {
        Ok(Document::Null)
    }
    fn visit_some<D: Deserializer<'de>>(self, deserializer: D) -> Result<Document, D::Error> {
        self.deserialize(deserializer)
    }
    fn visit_bool<E>(self, value: bool) -> Result<Document, E> {
        Ok(Document::Bool(value))
    }
    fn visit_i64<E>(self, value: i64) -> Result<Document, E> {
        Ok(Document::Number(value as f64))
    }
    fn visit_u64<E>(self, value: u64) -> Result<Document, E> {
        Ok(Document::Number(value as f64))
    }
    fn visit_f64<E>(self, value: f64) -> Result<Document, E> {
        Ok(Document::Number(value))
    }
    fn visit_str<E>(self, value: &str) -> Result<Document, E> {
        Ok(Document::Text(value.into()))
    }
    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Document, A::Error> {
        let inner = self.inner()?;
        let mut list = Vec::new();
        while let Some(item) = items.next_element_seed(inner)? {
            list.push(item);
        }
        Ok(Document::List(list))
    }
    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<Document, A::Error> {
        let inner = self.inner()?;
        let mut object = Vec::new();
        while let Some(key) = entries.next_key()? {
            object.push((key, entries.next_value_seed(inner)?));
        }
        Ok(Document::Object(object))
    }
}

impl Serialize for Document {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Document::Null => serializer.serialize_unit(),
            Document::Bool(value) => serializer.serialize_bool(*value),
            Document::Number(value) => serializer.serialize_f64(*value),
            Document::Text(value) => serializer.serialize_str(value),
            Document::List(items) => {
                let mut list = serializer.serialize_seq(Some(items.len()))?;
                items.iter().try_for_each(|item| list.serialize_element(item))?;
                list.end()
            }
            Document::Object(entries) => {
                let mut object = serializer.serialize_map(Some(entries.len()))?;
                entries.iter().try_for_each(|(key, value)| object.serialize_entry(key, value))?;
                object.end()
            }
        }
    }
}

/// What a person reads as "found": the value itself where it is short, otherwise what kind of thing it is.
impl fmt::Display for Document {
    fn fmt(&self, f: &mut fmt::Formatter) -> fmt::Result {
        match self {
            Document::Null => f.write_str("null"),
            Document::Bool(value) => write!(f, "{value}"),
            Document::Number(value) => write!(f, "{value}"),
            Document::Text(text) => match text.char_indices().nth(60) {
                None => write!(f, "\"{text}\""),
                Some((end, _)) => write!(f, "\"{}…\"", &text[..end]),
            },
            Document::List(items) => write!(f, "[{} items]", items.len()),
            Document::Object(entries) => write!(f, "{{{} fields}}", entries.len()),
        }
    }
}
