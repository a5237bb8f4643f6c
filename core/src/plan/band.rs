//! The demand over the whole range of the friction coefficient.

use super::Model;
use super::curve::Row;
use crate::drive::{Rating, Swept, Verdict};
use crate::elements::FrictionRange;
use crate::leaf::LeafLoads;
use crate::terms::{Direction, WindCase};
use alloc::vec::Vec;
use serde::Serialize;

/// What low, likely and high friction make of the demand, wind against.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Band {
    /// The coefficients.
    pub friction: FrictionRange,
    /// Largest shaft torque with low, likely and high friction, N·m.
    pub peak_n_m: FrictionRange,
    /// Verdict at the high end; the plan's own verdict is at the likely one.
    pub verdict_high: Verdict,
    /// Rows at the curve's leaf angles.
    pub curve: Vec<BandPoint>,
}

/// Shaft torques at one leaf angle, N·m, signed like the crank angle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct BandPoint {
    /// Leaf angle, degrees.
    pub leaf_deg: f64,
    /// Opening, low friction.
    pub shaft_torque_open_low_n_m: f64,
    /// Opening, high friction.
    pub shaft_torque_open_high_n_m: f64,
    /// Closing, low friction.
    pub shaft_torque_close_low_n_m: f64,
    /// Closing, high friction.
    pub shaft_torque_close_high_n_m: f64,
}

impl Model {
    /// `None` where only one coefficient was said.
    pub(super) fn band(&self, swept: &Swept, rows: &[Row]) -> Option<Band> {
        let (job, operator) = (self.job(), &self.job().operator);
        let friction = job.hinges.friction_range().filter(|_| job.hinges.has_friction_range())?;
        let [low, likely, high] =
            [friction.low, friction.likely, friction.high].map(|friction| LeafLoads::with_friction(job, friction));
        let peak = |loads: &LeafLoads| self.largest(swept, loads).shaft_torque_n_m;
        let peak_n_m = FrictionRange { low: peak(&low), likely: peak(&likely), high: peak(&high) };
        let rated = operator.rated_torque_n_m;
        let rating = Rating::new(peak_n_m.high, rated, operator.peak_torque_n_m, job.required_reserve());
        let point = |row: &Row| {
            let torque = |loads: &LeafLoads, direction| {
                let leaf_torque_n_m = loads.demand_of_n_m(&row.leaf, direction, WindCase::Against);
                self.demand_of(loads, direction, WindCase::Against).shaft_n_m(leaf_torque_n_m, row.pose.ratio)
            };
            BandPoint {
                leaf_deg: row.pose.leaf_rad.to_degrees(),
                shaft_torque_open_low_n_m: torque(&low, Direction::Open),
                shaft_torque_open_high_n_m: torque(&high, Direction::Open),
                shaft_torque_close_low_n_m: torque(&low, Direction::Close),
                shaft_torque_close_high_n_m: torque(&high, Direction::Close),
            }
        };
        Some(Band { friction, peak_n_m, verdict_high: rating.verdict, curve: rows.iter().map(point).collect() })
    }
}
