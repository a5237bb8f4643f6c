//! Whether the arm with the drive off holds the closed leaf in the storm.

use super::holding_limit::HoldingLimit;
use super::{Model, Storm};
use crate::arm::Pose;
use crate::drive::{HoldingVerdict, holding_torque_n_m};
use serde::Serialize;

/// The closed leaf in the storm, held by the arm and a drive at a stand. Not a lock.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Holding {
    /// Whether it holds.
    pub verdict: HoldingVerdict,
    /// Whether the leaf needs a lock or a drop bolt; also where what holds it is not known.
    pub lock_needed: bool,
    /// Leaf angle by which play may leave it off closed, degrees.
    pub play_leaf_deg: f64,
    /// Torque that holds the shaft with the leaf exactly closed, N·m; 0 at a dead point.
    pub closed_torque_n_m: f64,
    /// Largest torque that holds the shaft within the play, N·m: what drive and clutch have to hold.
    pub torque_n_m: f64,
    /// The lesser of what the drive at a stand holds and what slips the clutch, N·m; `null` where neither is known.
    pub limit_n_m: Option<f64>,
    /// Which of the two that is; `null` where neither is known.
    pub limit_by: Option<HoldingLimit>,
    /// Largest force in link and bracket within the play, N.
    pub link_force_n: f64,
}

/// Leaf angles looked at within the play.
const INTERVALS: u32 = 64;

impl Model {
    /// Moment on the leaf that has to be held, N·m, magnitude: the storm may come from either side, so a lean or a ramp adds to it. The hinges'
    /// friction is not counted on.
    fn held_n_m(&self, storm: &Storm, pose: &Pose) -> f64 {
        storm.wind_n_m + self.loads().gravity_n_m(pose.leaf_rad).abs()
    }

    pub(super) fn holding(&self, storm: Option<&Storm>) -> Option<Holding> {
        let (facts, storm) = (self.job().holding.as_ref()?, storm?);
        let (linkage, efficiency) = (self.linkage(), self.efficiency().back);
        let play = facts.play_rad().min(linkage.open_rad);
        // The ratio falls off a dead point steeply, and the lever hardly changes: both ends and the way between are looked at.
        let poses = (0..=INTERVALS).map(|index| linkage.pose(play * f64::from(index) / f64::from(INTERVALS)));
        let (torque, link) = poses.fold((0.0f64, 0.0f64), |(torque, link), pose| {
            let held = self.held_n_m(storm, &pose);
            (torque.max(holding_torque_n_m(held, &pose, efficiency)), link.max(pose.link_force_n(held).abs()))
        });
        let limit = self.job().holding_limit();
        let over = |limit: Option<f64>, value: f64| limit.is_some_and(|limit| value > limit);
        let gives_way = over(limit.map(|(limit, _)| limit), torque)
            || over(facts.link_force_n, link)
            || over(facts.bracket_force_n, link);
        // A clutch that would hold says nothing of a gear that may be driven back before it slips; of one that may not, it says what there is to say.
        let known = facts.shaft_torque_n_m.is_some() || (limit.is_some() && !self.job().operator.may_be_driven_back());
        let verdict = match (gives_way, known) {
            (true, _) => HoldingVerdict::GivesWay,
            (false, false) => HoldingVerdict::Unknown,
            (false, true) => HoldingVerdict::Holds,
        };
        let closed = linkage.pose(0.0);
        Some(Holding {
            verdict,
            lock_needed: verdict != HoldingVerdict::Holds,
            play_leaf_deg: play.to_degrees(),
            closed_torque_n_m: holding_torque_n_m(self.held_n_m(storm, &closed), &closed, efficiency),
            torque_n_m: torque,
            limit_n_m: limit.map(|(limit, _)| limit),
            limit_by: limit.map(|(_, by)| by),
            link_force_n: link,
        })
    }
}
