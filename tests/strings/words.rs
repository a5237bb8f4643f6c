//! The words a job may hold, from its schema.

use pintle_core::describe;
use serde_json::Value;

/// Blocks of the job that the page carries along and does not ask for in its groups: the set-out asks in a part of its own, the rest
/// is computed natively and in the binding, and its page is still to be built.
const NOT_IN_THE_GROUPS: [&str; 10] =
    ["setout", "room", "marks", "tape", "as_built", "motion", "breakaway", "holding", "contact", "site"];

/// Whether the page's groups ask for a field of the job.
pub fn asked_in_the_groups(path: &str) -> bool {
    let block = path.split('.').next().expect("a path has a first part");
    path != "samples" && !NOT_IN_THE_GROUPS.contains(&block)
}

/// Pairs of the key under which the string tables speak of a field, and a word it may hold. The storm speaks as the wind does.
pub fn of_the_job() -> Vec<(String, String)> {
    let mut words = Vec::new();
    walk(&describe::job_schema(), "", &mut words);
    words.retain(|(path, _)| !path.starts_with("storm.") && asked_in_the_groups(path));
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
