//! What blocks and fields of the job are: of a field its kind, what it may hold, what stands for it where it is not said.

use super::rule::FieldRule;
use crate::fault::{Allowed, Example, Fault, FaultCode};
use crate::terms::words::Words;
use crate::units::Quantity;
use alloc::{format, string::String, vec::Vec};

/// A block: its fields in the order they are read.
#[derive(Clone, Copy, Debug)]
pub struct Block {
    /// The rows.
    pub fields: &'static [Field],
    /// Keys that are carried and not looked at.
    pub carried: &'static [&'static str],
    /// Whether any other key is carried, too, instead of being refused.
    pub open: bool,
    /// What it is, for the published schema.
    #[cfg(feature = "describe")]
    pub about: &'static str,
}

/// A block of one of several kinds, told by a word.
#[derive(Clone, Copy, Debug)]
pub struct Choice {
    /// Key of the word.
    pub tag: &'static str,
    /// The kinds.
    pub kinds: &'static [Chosen],
    /// What it is, for the published schema.
    #[cfg(feature = "describe")]
    pub about: &'static str,
}

/// One kind of a block.
#[derive(Clone, Copy, Debug)]
pub struct Chosen {
    /// The word.
    pub name: &'static str,
    /// The fields that belong to it.
    pub block: &'static Block,
    /// What it is, for the published schema.
    #[cfg(feature = "describe")]
    pub about: &'static str,
}

/// One field of a block, as its row declares it.
#[derive(Clone, Copy, Debug)]
pub struct Field {
    /// Name in the document.
    pub name: &'static str,
    /// Dotted path in the document, without the places in lists.
    pub path: &'static str,
    /// The same in the block's twin: the storm is a wind.
    pub twin: Option<&'static str>,
    /// What the row says of it.
    pub spec: Spec,
    /// Whether its type has no place for silence.
    pub required: bool,
    /// What it is, for the published schema.
    #[cfg(feature = "describe")]
    pub about: &'static str,
}

/// What a row says of its field.
#[derive(Clone, Copy, Debug)]
pub struct Spec {
    /// What may stand there.
    pub kind: Kind,
    /// Key beside it that it may be replaced by: without either one something is missing.
    pub unless: Option<&'static str>,
    /// Whether silence is an assumption, which the plan lists.
    pub assumed: bool,
    /// Key beside it that makes silence no assumption: the value follows from there.
    pub follows: Option<&'static str>,
    /// Whether it is measured or estimated, so that it can be asked what it does to the answer.
    pub varied: bool,
    /// Whether a block stands here for the second time, under paths of its own.
    pub twin: bool,
}

/// What may stand in a field.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// A number.
    Number(Number),
    /// Two ends of a range, each within the number's bounds.
    Range(Number),
    /// One word of a set.
    Word(&'static Words),
    /// Yes or no.
    Flag,
    /// Any text.
    Text,
    /// A text that is not blank.
    Name,
    /// A day of the calendar, `YYYY-MM-DD`.
    Date,
    /// A block.
    Block(&'static Block),
    /// A block of one of several kinds.
    Choice(&'static Choice),
    /// A list.
    List(List),
    /// Fractions by the path of the field they are about; which fields there are.
    Shares(fn() -> Vec<FieldRule>),
    /// The document's schema.
    Schema,
}

/// Bounds of a number, and what serves in its place.
#[derive(Clone, Copy, Debug)]
pub struct Number {
    /// Kind of quantity, in the document's unit.
    pub quantity: Quantity,
    /// Least value, included.
    pub least: Option<f64>,
    /// Greatest value, included.
    pub most: Option<f64>,
    /// What is assumed where nothing is said.
    pub default: Option<f64>,
    /// A plausible value.
    pub example: f64,
    /// What people usually say of something that may be left out.
    pub usual: Option<f64>,
}

/// A list: what its items are, and how many there may be.
#[derive(Clone, Copy, Debug)]
pub struct List {
    /// What each item is.
    pub item: &'static Kind,
    /// Fewest items, and what is wrong with fewer.
    pub least: Option<(u32, FaultCode)>,
    /// Most items; beyond it a hostile document is refused before anything pays for it.
    pub most: u32,
}

impl Kind {
    /// Whether it has fields or items of its own. A number or a word that may be absent can be left out where it cannot be read; a part
    /// cannot.
    pub fn is_part(&self) -> bool {
        matches!(self, Kind::Block(_) | Kind::Choice(_) | Kind::List(_))
    }
}

impl Number {
    /// The bounds as an error reports them.
    pub const fn allowed(&self) -> Allowed {
        Allowed::Range { least: self.least, most: self.most, quantity: self.quantity }
    }

    /// Whether a value is finite and within the bounds.
    pub fn holds(&self, value: f64) -> bool {
        let above = self.least.is_none_or(|least| value >= least);
        let below = self.most.is_none_or(|most| value <= most);
        value.is_finite() && above && below
    }

    /// The fault of a number that has to be there.
    pub fn missing(&self, path: impl Into<String>) -> Fault {
        Fault::new(path, FaultCode::Missing).allowed(self.allowed()).example(Example::Number(self.example))
    }

    /// The fault of a number that is missing beside its partner.
    pub fn half(&self, path: impl Into<String>) -> Fault {
        Fault { code: FaultCode::HalfOfPair, ..self.missing(path) }
    }

    /// The fault of a range whose ends are the wrong way round.
    pub fn crossed(&self, path: &str, [least, most]: [f64; 2]) -> Option<Fault> {
        (least > most).then(|| {
            let allowed = Number { least: Some(least), ..*self }.allowed();
            Fault::number(format!("{path}.1"), FaultCode::LeastAboveMost, most, allowed).example(Example::Number(least))
        })
    }
}

impl List {
    /// The lengths as an error reports them.
    pub fn allowed(&self) -> Allowed {
        let least = self.least.map_or(0, |(least, _)| least);
        let [least, most] = [least, self.most].map(|count| Some(f64::from(count)));
        Allowed::Range { least, most, quantity: Quantity::Count }
    }
}

const fn same(one: &str, other: &str) -> bool {
    let (one, other) = (one.as_bytes(), other.as_bytes());
    let mut index = 0;
    while index < one.len() && index < other.len() && one[index] == other[index] {
        index += 1;
    }
    index == one.len() && index == other.len()
}

impl Block {
    /// The row of a number or a range. Meant for the compiler, which stops at a name that is in no row.
    pub const fn number(&self, name: &str) -> Number {
        let mut index = 0;
        while index < self.fields.len() {
            let field = &self.fields[index];
            if same(field.name, name) {
                match field.spec.kind {
                    Kind::Number(number) | Kind::Range(number) => return number,
                    _ => panic!("the row is no number"),
                }
            }
            index += 1;
        }
        panic!("no such row")
    }

    /// What the row of a number assumes. Meant for the compiler, as [`Block::number`].
    pub const fn default_of(&self, name: &str) -> f64 {
        match self.number(name).default {
            Some(default) => default,
            None => panic!("the row has no default"),
        }
    }
}
