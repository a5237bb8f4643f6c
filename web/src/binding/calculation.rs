//! One job, solved once and asked often.

use pintle_core::{Document, Job, Model, Plan};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;
use web_sys::HtmlCanvasElement;

use super::codec::{decode, decode_view, encode, finite, no_canvas, thrown};
use crate::drawing;

/// A valid job with its plan. Free it when it is replaced.
///
/// What each input does to the reserve is some sixty plans: the plan here is without it, and [`Calculation::sensitivity`] has it an
/// input at a time.
#[wasm_bindgen]
pub struct Calculation {
    model: Model,
    plan: Plan,
}

#[wasm_bindgen]
impl Calculation {
    /// Reads and solves a job. Throws `Invalid` with every fault when it cannot be planned.
    #[wasm_bindgen(constructor)]
    pub fn new(#[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue) -> Result<Calculation, JsValue> {
        let document: Document = decode(job, "")?;
        let job = Job::read(&document).map_err(|invalid| thrown(&invalid))?;
        let model = Model::new(&job).map_err(|invalid| thrown(&invalid))?;
        let plain = Model::new(&Job { uncertainty: None, ..job }).map_err(|invalid| thrown(&invalid))?;
        Ok(Calculation { plan: plain.plan(), model })
    }

    /// What the input of an index does to the reserve; `null` past the last one.
    #[wasm_bindgen(unchecked_return_type = "Sensitivity | null")]
    pub fn sensitivity(&self, index: usize) -> Result<JsValue, JsValue> {
        encode(&self.model.sensitivity_to(index))
    }

    /// The plan.
    #[wasm_bindgen(unchecked_return_type = "Plan")]
    pub fn plan(&self) -> Result<JsValue, JsValue> {
        encode(&self.plan)
    }

    /// What to mark, cut and set, with what the job does not say assumed.
    #[wasm_bindgen(unchecked_return_type = "MarkOut")]
    pub fn mark_out(&self) -> Result<JsValue, JsValue> {
        encode(&self.model.mark_out())
    }

    /// What a tape error costs, of the usual size where the job states none.
    #[wasm_bindgen(unchecked_return_type = "TapeCost")]
    pub fn tape_cost(&self) -> Result<JsValue, JsValue> {
        encode(&self.model.tape_cost(self.model.job().tape.unwrap_or_default()))
    }

    /// Everything at one leaf angle, degrees, held inside the swing; exact, not interpolated.
    #[wasm_bindgen(unchecked_return_type = "CurvePoint")]
    pub fn pose(&self, leaf_deg: f64) -> Result<JsValue, JsValue> {
        let inside = finite(leaf_deg, "leaf_deg")?.clamp(0.0, self.model.job().swing.open_deg);
        encode(&self.model.point(inside.to_radians()))
    }

    /// Draws leaf angle against shaft torque; says where the plot lies on the canvas.
    #[wasm_bindgen(unchecked_return_type = "PlotArea")]
    pub fn draw_curve(
        &self,
        canvas: HtmlCanvasElement,
        #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue,
    ) -> Result<JsValue, JsValue> {
        let area = drawing::draw_curve(canvas, &self.model, &self.plan, &decode_view(view)?).map_err(no_canvas)?;
        encode(&area)
    }

    /// Draws the plan view.
    pub fn draw_plan_view(
        &self,
        canvas: HtmlCanvasElement,
        #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue,
    ) -> Result<(), JsValue> {
        drawing::draw_plan_view(canvas, &self.model, &decode_view(view)?).map_err(no_canvas)
    }

    /// The leaf angle under a point of the curve's canvas, CSS px; degrees, held inside the swing.
    pub fn leaf_deg_at_curve(
        &self,
        x: f64,
        _y: f64,
        #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue,
    ) -> Result<f64, JsValue> {
        Ok(drawing::leaf_deg_at_curve(&self.model, &self.plan, &decode_view(view)?, finite(x, "x")?))
    }

    /// The leaf angle in whose direction a point of the plan view's canvas lies, CSS px; degrees, held inside the swing.
    pub fn leaf_deg_at_plan_view(
        &self,
        x: f64,
        y: f64,
        #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue,
    ) -> Result<f64, JsValue> {
        let (x, y) = (finite(x, "x")?, finite(y, "y")?);
        Ok(drawing::leaf_deg_at_plan_view(&self.model, &decode_view(view)?, x, y))
    }

    /// The curve as an SVG document, for print.
    pub fn curve_svg(&self, #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue) -> Result<String, JsValue> {
        Ok(drawing::curve_svg(&self.model, &self.plan, &decode_view(view)?))
    }

    /// The plan view as an SVG document, for print.
    pub fn plan_view_svg(
        &self,
        #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue,
    ) -> Result<String, JsValue> {
        Ok(drawing::plan_view_svg(&self.model, &decode_view(view)?))
    }
}
