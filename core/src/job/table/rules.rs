//! The numbers of the table.

use super::field::{Block, Kind, Number};
use super::rule::FieldRule;
use alloc::vec::Vec;

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
