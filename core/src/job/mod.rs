//! The job: what a person says about a gate, and the rules that every value has to keep.
//!
//! `table` says what blocks are made of and reads them; `blocks` declares each once, with the relations inside it; `checked` is the way from
//! a document to a job that can be computed with.

mod blocks;
mod checked;
mod migrate;
mod obstacles;
mod partial;
mod ramp;
pub(crate) mod table;
mod totals;
mod version;

use alloc::vec::Vec;
pub use blocks::*;
pub use checked::{CheckedJob, ToChecked};
pub(crate) use obstacles::SetOutSite;
pub use table::FieldRule;
#[cfg(feature = "describe")]
pub(crate) use table::description;
pub use totals::MemberTotals;
pub use version::SCHEMA;

/// The one table of numbers a job may hold: every number field with its range, its default, an example.
#[must_use]
pub fn fields() -> Vec<FieldRule> {
    table::rules(Job::BLOCK)
}
