//! The numbers of the table as everybody else sees them: the page's hints, the tests.

use super::{Block, Kind, Number};
use crate::units::Quantity;
use alloc::vec::Vec;
use serde::Serialize;

/// The rule of one number field.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(ts_rs::TS))]
pub struct FieldRule {
    /// Dotted path in the job document; of a list's item without its place (`leaf.members.wall_m`). The storm keeps the rules of the wind.
    pub path: &'static str,
    /// Kind of quantity; the value stands in the document's unit (SI, degrees).
    pub quantity: Quantity,
    /// Least allowed value, included; `null` is no limit.
    pub least: Option<f64>,
    /// Greatest allowed value, included; `null` is no limit.
    pub most: Option<f64>,
    /// Whether the field must be given (within its `hinges` kind).
    pub required: bool,
    /// What is assumed where the field is absent; `null` where that depends on other fields or nothing is assumed.
    pub default: Option<f64>,
    /// A plausible value.
    pub example: f64,
    /// What people usually say where silence means none; common practice, no source.
    pub usual: Option<f64>,
    /// Key beside the field that a required one may be replaced by: a block or word from which the value follows.
    pub unless: Option<&'static str>,
}

/// Every number field of a block and of those in it, in the order of the rows; what several kinds of a block share stands once.
pub fn rules(block: &'static Block) -> Vec<FieldRule> {
    let mut rules = Vec::new();
    collect(block, &mut rules);
    rules
}

fn collect(block: &'static Block, rules: &mut Vec<FieldRule>) {
    for field in block.fields.iter().filter(|field| !field.spec.twin) {
        match field.spec.kind {
            Kind::Number(number) | Kind::Range(number) if rules.iter().all(|rule| rule.path != field.path) => {
                let Number { quantity, least, most, default, example, usual } = number;
                let unless = field.spec.unless;
                let required = field.required || unless.is_some();
                let path = field.path;
                rules.push(FieldRule { path, quantity, least, most, required, default, example, usual, unless });
            }
            kind => below(kind, rules),
        }
    }
}

fn below(kind: Kind, rules: &mut Vec<FieldRule>) {
    match kind {
        Kind::Block(block) => collect(block, rules),
        Kind::Choice(choice) => choice.kinds.iter().for_each(|kind| collect(kind.block, rules)),
        Kind::List(list) => below(*list.item, rules),
        _ => {}
    }
}
