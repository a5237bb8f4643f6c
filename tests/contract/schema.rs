//! The published schemas: generated from the Rust types, kept in step, and saying what the reader does.

use super::carriers::{carried, carrier};
use super::{answer, job, with, without};
use pintle_core::{describe, job::fields};
use pintle_tests::kept_in_step;
use serde_json::{Value, json};
use std::sync::LazyLock;

#[test]
fn the_published_schemas_are_in_step() {
    let schemas = [
        ("job", describe::job_schema()),
        ("plan", describe::plan_schema()),
        ("faults", describe::faults_schema()),
        ("operators", describe::operators_schema()),
    ];
    for (name, schema) in schemas {
        let text = serde_json::to_string_pretty(&schema).expect("serialises") + "\n";
        kept_in_step(&format!("../www/schema/{name}.json"), &text);
    }
}

/// Whether the schema and the reader agree on a job, and what they say.
fn both(job: &Value) -> bool {
    // Compiled once: it is asked some thousand times.
    static SCHEMA: LazyLock<jsonschema::Validator> =
        LazyLock::new(|| jsonschema::validator_for(&describe::job_schema()).expect("a schema"));
    let schema = SCHEMA.is_valid(job);
    let document = serde_json::from_value(job.clone()).expect("a document");
    let reader = pintle_core::job::Job::read(&document).is_ok();
    assert_eq!(schema, reader, "schema {schema}, reader {reader}: {job}");
    reader
}

#[test]
fn the_schema_takes_and_refuses_what_the_reader_does() {
    assert!(both(&job()));
    assert!(both(&with(
        "/hinges",
        json!({ "kind": "measured", "pull_open_n": 45, "pull_close_n": 41, "pull_radius_m": 3.0, "pull_leaf_deg": 45 })
    )));
    for part in ["lean", "title", "hand", "samples", "required_reserve"] {
        assert!(both(&without(&format!("/{part}"))), "{part}");
        assert!(both(&with(&format!("/{part}"), Value::Null)), "{part}");
    }
    for part in ["schema", "leaf", "hinges", "wind", "swing", "arm", "operator", "arm/elbow", "hinges/kind"] {
        assert!(!both(&without(&format!("/{part}"))), "{part}");
    }
    for (pointer, value) in [
        ("/colour", json!(1)),
        ("/leaf/colour", json!(1)),
        ("/hinges/colour", json!(1)),
        ("/arm/elbow", json!("up")),
        ("/hand", json!("both")),
        ("/hinges/kind", json!("magnetic")),
        ("/samples", json!(2.5)),
        ("/schema", json!(3)),
        ("/title", json!(5)),
        ("/leaf", json!([])),
    ] {
        assert!(!both(&with(pointer, value)), "{pointer}");
    }
    for rule in fields() {
        assert!(both(&carrier(rule.path).0), "{}", rule.path);
        assert_eq!(both(&carried(rule.path, Value::Null).0), !rule.required, "{}", rule.path);
        assert!(!both(&carried(rule.path, json!("three")).0), "{}", rule.path);
        for beyond in [rule.least.map(|least| least - 1.0), rule.most.map(|most| most + 1.0)].into_iter().flatten() {
            assert!(!both(&carried(rule.path, json!(beyond)).0), "{}", rule.path);
        }
    }
}

/// Empty and overlong lists, what is no day, shares that are none: said by the schema as by the reader.
#[test]
fn the_schema_knows_lists_days_and_shares() {
    let rectangle = json!({ "x_m": [-3, -2], "y_m": [2, 3] });
    let many = |count: usize| Value::Array(vec![rectangle.clone(); count]);
    let at = |block: &str, key: &str, value: Value| with(&format!("/{block}"), json!({ key: value }));
    for (good, bad) in [
        (with("/leaf/members", Value::Null), with("/leaf/members", json!([]))),
        (with("/obstacles", many(200)), with("/obstacles", many(201))),
        (at("site", "means", json!([])), at("site", "means", Value::Array(vec![json!({ "kind": "contact" }); 65]))),
        (
            at("site", "means", json!([{ "kind": "contact", "reaches": vec!["bottom"; 64] }])),
            at("site", "means", json!([{ "kind": "contact", "reaches": vec!["bottom"; 65] }])),
        ),
        (at("record", "date", json!("2024-02-29")), at("record", "date", json!("2023-02-29"))),
        (at("record", "owner_date", json!("2026-12-31")), at("record", "owner_date", json!("soon"))),
        (with("/uncertainty", json!({})), with("/uncertainty", json!(5))),
        (with("/uncertainty", json!({ "leaf.mass_kg": 1 })), with("/uncertainty", json!({ "leaf.mass_kg": 1.5 }))),
        (with("/uncertainty", json!({ "arm.link_m": 0 })), with("/uncertainty", json!({ "arm.colour": 0 }))),
        (with("/uncertainty", Value::Null), with("/uncertainty", json!({ "leaf.mass_kg": null }))),
    ] {
        assert!(both(&good), "{good}");
        assert!(!both(&bad), "{bad}");
    }
}

#[test]
fn plans_and_faults_keep_their_schemas() {
    let plan = serde_json::to_value(answer(&job()).expect("valid")).expect("serialises");
    jsonschema::validate(&describe::plan_schema(), &plan).expect("the plan keeps its schema");
    let mut full = job();
    (full["motion"], full["site"], full["contact"]) = (super::carriers::motion(), super::carriers::site(), json!({}));
    full["storm"] = json!({ "speed_m_s": 28, "force_coefficient": 1.4 });
    full["holding"] = json!({});
    full["breakaway"] = json!({ "slip_torque_n_m": 300, "link_force_n": 500 });
    let plan = serde_json::to_value(answer(&full).expect("valid")).expect("serialises");
    jsonschema::validate(&describe::plan_schema(), &plan).expect("the plan with motion and safety keeps its schema");
    let faults = answer(&with("/leaf/mass_kg", json!("heavy"))).expect_err("invalid");
    jsonschema::validate(&describe::faults_schema(), &serde_json::to_value(faults).expect("serialises"))
        .expect("faults keep theirs");
}
