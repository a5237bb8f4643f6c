//! The list as a document.

use super::ListedOperator;
use crate::job::table::*;
use alloc::{string::String, vec::Vec};

/// Most operators of a list; beyond it a hostile one is refused before anything pays for it.
pub(super) const MOST_OPERATORS: u32 = 20_000;

/// What one of them is.
pub(super) const ITEM: &Kind = &Kind::Block(ListedOperator::BLOCK);

block! {
    /// A list of operators to choose from, as a host gives it. What is not known here is kept.
    pub struct OperatorList at "" {
        /// What the list is, for whoever chooses from it.
        title: Option<String> = text(),
        /// The operators.
        operators: Vec<ListedOperator> = list(ITEM, MOST_OPERATORS),
    }
}
