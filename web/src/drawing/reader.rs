//! Reads a view's fields from a document, finding every fault at once.

use std::cell::RefCell;
use std::rc::Rc;

use pintle_core::{
    Document,
    fault::{Allowed, Fault, FaultCode, Invalid},
};
use plotters::style::BLACK;

use super::colour::Colour;

/// One object of the document. After a fault it goes on with a stand-in, which [`Reader::finish`] never lets out.
pub struct Reader<'d> {
    path: String,
    entries: &'d [(String, Document)],
    asked: RefCell<Vec<&'static str>>,
    faults: Rc<RefCell<Vec<Fault>>>,
}

impl<'d> Reader<'d> {
    /// The view itself.
    pub fn new(document: &'d Document) -> Reader<'d> {
        let reader = Reader { path: "view".into(), entries: &[], asked: RefCell::default(), faults: Rc::default() };
        match document {
            Document::Object(entries) => Reader { entries, ..reader },
            _ => {
                reader.faults.borrow_mut().push(wrong_type("view".into(), "object"));
                reader
            }
        }
    }

    /// The view, when nothing was wrong. Misspelt fields of the view itself are faults too.
    pub fn finish(self) -> Result<(), Invalid> {
        let asked = self.asked.borrow();
        for (key, _) in self.entries.iter().filter(|(key, _)| !asked.iter().any(|known| known == key)) {
            self.faults.borrow_mut().push(Fault::new(self.path_of(key), FaultCode::UnknownField));
        }
        let errors = self.faults.take();
        if errors.is_empty() { Ok(()) } else { Err(Invalid::from(errors)) }
    }

    /// A nested object.
    pub fn object(&self, key: &'static str) -> Reader<'d> {
        let entries = match self.value(key) {
            Some(Document::Object(entries)) => entries.as_slice(),
            other => {
                self.miss(key, other, "object");
                &[]
            }
        };
        Reader { path: self.path_of(key), entries, asked: RefCell::default(), faults: Rc::clone(&self.faults) }
    }

    /// A finite number from least to most.
    pub fn number(&self, key: &'static str, (least, most): (f64, f64)) -> f64 {
        match self.value(key) {
            Some(Document::Number(number)) if (least..=most).contains(number) => return *number,
            Some(Document::Number(number)) if number.is_finite() => {
                self.faults.borrow_mut().push(Fault::new(self.path_of(key), FaultCode::OutOfRange));
            }
            other => self.miss(key, other, "number"),
        }
        least
    }

    /// Which of some words it is.
    pub fn word(&self, key: &'static str, words: &[&'static str]) -> usize {
        let found = match self.value(key) {
            Some(Document::Text(text)) => words.iter().position(|word| word == text),
            other => {
                self.miss(key, other, "string");
                return 0;
            }
        };
        found.unwrap_or_else(|| {
            let fault = Fault::new(self.path_of(key), FaultCode::NotOneOf);
            self.faults.borrow_mut().push(fault.allowed(Allowed::OneOf { names: words.to_vec() }));
            0
        })
    }

    /// True or false.
    pub fn flag(&self, key: &'static str) -> bool {
        match self.value(key) {
            Some(Document::Bool(flag)) => *flag,
            other => {
                self.miss(key, other, "boolean");
                false
            }
        }
    }

    /// A text.
    pub fn text(&self, key: &'static str) -> String {
        match self.value(key) {
            Some(Document::Text(text)) => text.clone(),
            other => {
                self.miss(key, other, "string");
                String::new()
            }
        }
    }

    /// A colour, `"#rrggbb"`.
    pub fn colour(&self, key: &'static str) -> Colour {
        let value = self.value(key);
        let read = if let Some(Document::Text(text)) = value { Colour::from_hex(text) } else { None };
        read.unwrap_or_else(|| {
            self.miss(key, value, "#rrggbb");
            Colour(BLACK)
        })
    }

    fn value(&self, key: &'static str) -> Option<&'d Document> {
        self.asked.borrow_mut().push(key);
        self.entries.iter().find(|(name, _)| name == key).map(|(_, value)| value)
    }

    fn path_of(&self, key: &str) -> String {
        [&self.path, ".", key].concat()
    }

    fn miss(&self, key: &str, found: Option<&Document>, wanted: &'static str) {
        let fault = match found {
            None | Some(Document::Null) => Fault::new(self.path_of(key), FaultCode::Missing),
            Some(_) => wrong_type(self.path_of(key), wanted),
        };
        self.faults.borrow_mut().push(fault);
    }
}

fn wrong_type(path: String, name: &'static str) -> Fault {
    Fault::new(path, FaultCode::WrongType).allowed(Allowed::Type { name })
}
