//! A motor that does not bring the leaf to its limit: where it stands, when, and whether it is pushed back.

use crate::bench::{Arm, EFFICIENCY, FRICTION, INERTIA, WIND, bench, demand, near, on_an_arm};
use crate::jobs::planned;
use pintle_core::{
    drive::{DrivenRun, DrivenState},
    plan::Driven,
};
use serde_json::{Value, json};

fn driven(value: &Value, stall: f64) -> Driven {
    let mut value = value.clone();
    value["motion"] = json!({ "motor": { "stall_torque_n_m": stall, "no_load_speed_deg_s": 30, "rated_v": 24 } });
    planned(&value).motion.expect("motion").driven.expect("a motor")
}

fn leaning(angle_deg: f64, downhill_deg: f64) -> Value {
    let mut value = bench();
    value["lean"] = json!({ "angle_deg": angle_deg, "downhill_deg": downhill_deg });
    value
}

/// Holds a run to a moment it needs to start with and a moment that pushes it back, both at the shaft.
fn thresholds(value: &Value, of: impl Fn(Driven) -> DrivenRun, leaf_deg: f64, starts: f64, back: f64) {
    let state = |stall: f64| of(driven(value, stall)).state;
    for stall in [0.995 * starts, 1.01 * back] {
        let run = of(driven(value, stall));
        assert_eq!((run.state, run.time_s), (DrivenState::Stalls, 0.0), "{stall}");
        near(run.leaf_deg, leaf_deg, 1e-9);
        assert!(run.curve.iter().all(|row| (row.leaf_deg - leaf_deg).abs() < 1e-9 && row.shaft_speed_deg_s == 0.0));
        near(run.energy.motor_j, 0.0, 1e-12);
    }
    assert_eq!(state(0.99 * back), DrivenState::DrivenBack);
    let moves = of(driven(value, 1.01 * starts));
    assert!(moves.time_s > 0.0 && (moves.leaf_deg - leaf_deg).abs() > 1e-3, "{moves:?}");
}

/// To start asks `(τ_f + τ_w)/η`; back it goes where the wind less the friction, losses helping, is more than the motor has: `η·(τ_w − τ_f)`.
#[test]
fn against_the_wind_the_wind_pushes_back() {
    let plumb = leaning(0.0, 0.0);
    let (starts, back) = ((FRICTION + WIND) / EFFICIENCY, (WIND - FRICTION) * EFFICIENCY);
    thresholds(&plumb, |driven| driven.opening, 0.0, starts, back);
    thresholds(&plumb, |driven| driven.closing, 60.0, starts, back);
}

/// On an arm both are divided by its ratio.
#[test]
fn on_an_arm_the_ratio_decides() {
    let mut value = on_an_arm();
    value["lean"] = json!({});
    let ratio = Arm::of(&value).at(0.0).ratio.abs();
    let (starts, back) = ((FRICTION + WIND) / EFFICIENCY / ratio, (WIND - FRICTION) * EFFICIENCY / ratio);
    thresholds(&value, |driven| driven.opening, 0.0, starts, back);
}

/// A lean of 100 N·m against the movement at its start: the wind behind helps with 40 to start, and with 40 against being pushed back.
#[test]
fn with_the_wind_behind_the_weight_pushes_back() {
    let weight_n_m: f64 = 100.0 * 9.80665 * 0.75;
    let angle_deg = (100.0 / weight_n_m).asin().to_degrees();
    let (starts, back) = ((FRICTION - WIND + 100.0) / EFFICIENCY, (100.0 - FRICTION - WIND) * EFFICIENCY);
    thresholds(&leaning(angle_deg, -90.0), |driven| driven.opening_following, 0.0, starts, back);
    thresholds(&leaning(angle_deg, 150.0), |driven| driven.closing_following, 60.0, starts, back);
}

/// 98.5 N·m of 99.07 that the way asks for at 20°: it creeps to where `(τ_f + τ_w − M_g)/η` is what the motor has at a stand. There is no ramp
/// left to follow by then, so the motor gives its line all the way: `(J + I/η)·ω̇ = T_s·(1 − ω/ω_n) − τ/η`.
#[test]
fn a_leaf_that_creeps_to_a_stand_stands_from_when_it_is_slow_enough() {
    let stall = 98.5;
    let mut value = bench();
    value["operator"]["shaft_speed_deg_s"] = json!(60);
    let no_load = 30f64.to_radians();
    for efficiency in [0.8, 0.9] {
        value["operator"]["arm_efficiency"] = json!(efficiency);
        let stall = stall * 0.8 / efficiency;
        let run = driven(&value, stall).opening;
        let inertia = stall * 0.05 / no_load + INERTIA / efficiency;
        let rate = |[leaf, speed]: [f64; 2]| {
            [speed, (stall * (1.0 - speed / no_load) - demand(leaf, 1.0, WIND) / efficiency) / inertia]
        };
        let (mut state, mut time, mut slow_at, h) = ([0.0, 0.0], 0.0, None, 2e-3);
        while slow_at.is_none_or(|slow| time < slow + 10.0) {
            let mut moved = state;
            let slopes = (0..4).fold([[0.0; 2]; 4], |mut slopes, stage| {
                slopes[stage] = rate(moved);
                let reach = if stage == 2 { h } else { h / 2.0 };
                moved = [state[0] + reach * slopes[stage][0], state[1] + reach * slopes[stage][1]];
                slopes
            });
            let [a, b, c, d] = slopes;
            let next: [f64; 2] = std::array::from_fn(|i| state[i] + h / 6.0 * (a[i] + 2.0 * b[i] + 2.0 * c[i] + d[i]));
            let threshold = no_load / 1000.0;
            if state[1] > threshold && next[1] <= threshold {
                slow_at = Some(time + h * (state[1] - threshold) / (state[1] - next[1]));
            }
            (state, time) = (next, time + h);
        }
        assert_eq!(run.state, DrivenState::Stalls);
        assert!((run.time_s - slow_at.expect("it stands")).abs() < 0.05, "{} {slow_at:?}", run.time_s);
        // It is left alone for ten seconds more, and half a longest step at most.
        assert!((run.leaf_deg - state[0].to_degrees()).abs() < 0.02, "{} {}", run.leaf_deg, state[0].to_degrees());
        let end = run.curve.last().expect("rows");
        near(end.time_s, run.time_s, 1e-12);
        near(end.shaft_speed_deg_s, 0.03, 1e-4);
        let asked = demand(end.leaf_deg.to_radians(), 1.0, WIND) / efficiency;
        assert!(asked < stall && asked > 0.995 * stall);
    }
}

/// 0.025°/s at a two-hundredth of the voltage: 60° would take 2400 s, and after half an hour nobody waits any longer.
#[test]
fn a_leaf_that_takes_more_than_half_an_hour_creeps() {
    let mut value = leaning(0.0, 0.0);
    value["motion"] =
        json!({ "motor": { "stall_torque_n_m": 40_000, "no_load_speed_deg_s": 5, "rated_v": 200, "supply_v": 1 } });
    let run = planned(&value).motion.expect("motion").driven.expect("a motor").opening;
    assert_eq!(run.state, DrivenState::Creeps);
    assert!(run.time_s > 1800.0 && run.time_s < 1820.0, "{}", run.time_s);
    // (τ_f + τ_w)/η of the 200 N·m there are at a stand.
    near(run.leaf_deg, 0.025 * (1.0 - 75.0 / 200.0) * run.time_s, 1e-3);
    assert_eq!(run.curve.len(), 61);
    near(run.curve[60].leaf_deg, run.leaf_deg, 1e-9);
}
