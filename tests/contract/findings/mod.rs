//! Findings at their thresholds: just below, exactly at, just above; with the values each of them carries.

mod demand;
mod drive;
mod forced;
mod leaf;
mod people;
mod room;
mod slip;

use super::{answer, job};
use pintle_core::plan::{Finding, FindingCode, Plan, Severity};
use serde_json::{Value, json};

/// A little more and a little less than a threshold.
const MORE: f64 = 1.0 + 1e-9;
const LESS: f64 = 1.0 - 1e-9;

fn planned(job: &Value) -> Plan {
    answer(job).unwrap_or_else(|invalid| panic!("{invalid}"))
}

fn found(job: &Value, code: FindingCode) -> Option<Finding> {
    let mut all = planned(job).findings.into_iter().filter(|finding| finding.code == code);
    let first = all.next();
    assert!(all.next().is_none(), "{code:?} is told twice");
    first
}

#[track_caller]
fn silent(job: &Value, code: FindingCode) {
    let found = found(job, code);
    assert!(found.is_none(), "{found:?}");
}

/// Severity, names in their order, values to nine digits.
#[track_caller]
fn tells(job: &Value, code: FindingCode, severity: Severity, values: &[(&str, f64)]) {
    let finding = found(job, code).unwrap_or_else(|| panic!("no {code:?}"));
    assert_eq!(finding.severity, severity, "{code:?}");
    let names: Vec<&str> = finding.values.iter().map(|value| value.name).collect();
    assert_eq!(names, values.iter().map(|(name, _)| *name).collect::<Vec<_>>(), "{code:?}");
    for (value, (name, expected)) in finding.values.iter().zip(values) {
        let off = (value.value - expected).abs();
        assert!(off <= 1e-9 * expected.abs().max(1e-3), "{code:?} {name}: {} is not {expected}", value.value);
    }
}

/// An arm straight when closed: reach √(1.2² + 0.35²) = 1.25 m (7-24-25), crank 0.75 m and link 0.5 m.
fn straight() -> Value {
    let mut job = job();
    job["arm"] = json!({ "shaft_x_m": -0.3, "shaft_y_m": 0.43, "bracket_u_m": 0.9, "bracket_v_m": 0.08, "crank_m": 0.75,
        "link_m": 0.5, "elbow": "left" });
    job
}

/// Hinges measured at 45° by two pulls 2 m from the axis: they resist by the sum of the pulls times a metre.
fn measured(open_n: f64, close_n: f64) -> Value {
    json!({ "kind": "measured", "pull_open_n": open_n, "pull_close_n": close_n, "pull_radius_m": 2.0, "pull_leaf_deg": 45 })
}

#[test]
fn the_most_severe_come_first() {
    let mut job = straight();
    job["operator"]["rated_torque_n_m"] = json!(50);
    job["operator"]["peak_torque_n_m"] = json!(60);
    job["lean"] = json!({ "angle_deg": 5, "downhill_deg": 0 });
    let severities: Vec<Severity> = planned(&job).findings.iter().map(|finding| finding.severity).collect();
    for wanted in [Severity::Error, Severity::Warning, Severity::Info] {
        assert!(severities.contains(&wanted), "{wanted:?} in {severities:?}");
    }
    assert!(severities.is_sorted(), "{severities:?}");
    // Those that are as severe stay in their order: the demand before what else is torque.
    let codes: Vec<FindingCode> = planned(&job).findings.iter().map(|finding| finding.code).collect();
    assert_eq!(codes[..2], [FindingCode::DemandOverRated, FindingCode::DemandOverPeak]);
}
