//! What was judged: every subject once, over while a stop stands, never within where nothing was asked or measured.

use super::{answer, job, with};
use pintle_core::{
    Document,
    drive::Verdict,
    job::fields,
    plan::{FindingCode as Code, Judged, Judgement, Plan, Subject, Unjudged, plan_partial},
};
use serde_json::{Value, json};

/// The demonstration job with an operator that has torque to spare.
fn within() -> Value {
    let mut job = with("/operator/rated_torque_n_m", json!(900));
    job["operator"]["peak_torque_n_m"] = Value::Null;
    job
}

fn said(block: &str, value: Value) -> Plan {
    let mut job = within();
    job[block] = value;
    answer(&job).unwrap_or_else(|invalid| panic!("{invalid}"))
}

fn of(plan: &Plan, about: Subject) -> Judgement {
    *plan.judgements.iter().find(|one| one.about == about).expect("every subject is told")
}

fn state(plan: &Plan, about: Subject) -> (Judged, Option<Code>) {
    let one = of(plan, about);
    (one.state, one.finding)
}

#[test]
fn every_subject_stands_once_in_its_order() {
    let plan = said("title", Value::Null);
    let subjects: Vec<Subject> = plan.judgements.iter().map(|one| one.about).collect();
    assert_eq!(subjects, Subject::ALL);
    for one in &plan.judgements {
        let wanted = match one.about {
            Subject::Torque | Subject::Arm => Judged::Within,
            _ => Judged::NotJudged,
        };
        assert_eq!(one.state, wanted, "{:?}", one.about);
    }
}

#[test]
fn torque_follows_its_rating() {
    for (rated, wanted, code) in [
        (900.0, Judged::Within, None),
        (400.0, Judged::Tight, Some(Code::ReserveBelowRequired)),
        (100.0, Judged::Over, Some(Code::DemandOverRated)),
    ] {
        let mut job = within();
        job["operator"]["rated_torque_n_m"] = json!(rated);
        assert_eq!(state(&answer(&job).expect("valid"), Subject::Torque), (wanted, code), "{rated}");
    }
}

#[test]
fn a_stop_is_over_and_leads_to_its_field() {
    let wall = json!([{ "x_m": [0.9, 1.1], "y_m": [0.9, 1.1] }]);
    for (plan, about, code, path) in [
        (said("obstacles", wall), Subject::Clearances, Code::LeafHits, "swing.open_deg"),
        (said("as_built", json!({ "link_m": 0.5 })), Subject::AsBuilt, Code::BuiltBroken, "as_built.link_m"),
        (said("tape", json!({ "error_m": 0.01 })), Subject::Tape, Code::TapeErrorBreaks, "tape.error_m"),
        (
            said("breakaway", json!({ "gearbox_torque_n_m": 100 })),
            Subject::Breakaway,
            Code::BreakawayNoWindow,
            "breakaway.slip_torque_n_m",
        ),
    ] {
        let one = of(&plan, about);
        assert_eq!((one.state, one.finding, one.path), (Judged::Over, Some(code), Some(path)));
    }
}

/// The forces on a person are measured on the finished gate, both of them, or not known: no number computed here makes people green.
#[test]
fn people_are_within_only_by_both_measured_forces() {
    let people = |record: Value| {
        let mut job = within();
        job["site"] =
            json!({ "public": false, "guarded": false, "homes": 1, "pedestrian_way": true, "signs_both_faces": true });
        job["contact"] = json!({ "stiffness_n_per_m": 1000 });
        job["record"] = record;
        of(&answer(&job).expect("valid"), Subject::People).state
    };
    assert_eq!(people(Value::Null), Judged::NotJudged);
    assert_eq!(people(json!({ "dynamic_force_n": 100 })), Judged::NotJudged);
    assert_eq!(people(json!({ "static_force_n": 100 })), Judged::NotJudged);
    assert_ne!(people(json!({ "dynamic_force_n": 100, "static_force_n": 100 })), Judged::NotJudged);
    // A measured force over its limit is over for the record and for people.
    let measured = said("record", json!({ "dynamic_force_n": 401, "static_force_n": 100 }));
    assert_eq!(state(&measured, Subject::Record), (Judged::Over, Some(Code::DynamicForceOver)));
    assert_eq!(state(&measured, Subject::People), (Judged::Over, Some(Code::DynamicForceOver)));
}

/// A warning with a threshold is tight, one without leaves within and is named.
#[test]
fn a_threshold_makes_tight_and_a_bare_warning_is_only_named() {
    let mut stormy = within();
    stormy["storm"] = json!({ "speed_m_s": 28, "force_coefficient": 1.4 });
    let plan = answer(&stormy).expect("valid");
    assert_eq!(state(&plan, Subject::Storm), (Judged::Within, Some(Code::OpenLeafHoldingUnknown)));
    stormy["breakaway"] = json!({ "slip_torque_n_m": 400 });
    let plan = answer(&stormy).expect("valid");
    assert_eq!(state(&plan, Subject::Storm), (Judged::Tight, Some(Code::StormMovesOpenLeaf)));
}

/// What was begun and is left out is not judged, whatever the rest of it says.
#[test]
fn a_part_left_out_is_not_judged() {
    for (block, begun, about) in [
        ("storm", json!({}), Subject::Storm),
        ("drag", json!({ "latch_deg": -3 }), Subject::Torque),
        ("tape", json!({ "error_m": -1 }), Subject::Tape),
        ("site", json!({ "means": [{}] }), Subject::People),
    ] {
        let mut job = within();
        job[block] = begun;
        let document: Document = serde_json::from_value(job).expect("JSON is a document");
        let plan = plan_partial(&document).expect("the rest stands").plan;
        let one = of(&plan, about);
        assert_eq!((one.state, one.unjudged), (Judged::NotJudged, Some(Unjudged::Begun)), "{block}");
        // Nor is the whole within, and it says for what it waits.
        assert_eq!((plan.overall.state, plan.overall.finding), (Judged::NotJudged, None), "{block}");
        assert!(!plan.overall.judged.contains(&about) && plan.rating.verdict == Verdict::Within, "{block}");
    }
}

fn partly(job: Value) -> Plan {
    let document: Document = serde_json::from_value(job).expect("JSON is a document");
    plan_partial(&document).expect("the rest stands").plan
}

/// What is worse than begun stays so; a part that is no subject's keeps the whole from being within, too.
#[test]
fn nothing_is_within_while_anything_is_left_out() {
    for (rated, state, about) in [
        (900.0, Judged::NotJudged, Subject::Storm),
        (400.0, Judged::Tight, Subject::Torque),
        (100.0, Judged::Over, Subject::Torque),
    ] {
        let mut job = within();
        job["operator"]["rated_torque_n_m"] = json!(rated);
        job["storm"] = json!({});
        let overall = partly(job).overall;
        assert_eq!((overall.state, overall.about), (state, about), "{rated}");
    }
    let mut aside = within();
    aside["setout"] = json!({ "step_m": -1 });
    let plan = partly(aside);
    assert_eq!((plan.overall.state, plan.overall.about), (Judged::NotJudged, Subject::Torque));
    assert!(plan.judgements.iter().all(|one| one.unjudged != Some(Unjudged::Begun)));
}

/// The overall is the worst of the judgements, and names every subject that was judged.
#[test]
fn the_overall_is_the_worst_that_was_judged() {
    let every: Value = serde_json::from_str(include_str!("../fixtures/schema-1/every-block.json")).expect("JSON");
    let mut stormy = within();
    stormy["storm"] = json!({ "speed_m_s": 28, "force_coefficient": 1.4 });
    stormy["breakaway"] = json!({ "slip_torque_n_m": 400 });
    let mut seen = Vec::new();
    for job in [within(), job(), stormy, every, with("/operator/rated_torque_n_m", json!(100))] {
        let plan = answer(&job).expect("valid");
        let judged: Vec<&Judgement> = plan.judgements.iter().filter(|one| one.state != Judged::NotJudged).collect();
        assert_eq!(plan.overall.judged, judged.iter().map(|one| one.about).collect::<Vec<_>>());
        let worst = [Judged::Over, Judged::Tight, Judged::Within];
        let worst = worst.into_iter().find(|state| judged.iter().any(|one| one.state == *state));
        assert_eq!(Some(plan.overall.state), worst);
        assert!(judged.iter().any(|one| one.about == plan.overall.about && Some(one.state) == worst));
        seen.push(plan.overall.state);
    }
    assert_eq!(seen, [Judged::Within, Judged::Tight, Judged::Tight, Judged::Over, Judged::Over]);
}

/// Why a subject is not judged: nothing was said of it, or it is an estimate that only an instrument judges.
#[test]
fn people_that_are_only_estimated_are_not_measured() {
    for (block, said_of_it) in [
        ("contact", json!({})),
        ("site", json!({})),
        ("record", json!({ "dynamic_force_n": 100 })),
        ("record", json!({ "static_force_n": 100 })),
    ] {
        let plan = said(block, said_of_it);
        let one = of(&plan, Subject::People);
        assert_eq!((one.state, one.unjudged), (Judged::NotJudged, Some(Unjudged::NotMeasured)), "{block}");
        assert!(!plan.overall.judged.contains(&Subject::People), "{block}");
    }
    let silent = of(&said("title", Value::Null), Subject::People);
    assert_eq!(silent.unjudged, Some(Unjudged::NotAsked));
}

/// A path that a judgement leads to is a field of the published schema, or a block of it.
#[test]
fn every_path_is_a_field_of_the_job() {
    let every: Value = serde_json::from_str(include_str!("../fixtures/schema-1/every-block.json")).expect("JSON");
    let mut led = 0;
    for job in [job(), within(), every, with("/operator/rated_torque_n_m", json!(100))] {
        for one in answer(&job).expect("valid").judgements {
            let Some(path) = one.path else { continue };
            led += 1;
            let stands = fields().iter().any(|rule| rule.path == path)
                || ["site.means", "site.public", "site.signs_both_faces", "site.pedestrian_way"].contains(&path);
            assert!(stands, "{path}");
        }
    }
    assert!(led > 4, "{led}");
}
