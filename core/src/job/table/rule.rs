//! A number of the table as everybody else sees it: the page's hints, the tests.

use crate::units::Quantity;
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
