//! What the plan says of a commissioning record.

use crate::safety::Source;
use crate::units::Quantity;
use alloc::vec::Vec;
use serde::Serialize;

/// The commissioning record against the plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Commissioning {
    /// Numbers, in the order they are taken.
    pub checks: Vec<Check>,
    /// What was tried and done.
    pub steps: Vec<RecordStep>,
}

/// One measured number beside its plan.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Check {
    /// Path of the measured number in the job.
    pub path: &'static str,
    /// What kind of number it is; values below are in the document's unit.
    pub quantity: Quantity,
    /// The planned value; `null` where the job plans none.
    pub planned: Option<f64>,
    /// Least value that passes; `null` is no limit.
    pub least: Option<f64>,
    /// Greatest value that passes; `null` is no limit.
    pub most: Option<f64>,
    /// What was measured; `null` where nothing was.
    pub measured: Option<f64>,
    /// Where the range comes from.
    pub source: Source,
    /// The verdict.
    pub verdict: CheckVerdict,
}

/// One thing tried or done.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS), ts(rename = "Step"))]
#[non_exhaustive]
pub struct RecordStep {
    /// Path of the answer in the job.
    pub path: &'static str,
    /// The answer; `null` where there is none.
    pub done: Option<bool>,
    /// The verdict.
    pub verdict: CheckVerdict,
}

/// What comes of a comparison.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum CheckVerdict {
    /// Within the agreed range, or done.
    Pass,
    /// Outside it, or not done.
    LookAgain,
    /// Nothing measured or answered.
    NotMeasured,
    /// Measured, and nothing to compare it with.
    NotPlanned,
}
