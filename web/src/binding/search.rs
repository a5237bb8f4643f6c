//! Where to stand the operator: the search, the trade-off and the map, for the worker.

use pintle_core::{
    fault::{Allowed, Example, Fault, FaultCode, Invalid},
    job::Aim,
    plan::{PadMap, SetOutSearch},
};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

use super::codec::{encode, thrown};
use super::setout::read_checked;
use crate::drawing::code_of;

/// The other aims of a front, by the words of documents.
const AIMS: [(&str, Aim); 3] = [
    ("least_link_force", Aim::LeastLinkForce),
    ("least_shaft_travel", Aim::LeastShaftTravel),
    ("nearest_place", Aim::NearestPlace),
];

/// The aim of a word, or a fault that names those there are.
fn aim_of(word: &str) -> Result<Aim, Invalid> {
    let known = AIMS.iter().find(|(name, _)| *name == word).map(|(_, aim)| *aim);
    known.ok_or_else(|| {
        let mut fault = Fault::new("aim", FaultCode::NotOneOf);
        fault.found = Some(format!("\"{word}\""));
        let names = AIMS.map(|(name, _)| name).to_vec();
        fault.allowed(Allowed::OneOf { names }).example(Example::Text(AIMS[0].0)).into()
    })
}

/// Set-outs between least shaft torque and another aim (`"least_link_force"`, `"least_shaft_travel"`, `"nearest_place"`), at most `points`.
/// Throws `Invalid`, of an aim that is none of these, too.
#[wasm_bindgen(js_name = front, unchecked_return_type = "Stand[]")]
pub fn pareto_front(
    #[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue,
    aim: &str,
    points: usize,
) -> Result<JsValue, JsValue> {
    let (job, aim) = (read_checked(job)?, aim_of(aim).map_err(|invalid| thrown(&invalid))?);
    encode(&pintle_core::plan::pareto_front(&job, aim, points).map_err(|invalid| thrown(&invalid))?)
}

/// A map being made, in the worker. Free it when it is done or given up.
#[wasm_bindgen]
pub struct Pads {
    map: PadMap,
}

#[wasm_bindgen]
impl Pads {
    /// A map of `columns` × `rows` places over the block's shaft ranges. Throws `Invalid`.
    #[wasm_bindgen(constructor)]
    pub fn new(
        #[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue,
        columns: usize,
        rows: usize,
    ) -> Result<Pads, JsValue> {
        let map = PadMap::new(&read_checked(job)?, columns, rows).map_err(|invalid| thrown(&invalid))?;
        Ok(Pads { map })
    }

    /// Does up to `places` more; `true` while there are any left.
    pub fn step(&mut self, places: usize) -> bool {
        self.map.step(places)
    }

    /// Places done.
    pub fn done(&self) -> usize {
        self.map.progress().0
    }

    /// Reserve of every place row by row, not a number where there is none, and after them the code of every place: 0 an arm, 255 not
    /// yet, else the limit in the way as the picture knows it.
    pub fn known(&self) -> Vec<f64> {
        let pads = self.map.pads();
        let reserve = pads.iter().map(|pad| pad.and_then(|pad| pad.reserve).unwrap_or(f64::NAN));
        reserve.chain(pads.iter().map(|pad| f64::from(code_of(pad.as_ref())))).collect()
    }

    /// What the map says of a place; `null` where it has not been yet.
    #[wasm_bindgen(unchecked_return_type = "Pad | null")]
    pub fn pad(&self, column: usize, row: usize) -> Result<JsValue, JsValue> {
        encode(&self.map.pad(column, row))
    }
}

/// The search for a set-out, a little at a time. Free it when it is done or given up.
#[wasm_bindgen]
pub struct Seeking {
    search: SetOutSearch,
}

#[wasm_bindgen]
impl Seeking {
    /// The search of the job's `setout` block. Throws `Invalid`.
    #[wasm_bindgen(constructor)]
    pub fn new(#[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue) -> Result<Seeking, JsValue> {
        let search = SetOutSearch::new(&read_checked(job)?).map_err(|invalid| thrown(&invalid))?;
        Ok(Seeking { search })
    }

    /// Does up to `work` units more, of about a millisecond; `true` while there is any left.
    pub fn step(&mut self, work: usize) -> bool {
        self.search.step(work)
    }

    /// Units done.
    pub fn units(&self) -> usize {
        self.search.units()
    }

    /// The answer; `null` before the end.
    #[wasm_bindgen(unchecked_return_type = "SetOutAnswer | null")]
    pub fn answer(&self) -> Result<JsValue, JsValue> {
        encode(&self.search.answer())
    }
}
