//! What the tests of the search share: a problem, random arms, and the arm's mechanics written again from the angles of its triangle and plain
//! vectors, so that search and tests can only agree by being right.

use super::problem::{Problem, SearchLoads};
use crate::job::{Arm, Elbow, KeepOut, SetOut, SetOutSite};
pub(super) use crate::numerics::fixtures::{Dice, close, least};
use alloc::vec::Vec;
use core::f64::consts::TAU;

pub(super) const OPEN: f64 = 1.6;

/// A wide choice without any limit.
pub(super) fn setout() -> SetOut {
    SetOut {
        shaft_x_m: [-0.55, -0.15],
        shaft_y_m: [0.25, 0.7],
        bracket_u_m: [0.7, 1.5],
        bracket_v_m: 0.06,
        crank_m: [0.35, 0.9],
        link_m: [0.35, 0.9],
        straightness: None,
        square_deg: None,
        least_lever_m: None,
        shaft_travel_deg: None,
        most_shaft_torque_n_m: None,
        step_m: None,
        tape_proof: None,
        elbow: None,
        aim: None,
        storm_speed_m_s: None,
        place: None,
    }
}

pub(super) fn rectangle(x_m: [f64; 2], y_m: [f64; 2]) -> KeepOut {
    KeepOut { x_m, y_m }
}

/// Moments asked of the leaf: smooth, uneven, the largest of each inside the swing.
pub(super) fn effort(leaf_rad: f64) -> f64 {
    100.0 * (1.0 + 0.6 * libm::sin(1.3 * leaf_rad + 0.4))
}
pub(super) fn storm(leaf_rad: f64) -> f64 {
    250.0 * (1.0 + 0.5 * libm::sin(2.1 * leaf_rad + 0.2))
}

/// The same among rectangles, with an arm of some width.
pub(super) fn among(setout: SetOut, keep_out: Vec<KeepOut>, half_width_m: f64) -> SetOutSite {
    SetOutSite { keep_out, half_width_m, ..setout.into() }
}

pub(super) fn with_problem<T>(setout: &(impl Clone + Into<SetOutSite>), then: impl FnOnce(&mut Problem) -> T) -> T {
    with_swing(setout, OPEN, then)
}

/// The same with another swing.
pub(super) fn with_swing<T>(
    setout: &(impl Clone + Into<SetOutSite>),
    open_rad: f64,
    then: impl FnOnce(&mut Problem) -> T,
) -> T {
    then(&mut Problem::new(&setout.clone().into(), SearchLoads { effort_n_m: &effort, storm_n_m: &storm }, open_rad))
}

/// An arm at one leaf angle.
pub(super) struct Pose {
    pub bracket: (f64, f64),
    pub elbow: (f64, f64),
    pub crank_rad: f64,
    pub reach: f64,
    /// Unit vector elbow→bracket.
    pub link: (f64, f64),
    /// Lever about the hinge, m; positive when a pushing link opens.
    pub lever: f64,
    /// Leaf turned per crank turned, by the levers of the link's force about shaft and hinge.
    pub inverse_ratio: f64,
}

fn times((x0, y0): (f64, f64), (x1, y1): (f64, f64)) -> f64 {
    x0 * y1 - y0 * x1
}

pub(super) fn pose(arm: &Arm, leaf_rad: f64) -> Pose {
    let (u, v) = (arm.bracket_u_m, arm.bracket_v_m);
    let (radius, direction) = (u.hypot(v), v.atan2(u) + leaf_rad);
    let bracket = (radius * direction.cos(), radius * direction.sin());
    let (dx, dy) = (bracket.0 - arm.shaft_x_m, bracket.1 - arm.shaft_y_m);
    let reach = dx.hypot(dy);
    // An arm that does not close is taken to lie along shaft→bracket.
    let along = (arm.crank_m.powi(2) + reach * reach - arm.link_m.powi(2)) / (2.0 * reach);
    let side = if arm.elbow == Elbow::Left { 1.0 } else { -1.0 };
    let across = side * (arm.crank_m.powi(2) - along * along).max(0.0).sqrt();
    let crank = ((along * dx - across * dy) / reach, (along * dy + across * dx) / reach);
    let crank_rad = crank.1.atan2(crank.0);
    let elbow = (arm.shaft_x_m + crank.0, arm.shaft_y_m + crank.1);
    let link = ((bracket.0 - elbow.0) / arm.link_m, (bracket.1 - elbow.1) / arm.link_m);
    let lever = times(bracket, link);
    Pose { bracket, elbow, crank_rad, reach, link, lever, inverse_ratio: (times(crank, link) / lever).abs() }
}

/// Whether an arm closes and keeps the sense of its lever at 400 angles, with something to spare.
pub(super) fn works(arm: &Arm) -> bool {
    let sense = pose(arm, 0.5 * OPEN).lever.signum();
    (0..=400).map(|index| pose(arm, OPEN * f64::from(index) / 400.0)).all(|pose| {
        let (a, b) = (arm.crank_m, arm.link_m);
        pose.reach < a + b - 1e-4 && pose.reach > (a - b).abs() + 1e-3 && sense * pose.lever > 0.01
    })
}

/// Shaft angle from closed to open, from steps of it.
pub(super) fn travel(arm: &Arm) -> f64 {
    let cranks: Vec<f64> = (0..=400).map(|index| pose(arm, OPEN * f64::from(index) / 400.0).crank_rad).collect();
    let steps = cranks.windows(2).map(|pair| pair[1] - pair[0]);
    steps.map(|step| step - (step / TAU).round() * TAU).sum::<f64>().abs()
}

/// Arms that work, with either elbow and either sense.
pub(super) fn arms(dice: &mut Dice, count: usize) -> Vec<Arm> {
    let mut arms = Vec::new();
    while arms.len() < count {
        let turned = dice.between(0.0, 1.0) < 0.3;
        let (shaft_x_m, shaft_y_m) = (dice.between(-0.7, 0.2), dice.between(-0.8, 0.8));
        let (bracket_u_m, bracket_v_m) = (dice.between(0.4, 1.5), dice.between(-0.2, 0.2));
        let reach = (bracket_u_m - shaft_x_m).hypot(bracket_v_m - shaft_y_m);
        let both = reach / dice.between(0.5, 0.999);
        let crank_m = both * dice.between(0.2, 0.8);
        let elbow = if turned { Elbow::Left } else { Elbow::Right };
        let arm = Arm { shaft_x_m, shaft_y_m, bracket_u_m, bracket_v_m, crank_m, link_m: both - crank_m, elbow };
        if works(&arm) {
            arms.push(arm);
        }
    }
    arms
}
