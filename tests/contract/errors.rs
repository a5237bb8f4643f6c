//! Every way a job can be wrong: code, path, what was found, what is allowed, an example.

use super::carriers::{carried, carrier};
use super::{answer, fault, faults, job, with, without};
use pintle_core::{
    Document,
    fault::{Allowed, Example, FaultCode, Invalid},
    job::fields,
};
use serde_json::{Value, json};

#[test]
fn every_range_is_kept_at_both_ends() {
    for rule in fields() {
        let (Some(least), Some(most)) = (rule.least, rule.most) else { continue };
        for beyond in [least - 1e-7, most + 1e-7 * most.max(1.0), -1e300, 1e300] {
            let (job, path) = carried(rule.path, json!(beyond));
            let errors = answer(&job).expect_err(rule.path).errors;
            let fault =
                errors.iter().find(|fault| fault.path == path).unwrap_or_else(|| panic!("{}: {errors:?}", rule.path));
            assert!(matches!(fault.code, FaultCode::OutOfRange | FaultCode::WrongType), "{fault:?}");
            assert_eq!(
                fault.allowed,
                Some(Allowed::Range { least: rule.least, most: rule.most, quantity: rule.quantity })
            );
            assert_eq!(fault.example, Some(Example::Number(rule.example)));
            assert_eq!(fault.found.as_deref(), Some(format!("{beyond}").as_str()));
        }
        // The ends themselves are allowed: whatever else the value then spoils, it is not its range.
        for end in [least, most] {
            let (job, path) = carried(rule.path, json!(end));
            let errors = answer(&job).err().map_or_else(Vec::new, |invalid| invalid.errors);
            assert!(
                !errors.iter().any(|fault| fault.path == path && fault.code == FaultCode::OutOfRange),
                "{}",
                rule.path
            );
        }
        let (job, path) = carried(rule.path, json!("three"));
        let wrong = answer(&job).expect_err(rule.path).errors;
        assert!(wrong.iter().any(|fault| fault.path == path && fault.code == FaultCode::WrongType), "{wrong:?}");
    }
}

#[test]
fn every_required_number_is_missed() {
    for rule in fields() {
        let (job, path) = carried(rule.path, Value::Null);
        let silent = answer(&job);
        match rule.required {
            true => {
                let errors = silent.expect_err(rule.path).errors;
                let fault = errors.iter().find(|fault| fault.path == path).expect(rule.path);
                assert_eq!(fault.code, FaultCode::Missing);
                assert!(fault.found.is_none() && fault.allowed.is_some() && fault.example.is_some());
            }
            false => assert!(silent.is_ok(), "{}: {silent:?}", rule.path),
        }
    }
}

#[test]
fn every_carrier_is_a_valid_job() {
    for rule in fields() {
        let (job, _) = carrier(rule.path);
        assert!(answer(&job).is_ok(), "{}: {:?}", rule.path, answer(&job));
    }
}

#[test]
fn every_required_object_is_missed_once() {
    for part in ["leaf", "hinges", "wind", "swing", "arm", "operator"] {
        let fault = fault(&without(&format!("/{part}")));
        assert_eq!((fault.path.as_str(), fault.code), (part, FaultCode::Missing));
    }
    assert!(answer(&without("/lean")).is_ok());
    assert_eq!(faults(&without("/schema")), [("schema".into(), FaultCode::Missing)]);
}

#[test]
fn every_fault_is_found_at_once() {
    let mut job = with("/leaf/mass_kg", json!(0.5));
    job["leaf"]["colour"] = json!("red");
    job["arm"]["crank_m"] = json!([]);
    job["arm"]["elbow"] = json!("up");
    job["wind"]["speed_m_s"] = json!(101);
    job["samples"] = json!(2.5);
    assert_eq!(
        faults(&job),
        [
            ("leaf.mass_kg".into(), FaultCode::OutOfRange),
            ("leaf.colour".into(), FaultCode::UnknownField),
            ("wind.speed_m_s".into(), FaultCode::OutOfRange),
            ("arm.crank_m".into(), FaultCode::WrongType),
            ("arm.elbow".into(), FaultCode::NotOneOf),
            ("samples".into(), FaultCode::WrongType),
        ]
    );
}

#[test]
fn an_unknown_field_is_told_the_names_it_may_have() {
    let unknown = fault(&with("/swing/opens_deg", json!(90)));
    assert_eq!((unknown.path.as_str(), unknown.code), ("swing.opens_deg", FaultCode::UnknownField));
    assert_eq!(unknown.allowed, Some(Allowed::OneOf { names: vec!["open_deg"] }));
    assert_eq!(fault(&with("/colour", json!("red"))).path, "colour");
}

#[test]
fn a_newer_document_is_told_so_and_nothing_else() {
    let mut newer = with("/schema", json!(3));
    newer["leaf"] = json!("another shape");
    let fault = fault(&newer);
    assert_eq!(
        (fault.path.as_str(), fault.code, fault.found.as_deref()),
        ("schema", FaultCode::NewerSchema, Some("3"))
    );
    assert_eq!(faults(&with("/schema", json!(0))), [("schema".into(), FaultCode::OutOfRange)]);
    assert_eq!(faults(&with("/schema", json!("1"))), [("schema".into(), FaultCode::WrongType)]);
}

#[test]
fn a_field_that_stands_twice_is_refused() {
    let text = job().to_string().replacen("\"swing\":{", "\"swing\":{\"open_deg\":80,", 1);
    let document: Document = serde_json::from_str(&text).expect("JSON allows it");
    let errors = pintle_core::job::Job::read(&document).expect_err("refused").errors;
    assert_eq!(errors[0].code, FaultCode::RepeatedField);
    assert_eq!(errors[0].path, "swing.open_deg");
}

#[test]
fn wrong_shapes_are_refused_without_panic() {
    for shape in [json!(null), json!(1), json!("job"), json!([]), json!({ "schema": 1, "leaf": [] })] {
        assert!(!answer(&shape).expect_err("refused").errors.is_empty());
    }
    assert_eq!(faults(&with("/title", json!(7))), [("title".into(), FaultCode::WrongType)]);
    assert_eq!(faults(&with("/hand", json!("both"))), [("hand".into(), FaultCode::NotOneOf)]);
    assert_eq!(faults(&without("/hinges/kind")), [("hinges.kind".into(), FaultCode::Missing)]);
    assert_eq!(faults(&without("/arm/elbow")), [("arm.elbow".into(), FaultCode::Missing)]);
    let deep = format!("{}{}", "[".repeat(100), "]".repeat(100));
    assert!(serde_json::from_str::<Document>(&deep).is_err());
}

#[test]
fn relations_between_fields_are_kept() {
    let collar = fault(&with("/hinges/thrust_outer_radius_m", json!(0.011)));
    assert_eq!((collar.path.as_str(), collar.code), ("hinges.thrust_outer_radius_m", FaultCode::OuterBelowInner));
    for (pointer, path) in
        [("/leaf/mass_centroid_m", "leaf.mass_centroid_m"), ("/leaf/wind_centroid_m", "leaf.wind_centroid_m")]
    {
        let centre = fault(&with(pointer, json!(3.21)));
        assert_eq!((centre.path.as_str(), centre.code), (path, FaultCode::OutsideLeaf));
        assert!(answer(&with(pointer, json!(3.2))).is_ok());
        assert!(answer(&with(pointer, json!(-1))).is_ok());
    }
}

/// An arm of the demonstration job with other fields.
fn arm(fields: &[(&str, f64)]) -> Value {
    let mut job = job();
    for (field, value) in fields {
        job["arm"][field] = json!(value);
    }
    job
}

fn value(fault: &pintle_core::fault::Fault, name: &str) -> f64 {
    fault.values.iter().find(|value| value.name == name).unwrap_or_else(|| panic!("{name} in {fault:?}")).value
}

#[test]
fn an_arm_that_cannot_reach_says_where_and_by_how_much() {
    // Shaft (−0.3, 0.4), bracket (0.9, 0) closed: 1.265 m apart (√(1.2² + 0.4²)); crank 0.6 + link 0.6 are 65 mm short.
    let short = fault(&arm(&[
        ("shaft_x_m", -0.3),
        ("shaft_y_m", 0.4),
        ("bracket_u_m", 0.9),
        ("bracket_v_m", 0.0),
        ("crank_m", 0.6),
        ("link_m", 0.6),
    ]));
    assert_eq!((short.code, short.path.as_str()), (FaultCode::ArmTooShort, "arm.link_m"));
    assert_eq!(value(&short, "leaf_angle"), 0.0);
    assert!((value(&short, "gap") - (1.6f64.sqrt() - 1.2)).abs() < 1e-12);
    // Crank 2.2 against link 0.6: the bracket is never 1.6 m away; furthest off at fully open, √(0.3² + 0.5²) away.
    let long = fault(&arm(&[
        ("shaft_x_m", -0.3),
        ("shaft_y_m", 0.4),
        ("bracket_u_m", 0.9),
        ("bracket_v_m", 0.0),
        ("crank_m", 2.2),
        ("link_m", 0.6),
    ]));
    assert_eq!((long.code, long.path.as_str()), (FaultCode::ArmTooLong, "arm.crank_m"));
    assert!((value(&long, "leaf_angle") - 90.0).abs() < 1e-12);
    assert!((value(&long, "gap") - (1.6 - 0.34f64.sqrt())).abs() < 1e-12);
}

#[test]
fn an_arm_that_turns_back_or_jams_is_refused() {
    // Link and bracket radius equal and crank as long as hinge to shaft: the elbow sits on the hinge all the way.
    let on_hinge = fault(&arm(&[
        ("shaft_x_m", -0.3),
        ("shaft_y_m", 0.4),
        ("bracket_u_m", 0.6),
        ("bracket_v_m", 0.0),
        ("crank_m", 0.5),
        ("link_m", 0.6),
        ("elbow", 0.0),
    ]));
    // `elbow` is a word: the number is refused, which is this job's only fault.
    assert_eq!((on_hinge.path.as_str(), on_hinge.code), ("arm.elbow", FaultCode::WrongType));
    let mut on_hinge = arm(&[
        ("shaft_x_m", -0.3),
        ("shaft_y_m", 0.4),
        ("bracket_u_m", 0.6),
        ("bracket_v_m", 0.0),
        ("crank_m", 0.5),
        ("link_m", 0.6),
    ]);
    let refused: Vec<FaultCode> = ["left", "right"]
        .iter()
        .filter_map(|side| {
            on_hinge["arm"]["elbow"] = json!(side);
            answer(&on_hinge).err().map(|invalid: Invalid| invalid.errors[0].code)
        })
        .collect();
    assert!(refused.contains(&FaultCode::TurnsBack), "{refused:?}");
    // Straight exactly when the shaft, the hinge and the bracket are in line: shaft (−0.5, 0), bracket (1, 0), crank + link = 1.5.
    let in_line = fault(&arm(&[
        ("shaft_x_m", -0.5),
        ("shaft_y_m", 0.0),
        ("bracket_u_m", 1.0),
        ("bracket_v_m", 0.0),
        ("crank_m", 0.8),
        ("link_m", 0.7),
    ]));
    assert_eq!(in_line.code, FaultCode::Undetermined);
    // The same with the shaft turned by half the swing: straight and in line strictly inside.
    let half = core::f64::consts::FRAC_1_SQRT_2 * 0.5;
    let inside = fault(&arm(&[
        ("shaft_x_m", -half),
        ("shaft_y_m", -half),
        ("bracket_u_m", 1.0),
        ("bracket_v_m", 0.0),
        ("crank_m", 0.8),
        ("link_m", 0.7),
    ]));
    assert_eq!(inside.code, FaultCode::DeadPointInside);
    assert!((value(&inside, "leaf_angle") - 45.0).abs() < 1e-6);
}
