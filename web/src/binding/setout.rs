//! The arm as it is, weighed as the search would: for the page and for the worker.

use pintle_core::job::CheckedJob;
#[cfg(feature = "page")]
use pintle_core::plan::Model;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

use super::codec::{decode_job, encode, thrown};

/// Reads a job, for the search: faults are thrown.
pub fn read_checked(job: JsValue) -> Result<CheckedJob, JsValue> {
    CheckedJob::read(&decode_job(job)?).map_err(|invalid| thrown(&invalid))
}

/// The figures of the job's own arm on the site of its block; `null` where it does not work. Throws `Invalid`.
#[wasm_bindgen(js_name = weigh, unchecked_return_type = "Stand | null")]
pub fn evaluate(#[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue) -> Result<JsValue, JsValue> {
    encode(&pintle_core::plan::evaluate(&read_checked(job)?).map_err(|invalid| thrown(&invalid))?)
}

/// The clearances of the job's own arm, whether or not the job says anything of what stands around: sizes that it does not say are the usual ones,
/// and the arm as wide as the block has it. Throws `Invalid`.
#[cfg(feature = "page")]
#[wasm_bindgen(unchecked_return_type = "Clearances | null")]
pub fn clearances(#[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue) -> Result<JsValue, JsValue> {
    let model = Model::of(read_checked(job)?).map_err(|invalid| thrown(&invalid))?;
    encode(&model.clearances_of_search())
}
