//! One row of the curve: everything at one leaf angle.

use super::Model;
use crate::drive::{Direction, WindCase, holding_torque_n_m};
use serde::Serialize;

/// Torques, forces and geometry at one leaf angle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
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

impl Model {
    /// Everything at one leaf angle, rad. Exact at any angle of the swing, not interpolated; beyond the swing it is not meant.
    pub fn point(&self, leaf_rad: f64) -> CurvePoint {
        let pose = self.linkage().pose(leaf_rad);
        let leaf_torque = |direction| self.demand(direction, WindCase::Against).leaf_torque_n_m(leaf_rad);
        let shaft_torque = |direction, wind| self.demand(direction, wind).shaft_torque_n_m(&pose);
        let (opening, closing) = (leaf_torque(Direction::Open), leaf_torque(Direction::Close));
        let [open_following, close_following] =
            Direction::BOTH.map(|direction| shaft_torque(direction, WindCase::Following));
        let overrun = |direction, torque| {
            let demand = self.demand(direction, WindCase::Following);
            if demand.leaf_drives(demand.leaf_torque_n_m(leaf_rad)) { torque } else { 0.0 }
        };
        let loads = self.loads();
        let at_a_stand = loads.wind_n_m + loads.gravity_n_m(leaf_rad).abs();
        CurvePoint {
            leaf_deg: leaf_rad.to_degrees(),
            shaft_deg: pose.crank_rad.to_degrees(),
            ratio: pose.ratio,
            lever_m: pose.lever_m(),
            transmission_deg: pose.transmission_rad.to_degrees(),
            leaf_torque_open_n_m: opening,
            leaf_torque_close_n_m: closing,
            shaft_torque_open_n_m: shaft_torque(Direction::Open, WindCase::Against),
            shaft_torque_close_n_m: shaft_torque(Direction::Close, WindCase::Against),
            shaft_torque_open_following_n_m: open_following,
            shaft_torque_close_following_n_m: close_following,
            overrun_open_n_m: overrun(Direction::Open, open_following),
            overrun_close_n_m: overrun(Direction::Close, close_following),
            holding_n_m: holding_torque_n_m(at_a_stand, &pose, self.job().operator.efficiency()),
            link_force_open_n: pose.link_force_n(opening),
            link_force_close_n: pose.link_force_n(closing),
            bracket_x_m: pose.bracket.x,
            bracket_y_m: pose.bracket.y,
            elbow_x_m: pose.elbow.x,
            elbow_y_m: pose.elbow.y,
        }
    }
}
