//! The optional blocks: wind from standards, members, hinges, storm, drag, ice, ground, uncertainty, room, marks.

use super::carriers::{motion, site};
use super::{answer, fault, faults, job, old, with};
use pintle_core::fault::FaultCode;
use serde_json::{Value, json};

fn code_at(job: &Value) -> (String, FaultCode) {
    let fault = fault(job);
    (fault.path, fault.code)
}

fn en1991() -> Value {
    json!({ "kind": "en1991", "terrain": "II", "basic_m_s": 20, "height_m": 2 })
}

#[test]
fn a_value_said_twice_is_refused() {
    let twice = with("/wind/from", en1991());
    assert_eq!(code_at(&twice), ("wind.speed_m_s".into(), FaultCode::SaidTwice));
    let mut job = with("/leaf/height_m", json!(1.6));
    job["wind"]["shape"] = json!({ "kind": "en1991_wall", "solidity": 1 });
    assert_eq!(code_at(&job), ("wind.force_coefficient".into(), FaultCode::SaidTwice));
    let mut job = with("/lean", json!({ "angle_deg": 1, "plumb_offset_m": 0.01, "plumb_height_m": 1 }));
    assert_eq!(code_at(&job), ("lean.angle_deg".into(), FaultCode::SaidTwice));
    job["lean"] = json!({ "plumb_offset_m": 0.01 });
    assert_eq!(code_at(&job), ("lean.plumb_height_m".into(), FaultCode::HalfOfPair));
}

#[test]
fn words_of_the_standards_are_checked() {
    let mut job = with("/wind/speed_m_s", Value::Null);
    job["wind"]["from"] = json!({ "kind": "asce7", "edition": "7-99", "level": "allowable", "exposure": "A", "speed_m_s": 40, "height_m": 2 });
    assert_eq!(
        faults(&job),
        [("wind.from.edition".into(), FaultCode::NotOneOf), ("wind.from.exposure".into(), FaultCode::NotOneOf)]
    );
    job["wind"]["from"] = json!({ "kind": "en1991", "terrain": "V", "basic_m_s": 20, "height_m": 2 });
    assert_eq!(code_at(&job), ("wind.from.terrain".into(), FaultCode::NotOneOf));
    job["wind"]["from"] = json!({ "kind": "asce7", "edition": "7-16", "level": "allowable", "exposure": "C", "speed_m_s": 40, "height_m": 2, "importance": 1.15 });
    assert_eq!(code_at(&job), ("wind.from.importance".into(), FaultCode::OutOfRange));
    job["wind"]["from"] = json!({ "kind": "gale" });
    assert_eq!(code_at(&job), ("wind.from.kind".into(), FaultCode::NotOneOf));
}

#[test]
fn a_shape_keeps_to_its_table() {
    let mut job = with("/leaf/height_m", json!(1.6));
    job["wind"]["force_coefficient"] = Value::Null;
    for (shape, path) in [
        (json!({ "kind": "asce7_wall", "solidity": 0.6 }), "wind.shape.solidity"),
        (json!({ "kind": "en1991_wall", "solidity": 0.75 }), "wind.shape.solidity"),
        (json!({ "kind": "asce7_open", "bars": "round", "bar_m": 0.1, "pitch_m": 0.12 }), "wind.shape.bar_m"),
    ] {
        job["wind"]["shape"] = shape;
        assert_eq!(code_at(&job), (path.into(), FaultCode::OutsideShape));
    }
    job["wind"]["shape"] = json!({ "kind": "asce7_wall", "solidity": 1.5 });
    assert!(faults(&job).contains(&("wind.shape.solidity".into(), FaultCode::OutOfRange)));
    job["wind"]["shape"] = json!({ "kind": "asce7_wall", "solidity": 1 });
    job["leaf"]["height_m"] = Value::Null;
    assert_eq!(code_at(&job), ("leaf.height_m".into(), FaultCode::Missing));
}

#[test]
fn the_storm_reports_its_own_paths() {
    let storm = |storm: Value| {
        let mut job = job();
        job["storm"] = storm;
        job
    };
    assert_eq!(
        code_at(&storm(json!({ "speed_m_s": 120, "force_coefficient": 1.4 }))),
        ("storm.speed_m_s".into(), FaultCode::OutOfRange)
    );
    assert_eq!(code_at(&storm(json!({ "force_coefficient": 1.4 }))), ("storm.speed_m_s".into(), FaultCode::Missing));
    assert_eq!(
        code_at(&storm(json!({ "force_coefficient": 1.4, "from": en1991(), "gusts": 3 }))),
        ("storm.gusts".into(), FaultCode::UnknownField)
    );
}

#[test]
fn members_that_cannot_exist_are_refused() {
    let members = |members: Value| with("/leaf/members", members);
    let tube =
        |wall: f64| json!({ "section": "tube", "face_m": 0.04, "wall_m": wall, "place": { "from_m": 0, "to_m": 3 } });
    assert_eq!(code_at(&members(json!([]))), ("leaf.members".into(), FaultCode::NoMembers));
    assert_eq!(
        code_at(&members(json!([tube(0.003), tube(0.021)]))),
        ("leaf.members.1.wall_m".into(), FaultCode::WallTooThick)
    );
    assert_eq!(
        code_at(&members(
            json!([{ "section": "round_tube", "face_m": 0.04, "wall_m": 0.021, "place": { "from_m": 0, "to_m": 3 } }])
        )),
        ("leaf.members.0.wall_m".into(), FaultCode::WallTooThick)
    );
    assert_eq!(
        code_at(&members(
            json!([{ "section": "mesh", "wire_m": 0.02, "pitch_m": 0.01, "place": { "from_m": 0, "to_m": 3, "height_m": 1 } }])
        )),
        ("leaf.members.0.wire_m".into(), FaultCode::OutOfRange)
    );
    assert_eq!(
        code_at(&members(json!([{ "section": "sheet", "thickness_m": 0.002, "place": { "from_m": 0, "to_m": 3 } }]))),
        ("leaf.members.0.place.height_m".into(), FaultCode::Missing)
    );
    assert_eq!(
        code_at(&members(
            json!([{ "section": "bar", "face_m": 0.02, "place": { "from_m": 0, "to_m": 9, "height_m": 1 } }])
        )),
        ("leaf.members.0.place.to_m".into(), FaultCode::OutsideLeaf)
    );
    assert_eq!(code_at(&members(json!([null]))), ("leaf.members.0".into(), FaultCode::WrongType));
    assert_eq!(code_at(&members(json!("tubes"))), ("leaf.members".into(), FaultCode::WrongType));
    assert_eq!(
        code_at(&members(json!([{ "section": "beam" }]))),
        ("leaf.members.0.section".into(), FaultCode::NotOneOf)
    );
}

#[test]
fn uncertainties_name_fields_and_are_fractions() {
    let stated = |stated: Value| {
        let mut job = job();
        job["uncertainty"] = stated;
        job
    };
    assert_eq!(
        code_at(&stated(json!({ "leaf.weight": 0.1 }))),
        ("uncertainty.leaf.weight".into(), FaultCode::UnknownField)
    );
    assert_eq!(
        code_at(&stated(json!({ "leaf.mass_kg": 2 }))),
        ("uncertainty.leaf.mass_kg".into(), FaultCode::OutOfRange)
    );
    assert_eq!(
        code_at(&stated(json!({ "leaf.mass_kg": "x" }))),
        ("uncertainty.leaf.mass_kg".into(), FaultCode::WrongType)
    );
    assert_eq!(code_at(&stated(json!([]))), ("uncertainty".into(), FaultCode::WrongType));
    assert!(answer(&stated(json!({}))).is_ok());
}

#[test]
fn what_fitting_adds_is_checked() {
    let block = |name: &str, value: Value| {
        let mut job = job();
        job[name] = value;
        job
    };
    assert_eq!(
        code_at(&block("marks", json!({ "anchor_along_m": 0.2 }))),
        ("marks.anchor_across_m".into(), FaultCode::HalfOfPair)
    );
    assert_eq!(
        code_at(&block("marks", json!({ "crossbar_level_m": 0.6 }))),
        ("marks.pad_level_m".into(), FaultCode::HalfOfPair)
    );
    assert_eq!(
        code_at(&old("/room", json!({ "front_m": -0.03, "back_m": 0.02 }))),
        ("room.front_m".into(), FaultCode::LeastAboveMost)
    );
    let crossed = json!({ "obstacles": [{ "x_m": [0, 1], "y_m": [2, 3] }, { "x_m": [1, 0], "y_m": [2, 3] }] });
    assert_eq!(code_at(&old("/room", crossed)), ("room.obstacles.1.x_m.1".into(), FaultCode::LeastAboveMost));
    let post = json!({ "hinge_post": { "x_m": [-0.2, -0.1], "y_m": [0.1, -0.1] } });
    assert_eq!(code_at(&old("/room", post)), ("room.hinge_post.y_m.1".into(), FaultCode::LeastAboveMost));
    assert_eq!(
        code_at(&old("/room", json!({ "hinge_post": { "x_m": [-0.2, -0.1] } }))),
        ("room.hinge_post.y_m".into(), FaultCode::Missing)
    );
    assert_eq!(code_at(&block("tape", json!({ "error_mm": 5 }))), ("tape.error_mm".into(), FaultCode::UnknownField));
    assert_eq!(code_at(&block("as_built", json!([]))), ("as_built".into(), FaultCode::WrongType));
    // What was built is told of, not refused: the plan stands.
    let built = answer(&block("as_built", json!({ "link_m": 0.5 }))).expect("the plan's own arm works");
    let built = built.as_built.expect("it was asked for");
    assert!(built.fitted.is_none());
    assert_eq!(
        built.fault.map(|fault| (fault.path, fault.code)),
        Some(("as_built.link_m".into(), FaultCode::ArmTooShort))
    );
}

#[test]
fn motion_and_safety_blocks_say_everything_that_is_wrong() {
    let put = |block: &str, value: Value| {
        let mut job = job();
        job[block] = value;
        job
    };
    let mut silent = put("motion", motion());
    silent["operator"]["shaft_speed_deg_s"] = Value::Null;
    assert_eq!(code_at(&silent), ("operator.shaft_speed_deg_s".into(), FaultCode::Missing));
    assert_eq!(code_at(&put("holding", json!({}))), ("storm".into(), FaultCode::Missing));
    assert_eq!(
        faults(&put(
            "motion",
            json!({ "ramp_s": 1, "motor": { "rated_v": "12" }, "duty": { "cycles_per_hour": 2.5 } })
        )),
        [
            ("motion.motor.stall_torque_n_m".into(), FaultCode::Missing),
            ("motion.motor.no_load_speed_deg_s".into(), FaultCode::Missing),
            ("motion.motor.rated_v".into(), FaultCode::WrongType),
            ("motion.duty.cycles_per_hour".into(), FaultCode::WrongType),
            ("motion.ramp_s".into(), FaultCode::UnknownField),
        ]
    );
    let wrong = json!({ "public": "yes",
        "means": [{ "kind": "net" }, { "kind": "contact", "reaches": ["roof", 3] }, null] });
    assert_eq!(
        faults(&put("site", wrong)),
        [
            ("site.public".into(), FaultCode::WrongType),
            ("site.means.0.kind".into(), FaultCode::NotOneOf),
            ("site.means.1.reaches.0".into(), FaultCode::NotOneOf),
            ("site.means.1.reaches.1".into(), FaultCode::WrongType),
            ("site.means.2".into(), FaultCode::WrongType),
        ]
    );
    let crossed = with("/obstacles", json!([{ "x_m": [2, 1], "y_m": [0, 1] }]));
    assert_eq!(code_at(&crossed), ("obstacles.0.x_m.1".into(), FaultCode::LeastAboveMost));
    let many = put("site", json!({ "means": vec![json!({ "kind": "contact" }); 65] }));
    assert_eq!(code_at(&many), ("site.means".into(), FaultCode::OutOfRange));
}

#[test]
fn motion_and_safety_keep_the_fields_there_were() {
    let plain = serde_json::to_value(answer(&job()).expect("valid")).expect("serialises");
    let mut job = job();
    job["motion"] = motion();
    job["site"] = site();
    (job["breakaway"], job["contact"]) = (json!({}), json!({}));
    let full = serde_json::to_value(answer(&job).expect("valid")).expect("serialises");
    for (key, value) in plain.as_object().expect("an object") {
        if !["findings", "overall", "judgements", "assumed"].contains(&key.as_str()) {
            assert_eq!(&full[key], value, "{key}");
        }
    }
    for block in ["motion", "breakaway", "person", "entrapment"] {
        assert!(full[block].is_object(), "{block}");
    }
    assert_eq!(full["breakaway"]["protects_people"], json!(false));
    assert_eq!(full["person"]["must_be_measured"], json!(true));
}

#[test]
fn a_job_without_additions_has_a_plan_without_them() {
    let plan = serde_json::to_value(answer(&job()).expect("valid")).expect("serialises");
    for block in [
        "clearances",
        "mark_out",
        "tape",
        "as_built",
        "wind",
        "members",
        "band",
        "sensitivity",
        "storm",
        "ground",
        "motion",
        "breakaway",
        "holding",
        "person",
        "entrapment",
    ] {
        assert!(plan.get(block).is_none(), "{block}");
    }
}
