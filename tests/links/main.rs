//! Jobs as links: what they weigh, that they come back to the bit, that they open forever, and that a bad one is told for what it is.

mod forever;
mod frame;
mod weight;

use pintle_core::{Document, packed};
use serde_json::Value;

/// The document of a JSON value.
fn document(value: &Value) -> Document {
    serde_json::from_value(value.clone()).expect("any JSON is a document")
}

/// Whether two documents are one, numbers compared by their bits.
fn same(one: &Document, other: &Document) -> bool {
    match (one, other) {
        (Document::Number(one), Document::Number(other)) => one.to_bits() == other.to_bits(),
        (Document::List(one), Document::List(other)) => {
            one.len() == other.len() && one.iter().zip(other).all(|(one, other)| same(one, other))
        }
        (Document::Object(one), Document::Object(other)) => {
            one.len() == other.len()
                && one.iter().zip(other).all(|(one, other)| one.0 == other.0 && same(&one.1, &other.1))
        }
        (one, other) => one == other,
    }
}

/// A document without the fields that say nothing: `null` and absent are the same in a job.
fn without_nulls(document: &Document) -> Document {
    match document {
        Document::Object(entries) => {
            let said = entries.iter().filter(|(_, value)| *value != Document::Null);
            Document::Object(said.map(|(key, value)| (key.clone(), without_nulls(value))).collect())
        }
        Document::List(items) => Document::List(items.iter().map(without_nulls).collect()),
        other => other.clone(),
    }
}

/// Packs and unpacks.
#[track_caller]
fn through(document: &Document) -> Document {
    let text = packed::pack(document);
    packed::unpack(&text).unwrap_or_else(|invalid| panic!("{invalid}: {text}"))
}
