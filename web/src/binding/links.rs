//! Jobs as links and files.

use pintle_core::{Document, job::Job, packed};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

use super::codec::{decode_job, encode, thrown};
use crate::drawing;

/// A job document as the text of a link; what it does not say (`null`) is left out.
#[wasm_bindgen]
pub fn pack(#[wasm_bindgen(unchecked_param_type = "any")] job: JsValue) -> Result<String, JsValue> {
    Ok(packed::pack(&decode_job(job)?))
}

/// The job document of a link's text, in this version's schema. Throws `Invalid` for a damaged, hostile or newer link and for a
/// document that is no job.
#[wasm_bindgen(unchecked_return_type = "any")]
pub fn unpack(text: &str) -> Result<JsValue, JsValue> {
    opened(&packed::unpack(text).map_err(|invalid| thrown(&invalid))?)
}

/// A job document from elsewhere in this version's schema. Throws `Invalid` where it has not the shape of a job; numbers missing or
/// out of range can be put right on the page.
#[wasm_bindgen(unchecked_return_type = "any")]
pub fn open_job(#[wasm_bindgen(unchecked_param_type = "any")] job: JsValue) -> Result<JsValue, JsValue> {
    opened(&decode_job(job)?)
}

fn opened(document: &Document) -> Result<JsValue, JsValue> {
    encode(&Job::open(document).map_err(|invalid| thrown(&invalid))?)
}

/// A text as a QR code, to be drawn as one SVG path; `null` where it is too long for one.
#[wasm_bindgen(unchecked_return_type = "QrPath | null")]
pub fn qr(text: &str) -> Result<JsValue, JsValue> {
    encode(&drawing::qr(text))
}

/// The schema of documents that this version writes.
#[wasm_bindgen]
#[must_use]
pub fn schema() -> u32 {
    pintle_core::job::SCHEMA
}
