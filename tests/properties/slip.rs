//! The window of slip torque by virtual work on the arm's own geometry.

use crate::bench::{Arm, EFFICIENCY, FRICTION, LENGTH, bench, gravity, near, on_an_arm, tight_at_both_ends};
use crate::jobs::{planned, with};
use pintle_core::{
    drive::SparedPart,
    plan::{Breakaway, WindowState},
};
use serde_json::{Value, json};
use std::f64::consts::{FRAC_PI_2, FRAC_PI_4};

/// An arm all but straight when closed: a millimetre and a half is left.
pub fn near_straight() -> Value {
    let mut value = on_an_arm();
    value["arm"]["link_m"] = json!(0.63);
    value
}

pub fn breakaway(facts: Value) -> Breakaway {
    breakaway_on(&near_straight(), facts)
}

pub fn breakaway_on(value: &Value, facts: Value) -> Breakaway {
    planned(&with(value, "breakaway", facts)).breakaway.expect("asked for")
}

/// Where the ratio comes down to twice that half open, by halving: it falls all the way there.
fn toggle_rad(arm: &Arm) -> f64 {
    let ratio = |leaf: f64| arm.at(leaf).ratio.abs();
    let (mut low, mut high) = (0.0, FRAC_PI_4);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        if ratio(middle) >= 2.0 * ratio(FRAC_PI_4) { low = middle } else { high = middle }
    }
    low
}

#[test]
fn the_toggle_zone_ends_at_twice_the_ratio_half_open() {
    for value in [near_straight(), tight_at_both_ends()] {
        let toggle_deg = toggle_rad(&Arm::of(&value)).to_degrees();
        assert!(toggle_deg > 1.0, "the arm has one");
        let breakaway = breakaway_on(&value, json!({}));
        near(breakaway.toggle_to_leaf_deg, toggle_deg, 1e-6);
        for row in &breakaway.curve {
            assert_eq!(row.toggle, row.leaf_deg < toggle_deg);
        }
    }
    // An arm of ratio one has none, not even closed.
    let none = breakaway_on(&bench(), json!({}));
    assert!(none.toggle_to_leaf_deg == 0.0 && none.curve.iter().all(|row| !row.toggle));
}

/// The least over the swing outside the toggle zone of `share·limit·lever·η/|n|`; the leaf's moment has no lever.
#[test]
fn each_part_alone_decides_by_its_own_law() {
    let mut where_it_is = Vec::new();
    for value in [near_straight(), tight_at_both_ends()] {
        let arm = Arm::of(&value);
        let from = toggle_rad(&arm);
        let least = |lever: &dyn Fn(f64) -> f64| {
            let of = |leaf: f64| 0.7 * 900.0 * lever(leaf) * EFFICIENCY / arm.at(leaf).ratio.abs();
            let leaves = (0..=20_000).map(|index| from + (FRAC_PI_2 - from) * f64::from(index) / 20_000.0);
            leaves.fold((0.0, f64::MAX), |least, leaf| if of(leaf) < least.1 { (leaf, of(leaf)) } else { least })
        };
        let (moment, force) = (least(&|_| 1.0), least(&|leaf| arm.at(leaf).lever.abs()));
        for (limit, part, (leaf, torque)) in [
            ("leaf_moment_n_m", SparedPart::Leaf, moment),
            ("link_force_n", SparedPart::Link, force),
            ("bracket_force_n", SparedPart::Bracket, force),
        ] {
            let highest = breakaway_on(&value, json!({ limit: 900, "release_factor": 0.7 })).highest.expect("a limit");
            assert_eq!(highest.part, part);
            assert!((highest.slip_torque_n_m / torque - 1.0).abs() < 1e-4, "{highest:?} {torque}");
            assert!((highest.leaf_deg.expect("an angle") - leaf.to_degrees()).abs() < 0.3, "{highest:?} {leaf}");
            where_it_is.push(leaf == from);
        }
    }
    assert!(where_it_is.contains(&true) && where_it_is.contains(&false));
}

/// A gearbox knows no angle and no arm; together the least decides.
#[test]
fn the_least_of_all_limits_decides() {
    let gearbox = breakaway(json!({ "gearbox_torque_n_m": 300, "release_factor": 0.7 })).highest.expect("a limit");
    assert_eq!((gearbox.part, gearbox.leaf_deg), (SparedPart::Gearbox, None));
    near(gearbox.slip_torque_n_m, 210.0, 1e-12);
    let alone = breakaway(json!({ "leaf_moment_n_m": 900, "release_factor": 0.7 })).highest.expect("a limit");
    let all = |gearbox: f64| {
        let facts = json!({ "leaf_moment_n_m": 900, "bracket_force_n": 1e5, "link_force_n": 1e5,
            "gearbox_torque_n_m": gearbox, "release_factor": 0.7 });
        breakaway(facts).highest.expect("limits").part
    };
    assert_eq!(all(1.01 * alone.slip_torque_n_m / 0.7), SparedPart::Leaf);
    assert_eq!(all(0.99 * alone.slip_torque_n_m / 0.7), SparedPart::Gearbox);
    assert_eq!(breakaway(json!({})).highest, None);
}

/// Friction and weight are on the leaf's side of the arm: `(T·|n|/η + τ_f ∓ M_g)/r` slips it, `T·|n|·η/L` is what it gives.
#[test]
fn every_push_is_virtual_work() {
    let arm = Arm::of(&near_straight());
    let ratio = |leaf: f64| arm.at(leaf).ratio.abs();
    let facts = json!({ "slip_torque_n_m": 140, "push_radius_m": 1.6, "hold_factor": 1.4, "gearbox_torque_n_m": 500 });
    let breakaway = breakaway(facts);
    let pushes = |slip: f64, leaf: f64| {
        let moment = slip * ratio(leaf) / EFFICIENCY + FRICTION;
        [(moment - gravity(leaf)) / 1.6, (moment + gravity(leaf)) / 1.6]
    };
    assert_eq!(breakaway.curve_slip_n_m, 140.0);
    for row in &breakaway.curve {
        let leaf = row.leaf_deg.to_radians();
        let [open, close] = pushes(140.0, leaf);
        near(row.push_open_n.expect("no dead point"), open, 1e-9);
        near(row.push_close_n.expect("no dead point"), close, 1e-9);
        near(row.edge_force_n.expect("no dead point"), 140.0 * ratio(leaf) * EFFICIENCY / LENGTH, 1e-9);
        let link = 140.0 * ratio(leaf) / EFFICIENCY / arm.at(leaf).lever.abs();
        near(row.link_force_n.expect("no dead point"), link, 1e-9);
    }
    let trial = breakaway.trial;
    near(trial.leaf_deg, 45.0, 1e-12);
    near(trial.radius_m, 1.6, 1e-12);
    let [open, close] = pushes(breakaway.least_slip_n_m, FRAC_PI_4);
    near(trial.must_hold_n, open.min(close), 1e-9);
    let [open, close] = pushes(400.0, FRAC_PI_4);
    near(trial.must_slip_n.expect("a limit"), open.max(close), 1e-9);
    let [open, close] = pushes(140.0, FRAC_PI_4);
    near(trial.set_open_n.expect("set"), open, 1e-9);
    near(trial.set_close_n.expect("set"), close, 1e-9);
    assert!((open - close).abs() > 1.0, "the lean tells them apart");
    // Nothing set: the rows are for the least, the push is at the edge.
    let plain = self::breakaway(json!({}));
    assert_eq!((plain.curve_slip_n_m, plain.trial.radius_m), (plain.least_slip_n_m, LENGTH));
    assert_eq!((plain.trial.must_slip_n, plain.trial.set_open_n), (None, None));
}

/// Normal running is the most of steady torque, holding back, and both with the ramps; the window opens above it and not at it.
#[test]
fn the_lower_end_is_the_most_of_normal_running() {
    let mut value = near_straight();
    value["breakaway"] = json!({ "hold_factor": 1.5 });
    let steady = planned(&value);
    let [peak, held] = [steady.peak.shaft_torque_n_m, steady.overrun.expect("held back").shaft_torque_n_m];
    let lower = steady.breakaway.expect("asked for");
    near(lower.running_torque_n_m, peak.max(held), 1e-12);
    near(lower.least_slip_n_m, 1.5 * lower.running_torque_n_m, 1e-12);
    assert_eq!(lower.state, WindowState::NoLimit);
    // Where the leaf weighs on its movement, holding back is the most there is, and frictionless hinges leave it all.
    let mut held_back = value.clone();
    held_back["operator"]["arm_efficiency"] = json!(1);
    held_back["hinges"] =
        json!({ "kind": "measured", "pull_open_n": 0, "pull_close_n": 0, "pull_radius_m": 1, "pull_leaf_deg": 0 });
    held_back["operator"]["shaft_speed_deg_s"] = json!(20);
    held_back["motion"] = json!({ "ramp_up_s": 5, "ramp_down_s": 0.2 });
    let plan = planned(&held_back);
    let motion = plan.motion.expect("motion");
    let most = motion.held_back.shaft_torque_n_m;
    near(plan.breakaway.expect("asked for").running_torque_n_m, most.max(motion.closing.peak.shaft_torque_n_m), 1e-12);
    value["breakaway"] =
        json!({ "hold_factor": 1, "release_factor": 1, "gearbox_torque_n_m": lower.running_torque_n_m });
    assert_eq!(planned(&value).breakaway.expect("asked for").state, WindowState::Shut);
    value["breakaway"]["gearbox_torque_n_m"] = json!(1.001 * lower.running_torque_n_m);
    assert_eq!(planned(&value).breakaway.expect("asked for").state, WindowState::Open);
}
