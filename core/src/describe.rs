//! JSON Schemas of the two documents, from the Rust types and the one table of ranges.

use crate::job::{FIELDS, FieldRule, Invalid, Job, SCHEMA};
use crate::plan::Plan;
use crate::units::Quantity;
use schemars::{JsonSchema, Schema, generate::SchemaSettings};
use serde_json::{Map, Value, json};

/// Objects of the job that have to be there.
const REQUIRED_OBJECTS: [&str; 5] = ["leaf", "hinges", "wind", "swing", "operator"];

/// Objects of the job that may be absent as a whole.
const OPTIONAL_OBJECTS: [&str; 1] = ["lean"];

/// The storm keeps the rules of the wind.
const STORM: (&str, &str) = ("wind", "storm");

/// Schema of the job document: shape from the types, ranges and requiredness from [`FIELDS`], unknown fields refused.
pub fn job_schema() -> Value {
    let mut schema = schema_of::<Job>("Pintle job", "What a person says about a gate. null and absent are the same.");
    close_objects(&mut schema);
    for rule in FIELDS {
        let path: Vec<&str> = rule.path.split('.').collect();
        apply(&mut schema, &path, rule);
        if path[0] == STORM.0 {
            apply(&mut schema, &[&[STORM.1], &path[1..]].concat(), rule);
        }
    }
    let properties = object(&mut schema["properties"]);
    properties.insert("schema".into(), json!({ "const": SCHEMA, "description": properties["schema"]["description"] }));
    properties.insert(
        "entry".into(),
        json!({ "description": "Text as typed and units shown; carried by files, ignored by plan." }),
    );
    // What a record holds besides is carried.
    properties["record"]["additionalProperties"] = json!(true);
    for name in OPTIONAL_OBJECTS {
        properties[name]["type"] = json!(["object", "null"]);
    }
    // No rectangle to keep out of may be said by silence.
    properties["setout"]["properties"]["keep_out"]["type"] = json!(["array", "null"]);
    // A list longer than any site's is refused.
    for list in ["obstacles", "means"] {
        properties["site"]["properties"][list]["maxItems"] = json!(64);
    }
    let required = ["schema"].iter().chain(&REQUIRED_OBJECTS).map(|name| json!(name)).collect();
    schema["required"] = Value::Array(required);
    object(&mut schema).insert("anyOf".into(), json!([said("arm"), said("setout")]));
    schema
}

/// That a field is there and not null.
fn said(name: &str) -> Value {
    json!({ "required": [name], "properties": { name: { "not": { "type": "null" } } } })
}

/// Schema of the plan document.
pub fn plan_schema() -> Value {
    schema_of::<Plan>("Pintle plan", "Everything computed from a job.")
}

/// Schema of what is said instead of a plan where the job is invalid.
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

fn object(value: &mut Value) -> &mut Map<String, Value> {
    value.as_object_mut().expect("schemas of structs are objects")
}

/// Refuses unknown fields everywhere, and takes back what serialisation (which writes every field) made required.
fn close_objects(schema: &mut Value) {
    match schema {
        Value::Object(entries) => {
            if entries.contains_key("properties") {
                entries.insert("additionalProperties".into(), Value::Bool(false));
                // Numbers get theirs from the table. A word is required unless it may be null, which schemars writes as `anyOf` or as a
                // list of types.
                let required = |property: &Value| {
                    property.get("const").is_some() || property.get("oneOf").is_some() || property["type"] == "string"
                };
                let words: Vec<Value> = object(&mut entries["properties"])
                    .iter()
                    .filter(|(_, property)| required(property))
                    .map(|(name, _)| json!(name))
                    .collect();
                entries.insert("required".into(), Value::Array(words));
            }
            entries.values_mut().for_each(close_objects);
        }
        Value::Array(items) => items.iter_mut().for_each(close_objects),
        _ => {}
    }
}

/// Writes one rule into every place of the schema its path leads to.
fn apply(schema: &mut Value, path: &[&str], rule: &FieldRule) {
    // An optional part is an `anyOf` of itself and null, hinges are a `oneOf` of their kinds.
    for choice in ["anyOf", "oneOf"] {
        if let Some(Value::Array(variants)) = schema.get_mut(choice) {
            variants.iter_mut().for_each(|variant| apply(variant, path, rule));
        }
    }
    if let Some(items) = schema.get_mut("items") {
        apply(items, path, rule);
    }
    let [name, rest @ ..] = path else { return };
    if !rest.is_empty() {
        if let Some(property) = schema.pointer_mut(&format!("/properties/{name}")) {
            apply(property, rest, rule);
        }
        return;
    }
    let Some(property) = schema.pointer_mut(&format!("/properties/{name}")) else { return };
    let kind = if rule.quantity == Quantity::Count { "integer" } else { "number" };
    let property = object(property);
    // A range is a list of its two ends, each within the rule.
    let ends = property.get("items").is_some();
    let whole = if ends { "array" } else { kind };
    property.insert("type".into(), if rule.required { json!(whole) } else { json!([whole, "null"]) });
    let property = if ends { object(&mut property["items"]) } else { property };
    if ends {
        property.insert("type".into(), json!(kind));
    }
    property.remove("format");
    for (key, bound) in [("minimum", rule.least), ("maximum", rule.most), ("default", rule.default)] {
        property.remove(key);
        if let Some(bound) = bound {
            property.insert(key.into(), json!(bound));
        }
    }
    property.insert("examples".into(), json!([rule.example]));
    if let (true, Some(other)) = (rule.required, rule.unless) {
        // One of the two: the number, or what it follows from.
        let choice = json!({ "anyOf": [said(name), said(other)] });
        property.insert("type".into(), json!([kind, "null"]));
        object(schema).entry("allOf").or_insert_with(|| json!([])).as_array_mut().expect("a list").push(choice);
        return;
    }
    if rule.required
        && let Some(Value::Array(required)) = schema.get_mut("required")
    {
        required.push(json!(name));
    }
}
