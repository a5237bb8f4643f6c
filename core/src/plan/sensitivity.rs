//! What each input does to the reserve: where to measure better.

use super::Model;
use crate::drive::Swept;
use crate::job::Job;
use alloc::vec::Vec;
use serde::Serialize;

/// Uncertainty of an input where none is stated: ±10 %. Common practice, no source.
const USUAL: f64 = 0.1;

/// The reserve with one input changed, all others as they are.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Sensitivity {
    /// Path of the input.
    pub path: &'static str,
    /// How far it was changed, as a fraction of its value.
    pub fraction: f64,
    /// Reserve with the input lowered; `null` where that job is invalid (the arm no longer closes) or nothing is demanded.
    pub low: Option<f64>,
    /// Reserve with the input raised.
    pub high: Option<f64>,
}

impl Sensitivity {
    /// How far apart the two reserves are; an input that breaks the arm is the one to look at first.
    fn spread(&self) -> f64 {
        self.low.zip(self.high).map_or(f64::MAX, |(low, high)| (high - low).abs())
    }
}

/// Reserve of a job as `plan` has it.
fn reserve(job: &Job) -> Option<f64> {
    let model = Model::new(job).ok()?;
    let swept = Swept::new(model.linkage()).with_step(model.loads().step_rad());
    let demand = model.largest(&swept, model.loads()).shaft_torque_n_m;
    Some(job.operator.rated_torque_n_m / demand).filter(|reserve| reserve.is_finite())
}

impl Model {
    /// Plans the job anew with each input lowered and raised by its uncertainty; largest effect first. `None` unless the job asks.
    ///
    /// Two plans an input, some thirty inputs: about sixty times the work of the peak. Inputs that are zero are not varied.
    pub fn sensitivity(&self) -> Option<Vec<Sensitivity>> {
        let stated = self.job().uncertainty.as_ref()?;
        let inputs = self.job().inputs().into_iter().filter(|(_, value)| *value != 0.0);
        let mut list: Vec<Sensitivity> = inputs
            .map(|(path, value)| {
                let fraction = stated.get(path).copied().unwrap_or(USUAL);
                let at = |factor: f64| reserve(&self.job().with_input(path, value * factor));
                Sensitivity { path, fraction, low: at(1.0 - fraction), high: at(1.0 + fraction) }
            })
            .collect();
        list.sort_by(|one, other| other.spread().total_cmp(&one.spread()));
        Some(list)
    }
}
