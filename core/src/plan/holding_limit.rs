//! What lets go first at the shaft of a drive that is off.

use crate::job::Job;
use serde::Serialize;

/// What lets go first at the shaft.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum HoldingLimit {
    /// What the drive at a stand holds.
    Drive,
    /// What the clutch holds before it slips.
    Clutch,
}

impl Job {
    /// The lesser of what the drive at a stand holds and what slips the clutch, N·m; `None` where neither is said.
    pub(super) fn holding_limit(&self) -> Option<(f64, HoldingLimit)> {
        let drive = self.holding.as_ref().and_then(|facts| facts.shaft_torque_n_m);
        let slip = self.breakaway.as_ref().and_then(|facts| facts.slip_torque_n_m);
        match (drive, slip) {
            (Some(drive), Some(clutch)) if clutch < drive => Some((clutch, HoldingLimit::Clutch)),
            (Some(drive), _) => Some((drive, HoldingLimit::Drive)),
            (None, clutch) => clutch.map(|clutch| (clutch, HoldingLimit::Clutch)),
        }
    }
}
