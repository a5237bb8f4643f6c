//! Between documents and the types of fields. What cannot stand in a field the interpreter has told; here it is only left out.

use crate::Document;
use crate::terms::words::Worded;
use alloc::{collections::BTreeMap, string::String, vec::Vec};

/// A value of a block's type, seen as its rows.
pub trait Fields {
    /// What stands in each field, in the order of the rows.
    fn held(&self) -> Vec<Held<'_>>;
}

/// What stands in a field.
pub enum Held<'a> {
    /// Nothing was said.
    Nothing,
    /// A number.
    Number(f64),
    /// Both ends of a range.
    Range([f64; 2]),
    /// A word, a flag, a text.
    Plain(Document),
    /// A block.
    Block(&'a dyn Fields),
    /// A block of a kind.
    Chosen(&'static str, &'a dyn Fields),
    /// Items of a list.
    List(Vec<Held<'a>>),
    /// Fractions by path.
    Shares(&'a BTreeMap<String, f64>),
}

/// The type of a field.
pub trait Value: Sized {
    /// Whether silence has a place in it.
    const OPTIONAL: bool = false;

    /// The value of what a document holds; `None` where it cannot be one.
    fn build(document: &Document) -> Option<Self>;

    /// What stands there.
    fn held(&self) -> Held<'_>;

    /// Whether nothing was said.
    fn silent(&self) -> bool {
        false
    }

    /// The number of a path, in the field whose own path is given.
    fn number_mut(&mut self, own: &str, path: &str) -> Option<&mut f64> {
        let _ = (own, path);
        None
    }
}

impl<T: Value> Value for Option<T> {
    const OPTIONAL: bool = true;

    fn build(document: &Document) -> Option<Self> {
        Some(if *document == Document::Null { None } else { T::build(document) })
    }
    fn held(&self) -> Held<'_> {
        self.as_ref().map_or(Held::Nothing, T::held)
    }
    fn silent(&self) -> bool {
        self.is_none()
    }
    fn number_mut(&mut self, own: &str, path: &str) -> Option<&mut f64> {
        self.as_mut()?.number_mut(own, path)
    }
}

impl Value for f64 {
    fn build(document: &Document) -> Option<Self> {
        match document {
            Document::Number(value) => Some(*value),
            _ => None,
        }
    }
    fn held(&self) -> Held<'_> {
        Held::Number(*self)
    }
    fn number_mut(&mut self, own: &str, path: &str) -> Option<&mut f64> {
        (own == path).then_some(self)
    }
}

/// A whole number; one that is not, or below nothing, has been told.
impl Value for u32 {
    fn build(document: &Document) -> Option<Self> {
        f64::build(document).map(|value| value as u32)
    }
    fn held(&self) -> Held<'_> {
        Held::Number(f64::from(*self))
    }
}

impl Value for [f64; 2] {
    fn build(document: &Document) -> Option<Self> {
        match document {
            Document::List(items) => match &items[..] {
                [Document::Number(least), Document::Number(most)] => Some([*least, *most]),
                _ => None,
            },
            _ => None,
        }
    }
    fn held(&self) -> Held<'_> {
        Held::Range(*self)
    }
}

impl Value for bool {
    fn build(document: &Document) -> Option<Self> {
        match document {
            Document::Bool(value) => Some(*value),
            _ => None,
        }
    }
    fn held(&self) -> Held<'_> {
        Held::Plain(Document::Bool(*self))
    }
}

impl Value for String {
    fn build(document: &Document) -> Option<Self> {
        match document {
            Document::Text(text) => Some(text.clone()),
            _ => None,
        }
    }
    fn held(&self) -> Held<'_> {
        Held::Plain(Document::Text(self.clone()))
    }
}

impl<T: Worded> Value for T {
    fn build(document: &Document) -> Option<Self> {
        match document {
            Document::Text(text) => T::of(text),
            _ => None,
        }
    }
    fn held(&self) -> Held<'_> {
        Held::Plain(Document::Text(self.name().into()))
    }
}

/// A list is empty where nothing is said.
impl<T: Value> Value for Vec<T> {
    const OPTIONAL: bool = true;

    fn build(document: &Document) -> Option<Self> {
        match document {
            Document::Null => Some(Vec::new()),
            Document::List(items) => items.iter().map(T::build).collect(),
            _ => None,
        }
    }
    fn held(&self) -> Held<'_> {
        Held::List(self.iter().map(T::held).collect())
    }
}

/// Fractions that are some.
impl Value for BTreeMap<String, f64> {
    fn build(document: &Document) -> Option<Self> {
        let Document::Object(entries) = document else { return None };
        let share = |(path, value): &(String, Document)| match value {
            Document::Number(share) if (0.0..=1.0).contains(share) => Some((path.clone(), *share)),
            _ => None,
        };
        Some(entries.iter().filter_map(share).collect())
    }
    fn held(&self) -> Held<'_> {
        Held::Shares(self)
    }
}

/// The value of a key; `Null` where it is absent. Of a repeated one the first.
pub fn entry<'a>(entries: &'a [(alloc::string::String, Document)], key: &str) -> &'a Document {
    static ABSENT: Document = Document::Null;
    entries.iter().find(|(name, _)| name == key).map_or(&ABSENT, |(_, value)| value)
}
