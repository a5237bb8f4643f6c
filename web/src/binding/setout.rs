//! Where to stand the operator: the search and the map for the worker, the map's picture for the page.

use pintle_core::{
    Document,
    fault::{Allowed, Example, Fault, FaultCode, Invalid},
    job::{Aim, Arm, CheckedJob, Elbow},
    plan::{Model, PadMap},
};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;
use web_sys::HtmlCanvasElement;

use super::codec::{decode, decode_job, decode_view, encode, finite, no_canvas, thrown};
use crate::drawing::{self, LIMIT_NAMES, Look, PadPicture, code_of};

/// Reads a job, for the search: faults are thrown.
fn read(job: JsValue) -> Result<CheckedJob, JsValue> {
    let document: Document = decode_job(job)?;
    CheckedJob::read(&document).map_err(|invalid| thrown(&invalid))
}

/// The search of the job's `setout` block. Throws `Invalid`.
#[wasm_bindgen(unchecked_return_type = "SetOutAnswer")]
pub fn set_out(#[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue) -> Result<JsValue, JsValue> {
    encode(&pintle_core::plan::set_out(&read(job)?).map_err(|invalid| thrown(&invalid))?)
}

/// The figures of the job's own arm on the site of its block; `null` where it does not work. Throws `Invalid`.
#[wasm_bindgen(js_name = weigh, unchecked_return_type = "Stand | null")]
pub fn evaluate(#[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue) -> Result<JsValue, JsValue> {
    encode(&pintle_core::plan::evaluate(&read(job)?).map_err(|invalid| thrown(&invalid))?)
}

/// The clearances of the job's own arm, whether or not the job says anything of what stands around: sizes that it does not say are the usual ones,
/// and the arm as wide as the block has it. Throws `Invalid`.
#[wasm_bindgen(unchecked_return_type = "Clearances | null")]
pub fn clearances(#[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue) -> Result<JsValue, JsValue> {
    let model = Model::of(read(job)?).map_err(|invalid| thrown(&invalid))?;
    encode(&model.clearances_of_search())
}

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
    let (job, aim) = (read(job)?, aim_of(aim).map_err(|invalid| thrown(&invalid))?);
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
        let map = PadMap::new(&read(job)?, columns, rows).map_err(|invalid| thrown(&invalid))?;
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

/// The picture of a map, on the page. Free it when it is replaced.
#[wasm_bindgen]
pub struct PadView {
    picture: PadPicture,
}

#[wasm_bindgen]
impl PadView {
    /// The picture of a map that is to come. Throws `Invalid`.
    #[wasm_bindgen(constructor)]
    pub fn new(
        #[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue,
        columns: usize,
        rows: usize,
    ) -> Result<PadView, JsValue> {
        let job = read(job)?;
        let picture = PadPicture::new(&job, columns, rows).map_err(|invalid| thrown(&invalid))?;
        Ok(PadView { picture })
    }

    /// Takes what the worker knows so far, as it gave it.
    pub fn set(&mut self, known: &[f64]) {
        let (reserves, codes) = known.split_at(known.len() / 2);
        let codes: Vec<u8> = codes.iter().map(|code| *code as u8).collect();
        self.picture.set(reserves, &codes);
    }

    /// Marks the best set-out's shaft, m; not a number marks nothing.
    pub fn mark_best(&mut self, x_m: f64, y_m: f64) {
        self.picture.mark_best((x_m.is_finite() && y_m.is_finite()).then_some((x_m, y_m)));
    }

    /// Marks the place looked at.
    pub fn mark_here(&mut self, column: usize, row: usize) {
        self.picture.mark_here(column, row);
    }

    /// Draws the arm of the place looked at: shaft x and y, bracket u and v, crank, link, m, and whether its elbow is left. None for an empty list.
    pub fn mark_arm(&mut self, lengths: &[f64], left: bool) {
        let elbow = if left { Elbow::Left } else { Elbow::Right };
        self.picture.mark_arm(lengths.try_into().ok().map(|lengths_m| Arm::of_lengths_m(lengths_m, elbow)));
    }

    /// Where the shaft stands at a column and row: along and square to the closed leaf, from the hinge axis, m.
    pub fn place_m(&self, column: usize, row: usize) -> Vec<f64> {
        let (x_m, y_m) = self.picture.place_m(column, row);
        vec![x_m, y_m]
    }

    /// Draws it.
    pub fn draw(
        &self,
        canvas: HtmlCanvasElement,
        #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue,
        look: JsValue,
    ) -> Result<(), JsValue> {
        drawing::draw_pads(canvas, &self.picture, &decode_view(view)?, &decode_look(look)?).map_err(no_canvas)
    }

    /// It as SVG.
    pub fn svg(
        &self,
        #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue,
        look: JsValue,
    ) -> Result<String, JsValue> {
        Ok(self.picture.svg(&decode_view(view)?, &decode_look(look)?))
    }

    /// Column and row of the place nearest to a point of the canvas, CSS px.
    pub fn place_at(
        &self,
        x: f64,
        y: f64,
        #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue,
    ) -> Result<Vec<u32>, JsValue> {
        let (column, row) = self.picture.place_at(&decode_view(view)?, finite(x, "x")?, finite(y, "y")?);
        Ok(vec![column as u32, row as u32])
    }
}

/// Names of the limits a map's codes stand for, from 1 on.
#[wasm_bindgen]
pub fn limit_names() -> Vec<String> {
    LIMIT_NAMES.map(String::from).to_vec()
}

fn decode_look(look: JsValue) -> Result<Look, JsValue> {
    let document: Document = decode(look, "look")?;
    Look::read(&document).map_err(|invalid| thrown(&invalid))
}
