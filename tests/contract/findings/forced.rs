//! Every finding forced once: its subject, its state, the field that would change it, and what the page says of it in both languages: what was
//! found and the one thing to do, with no hole in either.

use super::{answer, found, job, measured, planned, straight};
use pintle_core::{
    describe,
    plan::{FindingCode as Code, Judged, Severity, Subject},
};
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// A job with another one's blocks in place of its own; `null` takes one away.
fn with(mut job: Value, blocks: Value) -> Value {
    for (block, value) in blocks.as_object().expect("blocks") {
        match (value, &mut job[block]) {
            (Value::Object(fields), Value::Object(own)) if block != "arm" && block != "hinges" => {
                own.extend(fields.clone());
            }
            (value, own) => *own = value.clone(),
        }
    }
    job
}

fn on(blocks: Value) -> Value {
    with(job(), blocks)
}

/// A motor that gives 12 °/s without load, behind a gear, and stalls at so much of the shaft's torque.
fn motor(stall: f64, gear: f64, downhill: f64, stiff: bool) -> Value {
    let motor =
        json!({ "stall_torque_n_m": stall / gear, "no_load_speed_deg_s": 12, "rated_v": 24, "gear_ratio": gear });
    let mut job = on(json!({ "motion": { "ramp_up_s": 0.2, "ramp_down_s": 0.2, "motor": motor },
        "lean": { "angle_deg": 4, "downhill_deg": downhill } }));
    if stiff {
        job["hinges"] = measured(200.0, 200.0);
    }
    job
}

fn rising(rise_m: f64) -> Value {
    let mut job = job();
    job["hinges"]["kind"] = json!("rising");
    job["hinges"]["rise_m"] = json!(rise_m);
    job["hinges"]["friction_coefficient"] = json!(0.02);
    job
}

fn stone(x: f64, y: f64) -> Value {
    json!({ "x_m": [x - 0.01, x + 0.01], "y_m": [y - 0.01, y + 0.01] })
}

fn storm() -> Value {
    json!({ "speed_m_s": 28, "force_coefficient": 1.4 })
}

fn weak() -> Value {
    json!({ "rated_torque_n_m": 100, "peak_torque_n_m": 150 })
}

fn fitted(means: Value) -> Value {
    on(json!({ "site": { "public": false, "guarded": false, "homes": 1, "means": means } }))
}

/// What torque, arm and hinges find.
fn of_the_gate() -> Vec<(Code, Value)> {
    let asce = json!({ "kind": "asce7", "edition": "7-16", "level": "strength", "exposure": "C", "speed_m_s": 20, "height_m": 2 });
    let shaped =
        json!({ "speed_m_s": 12, "shape": { "kind": "asce7_wall", "solidity": 0.8 }, "force_coefficient": null });
    let straight_open = json!({ "shaft_x_m": 0.43, "shaft_y_m": -0.3, "bracket_u_m": 0.9, "bracket_v_m": -0.08, "crank_m": 0.75,
        "link_m": 0.5, "elbow": "right" });
    let flat = json!({ "shaft_x_m": -0.25, "shaft_y_m": 0.6, "bracket_u_m": 1.2, "bracket_v_m": 0.06, "crank_m": 1.22, "link_m": 0.7,
        "elbow": "left" });
    let mut friction = on(json!({ "operator": { "rated_torque_n_m": 320, "peak_torque_n_m": null } }));
    (friction["hinges"]["friction_low"], friction["hinges"]["friction_high"]) = (json!(0.1), json!(0.6));
    let mut lost = on(json!({ "wind": { "speed_m_s": null, "from": asce } }));
    lost["operator"]["rated_torque_n_m"] = json!(900);
    vec![
        (Code::DemandOverRated, on(json!({ "operator": weak() }))),
        (Code::DemandOverPeak, on(json!({ "operator": weak() }))),
        (Code::ReserveBelowRequired, job()),
        (Code::DeadPointClosed, straight()),
        (Code::DeadPointOpen, with(straight(), json!({ "arm": straight_open }))),
        (Code::TransmissionLow, on(json!({ "arm": flat }))),
        (Code::LeafDrivesShaft, job()),
        (Code::PullBiasAgainstLean, on(json!({ "hinges": measured(60.0, 20.0) }))),
        (Code::LeanDrift, on(json!({ "hinges": measured(5.0, 5.0), "lean": { "angle_deg": 1, "downhill_deg": 30 } }))),
        (Code::RampRunsShut, rising(0.1)),
        (Code::RampRunsOpen, rising(-0.1)),
        (Code::BandOverRated, friction),
        (Code::WindAtStrengthLevel, lost),
        (Code::WindSolidityDiffers, on(json!({ "wind": shaped, "leaf": { "height_m": 1.6 } }))),
        (Code::StormSolidityDiffers, on(json!({ "storm": shaped, "leaf": { "height_m": 1.6 } }))),
        (Code::GroundTouches, on(json!({ "ground": { "gap_m": 0.05, "slope_deg": 2, "uphill_deg": 90 } }))),
        (
            Code::BracketRise,
            on(
                json!({ "lean": { "angle_deg": 1, "downhill_deg": 0 }, "ground": { "gap_m": 0.2, "joint_allowance_m": 0.005 } }),
            ),
        ),
    ]
}

/// What the room, the tape and the arm as built find.
fn of_the_place() -> Vec<(Code, Value)> {
    let room = |room: Value| {
        let mut job = straight();
        pintle_tests::around(&mut job, room);
        job
    };
    let body = |along: f64, around: Value| {
        let body = json!({ "along_m": [-0.1, along], "across_m": [-0.1, 0.1] });
        with(room(around), json!({ "operator": { "body": body } }))
    };
    let said_twice = |migrated: Value| {
        with(
            straight(),
            json!({ "arm_half_width_m": 0.03, "leaf": { "thickness_m": 0.06 }, "obstacles": [], "migrated": migrated }),
        )
    };
    let post = json!({ "x_m": [-0.6, -0.122], "y_m": [-0.3, 0.3] });
    let tape = |job: Value| with(job, json!({ "tape": { "error_m": 0.003 } }));
    let mut costly = tape(straight());
    costly["arm"]["crank_m"] = json!(0.77);
    let (nominal, worst) = {
        let tape = planned(&costly).tape.expect("asked for");
        (400.0 / tape.planned.reserve.expect("some"), 400.0 / tape.worst.reserve.expect("some"))
    };
    costly["operator"]["rated_torque_n_m"] = json!(0.5 * (nominal + worst));
    let mut breaking = tape(straight());
    breaking["arm"]["link_m"] = json!(0.5005);
    let built = json!({ "as_built": { "shaft_y_m": 0.46, "crank_m": 0.885 } });
    vec![
        (Code::ArmHits, room(json!({ "obstacles": [stone(-0.3, 0.43)] }))),
        (Code::ArmHitsLeaf, room(json!({ "front_m": 0.1 }))),
        (Code::LeafHits, on(json!({ "obstacles": [stone(1.0, 1.0)] }))),
        (Code::OperatorHits, body(0.1, json!({ "obstacles": [stone(-0.35, 0.43)] }))),
        (Code::OperatorHitsLeaf, body(0.1, json!({ "front_m": 0.4 }))),
        (Code::ArmWidthSaidTwice, said_twice(json!({ "arm_half_width_other_m": 0.02 }))),
        (Code::LeafThicknessSaidTwice, said_twice(json!({ "leaf_thickness_other_m": 0.05 }))),
        (Code::ArmCrushes, room(json!({ "obstacles": [stone(-0.35, 0.35)] }))),
        (Code::ElbowNearsLeaf, room(json!({ "front_m": 0.07, "arm_half_width_m": 0.05 }))),
        (
            Code::OpenGapSmall,
            room(json!({ "front_m": 0.05, "obstacles": [{ "x_m": [-3.0, -0.25], "y_m": [1.0, 2.0] }] })),
        ),
        (Code::HingeGapCloses, room(json!({ "front_m": 0.05, "back_m": 0.05, "heel_m": 0.1, "hinge_post": post }))),
        (Code::TapeErrorCosts, costly),
        (Code::TapeErrorBreaks, breaking),
        (Code::BuiltBroken, with(straight(), json!({ "as_built": { "link_m": 0.49 } }))),
        (Code::BuiltOverRated, with(on(built.clone()), json!({ "operator": weak() }))),
        (Code::BuiltReserveBelowRequired, on(built)),
    ]
}

/// What movement, breakaway and storm find.
fn of_the_drive() -> Vec<(Code, Value)> {
    let ramps = |seconds: f64| json!({ "ramp_up_s": seconds, "ramp_down_s": seconds });
    let peak = planned(&job()).peak.shaft_torque_n_m;
    let rated = |rated: f64, most: f64| {
        on(json!({ "motion": ramps(0.2), "operator": { "rated_torque_n_m": rated, "peak_torque_n_m": most } }))
    };
    let duty = |duty: Value| on(json!({ "motion": { "ramp_up_s": 0.2, "ramp_down_s": 0.2, "duty": duty } }));
    let slips = |breakaway: Value| on(json!({ "breakaway": breakaway }));
    let blows = |holding: Value| on(json!({ "storm": storm(), "holding": holding }));
    let calm = |hinges: Value, lean: Value| {
        on(json!({ "wind": { "speed_m_s": 0 }, "motion": {}, "hinges": hinges, "lean": lean }))
    };
    let closed = || planned(&blows(json!({}))).holding.expect("asked for").torque_n_m;
    vec![
        (Code::MotionOverPeak, rated(peak, peak * 1.0005)),
        (Code::MotionOverRated, rated(peak * 1.0005, 5000.0)),
        (
            Code::RampsTooLong,
            with(on(json!({ "motion": ramps(20.0) })), json!({ "operator": { "shaft_speed_deg_s": 20 } })),
        ),
        (Code::CoastRunsOn, calm(measured(5.0, 5.0), json!({ "angle_deg": 3, "downhill_deg": 90 }))),
        (Code::HandForceHigh, on(json!({ "motion": {}, "hinges": measured(300.0, 300.0) }))),
        (Code::OpeningStalls, motor(110.0, 1.0, 0.0, true)),
        (Code::ClosingStalls, motor(110.0, 1.0, 90.0, true)),
        (Code::OpeningDrivenBack, motor(60.0, 1.0, 0.0, false)),
        (Code::ClosingDrivenBack, motor(60.0, 1.0, 90.0, false)),
        (Code::OpeningCreeps, motor(900.0, 200.0, 0.0, true)),
        (Code::ClosingCreeps, motor(900.0, 200.0, 0.0, true)),
        (Code::DutyExceeded, duty(json!({ "cycles_per_day": 3, "rated_cycles_per_day": 2 }))),
        (Code::DutyNoTime, duty(json!({ "cycles_per_hour": 500 }))),
        (Code::BreakawayNotForPeople, slips(json!({}))),
        (Code::BreakawayToggleZone, with(straight(), json!({ "breakaway": {} }))),
        (Code::BreakawayNoWindow, slips(json!({ "gearbox_torque_n_m": 100 }))),
        (Code::BreakawayNoLimit, slips(json!({}))),
        (Code::BreakawaySlipsEarly, slips(json!({ "gearbox_torque_n_m": 2000, "slip_torque_n_m": 50 }))),
        (Code::BreakawaySlipsLate, slips(json!({ "gearbox_torque_n_m": 2000, "slip_torque_n_m": 1800 }))),
        (Code::HoldingGivesWay, blows(json!({ "shaft_torque_n_m": 10 }))),
        (Code::HoldingUnknown, blows(json!({}))),
        (Code::HoldingIsNoLock, blows(json!({ "shaft_torque_n_m": closed() * 1.1 }))),
        (Code::StormMovesOpenLeaf, blows(json!({ "shaft_torque_n_m": 100 }))),
        (Code::OpenLeafHoldingUnknown, on(json!({ "storm": storm() }))),
    ]
}

/// What people, the site and the instrument find.
fn of_people() -> Vec<(Code, Value)> {
    let touched = |contact: Value| on(json!({ "motion": {}, "contact": contact }));
    let strip =
        json!({ "on": "leaf", "from_x_m": 2.7, "from_y_m": 0, "to_x_m": 2.7, "to_y_m": 0.01, "half_width_m": 0.01 });
    let edge = json!([{ "kind": "contact", "monitored": true, "reaches": ["leading_edge_closing"], "area": strip }]);
    let measured = |key: &str| on(json!({ "record": { key: 450 } }));
    vec![
        (Code::ForceMustBeMeasured, touched(json!({}))),
        (Code::PushOverLimit, touched(json!({ "static_limit_n": 50 }))),
        (Code::ImpactOverLimit, touched(json!({ "dynamic_limit_n": 50 }))),
        (Code::ImpactOverWideLimit, touched(json!({}))),
        (Code::ResponseTooLong, touched(json!({ "response_s": 0.8 }))),
        (Code::EdgeTravelShort, touched(json!({ "edge_travel_m": 0.001 }))),
        (Code::ClassUndecided, on(json!({ "site": {} }))),
        (Code::MeansMissingOpening, fitted(json!([]))),
        (Code::MeansMissingClosing, fitted(json!([]))),
        (Code::ZonesUnreached, fitted(json!([]))),
        (Code::SensorsMissZones, fitted(edge)),
        (Code::DynamicForceOver, measured("dynamic_force_n")),
        (Code::StaticForceOver, measured("static_force_n")),
        (Code::SignsMissing, on(json!({ "site": {} }))),
        (Code::PedestrianWayMissing, on(json!({ "site": {} }))),
    ]
}

fn forced() -> Vec<(Code, Value)> {
    [of_the_gate(), of_the_place(), of_the_drive(), of_people()].concat()
}

fn named(code: Code) -> String {
    serde_json::to_value(code).expect("JSON").as_str().expect("a word").to_owned()
}

/// Names between braces.
fn placeholders(sentence: &str) -> BTreeSet<&str> {
    sentence.split('{').skip(1).filter_map(|part| part.split_once('}').map(|(name, _)| name)).collect()
}

fn tables() -> [(&'static str, Value); 2] {
    let read = |text: &str| serde_json::from_str(text).expect("JSON");
    let spanish = include_str!("../../../www/strings/es.json");
    [("en", read(include_str!("../../../www/strings/en.json"))), ("es", read(spanish))]
}

/// No code is left out: the list of them is the published schema's.
#[test]
fn no_finding_is_left_unforced() {
    let schema = describe::plan_schema();
    let codes = schema.pointer("/properties/findings/items/properties/code/oneOf").expect("codes").as_array();
    let all: BTreeSet<&str> = codes.expect("a list").iter().filter_map(|code| code["const"].as_str()).collect();
    let forced: Vec<String> = forced().into_iter().map(|(code, _)| named(code)).collect();
    assert_eq!(forced.iter().map(String::as_str).collect::<BTreeSet<_>>(), all);
    assert_eq!(forced.len(), all.len(), "each once");
}

#[test]
fn each_finding_has_a_subject_a_state_one_thing_to_do_and_no_hole() {
    let tables = tables();
    let all = forced();
    let mut silent = Vec::new();
    for (code, job) in &all {
        match answer(job) {
            Ok(plan) if plan.findings.iter().any(|finding| finding.code == *code) => {}
            Ok(_) => silent.push(format!("{code:?}")),
            Err(invalid) => silent.push(format!("{code:?}: {invalid}")),
        }
    }
    assert!(silent.is_empty(), "not found: {silent:#?}");
    for (code, job) in all {
        let finding = found(&job, code).unwrap_or_else(|| panic!("no {code:?}: {job}"));
        assert_eq!((finding.about, finding.path), (code.about(), code.path()));
        let plan = planned(&job);
        let judged = plan.judgements.iter().find(|one| one.about == finding.about).expect("every subject is told");
        // A stop is over; what states a threshold is tight where the subject is judged; an estimate about people never is.
        let limits = finding.values.iter().any(|value| ["limit", "least", "most", "wanted"].contains(&value.name));
        match finding.severity {
            Severity::Error => assert_eq!((judged.state, plan.overall.state), (Judged::Over, Judged::Over), "{code:?}"),
            _ if finding.about == Subject::People => assert_eq!(judged.state, Judged::NotJudged, "{code:?}"),
            Severity::Warning if limits => assert!([Judged::Tight, Judged::Over].contains(&judged.state), "{code:?}"),
            _ => assert_ne!(judged.state, Judged::NotJudged, "{code:?}"),
        }
        assert!(judged.finding.is_some(), "{code:?}");
        let carried: BTreeSet<&str> = finding.values.iter().map(|value| value.name).collect();
        for (language, table) in &tables {
            for of in ["findings", "actions"] {
                let sentence = table[of][named(code)].as_str();
                let sentence = sentence.unwrap_or_else(|| panic!("{language}: {of} has nothing for {code:?}"));
                let holes: Vec<_> = placeholders(sentence).difference(&carried).copied().collect();
                assert!(holes.is_empty(), "{language}: {of}.{code:?} has no {holes:?}");
                assert!(sentence.ends_with('.') && sentence.len() > 8, "{language}: {of}.{code:?}: {sentence}");
            }
        }
    }
}
