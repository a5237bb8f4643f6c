//! What the plan says of the working wind beside its moment: where it comes from, and the wind of fixed bearing.

use super::curve::Row;
use super::wind_source::sources;
use super::{Model, Overrun};
use crate::drive::{PeakDemand, Swept};
use crate::job::{WindFrom, WindShape};
use crate::leaf::{Gust, beaufort_number, beaufort_range_m_s};
use crate::safety::Source;
use crate::terms::{Direction, WindCase};
use alloc::vec::Vec;
use serde::Serialize;

/// The working wind.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct WorkingWind {
    /// The gust as it is reckoned with.
    pub gust: Gust,
    /// Highest Beaufort number whose gust, by the job's two factors, is within the wind limit; `null` where the job names no such factors or
    /// there is no limit.
    pub limit_beaufort: Option<u8>,
    /// Cases of the standard that are left out.
    pub excluded: Vec<&'static str>,
    /// Where pressure, shape and the law of a slanting wind come from; empty for what was typed.
    pub sources: Vec<Source>,
    /// The wind of fixed bearing, where the job has one.
    pub bearing: Option<BearingWind>,
}

/// A wind of fixed bearing, by the law of [`crate::leaf::normal_component`].
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct BearingWind {
    /// Where the shaft torque is largest, either way.
    pub peak: Overrun,
    /// The most the drive must hold back; `null` where the leaf never drives the shaft.
    pub overrun: Option<Overrun>,
    /// Rows at the curve's leaf angles.
    pub curve: Vec<BearingPoint>,
}

/// The wind of fixed bearing at one leaf angle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct BearingPoint {
    /// Leaf angle, degrees.
    pub leaf_deg: f64,
    /// Moment of the wind, N·m, positive opening.
    pub wind_n_m: f64,
    /// Shaft torque when opening, N·m, signed like the crank angle.
    pub shaft_torque_open_n_m: f64,
    /// The same when closing.
    pub shaft_torque_close_n_m: f64,
}

fn overrun(peak: PeakDemand) -> Overrun {
    Overrun { leaf_deg: peak.leaf_rad.to_degrees(), shaft_torque_n_m: peak.shaft_torque_n_m, direction: peak.direction }
}

/// The highest Beaufort number whose fastest mean does not exceed a mean, m/s; `None` where even a calm's does.
fn highest_within(mean_m_s: f64) -> Option<u8> {
    let number = beaufort_number(mean_m_s);
    match beaufort_range_m_s(number) {
        (_, Some(fastest)) if fastest <= mean_m_s => Some(number),
        _ => number.checked_sub(1),
    }
}

impl Model {
    /// `None` where the wind is a plain gust against the leaf and there is nothing to add.
    pub(super) fn working_wind(&self, swept: &Swept, rows: &[Row], limit_m_s: Option<f64>) -> Option<WorkingWind> {
        let (job, wind) = (self.job(), &self.job().wind);
        if wind.from.is_none() && wind.shape.is_none() && wind.bearing_deg.is_none() {
            return None;
        }
        let limit_beaufort = match wind.from {
            Some(WindFrom::Beaufort(from)) => {
                limit_m_s.and_then(|limit| highest_within(limit / (from.gust_factor * from.height_factor)))
            }
            _ => None,
        };
        let long = job.leaf.height_m.is_some_and(|height| job.leaf.length_m >= 2.0 * height);
        let excluded = match wind.shape {
            Some(WindShape::Asce7Wall(_)) if long => alloc::vec!["asce7_case_c"],
            _ => Vec::new(),
        };
        let bearing = wind.bearing_deg.map(|_| self.bearing_wind(swept, rows));
        Some(WorkingWind { gust: job.gust(), limit_beaufort, excluded, sources: sources(wind), bearing })
    }

    fn bearing_wind(&self, swept: &Swept, rows: &[Row]) -> BearingWind {
        let larger = |[opening, closing]: [Option<PeakDemand>; 2]| match (opening, closing) {
            (Some(open), Some(close)) if close.shaft_torque_n_m > open.shaft_torque_n_m => Some(close),
            (open, close) => open.or(close),
        };
        let demand = |direction| self.demand(direction, WindCase::Bearing);
        let calm = PeakDemand { leaf_rad: 0.0, shaft_torque_n_m: 0.0, direction: Direction::Open };
        let peak = larger(Direction::BOTH.map(|direction| swept.peak(&demand(direction))));
        let held = larger(Direction::BOTH.map(|direction| swept.held(&demand(direction))));
        let point = |Row { pose, leaf }: &Row| {
            let [open_n_m, close_n_m] = Direction::BOTH.map(|direction| {
                let leaf_torque_n_m = self.loads().demand_of_n_m(leaf, direction, WindCase::Bearing);
                demand(direction).shaft_n_m(leaf_torque_n_m, pose.ratio)
            });
            BearingPoint {
                leaf_deg: pose.leaf_rad.to_degrees(),
                wind_n_m: self.loads().wind_of_n_m(leaf, Direction::Open, WindCase::Bearing),
                shaft_torque_open_n_m: open_n_m,
                shaft_torque_close_n_m: close_n_m,
            }
        };
        BearingWind {
            peak: overrun(peak.unwrap_or(calm)),
            overrun: held.map(overrun),
            curve: rows.iter().map(point).collect(),
        }
    }
}
