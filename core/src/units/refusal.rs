//! Why a typed text is no number.

use core::fmt::{Display, Formatter, Result};
use serde::Serialize;

/// Why a typed text is not a number of the wanted quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(ts_rs::TS))]
#[non_exhaustive]
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
#[non_exhaustive]
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

/// For a programmer's log; people get sentences from the string tables.
impl Display for ReadErrorCode {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        f.write_str(match self {
            ReadErrorCode::Empty => "nothing was typed",
            ReadErrorCode::NotANumber => "not a number of this quantity",
            ReadErrorCode::Ambiguous => "the comma may group thousands or mark decimals",
        })
    }
}

impl Display for ReadError {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        match self.readings {
            Some([grouped, decimal]) => write!(f, "{}: {grouped} or {decimal}", self.code),
            None => self.code.fmt(f),
        }
    }
}

impl core::error::Error for ReadError {}
