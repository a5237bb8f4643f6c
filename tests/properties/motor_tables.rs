//! A motor as a table of speed and torque: what lies between its points, what is beyond them, and runs that can be told in closed form.

use crate::bench::{FRICTION, INERTIA, bench, on_an_arm};
use crate::jobs::planned;
use pintle_core::{
    drive::{DrivenState, Motor},
    job::{MotorFacts, MotorPoint},
    plan::Driven,
};
use proptest::prelude::*;
use serde_json::{Value, json};
use std::f64::consts::E;

fn near(one: f64, other: f64, share: f64) {
    assert!((one - other).abs() <= share * other.abs().max(1e-12), "{one} {other}");
}

fn point([speed_deg_s, torque_n_m]: [f64; 2]) -> MotorPoint {
    MotorPoint::builder().speed_deg_s(speed_deg_s).torque_n_m(torque_n_m).build()
}

fn tabled(points: &[[f64; 2]], volts: f64, run_up_s: f64) -> Motor {
    let points = points.iter().copied().map(point).collect();
    let facts = MotorFacts::builder().curve(points).rated_v(230.0).supply_v(volts).run_up_s(run_up_s).build();
    Motor::of(&facts).expect("a table")
}

/// Torque of an induction motor by Kloss, over its breakdown torque: `2/(s/s_k + s_k/s)`.
fn kloss(slip: f64, breakdown: f64) -> f64 {
    2.0 / (slip / breakdown + breakdown / slip)
}

/// A curve by Kloss as a fine table; 0 at the synchronous speed, where the relation has no slip.
fn by_kloss(most_n_m: f64, synchronous: f64, breakdown: f64) -> Vec<[f64; 2]> {
    let at = |index: u32| {
        let slip = 1.0 - f64::from(index) / 2000.0;
        [synchronous * (1.0 - slip), if index == 2000 { 0.0 } else { most_n_m * kloss(slip, breakdown) }]
    };
    (0..=2000).map(at).collect()
}

fn with_table(value: &Value, points: &[[f64; 2]], run_up_s: f64) -> Value {
    let mut value = value.clone();
    let curve: Vec<Value> = points.iter().map(|[w, t]| json!({ "speed_deg_s": w, "torque_n_m": t })).collect();
    value["operator"]["shaft_speed_deg_s"] = json!(360);
    value["motion"] = json!({ "ramp_up_s": 0.02, "ramp_down_s": 0.02,
        "motor": { "curve": curve, "rated_v": 230, "run_up_s": run_up_s } });
    value
}

fn runs(value: &Value) -> Driven {
    planned(value).motion.expect("motion").driven.expect("a motor")
}

/// The bench without a lean, a wind or losses, and with a rotor of next to nothing: 20 N·m of friction, 200 kg·m², ratio one.
fn plain() -> Value {
    let mut value = bench();
    value["lean"] = Value::Null;
    value["wind"]["speed_m_s"] = json!(0);
    value["operator"]["arm_efficiency"] = json!(1);
    value
}

/// A constant torque against a constant friction: `t = √(2·(I + J)·φ/(T − τ))`, any mechanics text; until the controller brakes, 3° before the end.
#[test]
fn a_constant_torque_takes_the_time_of_a_fall() {
    for torque in [60.0, 120.0, 300.0] {
        let driven = runs(&with_table(&plain(), &[[0.0, torque], [359.0, torque], [360.0, 0.0]], 0.05));
        let inertia = INERTIA + driven.motor.inertia_kg_m2;
        for (run, from) in [(&driven.opening, 0.0), (&driven.closing, 60.0)] {
            assert_eq!(run.state, DrivenState::Arrives);
            let free = run.curve[1..].iter().filter(|row| (row.leaf_deg - from).abs() < 57.0);
            let count = free.clone().map(|row| {
                let way = (row.leaf_deg - from).abs().to_radians();
                let rate = (torque - FRICTION) / inertia;
                // For the first 6e-5° the controller asks for its least speed only: that much of the way is lost, and up to 3 ms.
                let reached = row.shaft_speed_deg_s.to_radians().powi(2) / (2.0 * rate);
                assert!((reached - way).abs() < 1.1e-6 + 1e-5 * way, "{reached} {way}");
                let late = row.time_s - (2.0 * way / rate).sqrt();
                assert!((-1e-6..3e-3).contains(&late), "{late}");
            });
            assert!(count.count() > 50);
        }
    }
}

/// Torque alone from standstill to 63 % of the synchronous speed on a curve by Kloss, in closed form: `∫dω/T = ω_s/(2·T_k)·((1 − s²)/(2·s_k) +
/// s_k·ln(1/s))` with `s = 1/e`. The starting time of an induction motor without load, as in texts of electrical drives (from memory).
#[test]
fn the_inertia_of_a_breakdown_curve() {
    for breakdown in [0.1, 0.2, 0.407, 0.8] {
        let motor = tabled(&by_kloss(80.0, 20.0, breakdown), 230.0, 0.3);
        let slip = 1.0 / E;
        let taken = 20f64.to_radians() / 160.0 * ((1.0 - slip * slip) / (2.0 * breakdown) + breakdown);
        near(motor.inertia_kg_m2, 0.3 / taken, 1e-5);
    }
}

/// Friction between the torque at standstill and the breakdown torque: the motor has it in its curve and never comes to it. The shaft stands where
/// it started, though a straight line of the same breakdown torque would move it.
#[test]
fn a_load_over_the_standstill_torque_is_not_started() {
    let points = by_kloss(100.0, 15.0, 0.05);
    let stall = points[0][1];
    assert!(stall < FRICTION && FRICTION < 100.0);
    let few: Vec<[f64; 2]> = points.iter().copied().step_by(50).collect();
    let driven = runs(&with_table(&plain(), &few, 0.05));
    assert_eq!((driven.opening.state, driven.opening.leaf_deg), (DrivenState::Stalls, 0.0));
    // Half a breakdown slip further it starts, and passes the breakdown: faster than half of the synchronous speed.
    let few: Vec<[f64; 2]> = by_kloss(100.0, 15.0, 0.2).into_iter().step_by(50).collect();
    let driven = runs(&with_table(&plain(), &few, 0.05));
    assert_eq!(driven.opening.state, DrivenState::Arrives);
    let fastest = driven.opening.curve.iter().map(|row| row.shaft_speed_deg_s.abs()).fold(0.0, f64::max);
    // It settles where Kloss gives 20 of 100 N·m beyond the breakdown, `s = s_k·(5 − √24)`; the last chords of the table lie a little lower.
    let slip = 0.2 * (5.0 - 24f64.sqrt());
    assert!((fastest / (15.0 * (1.0 - slip)) - 1.0).abs() < 0.01, "{fastest}");
}

/// In a wind from behind the leaf is not held back by what the table has no word for: the motor takes no work, and the shaft passes the
/// synchronous speed.
#[test]
fn beyond_the_synchronous_speed_nothing_brakes() {
    let mut value = with_table(&plain(), &[[0.0, 60.0], [8.0, 90.0], [10.0, 0.0]], 0.05);
    value["wind"]["speed_m_s"] = json!(14);
    let driven = runs(&value);
    let run = &driven.opening_following;
    assert_eq!(run.state, DrivenState::Arrives);
    assert!(run.curve.iter().all(|row| row.shaft_torque_n_m.abs() <= 90.0 + 1e-9));
    assert!(run.curve.iter().any(|row| row.shaft_speed_deg_s.abs() > 12.0), "{:?}", run.curve.last());
    assert!(run.energy.motor_j >= 0.0 && run.energy.error < 1e-6, "{:?}", run.energy);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    /// Two points are a straight line: torque up to its end, standstill, speed without load and inertia are those of one.
    #[test]
    fn two_points_are_a_line(stall in 1.0..500.0f64, free in 1.0..100.0f64, share in 0.0..1.0f64, run_up in 0.01..2.0f64) {
        let table = tabled(&[[0.0, stall], [free, 0.0]], 230.0, run_up);
        let facts = MotorFacts::builder().stall_torque_n_m(stall).no_load_speed_deg_s(free).rated_v(230.0).run_up_s(run_up);
        let line = Motor::of(&facts.build()).expect("a line");
        near(table.stall_torque_n_m, line.stall_torque_n_m, 1e-12);
        near(table.no_load_rad_s, line.no_load_rad_s, 1e-12);
        near(table.inertia_kg_m2, line.inertia_kg_m2, 1e-9);
        let speed = share * line.no_load_rad_s;
        prop_assert!((table.torque_n_m(speed) - line.torque_n_m(speed)).abs() <= 1e-9 * stall);
        prop_assert_eq!(table.torque_n_m(1.001 * line.no_load_rad_s), 0.0);
        // A line brakes; of a table there is any part, and nothing below.
        prop_assert_eq!(table.within_line_n_m(-1.0, speed), 0.0);
        prop_assert!(table.within_line_n_m(2.0 * stall, speed) <= table.torque_n_m(speed));
    }

    /// The torque goes with the square of the voltage, the speeds stay, and so does the rotor.
    #[test]
    fn a_lower_voltage_takes_the_square(volts in 100.0..260.0f64, share in 0.0..1.1f64, breakdown in 0.1..0.6f64) {
        let points: Vec<[f64; 2]> = by_kloss(50.0, 12.0, breakdown).into_iter().step_by(200).collect();
        let [rated, other] = [230.0, volts].map(|volts| tabled(&points, volts, 0.1));
        let speed = share * 12f64.to_radians();
        let factor = (volts / 230.0).powi(2);
        prop_assert!((other.torque_n_m(speed) - factor * rated.torque_n_m(speed)).abs() <= 1e-9 * 50.0);
        prop_assert_eq!((other.no_load_rad_s, other.inertia_kg_m2), (rated.no_load_rad_s, rated.inertia_kg_m2));
    }

    /// Every run of a table accounts for its energy, on an arm whose ratio changes.
    #[test]
    fn energy_is_accounted_for(most in 150.0..900.0f64, breakdown in 0.15..0.5f64, back in 0.2..1.0f64, drives in any::<bool>()) {
        let points: Vec<[f64; 2]> = by_kloss(most, 14.0, breakdown).into_iter().step_by(250).collect();
        let mut value = with_table(&on_an_arm(), &points, 0.2);
        value["operator"]["shaft_speed_deg_s"] = json!(9);
        value["operator"]["back_efficiency"] = json!(back.max(0.1));
        value["operator"]["back_drives"] = json!(drives);
        value["motion"]["ramp_up_s"] = json!(1);
        let driven = runs(&value);
        for run in [&driven.opening, &driven.closing, &driven.opening_following, &driven.closing_following] {
            prop_assert!(run.energy.error < 1e-6, "{run:?}");
            prop_assert!(run.energy.arm_loss_j >= -1e-9 && run.energy.motor_j >= 0.0);
        }
    }
}
