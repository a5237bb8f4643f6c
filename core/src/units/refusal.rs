//! Why a typed text is no number.

use serde::Serialize;

/// Why a typed text is not a number of the wanted quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(ts_rs::TS))]
pub enum ReadErrorCode {
    /// Nothing was typed.
    Empty,
    /// Not a number, or a unit that does not fit the quantity.
    NotANumber,
    /// `1,234` may be a thousand or a bit over one: ask, do not guess.
    Ambiguous,
}

/// A typed text that could not be understood.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(ts_rs::TS))]
pub struct ReadError {
    /// Why.
    pub code: ReadErrorCode,
    /// What an ambiguous text may mean, in the document's unit: the comma grouping thousands, the comma marking decimals.
    pub readings: Option<[f64; 2]>,
}

impl ReadError {
    pub(super) const fn new(code: ReadErrorCode) -> ReadError {
        ReadError { code, readings: None }
    }
}
