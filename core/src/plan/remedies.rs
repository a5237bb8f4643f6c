//! What would open a window of slip torque that is shut: changes tried singly, and in pairs where none does it alone.

use super::Model;
use crate::drive::{Grid, HighestSlip, SparedPart, highest_slip};
use crate::job::{BreakawayFacts, Job};
use crate::leaf::{Body, LeafLoads};
use crate::terms::WindCase;
use alloc::vec::Vec;
use serde::Serialize;

/// A change that might open the window.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Remedy {
    /// The change.
    pub change: RemedyKind,
    /// The change made with it; `null` where it is tried alone.
    pub with: Option<RemedyKind>,
    /// Least slip torque then, N·m.
    pub least_slip_n_m: f64,
    /// Highest slip torque then, N·m; `null` where no limit is left.
    pub highest_slip_n_m: Option<f64>,
    /// Whether it opens the window.
    pub opens: bool,
}

/// Changes that are tried.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum RemedyKind {
    /// Ramps so long that inertia asks nothing.
    SlowerRamp,
    /// Half the mass, and the inertia with it.
    LighterLeaf,
    /// Not to be run in wind at all.
    LessWind,
    /// An operator whose shaft and gear set no limit.
    OtherOperator,
    /// The part that decides made strong enough to set no limit.
    StrongerPart,
}

impl Model {
    /// Largest shaft torque of normal running under other loads, N·m: wind against, wind behind held back, and with `moving` start, inertia and
    /// braking too, where motion is described.
    pub(super) fn running_n_m(&self, loads: &LeafLoads, moving: bool) -> f64 {
        let grid = Grid::with_step(self.linkage().open_rad, loads);
        let swept = grid.swept(self.linkage());
        let held_back = self.overrun_in(&swept, loads).map_or(0.0, |overrun| overrun.shaft_torque_n_m);
        let steady = self.largest(&swept, loads).shaft_torque_n_m.max(held_back);
        let runs = self.runs(loads, WindCase::Against, 2).filter(|_| moving);
        let against = runs.iter().flatten().fold(steady, |most, run| most.max(run.peak.shaft_torque_n_m));
        let behind = self.held_back(loads).filter(|_| moving).map_or(0.0, |peak| peak.shaft_torque_n_m);
        against.max(behind)
    }

    /// The changes for a window that is shut, whose upper end is `highest`.
    pub(super) fn remedies(&self, facts: &BreakawayFacts, highest: &HighestSlip) -> Vec<Remedy> {
        let part =
            if highest.part == SparedPart::Gearbox { RemedyKind::OtherOperator } else { RemedyKind::StrongerPart };
        let kinds = [RemedyKind::SlowerRamp, RemedyKind::LighterLeaf, RemedyKind::LessWind, part];
        let tried = |change, with| self.remedy(facts, highest, change, with);
        let alone: Vec<Remedy> = kinds.iter().map(|&change| tried(change, None)).collect();
        if alone.iter().any(|remedy| remedy.opens) {
            return alone;
        }
        let pairs = kinds
            .iter()
            .enumerate()
            .flat_map(|(index, &change)| kinds[index + 1..].iter().map(move |&with| (change, with)));
        let pairs: Vec<Remedy> = pairs.map(|(change, with)| tried(change, Some(with))).collect();
        [alone, pairs].concat()
    }

    fn remedy(
        &self,
        facts: &BreakawayFacts,
        highest: &HighestSlip,
        change: RemedyKind,
        with: Option<RemedyKind>,
    ) -> Remedy {
        let made = |kind| change == kind || with == Some(kind);
        let loads = if made(RemedyKind::LighterLeaf) { LeafLoads::new(&lighter(self.job())) } else { *self.loads() };
        let loads = if made(RemedyKind::LessWind) { loads.in_wind(0.0) } else { loads };
        let least = facts.hold_factor() * self.running_n_m(&loads, !made(RemedyKind::SlowerRamp));
        let freed = made(RemedyKind::OtherOperator) || made(RemedyKind::StrongerPart);
        let highest = if freed {
            highest_slip(self.linkage(), self.efficiency().back, &without(facts, highest.part))
        } else {
            Some(*highest)
        };
        Remedy {
            change,
            with,
            least_slip_n_m: least,
            highest_slip_n_m: highest.map(|highest| highest.slip_torque_n_m),
            opens: highest.is_none_or(|highest| highest.slip_torque_n_m > least),
        }
    }
}

/// The facts without the limit of one part.
fn without(facts: &BreakawayFacts, part: SparedPart) -> BreakawayFacts {
    match part {
        SparedPart::Leaf => BreakawayFacts { leaf_moment_n_m: None, ..*facts },
        SparedPart::Link => BreakawayFacts { link_force_n: None, ..*facts },
        SparedPart::Bracket => BreakawayFacts { bracket_force_n: None, ..*facts },
        SparedPart::Gearbox => BreakawayFacts { gearbox_torque_n_m: None, ..*facts },
    }
}

/// The job with half the mass, and the inertia with it, its ice included; the wind sees the same leaf.
fn lighter(job: &Job) -> Job {
    let body = Body::of(job);
    let mut job = job.clone();
    job.leaf.mass_kg = Some(body.mass_kg / 2.0);
    job.leaf.inertia_kg_m2 = Some(body.inertia_kg_m2 / 2.0);
    job.leaf.mass_centroid_m = Some(body.mass_centroid_m);
    job.leaf.wind_area_m2 = Some(body.wind_area_m2);
    job.leaf.wind_centroid_m = Some(body.wind_centroid_m);
    job.ice = None;
    job
}
