//! The window of slip torque: what must hold in normal running, and what must let go before something is overloaded.
//!
//! It protects leaf and drive. It is never counted as protection of people, which is sensing together with a measured force.

use crate::arm::{Linkage, Pose};
use crate::job::BreakawayFacts;
use kurbo::common::solve_itp;
use serde::Serialize;

/// From closed on, the arm counts as in its toggle zone while the leaf gets more than this many times the moment it gets half open from one
/// shaft torque. A word of our own; no source.
pub const TOGGLE_RATIO: f64 = 2.0;

/// Leaf angles looked at over the swing.
const INTERVALS: u32 = 720;

/// What a slipping drive has to spare.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum SparedPart {
    /// The leaf, by the moment about its hinge.
    Leaf,
    /// The link, by the force along it.
    Link,
    /// The bracket, by the same force.
    Bracket,
    /// Shaft and gear of the operator.
    Gearbox,
}

/// The highest slip torque that spares every part, and which part decides it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct HighestSlip {
    /// Slip torque, N·m.
    pub slip_torque_n_m: f64,
    /// The part that is reached first.
    pub part: SparedPart,
    /// Leaf angle at which it is, degrees; `null` for the gearbox, which knows no angle.
    pub leaf_deg: Option<f64>,
}

/// Moment about the hinge that turns a drive at a stand, N·m: `M = T·|n|/η`, `η` that of the leaf driving the shaft.
///
/// The leaf drives the shaft here, and the arm's losses help the clutch to hold; a vehicle pushes with this before the clutch slips.
/// `None` at a dead point, where no moment on the leaf reaches the shaft. Source: virtual work.
#[must_use]
pub fn slipping_moment_n_m(slip_torque_n_m: f64, pose: &Pose, efficiency: f64) -> Option<f64> {
    pose.ratio.map(|ratio| slip_torque_n_m * ratio.abs() / efficiency)
}

/// Moment that a drive slipping against a blocked leaf brings to it, N·m: `M = T·|n|·η`. `None` at a dead point. Source: virtual work.
#[must_use]
pub fn blocked_moment_n_m(slip_torque_n_m: f64, pose: &Pose, efficiency: f64) -> Option<f64> {
    pose.ratio.map(|ratio| slip_torque_n_m * ratio.abs() * efficiency)
}

/// Leaf angle up to which the arm is in its toggle zone, rad; 0 where there is none.
///
/// The last angle before half open at which `|n|` is [`TOGGLE_RATIO`] times its value half open, bracketed on a fixed grid and found by ITP.
#[must_use]
pub fn toggle_zone_rad(linkage: &Linkage) -> f64 {
    let half = linkage.open_rad / 2.0;
    let middle = linkage.leverage(half).ratio;
    let excess = |leaf_rad: f64| match (linkage.leverage(leaf_rad).ratio, middle) {
        (Some(ratio), Some(middle)) => (ratio / middle).abs() - TOGGLE_RATIO,
        _ => f64::MAX,
    };
    let step = half / f64::from(INTERVALS);
    let mut behind = excess(step * f64::from(INTERVALS));
    for index in (0..INTERVALS).rev() {
        let (low, high) = (step * f64::from(index), step * f64::from(index + 1));
        let before = excess(low);
        if before >= 0.0 && behind < 0.0 {
            if before == 0.0 {
                return low;
            }
            // Close to a dead point the ratio has no bound: what counts is its sign here.
            let bounded = |leaf_rad: f64| -excess(leaf_rad).min(1.0);
            return solve_itp(bounded, low, high, 1e-11, 1, 0.2 / step, -before.min(1.0), -behind);
        }
        behind = before;
    }
    0.0
}

/// The highest slip torque that spares every part a limit is given for, outside the toggle zone; `None` without any limit.
///
/// `efficiency` is that of the leaf driving the shaft. At each angle `T·|n|/η` is the moment on the leaf and `T·|n|/(η·lever)` the force in link and bracket; `release_factor` of each limit may be
/// reached. Inside the toggle zone no slip torque spares the arm: forces there have no bound.
#[must_use]
pub fn highest_slip(linkage: &Linkage, efficiency: f64, facts: &BreakawayFacts) -> Option<HighestSlip> {
    let share = facts.release_factor();
    let gearbox = facts.gearbox_torque_n_m.map(|limit| HighestSlip {
        slip_torque_n_m: share * limit,
        part: SparedPart::Gearbox,
        leaf_deg: None,
    });
    let from = toggle_zone_rad(linkage);
    let angles =
        (0..=INTERVALS).map(|index| from + (linkage.open_rad - from) * f64::from(index) / f64::from(INTERVALS));
    let poses = angles.map(|leaf_rad| linkage.pose(leaf_rad)).filter(|pose| pose.ratio.is_some());
    let along_the_swing = poses.flat_map(|pose| {
        let turned = efficiency / pose.ratio.unwrap_or(1.0).abs();
        let of = move |part, limit: Option<f64>, lever_m: f64| {
            limit.map(|limit| HighestSlip {
                slip_torque_n_m: share * limit * lever_m * turned,
                part,
                leaf_deg: Some(pose.leaf_rad.to_degrees()),
            })
        };
        [
            of(SparedPart::Leaf, facts.leaf_moment_n_m, 1.0),
            of(SparedPart::Link, facts.link_force_n, pose.lever_m()),
            of(SparedPart::Bracket, facts.bracket_force_n, pose.lever_m()),
        ]
        .into_iter()
        .flatten()
    });
    gearbox
        .into_iter()
        .chain(along_the_swing)
        .reduce(|least, other| if other.slip_torque_n_m < least.slip_torque_n_m { other } else { least })
}
