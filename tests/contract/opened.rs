//! A job from elsewhere is opened where its shape is right; what is wrong with one is written to a log in one line.

use super::{answer, job, with};
use pintle_core::{
    Document,
    fault::{FaultCode, Invalid},
    job::Job,
};
use serde_json::{Value, json};

#[test]
fn a_log_names_every_fault() {
    let mut job = with("/leaf/mass_kg", json!(0.5));
    job["arm"]["elbow"] = json!("up");
    let invalid: Invalid = answer(&job).expect_err("two faults");
    let text = invalid.to_string();
    assert_eq!(
        text,
        "leaf.mass_kg: OutOfRange, found 0.5, allowed 1 to 5000, for instance 160; \
         arm.elbow: NotOneOf, found \"up\", allowed one of left, right, for instance left"
    );
    let mut short = super::job();
    short["arm"]["link_m"] = json!(0.05);
    let text = answer(&short).expect_err("it does not reach").to_string();
    assert!(text.starts_with("arm.") && text.contains(", leaf_angle ") && text.contains(", gap "), "{text}");
}

fn open(job: &Value) -> Result<Document, Vec<(String, FaultCode)>> {
    let document: Document = serde_json::from_value(job.clone()).expect("a document");
    let opened = Job::open(&document);
    opened.map_err(|invalid| invalid.errors.into_iter().map(|fault| (fault.path, fault.code)).collect())
}

/// A job from elsewhere is opened with numbers missing or out of range, and refused where its shape is wrong.
#[test]
fn opening_looks_at_the_shape_only() {
    for (pointer, value) in [
        ("/leaf/mass_kg", json!(-5)),
        ("/leaf/mass_kg", Value::Null),
        ("/leaf/mass_centroid_m", json!(9)),
        ("/hinges/thrust_outer_radius_m", json!(0.001)),
        ("/arm/link_m", json!(0.03)),
        ("/arm/elbow", Value::Null),
    ] {
        let job = with(pointer, value);
        let document: Document = serde_json::from_value(job.clone()).expect("a document");
        assert_eq!(open(&job), Ok(document), "{pointer}");
    }
    for (pointer, value, path, code) in [
        ("/schema", json!(3), "schema", FaultCode::NewerSchema),
        ("/schema", json!(0), "schema", FaultCode::OutOfRange),
        ("/schema", Value::Null, "schema", FaultCode::Missing),
        ("/schema", json!("1"), "schema", FaultCode::WrongType),
        ("/leaf/colour", json!("red"), "leaf.colour", FaultCode::UnknownField),
        ("/leaf/mass_kg", json!("heavy"), "leaf.mass_kg", FaultCode::WrongType),
        ("/arm/elbow", json!("up"), "arm.elbow", FaultCode::NotOneOf),
        ("/operator", Value::Null, "operator", FaultCode::Missing),
    ] {
        assert_eq!(open(&with(pointer, value)), Err(vec![(path.to_string(), code)]));
    }
    // Longer lists than any job has would keep a page busy for ever: 1 MB of JSON has room for a third of a million parts.
    let area = json!({ "x_m": [0, 1], "y_m": [0, 1] });
    for (pointer, value, path) in [
        ("/leaf/members", json!(vec![json!({}); 201]), "leaf.members"),
        ("/obstacles", json!(vec![area.clone(); 201]), "obstacles"),
    ] {
        let faults = open(&with(pointer, value)).expect_err(path);
        assert!(faults.contains(&(path.to_string(), FaultCode::OutOfRange)), "{faults:?}");
    }
    for (block, path) in [("site", "site.obstacles"), ("room", "room.obstacles")] {
        let faults = open(&super::old(&format!("/{block}"), json!({ "obstacles": vec![area.clone(); 65] })));
        let faults = faults.expect_err(path);
        assert!(faults.contains(&(path.to_string(), FaultCode::OutOfRange)), "{faults:?}");
    }
    let twice = job().to_string().replacen("\"swing\":{", "\"swing\":{\"open_deg\":80,", 1);
    let document: Document = serde_json::from_str(&twice).expect("JSON allows it");
    assert_eq!(Job::open(&document).expect_err("twice").errors[0].code, FaultCode::RepeatedField);
    let invalid = Job::open(&Document::Text("job".into())).expect_err("no object");
    assert_eq!((invalid.errors[0].code, invalid.errors[0].found.as_deref()), (FaultCode::NotJson, Some("\"job\"")));
}
