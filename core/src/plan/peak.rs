//! Where the shaft torque is largest over the continuous swing, and where the drive must hold back most.

use super::Model;
use crate::drive::{Demand, Grid, PeakDemand, Swept};
use crate::elements::Efficiency;
use crate::leaf::LeafLoads;
use crate::terms::{Direction, WindCase};
use serde::Serialize;

/// The deciding angle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Peak {
    /// Leaf angle, degrees.
    pub leaf_deg: f64,
    /// Magnitude of the shaft torque, N·m.
    pub shaft_torque_n_m: f64,
    /// Which way the leaf moves.
    pub direction: Direction,
    /// What the leaf torque there is made of.
    pub shares: Shares,
}

/// Parts of the leaf torque at the deciding angle, as fractions of it; they sum to 1, all 0 where nothing is demanded.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Shares {
    /// Hinge friction.
    pub friction: f64,
    /// Wind.
    pub wind: f64,
    /// Lean of the hinge axis; negative where it helps.
    pub lean: f64,
}

/// The most the drive must hold back.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Overrun {
    /// Leaf angle, degrees.
    pub leaf_deg: f64,
    /// Magnitude of the shaft torque that holds the leaf back, N·m.
    pub shaft_torque_n_m: f64,
    /// Which way the leaf moves.
    pub direction: Direction,
}

impl Model {
    /// What the plan says of its largest shaft torque.
    pub(super) fn told_peak(&self, peak: &PeakDemand) -> Peak {
        Peak {
            leaf_deg: peak.leaf_rad.to_degrees(),
            shaft_torque_n_m: peak.shaft_torque_n_m,
            direction: peak.direction,
            shares: self.shares(peak),
        }
    }

    /// Of the plan alone the peak shaft torque, N·m, the least lever from a tenth of the swing on, m, and the shaft's travel, rad.
    pub(super) fn peak_lever_and_travel(&self) -> (f64, f64, f64) {
        let open_rad = self.linkage().open_rad;
        // With the angle at which the latch lets go: the plan counts its step, too.
        let grid = Grid::with_step(open_rad, self.loads());
        let swept = grid.swept(self.linkage());
        let (least_lever_m, _) = swept.least_lever(0.1 * open_rad);
        let peak_n_m = self.largest(&swept, self.loads()).shaft_torque_n_m;
        (peak_n_m, least_lever_m, self.linkage().pose(open_rad).crank_rad.abs())
    }

    /// The largest shaft torque both ways, wind against. Of equals the opening one counts.
    pub(super) fn largest(&self, swept: &Swept, loads: &LeafLoads) -> PeakDemand {
        self.largest_at(self.efficiency(), swept, loads)
    }

    pub(super) fn largest_at(&self, efficiency: Efficiency, swept: &Swept, loads: &LeafLoads) -> PeakDemand {
        let [opening, closing] = Direction::BOTH.map(|direction| {
            let calm = PeakDemand { leaf_rad: 0.0, shaft_torque_n_m: 0.0, direction };
            let demand = Demand { efficiency, ..self.demand_of(loads, direction, WindCase::Against) };
            swept.peak(&demand).unwrap_or(calm)
        });
        if closing.shaft_torque_n_m > opening.shaft_torque_n_m { closing } else { opening }
    }

    pub(super) fn overrun(&self, swept: &Swept) -> Option<Overrun> {
        self.overrun_in(swept, self.loads())
    }

    pub(super) fn overrun_in(&self, swept: &Swept, loads: &LeafLoads) -> Option<Overrun> {
        let [opening, closing] =
            Direction::BOTH.map(|direction| swept.held(&self.demand_of(loads, direction, WindCase::Following)));
        let larger = match (opening, closing) {
            (Some(open), Some(close)) if close.shaft_torque_n_m > open.shaft_torque_n_m => close,
            (Some(open), _) => open,
            (None, close) => close?,
        };
        Some(Overrun {
            leaf_deg: larger.leaf_rad.to_degrees(),
            shaft_torque_n_m: larger.shaft_torque_n_m,
            direction: larger.direction,
        })
    }

    fn shares(&self, peak: &PeakDemand) -> Shares {
        let sign = peak.direction.sign();
        let lean = -sign * self.loads().gravity_n_m(peak.leaf_rad);
        let friction = self.loads().friction_at_n_m(peak.leaf_rad, peak.direction);
        let total = friction + self.loads().wind_n_m + lean;
        if total == 0.0 {
            return Shares { friction: 0.0, wind: 0.0, lean: 0.0 };
        }
        Shares { friction: friction / total, wind: self.loads().wind_n_m / total, lean: lean / total }
    }
}
