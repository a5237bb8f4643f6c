//! What a field of the job is: its kind, what it may hold, what stands for it where it is not said.

use super::fault::{Allowed, Example, Fault, FaultCode};
use super::{Block, Choice, FieldRule};
use crate::units::Quantity;
use crate::words::Words;
use alloc::{format, string::String, vec::Vec};

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

/// A number between two ends, both included.
pub const fn number(quantity: Quantity, least: f64, most: f64, example: f64) -> Spec {
    let (least, most) = (Some(least), Some(most));
    Spec::of(Kind::Number(Number { quantity, least, most, default: None, example, usual: None }))
}

/// A number with what is assumed where nothing is said.
pub const fn assumed(quantity: Quantity, least: f64, most: f64, default: f64) -> Spec {
    let (least, most) = (Some(least), Some(most));
    let number = Number { quantity, least, most, default: Some(default), example: default, usual: None };
    Spec { assumed: true, ..Spec::of(Kind::Number(number)) }
}

/// A direction: any finite angle, degrees.
pub const fn direction(example: f64) -> Spec {
    let (quantity, least, most) = (Quantity::Angle, None, None);
    Spec::of(Kind::Number(Number { quantity, least, most, default: None, example, usual: None }))
}

/// A direction that is 0 where nothing is said.
pub const fn assumed_direction() -> Spec {
    let (quantity, least, most) = (Quantity::Angle, None, None);
    let number = Number { quantity, least, most, default: Some(0.0), example: 0.0, usual: None };
    Spec { assumed: true, ..Spec::of(Kind::Number(number)) }
}

/// A range of numbers, least and greatest.
pub const fn range(quantity: Quantity, least: f64, most: f64, example: f64) -> Spec {
    let (least, most) = (Some(least), Some(most));
    Spec::of(Kind::Range(Number { quantity, least, most, default: None, example, usual: None }))
}

/// One word of a set.
pub const fn word(words: &'static Words) -> Spec {
    Spec::of(Kind::Word(words))
}

/// Yes or no.
pub const fn flag() -> Spec {
    Spec::of(Kind::Flag)
}

/// Any text.
pub const fn text() -> Spec {
    Spec::of(Kind::Text)
}

/// A day of the calendar.
pub const fn date() -> Spec {
    Spec::of(Kind::Date)
}

/// A block.
pub const fn block(block: &'static Block) -> Spec {
    Spec::of(Kind::Block(block))
}

/// A block of one of several kinds.
pub const fn choice(choice: &'static Choice) -> Spec {
    Spec::of(Kind::Choice(choice))
}

/// A list of at most so many items.
pub const fn list(item: &'static Kind, most: u32) -> Spec {
    Spec::of(Kind::List(List { item, least: None, most }))
}

/// Fractions by the path of one of some fields.
pub const fn shares(rules: fn() -> Vec<FieldRule>) -> Spec {
    Spec::of(Kind::Shares(rules))
}

/// The document's schema.
pub const fn schema() -> Spec {
    Spec::of(Kind::Schema)
}

impl Spec {
    const fn of(kind: Kind) -> Spec {
        Spec { kind, unless: None, assumed: false, follows: None, varied: false, twin: false }
    }

    /// May be replaced by what stands under another key of the block.
    pub const fn unless(self, key: &'static str) -> Spec {
        Spec { unless: Some(key), ..self }
    }

    /// Silence is an assumption though the row has no number for it: a word, or what follows from other fields.
    pub const fn listed(self) -> Spec {
        Spec { assumed: true, ..self }
    }

    /// No assumption where the value follows from another key of the block.
    pub const fn follows(self, key: &'static str) -> Spec {
        Spec { assumed: true, follows: Some(key), ..self }
    }

    /// Measured or estimated: the sensitivity asks for it.
    pub const fn varied(self) -> Spec {
        Spec { varied: true, ..self }
    }

    /// A block that stands here for the second time, under the paths of its twin.
    pub const fn twin(self) -> Spec {
        Spec { twin: true, ..self }
    }

    /// What people usually say where silence means none.
    pub const fn usual(self, usual: f64) -> Spec {
        match self.kind {
            Kind::Number(number) => Spec { kind: Kind::Number(Number { usual: Some(usual), ..number }), ..self },
            _ => panic!("only a number has a usual value"),
        }
    }

    /// A list of at least one item.
    pub const fn or_else(self, code: FaultCode) -> Spec {
        match self.kind {
            Kind::List(list) => Spec { kind: Kind::List(List { least: Some((1, code)), ..list }), ..self },
            _ => panic!("only a list has a length"),
        }
    }

    /// The value assumed where nothing is said. Evaluated by the compiler, which stops at a row that has none.
    pub const fn default(self) -> f64 {
        match self.kind {
            Kind::Number(Number { default: Some(default), .. }) => default,
            _ => panic!("the row has no default"),
        }
    }
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
        let allowed = Number { least: Some(least), ..*self }.allowed();
        let fault = Fault::number(format!("{path}.1"), FaultCode::LeastAboveMost, most, allowed);
        (least > most).then(|| fault.example(Example::Number(least)))
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
