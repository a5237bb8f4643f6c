//! The window of slip torque, and the push at the leaf by which a person can try it.

use super::{Model, Plan};
use crate::arm::Pose;
use crate::drive::{
    HighestSlip, SparedPart, Swept, blocked_moment_n_m, highest_slip, slipping_moment_n_m, toggle_zone_rad,
};
use crate::job::{BreakawayFacts, Job};
use crate::leaf::{Body, LeafLoads};
use alloc::vec::Vec;
use serde::Serialize;

/// Whether there is a slip torque that does both.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum WindowState {
    /// There is one.
    Open,
    /// What must hold is more than what may be reached.
    Shut,
    /// No limit is given: only the lower end is known.
    NoLimit,
}

/// The window. Never counted as protection of people.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Breakaway {
    /// Always false: protection of people is sensing together with a measured force.
    pub protects_people: bool,
    /// Whether there is a window.
    pub state: WindowState,
    /// Largest shaft torque of normal running: wind against, wind behind held back, start and inertia where motion is described, N·m.
    pub running_torque_n_m: f64,
    /// Least slip torque: that times the hold factor, N·m.
    pub least_slip_n_m: f64,
    /// Highest slip torque, and what decides it; `null` without limits.
    pub highest: Option<HighestSlip>,
    /// Leaf angle up to which the arm is in its toggle zone, degrees: there one slip torque gives the leaf many times the force it gives half
    /// open, and link and bracket have no limit at all at a dead point.
    pub toggle_to_leaf_deg: f64,
    /// The trial half open, drive off, square to the leaf, in calm air.
    pub trial: Trial,
    /// What would open the window, tried one at a time; empty where it is open.
    pub remedies: Vec<Remedy>,
    /// Slip torque the rows are for, N·m: the one set, or else the least.
    pub curve_slip_n_m: f64,
    /// Rows at the curve's leaf angles.
    pub curve: Vec<SlipPoint>,
}

/// Pushes that try the slip torque.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Trial {
    /// Leaf angle, degrees.
    pub leaf_deg: f64,
    /// Hinge axis to where it is pushed, m.
    pub radius_m: f64,
    /// A push that must not slip it, N, either way.
    pub must_hold_n: f64,
    /// A push that must slip it, N, either way; `null` without limits.
    pub must_slip_n: Option<f64>,
    /// The push at which the slip torque that is set slips, opening, N.
    pub set_open_n: Option<f64>,
    /// The same closing.
    pub set_close_n: Option<f64>,
}

/// A change that might open the window.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Remedy {
    /// The change.
    pub change: RemedyKind,
    /// Least slip torque with it, N·m.
    pub least_slip_n_m: f64,
    /// Highest slip torque with it, N·m; `null` where no limit is left.
    pub highest_slip_n_m: Option<f64>,
    /// Whether it opens the window by itself.
    pub opens: bool,
}

/// Changes that are tried.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
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

/// Slipping at one leaf angle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct SlipPoint {
    /// Leaf angle, degrees.
    pub leaf_deg: f64,
    /// Push square to the leaf that opens it against a drive that is off, N; `null` at a dead point, where none does.
    pub push_open_n: Option<f64>,
    /// The same closing it.
    pub push_close_n: Option<f64>,
    /// Force of the latch edge on what blocks it while the drive slips, N.
    pub edge_force_n: Option<f64>,
    /// Force in link and bracket while a push slips the drive, N.
    pub link_force_n: Option<f64>,
    /// Whether the arm is in its toggle zone.
    pub toggle: bool,
}

impl Model {
    /// `plan` has its peak and its overrun already.
    pub(super) fn breakaway(&self, plan: &Plan) -> Option<Breakaway> {
        let facts = self.job().breakaway.as_ref()?;
        let (linkage, efficiency) = (self.linkage(), self.job().operator.efficiency());
        let steady = plan.overrun.map_or(0.0, |overrun| overrun.shaft_torque_n_m).max(plan.peak.shaft_torque_n_m);
        let moving = plan
            .motion
            .as_ref()
            .map_or(0.0, |motion| motion.opening.peak.shaft_torque_n_m.max(motion.closing.peak.shaft_torque_n_m));
        let running = steady.max(moving);
        let least = facts.hold_factor() * running;
        let highest = highest_slip(linkage, efficiency, facts);
        let state = match highest {
            None => WindowState::NoLimit,
            Some(highest) if highest.slip_torque_n_m > least => WindowState::Open,
            Some(_) => WindowState::Shut,
        };
        let toggle_rad = toggle_zone_rad(linkage);
        let curve_slip = facts.slip_torque_n_m.unwrap_or(least);
        Some(Breakaway {
            protects_people: false,
            state,
            running_torque_n_m: running,
            least_slip_n_m: least,
            highest,
            toggle_to_leaf_deg: toggle_rad.to_degrees(),
            trial: self.trial(facts, least, highest),
            remedies: match highest.filter(|_| state == WindowState::Shut) {
                Some(highest) => self.remedies(facts, steady, &highest),
                None => Vec::new(),
            },
            curve_slip_n_m: curve_slip,
            curve: self
                .leaf_angles()
                .map(|leaf_rad| self.slip_point(facts, curve_slip, leaf_rad, toggle_rad))
                .collect(),
        })
    }

    /// Largest shaft torque of normal running under other loads, N·m.
    fn running_n_m(&self, loads: &LeafLoads) -> f64 {
        let swept = Swept::new(self.linkage()).with_step(loads.step_rad());
        let held_back = self.overrun_in(&swept, loads).map_or(0.0, |overrun| overrun.shaft_torque_n_m);
        let moving = self
            .runs(loads, 2)
            .map_or(0.0, |[opening, closing]| opening.peak.shaft_torque_n_m.max(closing.peak.shaft_torque_n_m));
        self.largest(&swept, loads).shaft_torque_n_m.max(held_back).max(moving)
    }

    fn remedies(&self, facts: &BreakawayFacts, steady_n_m: f64, highest: &HighestSlip) -> Vec<Remedy> {
        let (linkage, efficiency, hold) = (self.linkage(), self.job().operator.efficiency(), facts.hold_factor());
        let remedy = |change, running: f64, highest: Option<HighestSlip>| Remedy {
            change,
            least_slip_n_m: hold * running,
            highest_slip_n_m: highest.map(|highest| highest.slip_torque_n_m),
            opens: highest.is_none_or(|highest| highest.slip_torque_n_m > hold * running),
        };
        let running = self.running_n_m(self.loads());
        let spared = match highest.part {
            SparedPart::Leaf => BreakawayFacts { leaf_moment_n_m: None, ..*facts },
            SparedPart::Link => BreakawayFacts { link_force_n: None, ..*facts },
            SparedPart::Bracket => BreakawayFacts { bracket_force_n: None, ..*facts },
            SparedPart::Gearbox => BreakawayFacts { gearbox_torque_n_m: None, ..*facts },
        };
        let part =
            if highest.part == SparedPart::Gearbox { RemedyKind::OtherOperator } else { RemedyKind::StrongerPart };
        alloc::vec![
            remedy(RemedyKind::SlowerRamp, steady_n_m, Some(*highest)),
            remedy(RemedyKind::LighterLeaf, self.running_n_m(&LeafLoads::new(&lighter(self.job()))), Some(*highest)),
            remedy(RemedyKind::LessWind, self.running_n_m(&self.loads().in_wind(0.0)), Some(*highest)),
            remedy(part, running, highest_slip(linkage, efficiency, &spared)),
        ]
    }

    /// Pushes that slip the drive at a pose, opening and closing, N: `(T·|n|/η + τ_f ∓ M_g)/r`.
    fn pushes_n(&self, facts: &BreakawayFacts, slip_n_m: f64, pose: &Pose) -> Option<[f64; 2]> {
        let loads = self.loads();
        let radius = facts.push_radius_m.unwrap_or(self.job().leaf.length_m);
        let moment = slipping_moment_n_m(slip_n_m, pose, self.job().operator.efficiency())?
            + loads.friction_at_n_m(pose.leaf_rad);
        let gravity = loads.gravity_n_m(pose.leaf_rad);
        Some([(moment - gravity) / radius, (moment + gravity) / radius])
    }

    fn trial(&self, facts: &BreakawayFacts, least_n_m: f64, highest: Option<HighestSlip>) -> Trial {
        let half = self.linkage().pose(self.linkage().open_rad / 2.0);
        // Half open is inside the swing, where a valid arm has no dead point.
        let pushes = |slip: f64| self.pushes_n(facts, slip, &half).unwrap_or([0.0; 2]);
        let [open, close] = pushes(least_n_m);
        let set = facts.slip_torque_n_m.map(pushes);
        Trial {
            leaf_deg: half.leaf_rad.to_degrees(),
            radius_m: facts.push_radius_m.unwrap_or(self.job().leaf.length_m),
            // Either way: the lesser push that must hold, the greater one that must slip.
            must_hold_n: open.min(close),
            must_slip_n: highest.map(|highest| {
                let [open, close] = pushes(highest.slip_torque_n_m);
                open.max(close)
            }),
            set_open_n: set.map(|[open, _]| open),
            set_close_n: set.map(|[_, close]| close),
        }
    }

    fn slip_point(&self, facts: &BreakawayFacts, slip_n_m: f64, leaf_rad: f64, toggle_rad: f64) -> SlipPoint {
        let (pose, efficiency) = (self.linkage().pose(leaf_rad), self.job().operator.efficiency());
        let pushes = self.pushes_n(facts, slip_n_m, &pose);
        let blocked = blocked_moment_n_m(slip_n_m, &pose, efficiency);
        SlipPoint {
            leaf_deg: leaf_rad.to_degrees(),
            push_open_n: pushes.map(|[open, _]| open),
            push_close_n: pushes.map(|[_, close]| close),
            edge_force_n: blocked.map(|moment| moment / self.job().leaf.length_m),
            link_force_n: slipping_moment_n_m(slip_n_m, &pose, efficiency)
                .map(|moment| pose.link_force_n(moment).abs()),
            toggle: leaf_rad < toggle_rad,
        }
    }
}

/// The job with half the mass, and the inertia with it.
fn lighter(job: &Job) -> Job {
    let body = Body::of(job);
    let mut job = job.clone();
    job.leaf.mass_kg = Some(body.mass_kg / 2.0);
    job.leaf.inertia_kg_m2 = Some(body.inertia_kg_m2 / 2.0);
    job.leaf.mass_centroid_m = Some(body.mass_centroid_m);
    job
}
