//! What is refused between fields: on the border, and just beyond it.

use super::{answer, fault, faults, old, with};
use pintle_core::fault::{Allowed, Example, FaultCode};
use serde_json::{Value, json};

/// Path, code, what was found, the range that is allowed, the example.
type Told = (String, FaultCode, Option<f64>, Option<(Option<f64>, Option<f64>)>, Option<f64>);

fn told(job: &Value) -> Told {
    let fault = fault(job);
    let range = match fault.allowed {
        Some(Allowed::Range { least, most, .. }) => Some((least, most)),
        _ => None,
    };
    let example = match fault.example {
        Some(Example::Number(number)) => Some(number),
        _ => None,
    };
    (fault.path, fault.code, fault.found.and_then(|found| found.parse().ok()), range, example)
}

#[track_caller]
fn passes(job: &Value) {
    assert!(answer(job).is_ok(), "{:?}", answer(job));
}

#[test]
fn a_leaf_has_its_front_before_its_back() {
    let room = |front: f64, back: f64| old("/room", json!({ "front_m": front, "back_m": back }));
    passes(&room(-0.1, 0.1));
    passes(&room(0.1, -0.1));
    let expected =
        ("room.front_m".into(), FaultCode::LeastAboveMost, Some(-0.11), Some((Some(-0.1), Some(0.5))), Some(-0.1));
    assert_eq!(told(&room(-0.11, 0.1)), expected);
}

#[test]
fn rectangles_the_wrong_way_round() {
    let rectangle = |least: f64| json!({ "x_m": [least, -2.0], "y_m": [2, 3] });
    for (room, path) in [
        (json!({ "hinge_post": rectangle(-1.5) }), "room.hinge_post.x_m.1"),
        (json!({ "obstacles": [rectangle(-3.0), rectangle(-1.5)] }), "room.obstacles.1.x_m.1"),
    ] {
        let expected =
            (path.to_string(), FaultCode::LeastAboveMost, Some(-2.0), Some((Some(-1.5), Some(20.0))), Some(-1.5));
        assert_eq!(told(&old("/room", room)), expected);
    }
    // One without width is a line, and allowed.
    passes(&old("/room", json!({ "hinge_post": rectangle(-2.0), "obstacles": [rectangle(-2.0)] })));
    let site = |least: f64| {
        old(
            "/site",
            json!({ "obstacles": [{ "x_m": [-3, -2], "y_m": [2, 3] }, { "x_m": [0, 1], "y_m": [least, 2.0] }] }),
        )
    };
    passes(&site(2.0));
    let expected = (
        "site.obstacles.1.y_m.1".into(),
        FaultCode::LeastAboveMost,
        Some(2.0),
        Some((Some(2.5), Some(20.0))),
        Some(2.5),
    );
    assert_eq!(told(&site(2.5)), expected);
    // A post that cannot be read is one fault, and no job without a post.
    assert_eq!(
        faults(&old("/room", json!({ "hinge_post": { "x_m": [0, 1] } }))),
        [("room.hinge_post.y_m".into(), FaultCode::Missing)]
    );
    let range = fault(&old("/room", json!({ "hinge_post": { "x_m": [0, 1, 2], "y_m": [0, 1] } })));
    assert_eq!((range.path.as_str(), range.code), ("room.hinge_post.x_m", FaultCode::WrongType));
    passes(&old("/room", json!({ "hinge_post": null, "obstacles": null })));
}

#[test]
fn marks_come_in_pairs() {
    for (one, other, example) in [
        ("anchor_along_m", "anchor_across_m", 0.15),
        ("anchor_across_m", "anchor_along_m", 0.25),
        ("pad_level_m", "crossbar_level_m", 0.6),
        ("crossbar_level_m", "pad_level_m", 0.1),
    ] {
        let (path, code, found, _, given) = told(&with("/marks", json!({ one: 0.5 })));
        assert_eq!((path, code, found, given), (format!("marks.{other}"), FaultCode::HalfOfPair, None, Some(example)));
        passes(&with("/marks", json!({ one: 0.5, other: 0.5 })));
    }
}

#[test]
fn a_lean_is_said_once_and_whole() {
    let lean = |lean: Value| fault(&with("/lean", lean));
    let twice = lean(json!({ "angle_deg": 1, "plumb_offset_m": 0.01, "plumb_height_m": 1 }));
    assert_eq!(
        (twice.path.as_str(), twice.code, twice.found.as_deref()),
        ("lean.angle_deg", FaultCode::SaidTwice, Some("1"))
    );
    let half = lean(json!({ "plumb_offset_m": 0.01 }));
    assert_eq!(
        (half.path.as_str(), half.code, half.example),
        ("lean.plumb_height_m", FaultCode::HalfOfPair, Some(Example::Number(1.5)))
    );
    let half = lean(json!({ "plumb_height_m": 1 }));
    assert_eq!(
        (half.path.as_str(), half.code, half.example),
        ("lean.plumb_offset_m", FaultCode::HalfOfPair, Some(Example::Number(0.01)))
    );
}

#[test]
fn centres_lie_on_the_leaf_and_collars_are_rings() {
    for key in ["mass_centroid_m", "wind_centroid_m"] {
        passes(&with(&format!("/leaf/{key}"), json!(3.2)));
        let expected =
            (format!("leaf.{key}"), FaultCode::OutsideLeaf, Some(3.3), Some((Some(-1.0), Some(3.2))), Some(1.6));
        assert_eq!(told(&with(&format!("/leaf/{key}"), json!(3.3))), expected);
    }
    for kind in ["plain", "rising"] {
        let mut job = with("/hinges/kind", json!(kind));
        if kind == "rising" {
            job["hinges"]["rise_m"] = json!(0.02);
        }
        job["hinges"]["thrust_outer_radius_m"] = json!(0.012);
        passes(&job);
        job["hinges"]["thrust_outer_radius_m"] = json!(0.011);
        let expected = (
            "hinges.thrust_outer_radius_m".into(),
            FaultCode::OuterBelowInner,
            Some(0.011),
            Some((Some(0.012), Some(0.2))),
            Some(0.012),
        );
        assert_eq!(told(&job), expected);
    }
}

/// At 3.2 m a lattice with less than 70 % solid, walls by their tables: the border of each shape belongs to it.
#[test]
fn shapes_keep_to_their_tables() {
    let shape = |shape: Value| {
        let mut job = with("/wind/shape", shape);
        job["wind"]["force_coefficient"] = Value::Null;
        job
    };
    let asce7 = |solidity: f64| shape(json!({ "kind": "asce7_wall", "solidity": solidity }));
    let en1991 = |solidity: f64| shape(json!({ "kind": "en1991_wall", "solidity": solidity }));
    let lattice = |solidity: f64| shape(json!({ "kind": "en1991_lattice", "solidity": solidity }));
    let open = |bar: f64| shape(json!({ "kind": "asce7_open", "bars": "round", "bar_m": bar, "pitch_m": 0.2 }));
    for (border, beyond, key, least, most, found) in [
        (asce7(0.7), asce7(0.69), "solidity", 0.7, 1.0, 0.69),
        (en1991(0.8), en1991(0.79), "solidity", 0.8, 1.0, 0.79),
        (lattice(0.8), lattice(0.81), "solidity", 0.0, 0.8, 0.81),
        (open(0.7 * 0.2), open(0.15), "bar_m", 0.0, 0.7 * 0.2, 0.15),
    ] {
        passes(&border);
        let expected = (
            format!("wind.shape.{key}"),
            FaultCode::OutsideShape,
            Some(found),
            Some((Some(least), Some(most))),
            Some(most),
        );
        assert_eq!(told(&beyond), expected);
    }
    passes(&asce7(1.0));
    let mut low = asce7(1.0);
    low["leaf"]["height_m"] = Value::Null;
    let expected = ("leaf.height_m".into(), FaultCode::Missing, None, Some((Some(0.2), Some(6.0))), Some(1.6));
    assert_eq!(told(&low), expected);
    // An importance is the business of 7-05 alone; 1 says nothing.
    let from = |edition: &str, importance: f64| {
        let mut job = with("/wind/speed_m_s", Value::Null);
        job["wind"]["from"] = json!({ "kind": "asce7", "edition": edition, "level": "allowable", "exposure": "B", "speed_m_s": 40,
            "height_m": 2, "importance": importance });
        job
    };
    passes(&from("7-05", 1.15));
    passes(&from("7-16", 1.0));
    let expected =
        ("wind.from.importance".into(), FaultCode::OutOfRange, Some(1.15), Some((Some(1.0), Some(1.0))), Some(1.0));
    assert_eq!(told(&from("7-16", 1.15)), expected);
    // The storm is held to the same.
    let mut storm = with("/storm", json!({ "speed_m_s": 20, "shape": { "kind": "en1991_wall", "solidity": 0.5 } }));
    assert_eq!(fault(&storm).path, "storm.shape.solidity");
    storm["storm"] = json!({ "speed_m_s": 20, "force_coefficient": 1.2, "from": { "kind": "beaufort", "number": 6, "gust_factor": 1.6, "height_factor": 0.7 } });
    assert_eq!((fault(&storm).path.as_str(), fault(&storm).code), ("storm.speed_m_s", FaultCode::SaidTwice));
    // A wind needs a speed and what it blows on, each in one of two ways.
    for key in ["speed_m_s", "force_coefficient"] {
        assert_eq!(faults(&with(&format!("/wind/{key}"), Value::Null)), [(format!("wind.{key}"), FaultCode::Missing)]);
    }
}

/// Relations are told once everything could be read: beside a part that could not be, a collar inside out is not.
#[test]
fn relations_wait_until_all_is_read() {
    let collar = |pointer: &str, value: Value| {
        let mut job = with(pointer, value);
        job["hinges"]["thrust_outer_radius_m"] = json!(0.011);
        faults(&job)
    };
    for key in ["leaf.mass_kg", "leaf.wind_area_m2", "wind.speed_m_s", "wind.force_coefficient"] {
        let pointer = format!("/{}", key.replace('.', "/"));
        assert_eq!(collar(&pointer, Value::Null), [(key.to_string(), FaultCode::Missing)]);
    }
    for (pointer, value, path, code) in [
        ("/wind/from", json!({ "kind": "beaufort" }), "wind.from.number", FaultCode::Missing),
        ("/wind/shape", json!({ "kind": "en1991_wall" }), "wind.shape.solidity", FaultCode::Missing),
        ("/storm", json!({ "speed_m_s": "much", "force_coefficient": 1.4 }), "storm.speed_m_s", FaultCode::WrongType),
        ("/arm", json!({}), "arm.shaft_x_m", FaultCode::Missing),
        ("/obstacles", json!(3), "obstacles", FaultCode::WrongType),
    ] {
        let faults = collar(pointer, value);
        assert_eq!(faults[0], (path.to_string(), code));
        assert!(faults.iter().all(|(path, _)| !path.starts_with("hinges")), "{faults:?}");
    }
    // A storm that is there and cannot be read is not missing for what it holds.
    let mut job = with("/holding", json!({}));
    job["storm"] = json!({ "speed_m_s": "much", "force_coefficient": 1.4 });
    assert_eq!(faults(&job), [("storm.speed_m_s".into(), FaultCode::WrongType)]);
}
