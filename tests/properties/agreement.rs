//! The published schema and the reader give the same answer about the shape of any document; relations between fields no schema can say.

use crate::jobs::{document, loaded};
use pintle_core::{describe, job::Job};
use proptest::prelude::*;
use serde_json::{Map, Value, json};
use std::sync::LazyLock;

/// Compiled once: it is asked some hundred thousand times.
static SCHEMA: LazyLock<jsonschema::Validator> =
    LazyLock::new(|| jsonschema::validator_for(&describe::job_schema()).expect("a schema"));

/// What is done to one place of a job.
#[derive(Clone, Debug)]
enum Wound {
    Put(Value),
    Remove,
    Rename,
    Add(&'static str),
    Scale(f64),
    Repeat(usize),
}

fn wound() -> impl Strategy<Value = Wound> {
    let odd = prop::sample::select(vec![
        json!(null),
        json!(true),
        json!(0),
        json!(-1),
        json!(1),
        json!(2.5),
        json!(3.0),
        json!(1e9),
        json!(1e300),
        json!(""),
        json!("left"),
        json!("2024-02-29"),
        json!("2023-02-29"),
        json!("2026-03-31T00:00"),
        json!([]),
        json!([0, 1]),
        json!([null, 1]),
        json!([[]]),
        json!([{}]),
        json!({}),
        json!({ "leaf.mass_kg": 0.1 }),
        json!({ "leaf.colour": 0.1 }),
        json!({ "x_m": [0, 1], "y_m": [0, 1] }),
        json!({ "kind": "plain" }),
    ]);
    let number = prop_oneof![-1e3..1e3f64, 0.0..1.0f64].prop_map(|number| Wound::Put(json!(number)));
    prop_oneof![
        4 => odd.prop_map(Wound::Put),
        2 => number,
        2 => Just(Wound::Remove),
        1 => Just(Wound::Rename),
        1 => prop::sample::select(vec!["colour", "kind", "setout", "record", "members", "date", "uncertainty"]).prop_map(Wound::Add),
        2 => prop::sample::select(vec![0.0, -1.0, 0.5, 2.0, 10.0, 1e4]).prop_map(Wound::Scale),
        1 => prop::sample::select(vec![0_usize, 1, 3, 64, 65, 200, 201]).prop_map(Wound::Repeat),
    ]
}

/// Every place in a document, as JSON pointers.
fn places(value: &Value, at: &str, found: &mut Vec<String>) {
    let mut below = |key: &str, inner: &Value| {
        let path = format!("{at}/{key}");
        places(inner, &path, found);
        found.push(path);
    };
    match value {
        Value::Object(entries) => entries.iter().for_each(|(key, inner)| below(key, inner)),
        Value::Array(items) => items.iter().enumerate().for_each(|(index, inner)| below(&index.to_string(), inner)),
        _ => {}
    }
}

fn hurt(job: &mut Value, place: &str, wound: &Wound) {
    let (parent, key) = place.rsplit_once('/').expect("pointers start with a slash");
    let Some(inner) = job.pointer(place).cloned() else { return };
    let put = match wound {
        Wound::Put(value) => Some(value.clone()),
        Wound::Scale(by) => inner.as_f64().map(|number| json!(number * by)),
        Wound::Repeat(count) => {
            inner.as_array().and_then(|items| Some(Value::Array(vec![items.first()?.clone(); *count])))
        }
        _ => None,
    };
    if let (Some(value), Some(place)) = (put, job.pointer_mut(place)) {
        *place = value;
        return;
    }
    let Some(entries) = job.pointer_mut(parent).and_then(Value::as_object_mut) else { return };
    match wound {
        Wound::Remove => drop(entries.remove(key)),
        Wound::Rename => rename(entries, key),
        Wound::Add(name) => drop(entries.insert((*name).into(), inner)),
        _ => {}
    }
}

fn rename(entries: &mut Map<String, Value>, key: &str) {
    if let Some(inner) = entries.remove(key) {
        entries.insert(format!("{key}_m"), inner);
    }
}

/// Jobs with every block and list, kept and drawn.
fn base() -> impl Strategy<Value = Value> {
    let kept = [
        include_str!("../fixtures/links/every-block.json"),
        include_str!("../fixtures/schema-1/every-block.json"),
        include_str!("../setout/sites/posts_and_kerb.json"),
        include_str!("../../www/data/starting-job.json"),
    ];
    // The published schema is that of today: what was saved before is opened first.
    let opened = |text: &&str| {
        let opened = Job::open(&serde_json::from_str(text).expect("JSON")).expect("it opens");
        serde_json::to_value(opened).expect("a document is JSON")
    };
    let kept: Vec<Value> = kept.iter().map(opened).collect();
    prop_oneof![2 => prop::sample::select(kept), 1 => loaded()]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    #[test]
    fn schema_and_reader_agree_on_any_document(mut job in base(), wounds in prop::collection::vec((any::<prop::sample::Index>(), wound()), 0..4)) {
        for (index, wound) in &wounds {
            let mut found = Vec::new();
            places(&job, "", &mut found);
            if !found.is_empty() {
                hurt(&mut job, index.get::<String>(&found), wound);
            }
        }
        // Older documents are migrated by the reader, and have no schema here.
        prop_assume!(job["schema"] != 1);
        let reader = Job::check_shape(&document(&job));
        prop_assert_eq!(SCHEMA.is_valid(&job), reader.is_ok(), "the reader says {:?} of {}", reader, job);
    }
}
