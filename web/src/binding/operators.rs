//! Lists of operators, read for the page.

use pintle_core::{
    Document,
    operators::{self, ReadOperators},
};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

use super::codec::{decode, encode};

/// A list of operators: what can be used of it, what is left out and why, what is warned of. Never throws of a list's content.
#[wasm_bindgen(unchecked_return_type = "ReadOperators")]
pub fn read_operators(#[wasm_bindgen(unchecked_param_type = "any")] list: JsValue) -> Result<JsValue, JsValue> {
    let document: Document = decode(list, "operators")?;
    let read: ReadOperators = operators::read(&document);
    encode(&read)
}

/// The one table of the numbers of a listed operator: ranges, examples.
#[wasm_bindgen(unchecked_return_type = "FieldRule[]")]
pub fn operator_fields() -> Result<JsValue, JsValue> {
    encode(&operators::fields())
}
