//! Views and canvases, as the page hands them over.

use pintle_core::{
    Document,
    fault::{Fault, FaultCode},
};
use wasm_bindgen::JsValue;

use super::codec::{decode, thrown, wrong_type};
use crate::drawing::{NoCanvas, View};

/// Decodes a view; its faults name their path.
pub fn decode_view(value: JsValue) -> Result<View, JsValue> {
    let document: Document = decode(value, "view")?;
    View::read(&document).map_err(|invalid| thrown(&invalid))
}

/// A finite number, or a fault of that argument: a missing argument arrives as NaN.
pub fn finite(value: f64, argument: &str) -> Result<f64, JsValue> {
    if value.is_finite() { Ok(value) } else { Err(thrown(&wrong_type(argument, value.to_string()))) }
}

/// A canvas that cannot be drawn on.
pub fn no_canvas(_: NoCanvas) -> JsValue {
    thrown(&Fault::new("canvas", FaultCode::WrongType).into())
}
