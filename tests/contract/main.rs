//! The job and plan documents: what is refused and how, and the published schemas.

mod additions;
mod around;
mod assumed;
mod carriers;
mod checked;
mod defaults;
mod errors;
mod findings;
mod judgements;
mod lists;
mod marks_typed;
mod member_lists;
mod migrated;
mod motor_table;
mod native;
mod opened;
mod operators;
mod overall;
mod partial;
mod ranking;
mod rated;
mod record;
mod record_ranges;
mod refused;
mod schema;
mod wind_defaults;

use pintle_core::{
    Document,
    fault::{Fault, FaultCode, Invalid},
    job::Job,
    plan::{Plan, plan},
};
use serde_json::{Value, json};

/// The demonstration job the page starts with.
fn job() -> Value {
    serde_json::from_str(include_str!("../../www/data/starting-job.json")).expect("the starting job is JSON")
}

/// A job with one value put at a JSON pointer.
fn with(pointer: &str, value: Value) -> Value {
    let mut job = job();
    let (parent, key) = pointer.rsplit_once('/').expect("pointers start with a slash");
    job.pointer_mut(parent).expect("the parent exists")[key] = value;
    job
}

/// The same as a document of schema 1, whose faults name its own paths.
fn old(pointer: &str, value: Value) -> Value {
    let mut job = with(pointer, value);
    job["schema"] = serde_json::json!(1);
    job
}

/// A job without the value at a JSON pointer.
fn without(pointer: &str) -> Value {
    let mut job = job();
    let (parent, key) = pointer.rsplit_once('/').expect("pointers start with a slash");
    job.pointer_mut(parent).and_then(Value::as_object_mut).expect("the parent exists").remove(key);
    job
}

fn answer(job: &Value) -> Result<Plan, Invalid> {
    let document: Document = serde_json::from_value(job.clone()).expect("any JSON is a document");
    plan(&Job::read(&document)?)
}

/// The only fault of a job.
fn fault(job: &Value) -> Fault {
    let mut errors = answer(job).expect_err("the job is invalid").errors;
    assert_eq!(errors.len(), 1, "{errors:?}");
    errors.remove(0)
}

/// The codes and paths of all faults of a job.
fn faults(job: &Value) -> Vec<(String, FaultCode)> {
    answer(job).expect_err("the job is invalid").errors.into_iter().map(|fault| (fault.path, fault.code)).collect()
}

#[test]
fn null_and_absent_are_the_same() {
    let mut plain = job();
    for part in ["leaf", "lean", "wind", "operator"] {
        plain[part].as_object_mut().expect("an object").retain(|_, value| !value.is_null());
    }
    for (pointer, default) in
        [("/hand", json!("right")), ("/wind/air_density_kg_m3", json!(1.225)), ("/samples", json!(91))]
    {
        let said = answer(&with(pointer, default)).expect("valid");
        for silent in [answer(&with(pointer, Value::Null)), answer(&without(pointer))] {
            let silent = silent.expect("valid");
            assert_eq!(silent.curve, said.curve);
            assert_eq!(silent.rating, said.rating);
            let path = pointer[1..].replace('/', ".");
            assert!(silent.assumed.contains(&path.as_str()) || path == "hand", "{path} is not listed as assumed");
        }
    }
    assert_eq!(answer(&plain).expect("valid").peak, answer(&job()).expect("valid").peak);
}

#[test]
fn what_files_carry_along_is_ignored() {
    let mut carried = with("/entry", json!({ "leaf.mass_kg": "160 kg" }));
    carried["record"] = json!({ "signed": [1, 2, [null]] });
    assert_eq!(answer(&carried).expect("valid"), answer(&job()).expect("valid"));
}

#[test]
fn a_job_reads_back_as_it_was_written() {
    let document: Document = serde_json::from_value(job()).expect("a document");
    let read = Job::read(&document).expect("valid");
    let written: Document =
        serde_json::from_value(serde_json::to_value(&read).expect("serialises")).expect("a document");
    assert_eq!(Job::read(&written).expect("valid"), read);
}
