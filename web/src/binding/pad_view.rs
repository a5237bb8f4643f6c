//! The map's picture, on the page.

use pintle_core::{
    Document,
    job::{Arm, Elbow},
};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;
use web_sys::HtmlCanvasElement;

use super::codec::{decode, thrown};
use super::setout::read_checked;
use super::view::{decode_view, finite, no_canvas};
use crate::drawing::{self, LIMIT_NAMES, Look, PadPicture};

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
        let job = read_checked(job)?;
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
