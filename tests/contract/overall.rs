//! Green means nothing is wrong: what stands for the whole plan is never better than its worst finding.

use super::{answer, job, with};
use pintle_core::{
    drive::Verdict,
    plan::{FindingCode as Code, Judged, Plan, Severity, Subject},
};
use serde_json::{Value, json};

fn planned(job: &Value) -> Plan {
    answer(job).unwrap_or_else(|invalid| panic!("{invalid}"))
}

/// The demonstration job with an operator that has torque to spare.
fn within() -> Value {
    let mut job = with("/operator/rated_torque_n_m", json!(900));
    job["operator"]["peak_torque_n_m"] = Value::Null;
    job
}

fn said(block: &str, value: Value) -> Value {
    let mut job = within();
    job[block] = value;
    job
}

#[test]
fn without_a_stop_the_rating_stands() {
    for (rated, verdict, state, finding) in [
        (900.0, Verdict::Within, Judged::Within, None),
        (400.0, Verdict::Tight, Judged::Tight, Some(Code::ReserveBelowRequired)),
    ] {
        let mut job = within();
        job["operator"]["rated_torque_n_m"] = json!(rated);
        let plan = planned(&job);
        assert_eq!((plan.rating.verdict, plan.overall.state), (verdict, state));
        assert_eq!((plan.overall.stops, plan.overall.finding, plan.overall.about), (0, finding, Subject::Torque));
        assert_eq!(plan.overall.judged, [Subject::Torque, Subject::Arm]);
    }
    // To look again is no stop.
    let plan = planned(&said("site", json!({})));
    assert!(plan.findings.iter().any(|finding| finding.severity == Severity::Warning));
    assert_eq!(plan.overall.state, Judged::Within);
}

/// Every way in which something is wrong while the torque is within its rating: said by the rating, denied by the whole.
#[test]
fn a_stop_anywhere_is_over() {
    let wall = json!([{ "x_m": [0.9, 1.1], "y_m": [0.9, 1.1] }]);
    for (job, about, code) in [
        (said("obstacles", wall), Subject::Clearances, Code::LeafHits),
        (said("as_built", json!({ "link_m": 0.5 })), Subject::AsBuilt, Code::BuiltBroken),
        (said("record", json!({ "dynamic_force_n": 401 })), Subject::Record, Code::DynamicForceOver),
        (said("record", json!({ "static_force_n": 151 })), Subject::Record, Code::StaticForceOver),
        (said("tape", json!({ "error_m": 0.01 })), Subject::Tape, Code::TapeErrorBreaks),
        (said("breakaway", json!({ "gearbox_torque_n_m": 100 })), Subject::Breakaway, Code::BreakawayNoWindow),
    ] {
        let plan = planned(&job);
        assert_eq!(plan.rating.verdict, Verdict::Within, "{code:?}");
        let stops = plan.findings.iter().filter(|finding| finding.severity == Severity::Error).count();
        assert_eq!((plan.overall.state, plan.overall.about), (Judged::Over, about), "{code:?}");
        assert_eq!((plan.overall.finding, plan.overall.stops as usize), (Some(code), stops), "{code:?}");
        assert_eq!(code.about(), about);
    }
    // What is over twice is told by the torque first.
    let mut job = said("as_built", json!({ "link_m": 0.5 }));
    job["operator"]["rated_torque_n_m"] = json!(100);
    let overall = planned(&job).overall;
    assert_eq!((overall.about, overall.finding, overall.stops), (Subject::Torque, Some(Code::DemandOverRated), 2));
}

/// A measured force at its limit passes.
#[test]
fn a_measured_force_is_held_to_its_limit() {
    for (key, limit, code) in [("dynamic", 400.0, Code::DynamicForceOver), ("static", 150.0, Code::StaticForceOver)] {
        for (force, over) in [(limit, false), (limit + 0.5, true)] {
            let plan = planned(&said("record", json!({ format!("{key}_force_n"): force })));
            let told = plan.findings.iter().find(|finding| finding.code == code);
            assert_eq!(told.is_some(), over, "{force}");
            let Some(told) = told else { continue };
            let values: Vec<_> = told.values.iter().map(|value| (value.name, value.value)).collect();
            assert_eq!((told.severity, values), (Severity::Error, vec![("force", force), ("limit", limit)]));
        }
    }
    // A limit of the job's own counts, not the usual one.
    let mut job = said("record", json!({ "static_force_n": 160 }));
    job["contact"] = json!({ "static_limit_n": 170 });
    assert_eq!(planned(&job).overall.state, Judged::Within);
}

/// The arm that stands there is judged as if it had been planned.
#[test]
fn what_was_built_is_judged_as_a_plan_of_it_is() {
    let built = json!({ "shaft_y_m": 0.46, "crank_m": 0.885 });
    let mut as_plan = job();
    as_plan["arm"]["shaft_y_m"] = json!(0.46);
    as_plan["arm"]["crank_m"] = json!(0.885);
    let demand = planned(&as_plan).peak.shaft_torque_n_m;
    for (rated, code) in [
        (demand * (1.0 - 1e-9), Some(Code::BuiltOverRated)),
        (demand * 1.2, Some(Code::BuiltReserveBelowRequired)),
        (demand * 1.5 * (1.0 + 1e-9), None),
    ] {
        let mut job = said("as_built", built.clone());
        job["operator"]["rated_torque_n_m"] = json!(rated);
        let plan = planned(&job);
        let told: Vec<Code> =
            plan.findings.iter().map(|finding| finding.code).filter(|code| code.about() == Subject::AsBuilt).collect();
        assert_eq!(told, code.into_iter().collect::<Vec<_>>(), "{rated}");
    }
}
