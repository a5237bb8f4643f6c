//! Whether the arm with the drive off holds the closed leaf in the storm.

use super::{Model, Storm};
use crate::drive::{HoldingVerdict, holding_torque_n_m};
use serde::Serialize;

/// The closed leaf in the storm, held by the arm and a drive at a stand. Not a lock.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Holding {
    /// Whether it holds.
    pub verdict: HoldingVerdict,
    /// Whether the leaf needs a lock or a drop bolt; also where what holds it is not known.
    pub lock_needed: bool,
    /// Leaf angle by which play may leave it off closed, degrees.
    pub play_leaf_deg: f64,
    /// Torque that holds the shaft with the leaf exactly closed, N·m; 0 at a dead point.
    pub closed_torque_n_m: f64,
    /// Largest torque that holds the shaft within the play, N·m: what the drive has to hold.
    pub torque_n_m: f64,
    /// What it holds by itself, N·m; `null` where unknown.
    pub limit_n_m: Option<f64>,
    /// Largest force in link and bracket within the play, N.
    pub link_force_n: f64,
}

/// Leaf angles looked at within the play.
const INTERVALS: u32 = 64;

impl Model {
    pub(super) fn holding(&self, storm: Option<&Storm>) -> Option<Holding> {
        let (facts, storm) = (self.job().holding.as_ref()?, storm?);
        let (linkage, efficiency) = (self.linkage(), self.efficiency());
        let play = facts.play_rad().min(linkage.open_rad);
        // The ratio falls off a dead point steeply, and the lever hardly changes: both ends and the way between are looked at.
        let poses = (0..=INTERVALS).map(|index| linkage.pose(play * f64::from(index) / f64::from(INTERVALS)));
        let (torque, link) = poses.fold((0.0f64, 0.0f64), |(torque, link), pose| {
            let holding = holding_torque_n_m(storm.wind_n_m, &pose, efficiency);
            (torque.max(holding), link.max(pose.link_force_n(storm.wind_n_m).abs()))
        });
        let over = |limit: Option<f64>, value: f64| limit.is_some_and(|limit| value > limit);
        let gives_way =
            over(facts.shaft_torque_n_m, torque) || over(facts.link_force_n, link) || over(facts.bracket_force_n, link);
        let verdict = match (gives_way, facts.shaft_torque_n_m) {
            (true, _) => HoldingVerdict::GivesWay,
            (false, None) => HoldingVerdict::Unknown,
            (false, Some(_)) => HoldingVerdict::Holds,
        };
        Some(Holding {
            verdict,
            lock_needed: verdict != HoldingVerdict::Holds,
            play_leaf_deg: play.to_degrees(),
            closed_torque_n_m: holding_torque_n_m(storm.wind_n_m, &linkage.pose(0.0), efficiency),
            torque_n_m: torque,
            limit_n_m: facts.shaft_torque_n_m,
            link_force_n: link,
        })
    }
}
