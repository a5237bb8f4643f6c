//! What a drive that is off has to hold while the storm pushes on the closed leaf.

use crate::arm::Pose;
use serde::Serialize;

/// Whether the arm alone holds the closed leaf. Whatever the answer, a lock it is not.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum HoldingVerdict {
    /// Something gives way: the leaf needs a lock or a drop bolt.
    GivesWay,
    /// What the drive at a stand holds is not known: reckon with a lock or a drop bolt.
    Unknown,
    /// Every limit that is given is kept.
    Holds,
}

/// Torque at a shaft that holds a moment on the leaf, N·m: `η·T_leaf/|n|`, `η` that of the leaf driving the shaft; 0 at a dead point.
///
/// The losses between leaf and shaft help to hold. Source: virtual work.
#[must_use]
pub fn holding_torque_n_m(leaf_torque_n_m: f64, pose: &Pose, efficiency: f64) -> f64 {
    pose.ratio.map_or(0.0, |ratio| (leaf_torque_n_m * efficiency / ratio).abs())
}
