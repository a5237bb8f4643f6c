//! What rows are written with: kinds of fields, and what else there is to each.

use super::field::{Block, Choice, Kind, List, Number, Spec};
use super::rule::FieldRule;
use crate::fault::FaultCode;
use crate::terms::words::Words;
use crate::units::Quantity;
use alloc::vec::Vec;

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

/// A text that is not blank.
pub const fn name() -> Spec {
    Spec::of(Kind::Name)
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
        self.of_at_least(1, code)
    }

    /// A list of at least so many items.
    pub const fn of_at_least(self, least: u32, code: FaultCode) -> Spec {
        match self.kind {
            Kind::List(list) => Spec { kind: Kind::List(List { least: Some((least, code)), ..list }), ..self },
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
