//! Where to stand the operator: the search over everything a set-out leaves free.

mod appraise;
mod bare;
mod curved;
mod descent;
mod figures;
#[cfg(test)]
mod fixtures;
mod found;
mod grip;
mod lattice;
mod limit;
mod pads;
mod rule;
mod scan;
mod search;
mod site;
mod swept;
mod terms;
mod variables;

pub(crate) use bare::{Bare, Station};
pub(crate) use descent::Workshop;
pub(crate) use found::Found;
pub use limit::Limit;
pub(crate) use pads::PENCIL;
pub use rule::{RuleOfThumb, ShortLength, rule_of_thumb};
pub(crate) use site::{Loads, Site};
