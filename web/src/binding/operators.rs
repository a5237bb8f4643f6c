//! Lists of operators, read for the page.

use pintle_core::{
    Document,
    operators::{self, EntryReader, ReadOperators},
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

/// Reads the entries of a long list a part at a time, so that no part of it holds up the page. Free it when all are read.
#[wasm_bindgen]
#[derive(Default)]
pub struct OperatorReader {
    reader: EntryReader,
}

#[wasm_bindgen]
impl OperatorReader {
    /// A reader of a list.
    #[wasm_bindgen(constructor)]
    #[must_use]
    pub fn new() -> OperatorReader {
        OperatorReader::default()
    }

    /// What is to be told of the next entries, as `read_operators` tells it of all.
    #[wasm_bindgen(unchecked_return_type = "ReadOperators")]
    pub fn read(
        &mut self,
        #[wasm_bindgen(unchecked_param_type = "any[]")] entries: JsValue,
    ) -> Result<JsValue, JsValue> {
        let entries: Vec<Document> = decode(entries, "operators")?;
        encode(&self.reader.read(&entries))
    }
}

/// The one table of the numbers of a listed operator: ranges, examples.
#[wasm_bindgen(unchecked_return_type = "FieldRule[]")]
pub fn operator_fields() -> Result<JsValue, JsValue> {
    encode(&operators::fields())
}
