//! Jobs as links: what they weigh, that they come back to the bit, that they open forever, and that a bad one is told for what it is.

mod corners;
mod forever;
mod frame;
mod weight;

use pintle_core::{Document, packed};
use pintle_tests::documents::{same_to_the_bit, without_nulls};
use serde_json::Value;

/// The document of a JSON value.
fn document(value: &Value) -> Document {
    serde_json::from_value(value.clone()).expect("any JSON is a document")
}

/// Packs and unpacks.
#[track_caller]
fn through(document: &Document) -> Document {
    let text = packed::pack(document);
    packed::unpack(&text).unwrap_or_else(|invalid| panic!("{invalid}: {text}"))
}
