//! What would make an operator do: a change, its numbers, and the job with it made.

use crate::fault::NamedValue;
use crate::job::{Arm, Job};
use alloc::vec::Vec;
use serde::Serialize;

/// A change with which an operator does.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Suggestion {
    /// What is changed. Sentences live with the page, under the name.
    pub kind: SuggestionKind,
    /// Numbers for the sentence.
    pub values: Vec<NamedValue>,
    /// The arm with which it was held against the leaf so changed, and does.
    pub arm: Arm,
    /// The reserve it then leaves; `null` where nothing is demanded.
    pub reserve: Option<f64>,
}

/// What may be changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum SuggestionKind {
    /// The operator at its best place instead of where the arm stands. No values but the arm.
    AnotherPlace,
    /// Less area for the wind. `area`, `area_before`.
    LessWindArea,
    /// A closed infill cut into boards with gaps. `board`, `gap`, `area`, `area_before`.
    CutIntoBoards,
    /// A lighter leaf. `mass`, `mass_before`.
    LighterLeaf,
    /// Slower starts and stops. `ramp_up`, `ramp_down`.
    SlowerRamps,
    /// Fewer cycles an hour. `cycles`, `cycles_before`.
    FewerCyclesPerHour,
    /// Fewer cycles a day. `cycles`, `cycles_before`.
    FewerCyclesPerDay,
}

impl Suggestion {
    /// The job with the change made and the arm in it; its operator stays the job's own.
    #[must_use]
    pub fn applied(&self, job: &Job) -> Job {
        let mut job = job.clone();
        job.arm = Some(self.arm);
        let value = |name| self.values.iter().find(|value| value.name == name).map(|value| value.value);
        match self.kind {
            SuggestionKind::AnotherPlace => {}
            SuggestionKind::LessWindArea | SuggestionKind::CutIntoBoards => job.leaf.wind_area_m2 = value("area"),
            SuggestionKind::LighterLeaf => job.leaf.mass_kg = value("mass"),
            SuggestionKind::SlowerRamps => {
                if let Some(motion) = &mut job.motion {
                    (motion.ramp_up_s, motion.ramp_down_s) = (value("ramp_up"), value("ramp_down"));
                }
            }
            SuggestionKind::FewerCyclesPerHour | SuggestionKind::FewerCyclesPerDay => {
                if let Some(duty) = job.motion.as_mut().and_then(|motion| motion.duty.as_mut()) {
                    match self.kind {
                        SuggestionKind::FewerCyclesPerHour => duty.cycles_per_hour = value("cycles"),
                        _ => duty.cycles_per_day = value("cycles"),
                    }
                }
            }
        }
        job
    }
}
