//! What a judgement is.

use super::FindingCode;
use super::subject::Subject;
use serde::Serialize;

/// What came of looking at a subject.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum Judged {
    /// Nothing is over a threshold.
    Within,
    /// A stated threshold is passed that does not forbid to build it.
    Tight,
    /// It is not to be built, or used, like this.
    Over,
    /// It was not asked for, is begun and not finished, or cannot be judged from what is known.
    NotJudged,
}

/// Why a subject is not judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum Unjudged {
    /// Nothing that it needs was said.
    NotAsked,
    /// A part of it is begun, and left out until it can be read.
    Begun,
    /// It is estimated, and only a calibrated instrument on the finished gate judges it.
    NotMeasured,
}

/// One subject.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Judgement {
    /// What was looked at.
    pub about: Subject,
    /// What came of it.
    pub state: Judged,
    /// Why it is not judged; `null` where it is.
    pub unjudged: Option<Unjudged>,
    /// The most severe finding about it, one that passes no threshold included; `null` without any.
    pub finding: Option<FindingCode>,
    /// Path of the field that would change it; `null` where there is none.
    pub path: Option<&'static str>,
}
