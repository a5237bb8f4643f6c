//! The words a job may hold, from its schema.

use crate::modules::asks_for;
use pintle_core::describe;
use serde_json::Value;

/// Pairs of the key under which the string tables speak of a field, and a word it may hold. The storm speaks as the wind does.
pub fn of_the_job() -> Vec<(String, String)> {
    let mut words = Vec::new();
    walk(&describe::job_schema(), "", &mut words);
    words.retain(|(path, _)| asks_for(path) && !path.starts_with("storm."));
    words.into_iter().map(|(path, word)| (path.replace('.', "_"), word)).collect()
}

fn walk(schema: &Value, path: &str, words: &mut Vec<(String, String)>) {
    if let Some(word) = schema["const"].as_str() {
        words.push((path.to_owned(), word.to_owned()));
    }
    words.extend(
        schema["enum"]
            .as_array()
            .into_iter()
            .flatten()
            .filter_map(Value::as_str)
            .map(|word| (path.to_owned(), word.to_owned())),
    );
    for choice in ["anyOf", "oneOf"] {
        schema[choice].as_array().into_iter().flatten().for_each(|variant| walk(variant, path, words));
    }
    if !schema["items"].is_null() {
        walk(&schema["items"], path, words);
    }
    for (name, property) in schema["properties"].as_object().into_iter().flatten() {
        let below = if path.is_empty() { name.clone() } else { format!("{path}.{name}") };
        walk(property, &below, words);
    }
}
