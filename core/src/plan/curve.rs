//! One row of the curve: everything at one leaf angle.

use super::Model;
use crate::arm::Pose;
use crate::drive::holding_torque_n_m;
use crate::leaf::LeafStation;
use crate::terms::{Direction, WindCase};
use alloc::vec::Vec;
use serde::Serialize;

/// Torques, forces and geometry at one leaf angle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct CurvePoint {
    /// Leaf angle, degrees from closed.
    pub leaf_deg: f64,
    /// Crank angle from closed, degrees, signed, unwrapped.
    pub shaft_deg: f64,
    /// Crank turned per leaf turned; `null` at a dead point.
    pub ratio: Option<f64>,
    /// Lever of the link's line about the hinge, m.
    pub lever_m: f64,
    /// Angle between link and the line hinge→bracket, folded to 0…90°.
    pub transmission_deg: f64,
    /// Moment the drive must bring to the leaf when opening against the wind, N·m, positive opening.
    pub leaf_torque_open_n_m: f64,
    /// The same when closing.
    pub leaf_torque_close_n_m: f64,
    /// Shaft torque when opening against the wind, N·m, signed like the crank angle.
    pub shaft_torque_open_n_m: f64,
    /// The same when closing.
    pub shaft_torque_close_n_m: f64,
    /// Shaft torque when opening with the wind following, N·m.
    pub shaft_torque_open_following_n_m: f64,
    /// The same when closing.
    pub shaft_torque_close_following_n_m: f64,
    /// Shaft torque with which the drive holds the leaf back when opening with the wind following, N·m, signed like the crank angle; 0 where
    /// the leaf does not drive the shaft.
    pub overrun_open_n_m: f64,
    /// The same when closing.
    pub overrun_close_n_m: f64,
    /// Shaft torque that keeps the leaf at a stand here in the job's wind, from the side that asks more, N·m, magnitude. Losses of the arm
    /// help, friction of the hinges is not counted on.
    pub holding_n_m: f64,
    /// Force in the link when opening against the wind, N, positive in compression.
    pub link_force_open_n: f64,
    /// The same when closing.
    pub link_force_close_n: f64,
    /// Bracket pin in plan, m.
    pub bracket_x_m: f64,
    /// Bracket pin in plan, m.
    pub bracket_y_m: f64,
    /// Elbow in plan, m.
    pub elbow_x_m: f64,
    /// Elbow in plan, m.
    pub elbow_y_m: f64,
}

/// Arm and leaf at one leaf angle.
pub(super) struct Row {
    pub pose: Pose,
    pub leaf: LeafStation,
}

impl Model {
    /// The curve: one row at each of its leaf angles.
    #[must_use]
    pub fn curve(&self) -> Vec<CurvePoint> {
        self.leaf_angles().map(|leaf_rad| self.point(leaf_rad)).collect()
    }

    /// Arm and leaf at the curve's leaf angles: what every table of rows begins with.
    pub(super) fn rows(&self) -> Vec<Row> {
        self.leaf_angles().map(|leaf_rad| self.row(leaf_rad)).collect()
    }

    /// Everything at one leaf angle, rad. Exact at any angle of the swing, not interpolated; beyond the swing it is not meant.
    #[must_use]
    pub fn point(&self, leaf_rad: f64) -> CurvePoint {
        self.point_of(&self.row(leaf_rad))
    }

    pub(super) fn row(&self, leaf_rad: f64) -> Row {
        Row { pose: self.linkage().pose(leaf_rad), leaf: self.loads().station(leaf_rad) }
    }

    /// Everything at a row's leaf angle.
    pub(super) fn point_of(&self, Row { pose, leaf }: &Row) -> CurvePoint {
        let loads = self.loads();
        let torques = |wind| {
            Direction::BOTH.map(|direction| {
                let demand = self.demand(direction, wind);
                let leaf_n_m = loads.demand_of_n_m(leaf, direction, wind);
                let shaft_n_m = demand.shaft_n_m(leaf_n_m, pose.ratio);
                (leaf_n_m, shaft_n_m, if demand.leaf_drives(leaf_n_m) { shaft_n_m } else { 0.0 })
            })
        };
        let [(opening, shaft_open, _), (closing, shaft_close, _)] = torques(WindCase::Against);
        let [(_, open_following, overrun_open), (_, close_following, overrun_close)] = torques(WindCase::Following);
        let at_a_stand = loads.wind_n_m + leaf.gravity_n_m.abs();
        CurvePoint {
            leaf_deg: pose.leaf_rad.to_degrees(),
            shaft_deg: pose.crank_rad.to_degrees(),
            ratio: pose.ratio,
            lever_m: pose.lever_m(),
            transmission_deg: pose.transmission_rad.to_degrees(),
            leaf_torque_open_n_m: opening,
            leaf_torque_close_n_m: closing,
            shaft_torque_open_n_m: shaft_open,
            shaft_torque_close_n_m: shaft_close,
            shaft_torque_open_following_n_m: open_following,
            shaft_torque_close_following_n_m: close_following,
            overrun_open_n_m: overrun_open,
            overrun_close_n_m: overrun_close,
            holding_n_m: holding_torque_n_m(at_a_stand, pose, self.efficiency().back),
            link_force_open_n: pose.link_force_n(opening),
            link_force_close_n: pose.link_force_n(closing),
            bracket_x_m: pose.bracket.x,
            bracket_y_m: pose.bracket.y,
            elbow_x_m: pose.elbow.x,
            elbow_y_m: pose.elbow.y,
        }
    }
}
