//! JSON Schemas of the two documents: the job's from its table, the plan's from the Rust types.

use crate::fault::Invalid;
use crate::job::{Job, description};
use crate::operators::OperatorList;
use crate::plan::{OperatorRanking, Plan};
use schemars::{JsonSchema, Schema, generate::SchemaSettings};
use serde_json::{Value, json};

/// Schema of the job document: what the reader takes, relations between fields apart.
#[must_use]
pub fn job_schema() -> Value {
    let mut schema = description(Job::BLOCK);
    schema["$schema"] = json!("https://json-schema.org/draft/2020-12/schema");
    schema["title"] = json!("Pintle job");
    schema["description"] = json!("What a person says about a gate. null and absent are the same.");
    schema["properties"]["entry"]["description"] =
        json!("Text as typed and units shown; carried by files, ignored by plan.");
    schema
}

/// Schema of a list of operators: what the reader takes, relations between fields and repeated ids apart. Keys that are not known are kept, and
/// so allowed.
#[must_use]
pub fn operators_schema() -> Value {
    let mut schema = description(OperatorList::BLOCK);
    open(&mut schema);
    schema["$schema"] = json!("https://json-schema.org/draft/2020-12/schema");
    schema["title"] = json!("Pintle operators");
    schema["required"] = json!(["operators"]);
    schema["properties"]["operators"]["type"] = json!("array");
    schema
}

/// Lets every object of a schema have other keys.
fn open(schema: &mut Value) {
    if let Some(closed) = schema.get_mut("additionalProperties").filter(|allowed| allowed.is_boolean()) {
        *closed = json!(true);
    }
    match schema {
        Value::Object(entries) => entries.values_mut().for_each(open),
        Value::Array(items) => items.iter_mut().for_each(open),
        _ => {}
    }
}

/// Schema of the plan document.
#[must_use]
pub fn plan_schema() -> Value {
    schema_of::<Plan>("Pintle plan", "Everything computed from a job.")
}

/// Schema of a ranking of operators.
#[must_use]
pub fn ranking_schema() -> Value {
    schema_of::<OperatorRanking>("Pintle ranking", "Which operator of a list will do.")
}

/// Schema of what is said instead of a plan where the job is invalid.
#[must_use]
pub fn faults_schema() -> Value {
    schema_of::<Invalid>("Pintle faults", "Every fault found in a job.")
}

fn schema_of<T: JsonSchema>(title: &str, description: &str) -> Value {
    let settings = SchemaSettings::draft2020_12().with(|settings| settings.inline_subschemas = true);
    let mut schema: Schema = settings.into_generator().into_root_schema_for::<T>();
    schema.insert("title".into(), json!(title));
    schema.insert("description".into(), json!(description));
    schema.to_value()
}
