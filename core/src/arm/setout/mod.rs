//! Where to stand the operator: the search over everything a set-out leaves free.

mod appraise;
mod bare;
#[cfg(test)]
mod bench;
mod clear;
mod curved;
mod descent;
mod figures;
mod grip;
mod lattice;
mod lp;
mod pads;
mod rule;
mod scan;
mod search;
mod site;
mod swept;
mod terms;

pub(crate) use appraise::golden;
pub(crate) use bare::{Bare, Station};
pub(crate) use clear::separation_m;
pub(crate) use descent::{Found, Workshop};
pub(crate) use pads::PENCIL;
pub use rule::{RuleOfThumb, ShortLength, rule_of_thumb};
pub(crate) use site::{Loads, Site};
pub use terms::Limit;
