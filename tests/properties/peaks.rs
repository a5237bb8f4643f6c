//! Largest torque, what is held back and least lever against closed forms looked at finely and refined by golden section.

use crate::bench::{Arm, EFFICIENCY, FRICTION, WIND, bench, near, on_an_arm, tight_at_both_ends, top};
use crate::jobs::{job, planned};
use pintle_core::{plan::evaluate, terms::Direction};
use serde_json::{Value, json};

/// The bench's weight about a hinge axis that leans, N·m, positive opening.
fn gravity(lean: (f64, f64), leaf_rad: f64) -> f64 {
    -100.0 * 9.80665 * 0.75 * lean.0.to_radians().sin() * (leaf_rad - lean.1.to_radians()).sin()
}

fn moment(lean: (f64, f64), leaf_rad: f64, sign: f64, wind: f64) -> f64 {
    sign * (FRICTION + wind) - gravity(lean, leaf_rad)
}

/// Magnitude at the shaft, losses paid by whoever drives; below zero what the leaf brings the shaft.
fn at_shaft(arm: &Arm, lean: (f64, f64), leaf_rad: f64, sign: f64, wind: f64) -> f64 {
    let asked = sign * moment(lean, leaf_rad, sign, wind);
    asked * if asked < 0.0 { EFFICIENCY } else { 1.0 / EFFICIENCY } / arm.at(leaf_rad).ratio.abs()
}

/// Leaf angle, rad, and the largest of something over the swing.
fn largest(open_rad: f64, of: impl Fn(f64) -> f64) -> (f64, f64) {
    let grid = (0..=3000).map(|index| open_rad * f64::from(index) / 3000.0);
    let best = grid.fold(0.0, |best, leaf| if of(leaf) > of(best) { leaf } else { best });
    let refined = top((best - 0.002).max(0.0), (best + 0.002).min(open_rad), &of);
    let best = if of(best) >= of(refined) { best } else { refined };
    (best, of(best))
}

/// Of equals the opening movement counts.
fn either(open_rad: f64, of: impl Fn(f64, f64) -> f64) -> (Direction, f64, f64) {
    let [open, close] = [1.0, -1.0].map(|sign| largest(open_rad, |leaf| of(leaf, sign)));
    if close.1 > open.1 { (Direction::Close, close.0, close.1) } else { (Direction::Open, open.0, open.1) }
}

fn leaning(value: &Value, lean: (f64, f64)) -> Value {
    let mut value = value.clone();
    value["lean"] = json!({ "angle_deg": lean.0, "downhill_deg": lean.1 });
    value
}

#[test]
fn the_largest_torque_is_found_between_the_rows() {
    // Ratios of either sign.
    let mut other = on_an_arm();
    other["arm"] = json!({ "shaft_x_m": -0.61, "shaft_y_m": -0.55, "bracket_u_m": 1.02, "bracket_v_m": -0.04,
        "crank_m": 1.47, "link_m": 0.42, "elbow": "left" });
    let inside = [on_an_arm(), tight_at_both_ends(), other].map(|value| places(&value));
    assert!(inside.iter().sum::<u32>() >= 3, "some are inside the swing: {inside:?}");
}

/// Holds an arm to its closed form under several leans; how many peaks were inside the swing.
fn places(value: &Value) -> u32 {
    let (arm, open) = (Arm::of(value), 90f64.to_radians());
    let mut inside = 0;
    for lean in [(0.0, 0.0), (3.0, -70.0), (8.0, 110.0), (8.0, -40.0), (12.0, 20.0), (12.0, -160.0), (6.0, 170.0)] {
        let plan = planned(&leaning(value, lean));
        let (direction, leaf, torque) = either(open, |leaf, sign| at_shaft(&arm, lean, leaf, sign, WIND).abs());
        near(plan.peak.shaft_torque_n_m, torque, 1e-9);
        near(plan.peak.leaf_deg, leaf.to_degrees(), 1e-4);
        assert_eq!(plan.peak.direction, direction);
        inside += u32::from(leaf > 0.01 && leaf < open - 0.01);
        let sign = if direction == Direction::Open { 1.0 } else { -1.0 };
        let whole = sign * moment(lean, leaf, sign, WIND);
        near(plan.peak.shares.friction, FRICTION / whole, 1e-4);
        near(plan.peak.shares.wind, WIND / whole, 1e-4);
        near(plan.peak.shares.lean, -sign * gravity(lean, leaf) / whole, 1e-4);
        // What the leaf brings the shaft with the wind behind.
        let (direction, leaf, torque) = either(open, |leaf, sign| -at_shaft(&arm, lean, leaf, sign, -WIND));
        match plan.overrun {
            Some(overrun) => {
                near(overrun.shaft_torque_n_m, torque, 1e-9);
                near(overrun.leaf_deg, leaf.to_degrees(), 1e-4);
                assert_eq!(overrun.direction, direction);
            }
            None => assert!(torque <= 0.0),
        }
        for row in &plan.curve {
            let leaf = row.leaf_deg.to_radians();
            let turn = arm.at(leaf).ratio.signum();
            near(row.shaft_torque_open_n_m, turn * at_shaft(&arm, lean, leaf, 1.0, WIND), 1e-9);
            near(row.shaft_torque_close_n_m, -turn * at_shaft(&arm, lean, leaf, -1.0, WIND), 1e-9);
            near(row.shaft_torque_open_following_n_m, turn * at_shaft(&arm, lean, leaf, 1.0, -WIND), 1e-9);
            near(row.shaft_torque_close_following_n_m, -turn * at_shaft(&arm, lean, leaf, -1.0, -WIND), 1e-9);
        }
    }
    inside
}

/// A latch drags up to 2.3°, between two places that are looked at anyway: there the rising demand is largest, and past it the latch is gone.
/// Downhill straight ahead the weight asks for `A·sin θ`.
#[test]
fn a_latch_that_lets_go_makes_a_peak_where_it_does() {
    let mut value = bench();
    value["lean"] = json!({ "angle_deg": 1.5, "downhill_deg": 0 });
    let lean = |deg: f64| 100.0 * 9.80665 * 0.75 * 1.5f64.to_radians().sin() * deg.to_radians().sin();
    for (latch_n_m, at) in [(50.0, 2.3), (50.0, 31.07)] {
        value["drag"] = json!({ "latch_n_m": latch_n_m, "latch_deg": at });
        let plan = planned(&value);
        near(plan.peak.leaf_deg, at, 1e-12);
        near(plan.peak.shaft_torque_n_m, (FRICTION + WIND + latch_n_m + lean(at)) / EFFICIENCY, 1e-12);
        // The same arm in the set-out's own figures.
        let around = |at: f64| [at - 0.1, at + 0.1];
        value["setout"] = json!({ "shaft_x_m": around(0.0), "shaft_y_m": around(0.4), "bracket_u_m": around(0.9), "bracket_v_m": 0,
            "crank_m": around(0.9), "link_m": around(0.4) });
        let stand = evaluate(&job(&value)).expect("valid").expect("it works");
        near(stand.shaft_torque_n_m, plan.peak.shaft_torque_n_m, 1e-12);
        // ½·1.25·V² = what the rating leaves.
        let left = 160.0 * EFFICIENCY - FRICTION - latch_n_m - lean(at);
        near(plan.wind_limit.speed_m_s.expect("found"), (left / 0.625).sqrt(), 1e-9);
    }
    // One that lets go past the open limit drags all the way: there is no step.
    value["swing"]["open_deg"] = json!(40);
    value["drag"] = json!({ "latch_n_m": 50, "latch_deg": 45 });
    near(planned(&value).peak.leaf_deg, 40.0, 1e-9);
}

/// Levers of either sign: least inside the swing, at its end, and from a tenth of it on only.
#[test]
fn the_least_lever_is_found_from_a_tenth_of_the_swing_on() {
    let arms = [
        (-0.5, -0.13, 1.53, -0.14, 1.44, 0.87, "right"),
        (-0.61, -0.55, 1.02, -0.04, 1.47, 0.42, "left"),
        (-0.42, 0.89, 1.48, -0.07, 0.82, 1.42, "right"),
        (-0.25, 0.45, 1.2, 0.06, 0.8728, 0.6363, "left"),
    ];
    let mut inside = 0;
    for (x, y, u, v, crank, link, elbow) in arms {
        let mut value = on_an_arm();
        value["arm"] = json!({ "shaft_x_m": x, "shaft_y_m": y, "bracket_u_m": u, "bracket_v_m": v, "crank_m": crank,
            "link_m": link, "elbow": elbow });
        let arm = Arm::of(&value);
        let (from, open) = (9f64.to_radians(), 90f64.to_radians());
        let (leaf, least) = largest(open - from, |past| -arm.at(from + past).lever.abs());
        near(planned(&value).least_lever_m, -least, 1e-12);
        inside += u32::from(leaf > 0.1 && leaf < open - from - 0.1);
    }
    assert!(inside >= 3, "most are inside the swing");
    // The parallelogram's is 0.9·cos θ, least at the end.
    near(planned(&bench()).least_lever_m, 0.45, 1e-12);
}
