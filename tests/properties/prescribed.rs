//! The prescribed run against its closed form on an arm of ratio one, where leaf and shaft turn alike: `½·a·t²`, `I·α`, `τ·ω`.

use crate::bench::{EFFICIENCY, INERTIA, LENGTH, WIND, bench, demand, effort, near};
use crate::jobs::planned;
use pintle_core::{
    drive::{MotionPoint, PrescribedRun},
    plan::Motion,
};
use serde_json::{Value, json};

/// Way, speed and acceleration in degrees at a time, of stretches (duration, first speed, acceleration) one after another.
type Stretches = [(f64, f64, f64); 5];

/// 60° at 10°/s, 2 s up and 1 s down, the last 6° at 4°/s. Up 10°; cruise 54 − 10 − 4.2; down to 4°/s in 4.2°; slow 6 − 0.8; down 0.8°.
const OPENING: Stretches = [(2.0, 0.0, 5.0), (3.98, 10.0, 0.0), (0.6, 10.0, -10.0), (1.3, 4.0, 0.0), (0.4, 4.0, -10.0)];

/// The same with the last 9° at 4°/s.
const CLOSING: Stretches =
    [(2.0, 0.0, 5.0), (3.68, 10.0, 0.0), (0.6, 10.0, -10.0), (2.05, 4.0, 0.0), (0.4, 4.0, -10.0)];

fn moving() -> Value {
    let mut value = bench();
    value["motion"] = json!({ "ramp_up_s": 2, "ramp_down_s": 1, "slow_open_deg": 6, "slow_close_deg": 9,
        "slow_speed_deg_s": 4 });
    value
}

fn whole(stretches: &Stretches) -> f64 {
    stretches.iter().map(|stretch| stretch.0).sum()
}

/// The leaf some time into one stretch.
fn within(stretches: &Stretches, number: usize, after: f64, sign: f64, wind: f64) -> MotionPoint {
    let before = &stretches[..number];
    let way: f64 = before.iter().map(|(time, speed, rate)| speed * time + rate * time * time / 2.0).sum();
    let (_, first, rate) = stretches[number];
    let way = way + first * after + rate * after * after / 2.0;
    let (speed, leaf_deg) = (first + rate * after, if sign > 0.0 { way } else { 60.0 - way });
    let inertial = INERTIA * sign * rate.to_radians();
    let torque = demand(leaf_deg.to_radians(), sign, wind) + inertial;
    let omega = speed.to_radians();
    MotionPoint {
        time_s: before.iter().map(|stretch| stretch.0).sum::<f64>() + after,
        shaft_deg: leaf_deg,
        leaf_deg,
        shaft_speed_deg_s: sign * speed,
        leaf_speed_deg_s: sign * speed,
        leaf_acceleration_deg_s2: sign * rate,
        edge_speed_m_s: omega * LENGTH,
        energy_j: INERTIA * omega * omega / 2.0,
        leaf_torque_n_m: torque,
        shaft_torque_n_m: effort(torque, sign),
        inertial_torque_n_m: inertial,
        shaft_power_w: effort(torque, sign) * sign * omega,
    }
}

/// The leaf at a time; a stretch owns its beginning.
fn at(stretches: &Stretches, time_s: f64, sign: f64, wind: f64) -> MotionPoint {
    let mut left = time_s;
    for (number, stretch) in stretches.iter().enumerate() {
        if left < stretch.0 - 1e-12 {
            return within(stretches, number, left, sign, wind);
        }
        left -= stretch.0;
    }
    let end = within(stretches, 4, stretches[4].0, sign, wind);
    // At rest nothing accelerates.
    let torque = demand(end.leaf_deg.to_radians(), sign, wind);
    MotionPoint {
        leaf_acceleration_deg_s2: 0.0,
        inertial_torque_n_m: 0.0,
        leaf_torque_n_m: torque,
        shaft_torque_n_m: effort(torque, sign),
        ..end
    }
}

fn same(found: &MotionPoint, wanted: &MotionPoint) {
    for (found, wanted) in [
        (found.time_s, wanted.time_s),
        (found.shaft_deg, wanted.shaft_deg),
        (found.leaf_deg, wanted.leaf_deg),
        (found.shaft_speed_deg_s, wanted.shaft_speed_deg_s),
        (found.leaf_speed_deg_s, wanted.leaf_speed_deg_s),
        (found.leaf_acceleration_deg_s2, wanted.leaf_acceleration_deg_s2),
        (found.edge_speed_m_s, wanted.edge_speed_m_s),
        (found.energy_j, wanted.energy_j),
        (found.leaf_torque_n_m, wanted.leaf_torque_n_m),
        (found.shaft_torque_n_m, wanted.shaft_torque_n_m),
        (found.inertial_torque_n_m, wanted.inertial_torque_n_m),
        (found.shaft_power_w, wanted.shaft_power_w),
    ] {
        near(found, wanted, 1e-9);
    }
}

/// Every place of every stretch, finely.
fn scan(stretches: &Stretches, sign: f64, wind: f64) -> Vec<MotionPoint> {
    let places = (0..5).flat_map(|number| (0..=2000).map(move |index| (number, f64::from(index) / 2000.0)));
    places.map(|(number, share)| within(stretches, number, share * stretches[number].0, sign, wind)).collect()
}

/// The row in which something is largest, and how large.
fn most(rows: &[MotionPoint], of: impl Fn(&MotionPoint) -> f64) -> (f64, MotionPoint) {
    rows.iter().fold((0.0, rows[0]), |most, row| if of(row) > most.0 { (of(row), *row) } else { most })
}

fn check(run: &PrescribedRun, stretches: &Stretches, sign: f64) {
    near(run.time_s, whole(stretches), 1e-12);
    assert_eq!(run.curve.len(), 61);
    for (index, row) in run.curve.iter().enumerate() {
        let time_s = whole(stretches) * index as f64 / 60.0;
        // A row within rounding of a corner may fall to either side.
        let mut ends = 0.0;
        let corner = stretches.iter().take(4).any(|stretch| {
            ends += stretch.0;
            (ends - time_s).abs() < 1e-9
        });
        if !corner {
            same(row, &at(stretches, time_s, sign, WIND));
        }
    }
    let rows = scan(stretches, sign, WIND);
    near(run.shaft_speed_deg_s, 10.0, 1e-12);
    near(run.edge_speed_m_s, 10f64.to_radians() * LENGTH, 1e-12);
    // Anywhere between the ramps.
    let cruise = if sign > 0.0 { 10.0..=49.8 } else { 13.2..=50.0 };
    assert!((cruise.start() - 1e-9..=cruise.end() + 1e-9).contains(&run.edge_speed_leaf_deg), "{cruise:?}");
    near(run.arrival_edge_speed_m_s, 4f64.to_radians() * LENGTH, 1e-12);
    near(run.leaf_acceleration_deg_s2, 10.0, 1e-12);
    near(run.energy_j, INERTIA * 10f64.to_radians().powi(2) / 2.0, 1e-12);
    let (torque, there) = most(&rows, |row| row.shaft_torque_n_m.abs());
    near(run.peak.shaft_torque_n_m, torque, 1e-5);
    assert!((run.peak.time_s - there.time_s).abs() < 0.05 && (run.peak.leaf_deg - there.leaf_deg).abs() < 0.3);
    near(run.inertial.shaft_torque_n_m, INERTIA * 10f64.to_radians(), 1e-12);
    // It is that large only where it brakes.
    let braking = stretches[0].0 + stretches[1].0;
    assert!(run.inertial.time_s >= braking - 1e-9 && run.inertial.time_s < whole(stretches) + 1e-9);
    near(run.shaft_power_w, most(&rows, |row| row.shaft_power_w).0, 1e-5);
}

fn motion(value: &Value) -> Motion {
    planned(value).motion.expect("motion")
}

#[test]
fn a_run_of_ratio_one_is_its_closed_form() {
    let motion = motion(&moving());
    check(&motion.opening, &OPENING, 1.0);
    check(&motion.closing, &CLOSING, -1.0);
    let peak = motion.opening.peak.shaft_torque_n_m.max(motion.closing.peak.shaft_torque_n_m);
    near(motion.utilisation, peak / 160.0, 1e-12);
    near(motion.peak_utilisation.expect("a peak torque"), peak / 250.0, 1e-12);
    let mut value = moving();
    value["operator"]["peak_torque_n_m"] = Value::Null;
    assert_eq!(self::motion(&value).peak_utilisation, None);
}

/// With the wind behind the leaf drives the shaft, and losses help to hold it: the larger of both ways counts, whichever it is.
#[test]
fn what_is_held_back_is_the_larger_of_both_ways() {
    let mut turned = moving();
    // Downhill turned by half a circle: the weight helps the other way.
    turned["lean"]["downhill_deg"] = json!(crate::bench::LEAN.1 + 180.0);
    for (value, weight) in [(moving(), 1.0), (turned, -1.0)] {
        let motion = motion(&value);
        let held = |stretches: &Stretches, sign: f64| {
            let rows = scan(stretches, sign, -WIND);
            let of = |row: &MotionPoint| {
                let gravity = crate::bench::gravity(row.leaf_deg.to_radians());
                effort(row.leaf_torque_n_m + (1.0 - weight) * gravity, sign).abs()
            };
            most(&rows, of)
        };
        let [(open, open_row), (close, close_row)] = [held(&OPENING, 1.0), held(&CLOSING, -1.0)];
        let (torque, row) = if close > open { (close, close_row) } else { (open, open_row) };
        near(motion.held_back.shaft_torque_n_m, torque, 1e-5);
        assert!((motion.held_back.time_s - row.time_s).abs() < 0.05, "{:?} {row:?}", motion.held_back);
    }
}

/// Losses of a leaf that is driven are paid by the shaft: with none, the shaft's torque is the leaf's.
#[test]
fn a_shaft_without_losses_bears_what_the_leaf_asks() {
    let mut value = moving();
    value["operator"]["arm_efficiency"] = json!(1);
    for row in motion(&value).opening.curve.iter().filter(|row| row.leaf_torque_n_m > 0.0) {
        near(row.shaft_torque_n_m, row.leaf_torque_n_m, 1e-12);
        let lossy = demand(row.leaf_deg.to_radians(), 1.0, WIND) + INERTIA * row.leaf_acceleration_deg_s2.to_radians();
        near(row.shaft_torque_n_m, effort(lossy, 1.0) * EFFICIENCY, 1e-9);
    }
}
