//! Documents of older schemas, made into what this version reads.

mod from_1;

use super::table::{Kind, Reading};
use super::{Job, SCHEMA};
use crate::Document;
use crate::fault::{Allowed, Fault, FaultCode, Invalid};
use alloc::{borrow::Cow, format, string::String, vec::Vec};

type Entries = Vec<(String, Document)>;

/// One step from a schema to the next; it is given the whole document and need not touch `schema`.
type Step = fn(&mut Entries, &mut Moves);

/// The step at place `n` leads from schema `n + 1` to `n + 2`. A new schema does not compile before its step is here.
const STEPS: [Step; SCHEMA as usize - 1] = [from_1::step];

/// What a step did, so that whoever wrote the old document is told of its own places.
#[derive(Debug, Default)]
struct Moves {
    /// Where something stands now, and where it stood.
    moved: Vec<(String, String)>,
    /// What is wrong with what was moved, under the paths of the old document.
    faults: Vec<Fault>,
    /// Places of now of which everything is told already.
    told: Vec<String>,
}

impl Moves {
    fn moved(&mut self, now: impl Into<String>, before: impl Into<String>) {
        self.moved.push((now.into(), before.into()));
    }

    /// Takes a key out of a block; one that stands twice is told, as for any other.
    fn take(&mut self, entries: &mut Entries, path: &str, key: &str) -> Document {
        let mut taken: Vec<Document> = Vec::new();
        entries.retain_mut(|(name, value)| {
            let other = name != key;
            if !other {
                taken.push(core::mem::replace(value, Document::Null));
            }
            other
        });
        if taken.len() > 1 {
            self.faults.push(Fault::new(path, FaultCode::RepeatedField));
        }
        taken.into_iter().next().unwrap_or(Document::Null)
    }

    /// Tells what of a taken value could not stand in the old document.
    fn hold(&mut self, path: &str, kind: &Kind, value: &Document) {
        if *value != Document::Null {
            self.faults.extend(Reading::at(path, kind, value).faults);
        }
    }

    /// A path of the new document as the old one has it.
    fn before(&self, path: &str) -> Option<String> {
        let (now, before) = self.moved.iter().find(|(now, _)| rest_of(path, now).is_some())?;
        Some(format!("{before}{}", rest_of(path, now)?))
    }

    /// The other way round.
    fn now(&self, path: &str) -> Option<String> {
        let (now, before) = self.moved.iter().find(|(_, before)| rest_of(path, before).is_some())?;
        Some(format!("{now}{}", rest_of(path, before)?))
    }
}

/// What a path has beyond another that it is or lies below.
fn rest_of<'a>(path: &'a str, other: &str) -> Option<&'a str> {
    path.strip_prefix(other).filter(|rest| rest.is_empty() || rest.starts_with('.'))
}

/// A document in this version's schema.
#[derive(Debug)]
pub(super) struct Renewed<'d> {
    /// The document.
    pub document: Cow<'d, Document>,
    moves: Moves,
}

impl Renewed<'_> {
    /// The faults of the document as it was written: those found on the way, and those of what stands in this version's places, with the paths
    /// it had.
    pub fn as_written(&self, faults: Vec<Fault>) -> Vec<Fault> {
        let mut all = self.moves.faults.clone();
        for fault in faults.into_iter().filter(|fault| !self.moves.told.contains(&fault.path)) {
            let fault = match fault.path.strip_prefix("uncertainty.") {
                Some(path) => Fault { path: format!("uncertainty.{}", self.path_as_written(path)), ..fault },
                None => Fault { path: self.path_as_written(&fault.path), ..fault },
            };
            if all.iter().all(|known| known.path != fault.path || known.code != fault.code) {
                all.push(fault);
            }
        }
        all
    }

    /// A path as the document had it.
    pub fn path_as_written(&self, path: &str) -> String {
        self.moves.before(path).unwrap_or_else(|| path.into())
    }

    /// Faults of what has no place in this version's document.
    pub fn lost(&self) -> &[Fault] {
        &self.moves.faults
    }
}

/// The document in this version's schema. One that needs no step, or whose schema nobody knows, is handed through.
pub(super) fn migrated(document: &Document) -> Renewed<'_> {
    through(document, &STEPS)
}

fn through<'d>(document: &'d Document, steps: &[Step]) -> Renewed<'d> {
    let as_it_is = Renewed { document: Cow::Borrowed(document), moves: Moves::default() };
    let Document::Object(entries) = document else { return as_it_is };
    let schema = entries.iter().find_map(|(key, value)| match value {
        Document::Number(schema) if key == "schema" => Some(*schema),
        _ => None,
    });
    // A fraction, nothing or less than nothing is no schema: the reader says so.
    let Some(done) = schema.filter(|schema| *schema >= 1.0 && libm::trunc(*schema) == *schema) else {
        return as_it_is;
    };
    let ahead = steps.get(done as usize - 1..).unwrap_or_default();
    if ahead.is_empty() {
        return as_it_is;
    }
    let (mut entries, mut moves) = (entries.clone(), Moves::default());
    ahead.iter().for_each(|step| step(&mut entries, &mut moves));
    for (key, value) in &mut entries {
        if key == "schema" {
            *value = Document::Number((steps.len() + 1) as f64);
        }
    }
    Renewed { document: Cow::Owned(Document::Object(entries)), moves }
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
        let Err(mut invalid) = Job::read(document) else { return Ok(migrated(document).document.into_owned()) };
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
        if invalid.errors.is_empty() { Ok(migrated(document).document.into_owned()) } else { Err(invalid) }
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
        let steps: [Step; 2] = [|entries, _| rename(entries, "a", "b"), |entries, _| rename(entries, "b", "c")];
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
            assert_eq!(*through(&made(schema, key), &steps).document, made(3.0, "c"), "{schema}");
        }
        // What was a name of an older schema only is left for the reader to refuse.
        assert_eq!(*through(&made(2.0, "a"), &steps).document, made(3.0, "a"));
        for schema in [4.0, 0.0, -1.0, 1.5, f64::NAN, 1e300] {
            assert!(matches!(through(&made(schema, "a"), &steps).document, Cow::Borrowed(_)), "{schema}");
        }
    }
}
