//! Documents of older schemas, made into what this version reads.

use super::{Job, SCHEMA};
use crate::Document;
use crate::fault::{Allowed, Fault, FaultCode, Invalid};
use alloc::{borrow::Cow, string::String, vec::Vec};

/// One step from a schema to the next; it is given the whole document and need not touch `schema`.
type Step = fn(&mut Vec<(String, Document)>);

/// The step at place `n` leads from schema `n + 1` to `n + 2`. A new schema does not compile before its step is here.
const STEPS: [Step; SCHEMA as usize - 1] = [];

/// The document in this version's schema. One that needs no step, or whose schema nobody knows, is handed through.
pub(super) fn migrated(document: &Document) -> Cow<'_, Document> {
    through(document, &STEPS)
}

fn through<'d>(document: &'d Document, steps: &[Step]) -> Cow<'d, Document> {
    let Document::Object(entries) = document else { return Cow::Borrowed(document) };
    let schema = entries.iter().find_map(|(key, value)| match value {
        Document::Number(schema) if key == "schema" => Some(*schema),
        _ => None,
    });
    // A fraction, nothing or less than nothing is no schema: the reader says so.
    let Some(done) = schema.filter(|schema| *schema >= 1.0 && libm::trunc(*schema) == *schema) else {
        return Cow::Borrowed(document);
    };
    let ahead = steps.get(done as usize - 1..).unwrap_or_default();
    if ahead.is_empty() {
        return Cow::Borrowed(document);
    }
    let mut entries = entries.clone();
    ahead.iter().for_each(|step| step(&mut entries));
    for (key, value) in &mut entries {
        if key == "schema" {
            *value = Document::Number((steps.len() + 1) as f64);
        }
    }
    Cow::Owned(Document::Object(entries))
}

impl Job {
    /// Looks at a document from elsewhere (a file, a link) before anything is replaced by it, and gives it in this version's schema.
    ///
    /// A job with numbers missing or out of range is opened, so that it can be put right; `entry` and `record` come along unread.
    ///
    /// # Errors
    /// Every fault of shape: a newer schema, unknown or repeated fields, wrong types, unknown words, a part that is missing whole, a
    /// list longer than any job's.
    pub fn open(document: &Document) -> Result<Document, Invalid> {
        if !matches!(document, Document::Object(_)) {
            return Err(Invalid::not_json(alloc::format!("{document}")));
        }
        let Err(mut invalid) = Job::read(document) else { return Ok(migrated(document).into_owned()) };
        invalid.errors.retain(|fault| match fault.code {
            FaultCode::NewerSchema
            | FaultCode::UnknownField
            | FaultCode::RepeatedField
            | FaultCode::WrongType
            | FaultCode::NotOneOf => true,
            FaultCode::Missing => whole_part(fault) || fault.path == "schema",
            FaultCode::OutOfRange => is_list(document, &fault.path) || fault.path == "schema",
            _ => fault.path == "schema",
        });
        if invalid.errors.is_empty() { Ok(migrated(document).into_owned()) } else { Err(invalid) }
    }
}

/// Whether what is missing is a part with fields of its own.
fn whole_part(fault: &Fault) -> bool {
    fault.allowed == Some(Allowed::Type { name: "object" })
}

/// Whether a list stands at a path: then it is its length that is out of range.
fn is_list(document: &Document, path: &str) -> bool {
    let node = path.split('.').try_fold(document, |node, key| node.entry(key));
    matches!(node, Some(Document::List(_)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::vec;

    fn rename(entries: &mut [(String, Document)], from: &str, to: &str) {
        entries.iter_mut().filter(|(key, _)| key == from).for_each(|(key, _)| *key = to.into());
    }

    #[test]
    fn each_step_is_taken_once_and_in_order() {
        let steps: [Step; 2] = [|entries| rename(entries, "a", "b"), |entries| rename(entries, "b", "c")];
        // A number stands before the schema and is none.
        let made = |schema: f64, key: &str| {
            let [first, schema] = [2.5, schema].map(Document::Number);
            Document::Object(vec![
                ("first".into(), first),
                ("schema".into(), schema),
                (key.into(), Document::Bool(true)),
            ])
        };
        for (schema, key) in [(1.0, "a"), (2.0, "b"), (3.0, "c")] {
            assert_eq!(*through(&made(schema, key), &steps), made(3.0, "c"), "{schema}");
        }
        // What was a name of an older schema only is left for the reader to refuse.
        assert_eq!(*through(&made(2.0, "a"), &steps), made(3.0, "a"));
        for schema in [4.0, 0.0, -1.0, 1.5, f64::NAN, 1e300] {
            assert!(matches!(through(&made(schema, "a"), &steps), Cow::Borrowed(_)), "{schema}");
        }
    }
}
