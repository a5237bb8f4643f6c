//! Where to stand the operator: the search over everything a set-out leaves free.

mod active_set;
mod at_corners;
mod corner;
mod curved;
mod descent;
mod dip;
mod evaluate;
mod figures;
#[cfg(test)]
mod fixtures;
mod found;
mod journal;
mod kernel;
mod lattice;
mod limit;
mod on_lattice;
mod pads;
mod part_box;
mod piece;
mod play;
mod problem;
mod proof;
mod proven;
mod rule;
mod scan;
mod search;
mod stand;
mod swept;
mod terms;
mod variables;

pub(crate) use descent::SlpScratch;
pub(crate) use found::Found;
pub(crate) use journal::Journal;
pub(crate) use kernel::{ArmKernel, SearchStation};
pub use limit::Limit;
pub(crate) use pads::PLACE_TOLERANCE;
pub(crate) use problem::{Problem, SearchLoads};
pub use rule::{RuleOfThumb, ShortLength, rule_of_thumb};
