//! Lists of operators: what a host says of each it offers, the one table of it, and the reader that tells everything wrong at once.
//!
//! ```
//! use pintle_core::{Document, operators};
//!
//! let text = r#"{ "title": "An invented list", "operators": [
//!     { "id": "small", "name": "Small one", "rated_torque_n_m": 250, "peek_torque_n_m": 400 },
//!     { "id": "large", "name": "Large one", "rated_torque_n_m": 0.4 } ] }"#;
//! let document: Document = serde_json::from_str(text)?;
//! let read = operators::read(&document);
//! assert_eq!(read.operators.len(), 1); // one bad entry does not lose the other
//! let told: Vec<String> = read.left_out.iter().map(ToString::to_string).collect();
//! assert_eq!(told, ["operators.1 left out: operators.1.rated_torque_n_m: MeantKilonewtonMetres, found 0.4, \
//!     allowed 1 to 50000, for instance 400"]);
//! assert!(read.warnings[0].to_string().ends_with("for instance peak_torque_n_m"));
//! # Ok::<(), serde_json::Error>(())
//! ```

mod base;
mod fitted;
mod kit;
mod limits;
mod list;
mod listed;
mod meant;
mod nearest;
mod power;
mod rated_for;
mod read;

use crate::job::table::rules;
use crate::job::{FieldRule, OperatorBody};
use alloc::vec::Vec;
pub use base::BasePattern;
pub use kit::ArmKit;
pub use limits::{DutyRating, LeafLimit};
pub use list::OperatorList;
pub use listed::{ListedOperator, OperatorNames};
pub use power::{Battery, Supply};
pub use read::{EntryReader, ListEntry, ReadOperators, read};

/// The one table of numbers an operator of a list may have: every number field with its range and an example.
#[must_use]
pub fn fields() -> Vec<FieldRule> {
    // The body has the same rules in a job, under a path of its own.
    let listed = |rule: FieldRule| {
        let body = OperatorBody::BLOCK.fields.iter().find(|field| field.path == rule.path);
        FieldRule { path: body.and_then(|field| field.twin).unwrap_or(rule.path), ..rule }
    };
    rules(ListedOperator::BLOCK).into_iter().map(listed).collect()
}
