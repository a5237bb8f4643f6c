//! What each input does to the reserve: where to measure better.

use super::Model;
use crate::drive::Grid;
use crate::job::Job;
use crate::leaf::LeafLoads;
use crate::order::insertion_sort;
use alloc::vec::Vec;
use serde::Serialize;

/// Uncertainty of an input where none is stated: ±10 %. Common practice, no source.
const USUAL: f64 = 0.1;

/// The reserve with one input changed, all others as they are.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Sensitivity {
    /// Path of the input.
    pub path: &'static str,
    /// How far it was changed, as a fraction of its value; for a friction with a range of its own, up to its upper end.
    pub fraction: f64,
    /// Reserve with the input lowered; `null` where that job is invalid (the arm no longer closes) or nothing is demanded.
    pub low: Option<f64>,
    /// Reserve with the input raised.
    pub high: Option<f64>,
}

impl Sensitivity {
    /// How far apart the two reserves are; an input that breaks the arm tells nothing of the reserve and comes last.
    fn spread(&self) -> f64 {
        self.low.zip(self.high).map_or(-1.0, |(low, high)| (high - low).abs())
    }
}

const FRICTION: &str = "hinges.friction_coefficient";

impl Model {
    /// The reserve, with the job's friction or another coefficient.
    fn reserve(&self, friction_coefficient: Option<f64>) -> Option<f64> {
        let loads =
            friction_coefficient.map_or(*self.loads(), |coefficient| LeafLoads::with_friction(self.job(), coefficient));
        let grid = Grid::with_step(self.linkage().open_rad, &loads);
        let demand = self.largest(&grid.swept(self.linkage()), &loads).shaft_torque_n_m;
        Some(self.job().operator.rated_torque_n_m / demand).filter(|reserve| reserve.is_finite())
    }

    /// The coefficient of friction over its own range, where the job has one and states nothing else.
    fn friction_sensitivity(&self) -> Option<Sensitivity> {
        let hinges = &self.job().hinges;
        let range = hinges.friction_range().filter(|_| hinges.has_friction_range())?;
        let fraction = if range.likely > 0.0 { range.high / range.likely - 1.0 } else { 1.0 };
        let (low, high) = (self.reserve(Some(range.low)), self.reserve(Some(range.high)));
        Some(Sensitivity { path: FRICTION, fraction, low, high })
    }

    /// What the input of an index does, by the job's uncertainty where it states one; `None` past the last. In no order, so that a
    /// caller with little time can ask one at a time.
    #[must_use]
    pub fn sensitivity_to(&self, index: usize) -> Option<Sensitivity> {
        let job = self.job();
        let stated = |path: &str| job.uncertainty.as_ref().and_then(|stated| stated.get(path).copied());
        let own = self.job().hinges.has_friction_range() && stated(FRICTION).is_none();
        let mut inputs = job.inputs();
        inputs.retain(|(path, value)| *value != 0.0 && !(own && *path == FRICTION));
        let Some(&(path, value)) = inputs.get(index) else {
            return if own && index == inputs.len() { self.friction_sensitivity() } else { None };
        };
        let fraction = stated(path).unwrap_or(USUAL);
        // What stands around does not decide a reserve, and hundreds of rectangles would be checked anew for each of sixty of them.
        let alone = Job { site: None, obstacles: None, setout: None, uncertainty: None, ..job.clone() };
        let at = |factor: f64| Model::of(alone.checked_with_input(path, value * factor).ok()?).ok()?.reserve(None);
        Some(Sensitivity { path, fraction, low: at(1.0 - fraction), high: at(1.0 + fraction) })
    }

    /// Plans the job anew with each input lowered and raised by its uncertainty; largest effect first. `None` unless the job asks.
    ///
    /// Two plans an input, some thirty inputs: about sixty times the work of the peak. Inputs that are zero are not varied.
    #[must_use]
    pub fn sensitivity(&self) -> Option<Vec<Sensitivity>> {
        self.job().uncertainty.as_ref()?;
        let mut list: Vec<Sensitivity> = (0..).map_while(|index| self.sensitivity_to(index)).collect();
        insertion_sort(&mut list, |one, other| one.spread() > other.spread());
        Some(list)
    }
}
