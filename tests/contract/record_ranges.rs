//! Both ends of every range a measured number is held to, from the plan by the shares and allowances that are agreed (common practice, no source).

use super::{answer, job};
use pintle_core::plan::{Check, CheckVerdict, Plan};
use serde_json::{Value, json};

fn planned(job: &Value) -> Plan {
    answer(job).unwrap_or_else(|invalid| panic!("{invalid}"))
}

fn row(job: &Value, path: &str) -> Check {
    *planned(job).record.expect("recorded").checks.iter().find(|check| check.path == path).expect("a row")
}

#[track_caller]
fn range(check: Check, planned: f64, least: f64, most: f64) {
    for (found, expected) in [(check.planned, planned), (check.least, least), (check.most, most)] {
        let found = found.expect("planned");
        assert!((found - expected).abs() < 1e-9 * expected.abs().max(1.0), "{}: {found}, not {expected}", check.path);
    }
}

/// Degrees ±2, times ±20 %, the timer ±2 s, the voltage 5 % under to 10 % over.
#[test]
fn angles_times_and_voltage() {
    let mut job = job();
    job["motion"] = super::carriers::motion();
    job["settings"] = json!({ "close_timer_s": 30 });
    job["record"] = json!({ "number": "7" });
    let plan = planned(&job);
    let motion = plan.motion.as_ref().expect("described");
    let travel = plan.shaft_travel_deg;
    range(row(&job, "record.shaft_travel_deg"), travel, travel - 2.0, travel + 2.0);
    range(row(&job, "record.open_leaf_deg"), 90.0, 88.0, 92.0);
    let (opening, closing) = (motion.opening.time_s, motion.closing.time_s);
    range(row(&job, "record.opening_s"), opening, 0.8 * opening, 1.2 * opening);
    range(row(&job, "record.closing_s"), closing, 0.8 * closing, 1.2 * closing);
    range(row(&job, "record.close_timer_s"), 30.0, 28.0, 32.0);
    range(row(&job, "record.motor_v"), 24.0, 22.8, 26.4);
    assert_eq!(row(&job, "record.dynamic_force_n").most, Some(400.0));
    assert_eq!(row(&job, "record.static_force_n").most, Some(150.0));
    assert_eq!((row(&job, "record.rod_ohm").least, row(&job, "record.rod_ohm").most), (None, Some(25.0)));
}

/// Pulls ±30 %, at least ±10 N; one that has to be pulled never below nothing. Measured hinges resist by half the sum of their pulls; a lean
/// of 2° towards closed takes m·g·x·sin 2°·sin θ, half open where no angle is said, at the latch edge where no radius is.
#[test]
fn pulls() {
    let job = |pull: f64, lean: f64| {
        let mut job = job();
        job["hinges"] = json!({ "kind": "measured", "pull_open_n": pull, "pull_close_n": pull, "pull_radius_m": 3.2, "pull_leaf_deg": 45 });
        job["lean"] = json!({ "angle_deg": lean, "downhill_deg": 0 });
        job["record"] = json!({ "number": "7" });
        job
    };
    range(row(&job(60.0, 0.0), "record.pull_open_n"), 60.0, 42.0, 78.0);
    range(row(&job(20.0, 0.0), "record.pull_close_n"), 20.0, 10.0, 30.0);
    range(row(&job(6.0, 0.0), "record.pull_close_n"), 6.0, 0.0, 16.0);
    range(row(&job(0.0, 0.0), "record.pull_open_n"), 0.0, 0.0, 10.0);
    let tilt = 160.0 * 9.80665 * 1.6 * 2.0_f64.to_radians().sin() * 45.0_f64.to_radians().sin() / 3.2;
    range(row(&job(60.0, 2.0), "record.pull_open_n"), 60.0 + tilt, 0.7 * (60.0 + tilt), 1.3 * (60.0 + tilt));
    // Closing it goes by itself, and may go a little more or less.
    let close = 5.0 - tilt;
    assert!(close < 0.0);
    let by = (0.3 * -close).max(10.0);
    range(row(&job(5.0, 2.0), "record.pull_close_n"), close, close - by, close + by);
}

/// A limit typed back from paper must not fail by its last digits: one part in a billion is let pass, of large limits as of small.
#[test]
fn the_last_digit_is_let_pass() {
    let verdict = |path: &str, key: &str, value: f64| {
        let mut job = job();
        job["record"] = json!({ key: value });
        row(&job, path).verdict
    };
    for (path, key, limit) in [
        ("record.dynamic_force_n", "dynamic_force_n", 400.0),
        ("record.static_force_n", "static_force_n", 150.0),
        ("record.rod_ohm", "rod_ohm", 25.0),
        ("record.open_leaf_deg", "open_leaf_deg", 92.0),
    ] {
        assert_eq!(verdict(path, key, limit), CheckVerdict::Pass);
        assert_eq!(verdict(path, key, limit * (1.0 + 0.9e-9)), CheckVerdict::Pass);
        assert_eq!(verdict(path, key, limit * (1.0 + 1.1e-9)), CheckVerdict::LookAgain);
    }
    assert_eq!(verdict("record.open_leaf_deg", "open_leaf_deg", 88.0 * (1.0 - 0.9e-9)), CheckVerdict::Pass);
    assert_eq!(verdict("record.open_leaf_deg", "open_leaf_deg", 88.0 * (1.0 - 1.1e-9)), CheckVerdict::LookAgain);
}
