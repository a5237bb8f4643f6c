//! One job, solved once and asked often.

use std::cell::OnceCell;

use pintle_core::{
    Document,
    fault::LeftOut,
    job::CheckedJob,
    plan::{Model, Plan, Run},
};
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;
use web_sys::HtmlCanvasElement;

use super::codec::{decode_job, encode, thrown, wrong_type};
use super::view::{decode_view, finite, no_canvas};
use crate::drawing;

/// A valid job with its plan. Free it when it is replaced.
///
/// What each input does to the reserve is some sixty plans: the plan here is without it, and [`Calculation::sensitivity`] has it an
/// input at a time.
#[wasm_bindgen]
pub struct Calculation {
    model: Model,
    plan: Plan,
    /// Parts of the job that are begun and not counted.
    left_out: Vec<LeftOut>,
    /// Runs in full, once somebody asks.
    runs: OnceCell<Vec<Run>>,
}

#[wasm_bindgen]
impl Calculation {
    /// Reads and solves a job, without the parts of it that are begun and cannot be read yet. Throws `Invalid` with every fault when what a plan
    /// needs is among them.
    #[wasm_bindgen(constructor)]
    pub fn new(#[wasm_bindgen(unchecked_param_type = "Job")] job: JsValue) -> Result<Calculation, JsValue> {
        let document: Document = decode_job(job)?;
        let read = CheckedJob::read_partial(&document);
        let solved = read.and_then(|(job, left_out)| Ok((Model::of(job)?, left_out)));
        let (model, left_out) = solved.map_err(|invalid| thrown(&invalid))?;
        let mut plan = model.plan_without_sensitivity();
        plan.judge(&left_out);
        Ok(Calculation { plan, model, left_out, runs: OnceCell::new() })
    }

    /// Parts of the job that are begun, what each needs, and that are not counted.
    #[wasm_bindgen(unchecked_return_type = "LeftOut[]")]
    pub fn left_out(&self) -> Result<JsValue, JsValue> {
        encode(&self.left_out)
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

    /// The job's commissioning record against its plan, every row there even where nothing was measured.
    #[wasm_bindgen(unchecked_return_type = "Commissioning")]
    pub fn commissioning(&self) -> Result<JsValue, JsValue> {
        encode(&self.model.commissioning(&self.plan))
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
        drawing::draw_plan_view(canvas, &self.model, &self.plan, &decode_view(view)?).map_err(no_canvas)
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
        Ok(drawing::leaf_deg_at_plan_view(&self.model, &self.plan, &decode_view(view)?, x, y))
    }

    /// Draws edge speed and shaft torque against time; nothing where the job says nothing of motion.
    pub fn draw_time(
        &self,
        canvas: HtmlCanvasElement,
        #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue,
    ) -> Result<(), JsValue> {
        drawing::draw_time(canvas, self.runs(), &decode_view(view)?).map_err(no_canvas)
    }

    /// The leaf angle of the followed run under a point of the time plot's canvas, CSS px; `undefined` without such a run.
    pub fn leaf_deg_at_time(
        &self,
        x: f64,
        _y: f64,
        #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue,
    ) -> Result<Option<f64>, JsValue> {
        Ok(drawing::leaf_deg_at_time(self.runs(), &decode_view(view)?, finite(x, "x")?))
    }

    /// A run (`View.run`) at a time, s, held between its start and end; `null` without such a run.
    #[wasm_bindgen(unchecked_return_type = "RunPoint | null")]
    pub fn run_at(&self, run: &str, time_s: f64) -> Result<JsValue, JsValue> {
        let time_s = finite(time_s, "time_s")?;
        encode(&self.run(run).and_then(|run| run.at(time_s)))
    }

    /// A run where it first has a leaf angle, degrees; `null` without such a run, or where it does not come to it.
    #[wasm_bindgen(unchecked_return_type = "RunPoint | null")]
    pub fn run_of_leaf(&self, run: &str, leaf_deg: f64) -> Result<JsValue, JsValue> {
        let leaf_deg = finite(leaf_deg, "leaf_deg")?;
        encode(&self.run(run).and_then(|run| run.of_leaf(leaf_deg)))
    }

    /// The time plot as an SVG document, for print.
    pub fn time_svg(&self, #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue) -> Result<String, JsValue> {
        Ok(drawing::time_svg(self.runs(), &decode_view(view)?))
    }

    /// The curve as an SVG document, for print.
    pub fn curve_svg(&self, #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue) -> Result<String, JsValue> {
        Ok(drawing::curve_svg(&self.model, &self.plan, &decode_view(view)?))
    }

    /// This operator and another one on one curve, the part of its rated torque that each is asked for, as an SVG document under the names given.
    pub fn pair_svg(
        &self,
        other: &Calculation,
        names: Vec<String>,
        #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue,
    ) -> Result<String, JsValue> {
        let [name, other_name] = &names[..] else {
            return Err(thrown(&wrong_type("names", format!("{} names", names.len()))));
        };
        Ok(drawing::pair_svg([&self.model, &other.model], [name, other_name], &decode_view(view)?))
    }

    /// The base pattern at its true size as SVG documents, one a sheet, for print at 100 %; none where no holes are said or their narrow side is
    /// wider than the paper.
    pub fn template_svgs(
        &self,
        #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue,
    ) -> Result<Vec<String>, JsValue> {
        Ok(drawing::template_svgs(&self.model, &decode_view(view)?))
    }

    /// The plan view as an SVG document, for print.
    pub fn plan_view_svg(
        &self,
        #[wasm_bindgen(unchecked_param_type = "View")] view: JsValue,
    ) -> Result<String, JsValue> {
        Ok(drawing::plan_view_svg(&self.model, &self.plan, &decode_view(view)?))
    }
}

impl Calculation {
    fn runs(&self) -> &[Run] {
        self.runs.get_or_init(|| self.model.fine_runs())
    }

    fn run(&self, name: &str) -> Option<&Run> {
        self.runs().get(drawing::RUNS.iter().position(|known| *known == name)?)
    }
}
