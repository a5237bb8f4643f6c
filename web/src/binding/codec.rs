//! Between values of the page and of Rust.

use pintle_core::{
    Document,
    fault::{Fault, FaultCode, Invalid},
};
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_wasm_bindgen::Serializer;
use wasm_bindgen::JsValue;

/// Encodes as JSON would: objects are plain, `None` is `null`. The only policy for nulls there is.
pub fn encode<T: Serialize + ?Sized>(value: &T) -> Result<JsValue, JsValue> {
    value.serialize(&Serializer::json_compatible()).map_err(JsValue::from)
}

/// Decodes an argument; what does not fit is thrown as a fault of that argument.
pub fn decode<T: DeserializeOwned>(value: JsValue, argument: &str) -> Result<T, JsValue> {
    serde_wasm_bindgen::from_value(value).map_err(|error| thrown(&wrong_type(argument, error.to_string())))
}

/// Decodes a job; what is no tree of plain values, or is nested deeper than any job, is none.
pub fn decode_job(value: JsValue) -> Result<Document, JsValue> {
    serde_wasm_bindgen::from_value(value).map_err(|_| thrown(&Fault::new("", FaultCode::NotJson).into()))
}

/// An argument of another type than the binding takes.
pub fn wrong_type(argument: &str, found: String) -> Invalid {
    let mut fault = Fault::new(argument, FaultCode::WrongType);
    fault.found = Some(found);
    fault.into()
}

/// What is thrown: a plain object, `{ errors: [...] }`.
pub fn thrown(invalid: &Invalid) -> JsValue {
    encode(invalid).unwrap_or_else(|error| error)
}
