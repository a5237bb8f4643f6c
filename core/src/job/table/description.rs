//! The JSON Schema of a block, from its rows: what the interpreter takes and nothing else, relations between fields apart.

use super::{Block, Choice, Field, Kind, List, Number};
use crate::job::version::SCHEMA;
use crate::terms::words::Words;
use crate::units::Quantity;
use serde_json::{Map, Value, json};

/// A day of the Gregorian calendar as ISO 8601 writes it, leap years by its rule.
const DATE: &str = "^([0-9]{4}-((0[13578]|1[02])-(0[1-9]|[12][0-9]|3[01])|(0[469]|11)-(0[1-9]|[12][0-9]|30)|02-(0[1-9]|1[0-9]|2[0-8]))\
|([0-9]{2}(0[48]|[2468][048]|[13579][26])|([02468][048]|[13579][26])00)-02-29)$";

/// The schema of a block.
pub fn description(block: &'static Block) -> Value {
    let mut properties = Map::new();
    let mut required = Vec::new();
    let mut either = Vec::new();
    for field in block.fields {
        let needed = field.required && field.spec.unless.is_none();
        properties.insert(field.name.into(), property(field, needed));
        if needed {
            required.push(json!(field.name));
        }
        // One of the two: the field, or what it follows from.
        either.extend(field.spec.unless.map(|other| json!({ "anyOf": [said(field.name), said(other)] })));
    }
    for name in block.carried {
        properties.insert((*name).into(), json!({ "description": "Carried by files, not looked at." }));
    }
    let mut schema =
        json!({ "type": "object", "properties": properties, "additionalProperties": block.open, "required": required });
    if !either.is_empty() {
        schema["allOf"] = Value::Array(either);
    }
    about(&mut schema, block.about);
    schema
}

/// That a field is there and not null.
fn said(name: &str) -> Value {
    json!({ "required": [name], "properties": { name: { "not": { "type": "null" } } } })
}

/// The text of a row, whose lines each begin with the blank behind the slashes.
fn about(schema: &mut Value, text: &str) {
    let lines: Vec<&str> = text.lines().map(str::trim).collect();
    schema["description"] = json!(lines.join(" "));
}

fn property(field: &Field, needed: bool) -> Value {
    let mut schema = kind(&field.spec.kind);
    if !needed {
        schema = or_null(schema);
    }
    about(&mut schema, field.about);
    schema
}

/// The same, or nothing.
fn or_null(mut schema: Value) -> Value {
    match schema.get("type").cloned() {
        Some(name) => {
            schema["type"] = json!([name, "null"]);
            schema
        }
        None => json!({ "anyOf": [schema, { "type": "null" }] }),
    }
}

fn kind(kind: &Kind) -> Value {
    match kind {
        Kind::Number(number) => number_schema(number),
        Kind::Range(number) => json!({ "type": "array", "items": number_schema(number), "minItems": 2, "maxItems": 2 }),
        Kind::Word(words) => words_schema(words),
        Kind::Flag => json!({ "type": "boolean" }),
        Kind::Text => json!({ "type": "string" }),
        Kind::Name => json!({ "type": "string", "pattern": "\\S" }),
        Kind::Date => json!({ "type": "string", "pattern": DATE, "examples": ["2026-03-31"] }),
        Kind::Block(block) => description(block),
        Kind::Choice(choice) => choice_schema(choice),
        Kind::List(list) => list_schema(list),
        Kind::Shares(rules) => {
            let paths: Vec<&str> = rules().into_iter().map(|rule| rule.path).collect();
            let share = json!({ "type": "number", "minimum": 0, "maximum": 1, "examples": [0.1] });
            json!({ "type": "object", "propertyNames": { "enum": paths }, "additionalProperties": share })
        }
        Kind::Schema => json!({ "const": SCHEMA }),
    }
}

fn number_schema(number: &Number) -> Value {
    let whole = number.quantity == Quantity::Count;
    let mut schema = json!({ "type": if whole { "integer" } else { "number" }, "examples": [number.example] });
    for (key, value) in [("minimum", number.least), ("maximum", number.most), ("default", number.default)] {
        if let Some(value) = value {
            schema[key] = json!(value);
        }
    }
    schema
}

fn words_schema(words: &Words) -> Value {
    let one = |word: &crate::terms::words::Word| {
        let mut schema = json!({ "const": word.name, "type": "string" });
        about(&mut schema, word.about);
        schema
    };
    let mut schema = json!({ "oneOf": words.list.iter().map(one).collect::<Vec<_>>() });
    about(&mut schema, words.about);
    schema
}

fn choice_schema(choice: &Choice) -> Value {
    let one = |kind: &super::Chosen| {
        let mut schema = description(kind.block);
        schema["properties"][choice.tag] = json!({ "const": kind.name, "type": "string" });
        if let Some(required) = schema["required"].as_array_mut() {
            required.insert(0, json!(choice.tag));
        }
        about(&mut schema, kind.about);
        schema
    };
    let mut schema = json!({ "oneOf": choice.kinds.iter().map(one).collect::<Vec<_>>() });
    about(&mut schema, choice.about);
    schema
}

fn list_schema(list: &List) -> Value {
    let mut schema = json!({ "type": "array", "items": kind(list.item), "maxItems": list.most });
    if let Some((least, _)) = list.least {
        schema["minItems"] = json!(least);
    }
    schema
}
