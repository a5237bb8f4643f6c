//! The one reader of documents: it walks the rows and tells everything that cannot stand where it stands.

use super::date::is_date;
use super::{Block, Choice, Field, FieldRule, Kind, List, Number, entry};
use crate::Document;
use crate::fault::{Allowed, Example, Fault, FaultCode};
use crate::job::version::SCHEMA;
use crate::terms::words::Words;
use crate::units::Quantity;
use alloc::{format, string::String, vec::Vec};

/// What reading a document found.
#[derive(Debug, Default)]
pub struct Reading {
    /// Every fault, in the order of the rows.
    pub faults: Vec<Fault>,
    /// Whether something is missing without which there is no job, so that relations between fields mean nothing yet.
    pub broken: bool,
}

type Entries = [(String, Document)];

impl Reading {
    /// Reads a document by the rows of a block.
    pub fn of(document: &Document, block: &'static Block) -> Reading {
        let mut reading = Reading::default();
        match document {
            Document::Object(entries) => reading.block(entries, "", block, None),
            other => {
                reading.fault(wrong_type("", other, "object"));
                // All that has to be there is told, too.
                reading.block(&[], "", block, None);
            }
        }
        reading
    }

    /// Reads a value that stands at a path.
    pub fn at(path: &str, kind: &Kind, value: &Document) -> Reading {
        let mut reading = Reading::default();
        reading.value(path.into(), kind, value);
        reading
    }

    fn fault(&mut self, fault: Fault) {
        self.faults.push(fault);
    }

    /// The value of a key; a key that stands twice is told.
    fn asked<'a>(&mut self, entries: &'a Entries, path: &str, key: &str) -> &'a Document {
        if entries.iter().filter(|(name, _)| name == key).nth(1).is_some() {
            self.fault(Fault::new(below(path, key), FaultCode::RepeatedField));
        }
        entry(entries, key)
    }

    /// The fields of a block; `tag` is the key that told which block it is.
    fn block(&mut self, entries: &Entries, path: &str, block: &'static Block, tag: Option<&'static str>) {
        let mut read = Vec::with_capacity(block.fields.len());
        for field in block.fields {
            let value = self.asked(entries, path, field.name);
            read.push(self.field(entries, below(path, field.name), field, value));
        }
        for key in block.carried {
            self.asked(entries, path, key);
        }
        // What was to be replaced by something that cannot be read is missing after all.
        for (field, read_it) in block.fields.iter().zip(&read) {
            let other = field.spec.unless.and_then(|key| block.fields.iter().position(|field| field.name == key));
            self.broken |= !read_it && other.is_some_and(|index| !read[index]);
        }
        if !block.open {
            let names = tag.into_iter().chain(block.fields.iter().map(|field| field.name));
            let names: Vec<&'static str> = names.chain(block.carried.iter().copied()).collect();
            self.unknown(entries, path, &names);
        }
    }

    /// Tells what nobody asks for.
    fn unknown(&mut self, entries: &Entries, path: &str, names: &[&'static str]) {
        for (index, (key, value)) in entries.iter().enumerate() {
            let first = entries[..index].iter().all(|(earlier, _)| earlier != key);
            if first && !names.contains(&key.as_str()) {
                let fault = Fault::new(below(path, key), FaultCode::UnknownField).found(value);
                self.fault(fault.allowed(Allowed::OneOf { names: names.into() }));
            }
        }
    }

    /// Whether a field could be read. A value out of range is told, and still counts as read.
    fn field(&mut self, entries: &Entries, path: String, field: &'static Field, value: &Document) -> bool {
        let said = |key| entries.iter().any(|(name, value)| name == key && *value != Document::Null);
        let needed = field.spec.unless.map_or(field.required, |key| !said(key));
        let read = match (value, &field.spec.kind) {
            (Document::Null, kind) => {
                if needed {
                    self.fault(missing(path, kind));
                }
                false
            }
            (value, kind) => self.value(path, kind, value),
        };
        let part = *value != Document::Null && field.spec.kind.is_part();
        self.broken |= !read && (needed || part);
        read
    }

    /// Whether a value could be read as a kind.
    fn value(&mut self, path: String, kind: &Kind, value: &Document) -> bool {
        let name = match (kind, value) {
            (Kind::Number(number), _) => return self.number(path, number, value),
            (Kind::Range(number), Document::List(ends)) if ends.len() == 2 => {
                let [least, most] = [0, 1].map(|end| self.number(format!("{path}.{end}"), number, &ends[end]));
                return least && most;
            }
            (Kind::Range(_), _) => "array",
            (Kind::Word(words), _) => return self.word(path, words, value),
            (Kind::Flag, Document::Bool(_)) | (Kind::Text, Document::Text(_)) => return true,
            (Kind::Flag, _) => "boolean",
            (Kind::Text, _) => "string",
            (Kind::Name, Document::Text(text)) if !text.trim().is_empty() => return true,
            (Kind::Name, Document::Text(_)) => {
                self.fault(missing(path, kind).found(value));
                return false;
            }
            (Kind::Name, _) => "string",
            (Kind::Date, Document::Text(text)) if is_date(text) => return true,
            (Kind::Date, Document::Text(_)) => {
                let fault = wrong_type(&path, value, "date").example(Example::Text("2026-03-31"));
                self.fault(fault);
                return false;
            }
            (Kind::Date, _) => "string",
            (Kind::Block(block), Document::Object(entries)) => {
                return self.part(|reading| reading.block(entries, &path, block, None));
            }
            (Kind::Choice(choice), Document::Object(entries)) => {
                return self.part(|reading| reading.choice(entries, &path, choice));
            }
            (Kind::List(list), Document::List(items)) => return self.list(path, list, items, value),
            (Kind::Shares(rules), Document::Object(entries)) => return self.shares(&path, &rules(), entries),
            (Kind::Block(_) | Kind::Choice(_) | Kind::Shares(_), _) => "object",
            (Kind::List(_), _) => "array",
            (Kind::Schema, _) => return self.schema(path, value),
        };
        self.fault(wrong_type(&path, value, name));
        false
    }

    /// Whether a part could be read: nothing in it is broken.
    fn part(&mut self, read: impl FnOnce(&mut Reading)) -> bool {
        let before = core::mem::take(&mut self.broken);
        read(self);
        let whole = !self.broken;
        self.broken |= before;
        whole
    }

    fn number(&mut self, path: String, number: &Number, value: &Document) -> bool {
        match value {
            Document::Number(found) => {
                if let Some(code) = number.code(*found) {
                    let fault = Fault::new(path, code).found(value).allowed(number.allowed());
                    self.fault(fault.example(Example::Number(number.example)));
                }
                true
            }
            // Nothing where an end of a range has to be is missing, no mistake of kind.
            Document::Null => {
                self.fault(missing(path, &Kind::Number(*number)));
                false
            }
            other => {
                self.fault(wrong_type(&path, other, "number").example(Example::Number(number.example)));
                false
            }
        }
    }

    fn word(&mut self, path: String, words: &Words, value: &Document) -> bool {
        let code = match value {
            Document::Text(text) if words.list.iter().any(|word| word.name == text) => return true,
            Document::Text(_) => FaultCode::NotOneOf,
            _ => FaultCode::WrongType,
        };
        let fault = Fault::new(path, code).found(value).allowed(Allowed::OneOf { names: words.names() });
        self.fault(fault.example(Example::Text(words.list[0].name)));
        false
    }

    /// Without its word it cannot be known which other fields belong to a block, so only the word is told.
    fn choice(&mut self, entries: &Entries, path: &str, choice: &'static Choice) {
        let value = self.asked(entries, path, choice.tag);
        let kind = |name: &str| choice.kinds.iter().find(|kind| kind.name == name);
        let code = match value {
            Document::Text(text) => match kind(text.as_str()) {
                Some(kind) => return self.block(entries, path, kind.block, Some(choice.tag)),
                None => FaultCode::NotOneOf,
            },
            Document::Null => FaultCode::Missing,
            _ => FaultCode::WrongType,
        };
        let names: Vec<&'static str> = choice.kinds.iter().map(|kind| kind.name).collect();
        let example = Example::Text(choice.kinds[0].name);
        let fault = Fault::new(below(path, choice.tag), code).allowed(Allowed::OneOf { names }).example(example);
        self.fault(if code == FaultCode::Missing { fault } else { fault.found(value) });
        self.broken = true;
    }

    /// Every item is read before any is given up, so that all faults are seen.
    fn list(&mut self, path: String, list: &List, items: &[Document], value: &Document) -> bool {
        let count = items.len();
        let fewer = list.least.filter(|(least, _)| count < *least as usize).map(|(_, code)| code);
        let code = if count > list.most as usize { Some(FaultCode::OutOfRange) } else { fewer };
        if let Some(code) = code {
            self.fault(Fault::new(path, code).found(value).allowed(list.allowed()));
            return false;
        }
        items.iter().enumerate().fold(true, |all, (index, item)| {
            let read = self.value(format!("{path}.{index}"), list.item, item);
            all && read
        })
    }

    /// Fractions by the path of a field of the table; the entries that are none are left out.
    fn shares(&mut self, path: &str, rules: &[FieldRule], entries: &Entries) -> bool {
        const EXAMPLE: Example = Example::Number(0.1);
        let mut seen: Vec<&str> = Vec::new();
        for (key, value) in entries {
            let path = below(path, key);
            let fault = match value {
                _ if !rules.iter().any(|rule| rule.path == key) => {
                    let names = rules.iter().map(|rule| rule.path).collect();
                    Fault::new(path, FaultCode::UnknownField).found(value).allowed(Allowed::OneOf { names })
                }
                Document::Number(share) if (0.0..=1.0).contains(share) => {
                    if !seen.contains(&key.as_str()) {
                        seen.push(key);
                        continue;
                    }
                    Fault::new(path, FaultCode::RepeatedField)
                }
                Document::Number(_) => {
                    let allowed = Allowed::Range { least: Some(0.0), most: Some(1.0), quantity: Quantity::Percent };
                    Fault::new(path, FaultCode::OutOfRange).found(value).allowed(allowed).example(EXAMPLE)
                }
                other => wrong_type(&path, other, "number").example(EXAMPLE),
            };
            self.fault(fault);
        }
        true
    }

    fn schema(&mut self, path: String, value: &Document) -> bool {
        let now = f64::from(SCHEMA);
        match value {
            Document::Number(schema) if *schema == now => true,
            Document::Number(schema) => {
                let code = if *schema > now { FaultCode::NewerSchema } else { FaultCode::OutOfRange };
                let allowed = Allowed::Range { least: Some(now), most: Some(now), quantity: Quantity::Count };
                self.fault(Fault::new(path, code).found(value).allowed(allowed).example(Example::Number(now)));
                true
            }
            other => {
                self.fault(wrong_type(&path, other, "number").example(Example::Number(now)));
                false
            }
        }
    }
}

impl Number {
    /// What is wrong with a value: it is not finite, out of range, or no whole number where one is wanted.
    fn code(&self, value: f64) -> Option<FaultCode> {
        let whole = self.quantity != Quantity::Count || value == libm::trunc(value);
        let code = if whole { FaultCode::OutOfRange } else { FaultCode::WrongType };
        (!whole || !self.holds(value)).then_some(code)
    }
}

/// The fault of something that has to be there.
fn missing(path: String, kind: &Kind) -> Fault {
    let fault = Fault::new(path, FaultCode::Missing);
    let of_type = |name| Allowed::Type { name };
    match kind {
        Kind::Number(number) => Fault { path: fault.path, ..number.missing("") },
        Kind::Range(number) => fault.allowed(of_type("array")).example(Example::Range([number.example; 2])),
        Kind::Word(words) => {
            fault.allowed(Allowed::OneOf { names: words.names() }).example(Example::Text(words.list[0].name))
        }
        Kind::Flag => fault.allowed(of_type("boolean")),
        Kind::Text | Kind::Date => fault.allowed(of_type("string")),
        Kind::Name => fault.allowed(of_type("string")).example(Example::Text("gate-250")),
        Kind::Block(_) | Kind::Choice(_) | Kind::Shares(_) => fault.allowed(of_type("object")),
        Kind::List(_) => fault.allowed(of_type("array")),
        Kind::Schema => fault.example(Example::Number(f64::from(SCHEMA))),
    }
}

fn wrong_type(path: &str, found: &Document, name: &'static str) -> Fault {
    Fault::new(path, FaultCode::WrongType).found(found).allowed(Allowed::Type { name })
}

fn below(path: &str, key: &str) -> String {
    if path.is_empty() { key.into() } else { format!("{path}.{key}") }
}
