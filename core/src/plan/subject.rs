//! What findings and judgements are about.

use serde::Serialize;

/// What a finding, and so a judgement, is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum Subject {
    /// What the shaft must give, steady, and what makes it uncertain.
    Torque,
    /// How the arm moves the leaf.
    Arm,
    /// What an error of the tape does.
    Tape,
    /// What leaf and arm meet, or come too close to.
    Clearances,
    /// The way through time: start, stop, duty, the way by hand.
    Motion,
    /// The window of the slip torque.
    Breakaway,
    /// The closed leaf in the storm.
    Storm,
    /// Forces on people, zones, means of protection.
    People,
    /// The arm that was built.
    AsBuilt,
    /// What was measured at the gate.
    Record,
}

impl Subject {
    /// All of them, in the order in which they are told.
    pub const ALL: [Subject; 10] = [
        Subject::Torque,
        Subject::Arm,
        Subject::Tape,
        Subject::Clearances,
        Subject::Motion,
        Subject::Breakaway,
        Subject::Storm,
        Subject::People,
        Subject::AsBuilt,
        Subject::Record,
    ];
}
