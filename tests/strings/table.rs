//! One language's table of sentences.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use serde_json::Value;

/// Languages the page has.
pub const LANGUAGES: &[&str] = &["en", "es"];

/// Sentences by dotted key. A list's items have their places as keys, plural forms their names.
pub struct Table(BTreeMap<String, String>);

impl Table {
    /// Reads a language's table.
    pub fn read(language: &str) -> Table {
        let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("../www/strings/{language}.json"));
        let text = std::fs::read_to_string(&path).expect("the table is there");
        let mut sentences = BTreeMap::new();
        flatten(&serde_json::from_str(&text).expect("the table is JSON"), "", &mut sentences);
        Table(sentences)
    }

    /// All keys that end at a sentence.
    pub fn keys(&self) -> impl Iterator<Item = &str> {
        self.0.keys().map(String::as_str)
    }

    /// The sentence at a key.
    pub fn at(&self, key: &str) -> Option<&str> {
        self.0.get(key).map(String::as_str)
    }

    /// Whether a key or a group of keys is there.
    pub fn has(&self, key: &str) -> bool {
        self.0.contains_key(key) || self.0.keys().any(|known| known.starts_with(&format!("{key}.")))
    }
}

fn flatten(value: &Value, key: &str, sentences: &mut BTreeMap<String, String>) {
    let below = |name: &str| if key.is_empty() { name.to_owned() } else { format!("{key}.{name}") };
    match value {
        Value::Object(entries) => entries.iter().for_each(|(name, value)| flatten(value, &below(name), sentences)),
        Value::Array(items) => {
            items.iter().enumerate().for_each(|(at, value)| flatten(value, &below(&at.to_string()), sentences))
        }
        Value::String(text) => {
            sentences.insert(key.to_owned(), text.clone());
        }
        other => panic!("{key} holds no sentence but {other}"),
    }
}

/// Names in braces.
pub fn placeholders(sentence: &str) -> BTreeSet<String> {
    sentence.split('{').skip(1).filter_map(|rest| rest.split_once('}')).map(|(name, _)| name.to_owned()).collect()
}
