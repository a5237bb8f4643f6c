//! Documents compared and trimmed.

use pintle_core::Document;

/// Whether two documents are one, numbers compared by their bits.
pub fn same_to_the_bit(one: &Document, other: &Document) -> bool {
    match (one, other) {
        (Document::Number(one), Document::Number(other)) => one.to_bits() == other.to_bits(),
        (Document::List(one), Document::List(other)) => {
            one.len() == other.len() && one.iter().zip(other).all(|(one, other)| same_to_the_bit(one, other))
        }
        (Document::Object(one), Document::Object(other)) => {
            one.len() == other.len()
                && one.iter().zip(other).all(|(one, other)| one.0 == other.0 && same_to_the_bit(&one.1, &other.1))
        }
        (one, other) => one == other,
    }
}

/// A document without the fields that say nothing: `null` and absent are the same in a job.
pub fn without_nulls(document: &Document) -> Document {
    match document {
        Document::Object(entries) => {
            let said = entries.iter().filter(|(_, value)| *value != Document::Null);
            Document::Object(said.map(|(key, value)| (key.clone(), without_nulls(value))).collect())
        }
        Document::List(items) => Document::List(items.iter().map(without_nulls).collect()),
        other => other.clone(),
    }
}
