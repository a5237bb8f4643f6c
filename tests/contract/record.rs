//! The commissioning record: what was measured against what was planned. Planned numbers that are checked here follow from the job by hand.

use super::{answer, fault, job, with};
use pintle_core::{
    fault::FaultCode,
    plan::{Check, CheckVerdict, Commissioning},
    safety::SourceProvenance,
};
use serde_json::{Value, json};

fn compared(job: &Value) -> Commissioning {
    answer(job).expect("valid").record.expect("something is recorded")
}

fn row(job: &Value, path: &str) -> Check {
    *compared(job).checks.iter().find(|check| check.path == path).expect("a row of that path")
}

fn close(value: Option<f64>, expected: f64, within: f64) {
    assert!((value.expect("a number") - expected).abs() < within, "{value:?} is not {expected}");
}

#[test]
fn nothing_known_recorded_is_no_record() {
    for record in [json!(null), json!({}), json!({ "weather": "fine" }), json!({ "opening_s": null })] {
        assert_eq!(answer(&with("/record", record)).expect("valid").record, None);
    }
}

#[test]
fn every_row_is_there_and_says_whether_it_was_measured() {
    let all = compared(&with("/record", json!({ "open_leaf_deg": 91, "signs_fixed": false, "lock_off_tried": true })));
    assert!(all.checks.len() > 15 && all.steps.len() > 4);
    for check in &all.checks {
        let measured = check.path == "record.open_leaf_deg";
        assert_eq!(check.verdict == CheckVerdict::NotMeasured, !measured, "{}", check.path);
    }
    let verdict = |path: &str| all.steps.iter().find(|step| step.path == path).expect("a step").verdict;
    assert_eq!(verdict("record.signs_fixed"), CheckVerdict::LookAgain);
    assert_eq!(verdict("record.lock_off_tried"), CheckVerdict::Pass);
    assert_eq!(verdict("record.isolation_tried"), CheckVerdict::NotMeasured);
}

/// Measured hinges of 45 N and 41 N at 3 m resist by 3·(45 + 41)/2 = 129 N·m, so that at 2 m each way takes 64.5 N; a lean of 1° towards
/// closed adds m·g·sin 1°·sin 45°·L/2 to the way open and takes it off the way shut.
#[test]
fn pulls_are_compared_with_friction_and_lean() {
    let mut job = with(
        "/hinges",
        json!({ "kind": "measured", "pull_open_n": 45, "pull_close_n": 41, "pull_radius_m": 3.0, "pull_leaf_deg": 45 }),
    );
    job["record"] = json!({ "pull_open_n": 60, "pull_close_n": 100, "pull_radius_m": 2.0, "pull_leaf_deg": 45 });
    let open = row(&job, "record.pull_open_n");
    close(open.planned, 64.5, 1e-9);
    assert_eq!(open.verdict, CheckVerdict::Pass);
    assert_eq!(open.source.provenance, SourceProvenance::CommonPractice);
    assert_eq!(row(&job, "record.pull_close_n").verdict, CheckVerdict::LookAgain);

    job["lean"] = json!({ "angle_deg": 1, "downhill_deg": 0 });
    let (mass, length) = (job["leaf"]["mass_kg"].as_f64().unwrap(), job["leaf"]["length_m"].as_f64().unwrap());
    let tilt = mass * 9.80665 * 1f64.to_radians().sin() * 45f64.to_radians().sin() * length / 2.0 / 2.0;
    close(row(&job, "record.pull_open_n").planned, 64.5 + tilt, 1e-9);
    close(row(&job, "record.pull_close_n").planned, 64.5 - tilt, 1e-9);
}

/// A shaft at constant speed with even ramps needs travel/speed + (up + down)/2 (trapezium of speed over time).
#[test]
fn times_are_compared_with_the_prescribed_motion() {
    let mut job = job();
    job["record"] = json!({ "opening_s": 30 });
    assert_eq!(row(&job, "record.opening_s").verdict, CheckVerdict::NotPlanned, "no motion is described");
    job["motion"] = json!({ "ramp_up_s": 1, "ramp_down_s": 2 });
    let plan = answer(&job).expect("valid");
    let speed = job["operator"]["shaft_speed_deg_s"].as_f64().expect("a speed");
    let time = plan.shaft_travel_deg / speed + 1.5;
    let opening = row(&job, "record.opening_s");
    close(opening.planned, time, 1e-6);
    assert_eq!(opening.verdict, CheckVerdict::LookAgain);
    job["record"]["opening_s"] = json!(1.19 * time);
    assert_eq!(row(&job, "record.opening_s").verdict, CheckVerdict::Pass);
}

#[test]
fn as_built_is_held_to_the_tape() {
    let mut job = job();
    job["record"] = json!({ "number": "7" });
    job["tape"] = json!({ "error_m": 0.004 });
    let planned = job["arm"]["shaft_x_m"].as_f64().expect("a place");
    for (by, verdict) in [(0.004, CheckVerdict::Pass), (-0.004, CheckVerdict::Pass), (0.0041, CheckVerdict::LookAgain)]
    {
        job["as_built"] = json!({ "shaft_x_m": planned + by });
        let check = row(&job, "as_built.shaft_x_m");
        assert_eq!((check.planned, check.verdict), (Some(planned), verdict));
    }
    assert_eq!(row(&job, "as_built.link_m").verdict, CheckVerdict::NotMeasured);
    // The limits are those of the arm that stands there.
    let built = answer(&job).expect("valid").as_built.and_then(|built| built.shaft_travel_deg).expect("it works");
    close(row(&job, "record.shaft_travel_deg").planned, built.abs(), 1e-9);
}

/// Force limits: EN 12453:2001 Annex A (from memory). Rod: NEC 250.53(A)(2), 25 Ω (from memory).
#[test]
fn limits_of_standards_are_only_upper_ones() {
    let mut job = job();
    job["record"] = json!({ "dynamic_force_n": 400, "static_force_n": 151, "rod_ohm": 25.1 });
    let dynamic = row(&job, "record.dynamic_force_n");
    assert_eq!((dynamic.least, dynamic.most, dynamic.verdict), (None, Some(400.0), CheckVerdict::Pass));
    assert_eq!(dynamic.source.provenance, SourceProvenance::FromMemory);
    assert_eq!(row(&job, "record.static_force_n").verdict, CheckVerdict::LookAgain);
    assert_eq!(row(&job, "record.rod_ohm").verdict, CheckVerdict::LookAgain);
    job["contact"] = json!({ "static_limit_n": 200 });
    assert_eq!(row(&job, "record.static_force_n").verdict, CheckVerdict::Pass);
}

#[test]
fn slip_lies_in_the_window_of_the_trial() {
    let mut job = job();
    job["breakaway"] = json!({ "link_force_n": 6000 });
    job["record"] = json!({ "slip_open_n": 1 });
    let plan = answer(&job).expect("valid");
    let trial = plan.breakaway.expect("a window").trial;
    let slip = row(&job, "record.slip_open_n");
    assert_eq!((slip.planned, slip.least, slip.most), (None, Some(trial.must_hold_n), trial.must_slip_n));
    assert_eq!(slip.verdict, CheckVerdict::LookAgain);
    job["record"]["slip_open_n"] = json!(trial.must_hold_n + 1.0);
    assert_eq!(row(&job, "record.slip_open_n").verdict, CheckVerdict::Pass);
}

#[test]
fn voltage_and_timer_need_a_plan() {
    let mut job = job();
    job["record"] = json!({ "motor_v": 20, "close_timer_s": 31 });
    assert_eq!(row(&job, "record.motor_v").verdict, CheckVerdict::NotPlanned);
    assert_eq!(row(&job, "record.close_timer_s").verdict, CheckVerdict::NotPlanned);
    job["settings"] = json!({ "close_timer_s": 30 });
    job["motion"] = super::carriers::motion();
    assert_eq!(row(&job, "record.close_timer_s").verdict, CheckVerdict::Pass);
    let volts = row(&job, "record.motor_v");
    assert_eq!((volts.planned, volts.verdict), (Some(24.0), CheckVerdict::LookAgain));
    assert_eq!(row(&with("/record", json!({ "motor_v": 24 })), "record.motor_v").planned, None);
}

#[test]
fn bad_entries_are_told_with_their_path() {
    let at = |record: Value| {
        let fault = fault(&with("/record", record));
        (fault.path, fault.code)
    };
    assert_eq!(at(json!({ "rod_ohm": -1 })), ("record.rod_ohm".into(), FaultCode::OutOfRange));
    assert_eq!(at(json!({ "signs_fixed": "yes" })), ("record.signs_fixed".into(), FaultCode::WrongType));
    assert_eq!(at(json!({ "installer": 5 })), ("record.installer".into(), FaultCode::WrongType));
    assert_eq!(at(json!("signed")), ("record".into(), FaultCode::WrongType));
    for date in ["31.3.2026", "2026-02-29", "2026-13-01", "2026-00-10", "2026-1-1", "", "二〇二六年"] {
        assert_eq!(at(json!({ "date": date })), ("record.date".into(), FaultCode::WrongType), "{date}");
    }
    for date in ["2026-03-31", "2028-02-29", "2000-02-29"] {
        assert!(answer(&with("/record", json!({ "date": date }))).is_ok(), "{date}");
    }
}
