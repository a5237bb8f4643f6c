//! Motor and gear turn with the leaf: what a stop, a coast and a blow take is theirs, too. Held to the two bodies integrated in time, each
//! with its own equation of motion, on the bench's arm; the product works with energies by the shaft's way.

use crate::bench::{Arm, EFFICIENCY, INERTIA, WIND, demand, near, on_an_arm};
use crate::jobs::{planned, with};
use pintle_core::{drive::CoastState, plan::Motion};
use serde_json::{Value, json};
use std::f64::consts::FRAC_PI_4;

/// Shaft speed of the job, rad/s.
const FULL: f64 = 25.0 * std::f64::consts::PI / 180.0;

/// `J = T_s·t/ω_n` at the shaft: 60 N·m, 12 of ratio, half lost, 0.1 s, 4800°/s at the motor: 360·0.1/6.981 kg·m².
const DRIVE: f64 = 360.0 * 0.1 / (400.0 * std::f64::consts::PI / 180.0);

fn motor() -> Value {
    json!({ "stall_torque_n_m": 60, "gear_ratio": 12, "gear_efficiency": 0.5, "no_load_speed_deg_s": 4800, "rated_v": 24,
        "supply_v": 20, "run_up_s": 0.1 })
}

fn moved(facts: Value) -> Motion {
    let mut value = with(&on_an_arm(), "motion", facts);
    value["operator"]["shaft_speed_deg_s"] = json!(25);
    planned(&value).motion.expect("motion")
}

/// Ratio and its change with the leaf angle, by differences.
pub fn ratio(arm: &Arm, leaf: f64) -> (f64, f64) {
    let at = |leaf: f64| arm.at(leaf).ratio.abs();
    (at(leaf), (at(leaf + 1e-5) - at(leaf - 1e-5)) / 2e-5)
}

/// Leaf angle turned until it stands, rad, or `None` where it reaches the stop; leaf and rotor on their own, joined by the arm.
///
/// `I·θ̈ = τ − D`, `J·(n·θ̈ + n'·θ̇²) = −s·drag − share·τ/n`, the share by who drives whom.
fn runs_on(arm: &Arm, sign: f64, wind: f64, drag: f64, drive: f64) -> Option<f64> {
    let acceleration = |leaf: f64, speed: f64| {
        let (n, change) = ratio(arm, leaf);
        let load = demand(leaf, sign, -wind);
        let by = |share: f64| {
            (-sign * drag - drive * change * speed * speed - share * load / n) / (drive * n + share * INERTIA / n)
        };
        let driving = by(1.0 / EFFICIENCY);
        if (INERTIA * driving + load) * sign >= 0.0 { driving } else { by(EFFICIENCY) }
    };
    let (mut leaf, mut speed, step) = (FRAC_PI_4, sign * FULL / ratio(arm, FRAC_PI_4).0, 1e-3);
    while (0.0..=2.0 * FRAC_PI_4).contains(&leaf) {
        if speed * sign <= 0.0 {
            return Some((leaf - FRAC_PI_4).abs());
        }
        // The midpoint rule.
        let half = speed + 0.5 * step * acceleration(leaf, speed);
        let change = step * acceleration(leaf + 0.5 * step * speed, half);
        let part = (speed / -change).clamp(0.0, 1.0);
        let part = if (speed + change) * sign < 0.0 { part } else { 1.0 };
        leaf += step * part * (speed + 0.5 * part * change);
        speed = if part < 1.0 { 0.0 } else { speed + change };
    }
    None
}

#[test]
fn a_leaf_let_go_is_carried_on_by_its_drive() {
    let arm = Arm::of(&on_an_arm());
    let mut further = 0;
    for drag in [0.0, 30.0, 60.0] {
        let alone = moved(json!({ "coast_drag_n_m": drag }));
        let coupled = moved(json!({ "coast_drag_n_m": drag, "motor": motor() }));
        assert_eq!(alone.drive_inertia_kg_m2, None);
        near(coupled.drive_inertia_kg_m2.expect("a motor"), DRIVE, 1e-12);
        for (of, drive) in [(&alone, 0.0), (&coupled, DRIVE)] {
            for (coast, sign) in [(&of.coast_open, 1.0), (&of.coast_close, -1.0)] {
                let rows = [(coast.calm, coast.calm_leaf_deg, 0.0), (coast.following, coast.following_leaf_deg, WIND)];
                for (state, turned, wind) in rows {
                    match runs_on(&arm, sign, wind, drag, drive) {
                        // Steps of a millisecond on one side, of a 360th of the way on the other.
                        Some(way) => near(turned.expect("it stops"), way.to_degrees(), 1e-4),
                        None => assert_ne!(state, CoastState::Stops),
                    }
                }
            }
        }
        for (before, behind) in [(&alone.coast_open, &coupled.coast_open), (&alone.coast_close, &coupled.coast_close)] {
            let ways = before.calm_leaf_deg.zip(behind.calm_leaf_deg).filter(|_| behind.calm == CoastState::Stops);
            further += u32::from(ways.is_some_and(|(alone, coupled)| coupled > 1.02 * alone));
        }
    }
    assert!(further >= 3, "{further}");
}

/// `½·I·ω² + ½·J·Ω²`, and the force of the spring that takes it, `√(2·k·E)`.
#[test]
fn a_stop_takes_the_energy_of_leaf_and_drive() {
    let arm = Arm::of(&on_an_arm());
    let facts = json!({ "slow_open_deg": 10, "slow_speed_deg_s": 4, "stop_stiffness_n_per_m": 2e4, "motor": motor() });
    let stop = moved(facts).open_stop;
    let n = ratio(&arm, 2.0 * FRAC_PI_4).0;
    for (shaft, energy, force) in
        [(4f64.to_radians(), stop.energy_j, stop.force_n), (FULL, stop.full_energy_j, stop.full_force_n)]
    {
        let both = INERTIA * (shaft / n).powi(2) / 2.0 + DRIVE * shaft.powi(2) / 2.0;
        near(energy, both, 1e-9);
        near(force.expect("a stiffness"), (2.0 * 2e4 * both).sqrt(), 1e-9);
    }
}

/// The demonstration job let go half open, calm, without losses of the arm: alone 15.0°; with a motor of 900 N·m and 12°/s run up in 0.05 s 25.6°,
/// longer by `1 + J·n²/I` against a steady friction. Worked out apart from this crate (November 2026).
#[test]
fn a_rotor_carries_the_demonstration_job_on() {
    let mut value: Value = serde_json::from_str(include_str!("../../www/data/starting-job.json")).expect("JSON");
    value["operator"]["arm_efficiency"] = json!(1);
    let motor = json!({ "stall_torque_n_m": 900, "no_load_speed_deg_s": 12, "rated_v": 24 });
    for (facts, turned) in [(json!({}), 15.0), (json!({ "motor": motor }), 25.6)] {
        value["motion"] = facts;
        let coast = planned(&value).motion.expect("motion").coast_open;
        assert_eq!(coast.calm, CoastState::Stops);
        let found = coast.calm_leaf_deg.expect("it stops");
        assert!((found - turned).abs() < 0.05, "{found}");
    }
}
