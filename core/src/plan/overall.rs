//! The worst of everything that was judged, so that nobody shows one good figure over something that is wrong.

use super::{Finding, FindingCode, Severity};
use crate::drive::Verdict;
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

/// The worst of what was judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Overall {
    /// Over while any finding is a stop, whatever it is about; else what the torque's rating says.
    pub state: Verdict,
    /// What that is about: the first stop's subject, torque without one.
    pub about: Subject,
    /// How many findings are stops.
    pub stops: u32,
    /// The first stop; `null` without one.
    pub finding: Option<FindingCode>,
}

/// The worst of the torque's verdict and the findings, the most severe of which stand first.
pub(super) fn overall(torque: Verdict, findings: &[Finding]) -> Overall {
    let stops = findings.iter().filter(|finding| finding.severity == Severity::Error);
    let first = stops.clone().next().map(|finding| finding.code);
    Overall {
        state: if first.is_some() { Verdict::Over } else { torque },
        about: first.map_or(Subject::Torque, FindingCode::about),
        stops: stops.count() as u32,
        finding: first,
    }
}

impl FindingCode {
    /// The one subject a finding belongs to.
    #[must_use]
    pub fn about(self) -> Subject {
        use FindingCode::*;
        match self {
            DemandOverRated | DemandOverPeak | ReserveBelowRequired | PullBiasAgainstLean | LeanDrift
            | RampRunsShut | RampRunsOpen | WindAtStrengthLevel | WindSolidityDiffers | BandOverRated => {
                Subject::Torque
            }
            DeadPointClosed | DeadPointOpen | TransmissionLow | LeafDrivesShaft | BracketRise => Subject::Arm,
            TapeErrorCosts | TapeErrorBreaks => Subject::Tape,
            GroundTouches
            | ArmHits
            | ArmHitsLeaf
            | LeafHits
            | OperatorHits
            | OperatorHitsLeaf
            | ArmWidthSaidTwice
            | LeafThicknessSaidTwice
            | ArmCrushes
            | ElbowNearsLeaf
            | OpenGapSmall
            | HingeGapCloses => Subject::Clearances,
            MotionOverPeak | MotionOverRated | RampsTooLong | CoastRunsOn | HandForceHigh | OpeningStalls
            | ClosingStalls | OpeningDrivenBack | ClosingDrivenBack | OpeningCreeps | ClosingCreeps | DutyExceeded
            | DutyNoTime => Subject::Motion,
            BreakawayNotForPeople
            | BreakawayToggleZone
            | BreakawayNoWindow
            | BreakawayNoLimit
            | BreakawaySlipsEarly
            | BreakawaySlipsLate => Subject::Breakaway,
            HoldingGivesWay
            | HoldingUnknown
            | HoldingIsNoLock
            | StormMovesOpenLeaf
            | OpenLeafHoldingUnknown
            | StormSolidityDiffers => Subject::Storm,
            ForceMustBeMeasured | PushOverLimit | ImpactOverLimit | ImpactOverWideLimit | ResponseTooLong
            | EdgeTravelShort | ClassUndecided | MeansMissingOpening | MeansMissingClosing | ZonesUnreached
            | SensorsMissZones | SignsMissing | PedestrianWayMissing => Subject::People,
            BuiltBroken | BuiltOverRated | BuiltReserveBelowRequired => Subject::AsBuilt,
            DynamicForceOver | StaticForceOver => Subject::Record,
        }
    }
}
