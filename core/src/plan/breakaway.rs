//! The window of slip torque, and the push at the leaf by which a person can try it.

use super::Model;
use super::curve::Row;
use super::motion::Motion;
use super::peak::{Overrun, Peak};
use super::remedies::Remedy;
use crate::arm::Pose;
use crate::drive::{HighestSlip, blocked_moment_n_m, highest_slip, slipping_moment_n_m, toggle_zone_rad};
use crate::job::BreakawayFacts;
use crate::terms::Direction;
use alloc::vec::Vec;
use serde::Serialize;

/// Whether there is a slip torque that does both.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
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
#[non_exhaustive]
pub struct Breakaway {
    /// Always false: protection of people is sensing together with a measured force.
    pub protects_people: bool,
    /// Whether there is a window.
    pub state: WindowState,
    /// Largest shaft torque of normal running: wind against, wind behind held back, start, braking and inertia where motion is described, N·m.
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
    /// What would open the window, tried one at a time, and in pairs where no single change does; empty where it is open.
    pub remedies: Vec<Remedy>,
    /// Slip torque the rows are for, N·m: the one set, or else the least.
    pub curve_slip_n_m: f64,
    /// Rows at the curve's leaf angles.
    pub curve: Vec<SlipPoint>,
}

/// Pushes that try the slip torque.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
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

/// Slipping at one leaf angle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
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
    /// From what was reckoned of the job's running: the peak of steady movement, the overrun, the motion.
    pub(super) fn breakaway(
        &self,
        peak: &Peak,
        overrun: Option<&Overrun>,
        motion: Option<&Motion>,
        rows: &[Row],
    ) -> Option<Breakaway> {
        let facts = self.job().breakaway.as_ref()?;
        let linkage = self.linkage();
        let steady = overrun.map_or(0.0, |overrun| overrun.shaft_torque_n_m).max(peak.shaft_torque_n_m);
        let running = motion.map_or(steady, |motion| {
            let peaks = [motion.opening.peak, motion.closing.peak, motion.held_back];
            peaks.iter().fold(steady, |most, peak| most.max(peak.shaft_torque_n_m))
        });
        let least = facts.hold_factor() * running;
        let highest = highest_slip(linkage, self.efficiency().back, facts);
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
                Some(highest) => self.remedies(facts, &highest),
                None => Vec::new(),
            },
            curve_slip_n_m: curve_slip,
            curve: rows.iter().map(|row| self.slip_point(facts, curve_slip, &row.pose, toggle_rad)).collect(),
        })
    }

    /// Pushes that slip the drive at a pose, opening and closing, N: `(T·|n|/η + τ_f ∓ M_g)/r`.
    fn pushes_n(&self, facts: &BreakawayFacts, slip_n_m: f64, pose: &Pose) -> Option<[f64; 2]> {
        let loads = self.loads();
        let radius = facts.push_radius_m.unwrap_or(self.job().leaf.length_m);
        let slipping = slipping_moment_n_m(slip_n_m, pose, self.efficiency().back)?;
        let gravity = loads.gravity_n_m(pose.leaf_rad);
        Some(Direction::BOTH.map(|direction| {
            (slipping + loads.friction_at_n_m(pose.leaf_rad, direction) - direction.sign() * gravity) / radius
        }))
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

    fn slip_point(&self, facts: &BreakawayFacts, slip_n_m: f64, pose: &Pose, toggle_rad: f64) -> SlipPoint {
        let efficiency = self.efficiency();
        let pushes = self.pushes_n(facts, slip_n_m, pose);
        let blocked = blocked_moment_n_m(slip_n_m, pose, efficiency.forward);
        SlipPoint {
            leaf_deg: pose.leaf_rad.to_degrees(),
            push_open_n: pushes.map(|[open, _]| open),
            push_close_n: pushes.map(|[_, close]| close),
            edge_force_n: blocked.map(|moment| moment / self.job().leaf.length_m),
            link_force_n: slipping_moment_n_m(slip_n_m, pose, efficiency.back)
                .map(|moment| pose.link_force_n(moment).abs()),
            toggle: pose.leaf_rad < toggle_rad,
        }
    }
}
