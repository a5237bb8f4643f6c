//! Findings: codes with numbers. Sentences live with the page.

use crate::fault::NamedValue;
use crate::order::insertion_sort;
use crate::plan::subject::Subject;
use crate::units::Quantity;
use alloc::vec::Vec;
use serde::Serialize;

/// How urgent a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum Severity {
    /// Do not build it like this.
    #[serde(rename = "stop")]
    Error,
    /// Look again.
    #[serde(rename = "look")]
    Warning,
    /// Good to know.
    #[serde(rename = "note")]
    Info,
}

/// What was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum FindingCode {
    /// The demand is above the rated torque. `torque`, `limit`, `leaf_angle`.
    DemandOverRated,
    /// The demand is above the peak torque. `torque`, `limit`, `leaf_angle`.
    DemandOverPeak,
    /// Within the rating, with less reserve than asked for. `reserve`, `limit`, `leaf_angle`.
    ReserveBelowRequired,
    /// The arm is straight or folded when closed: it holds with little shaft torque, and is not a lock.
    DeadPointClosed,
    /// The arm is straight or folded when open.
    DeadPointOpen,
    /// The link pushes mostly at the hinge. `transmission`, `limit`, `leaf_angle`.
    TransmissionLow,
    /// Somewhere the leaf drives the shaft with the wind following. `torque`, `leaf_angle`.
    LeafDrivesShaft,
    /// The pulls differ by more or less than the stated lean explains. `bias_moment`, `lean_moment`.
    PullBiasAgainstLean,
    /// The lean moves a free leaf against its hinge friction. `lean_moment`, `limit`, `leaf_angle` (where it comes to rest).
    LeanDrift,
    /// On its ramp the leaf runs shut by itself. `moment` of the weight, `limit`, the friction that holds it back.
    RampRunsShut,
    /// On its ramp the leaf runs open by itself. `moment` of the weight, `limit`, the friction that holds it back.
    RampRunsOpen,
    /// The leaf touches the ground inside its swing. `gap`, `leaf_angle`.
    GroundTouches,
    /// The bracket pin rises and falls more than the arm's joints allow. `rise`, `limit`.
    BracketRise,
    /// A strength-level wind is compared with a working rating.
    WindAtStrengthLevel,
    /// The solidity typed for the working wind's shape is not that of the leaf. `solidity`, `leaf_solidity`: wind area over outline.
    WindSolidityDiffers,
    /// The same for the storm's shape.
    StormSolidityDiffers,
    /// With high friction the demand is above the rated torque. `torque`, `limit`.
    BandOverRated,
    /// Crank, link or elbow meets something in the room. `overlap`, `leaf_angle`.
    ArmHits,
    /// Crank, link or elbow meets the leaf. `overlap`, `leaf_angle`.
    ArmHitsLeaf,
    /// The leaf meets an obstacle or its post. `overlap`, `leaf_angle`.
    LeafHits,
    /// The operator's body, or its shaft, stands in something. `overlap`.
    OperatorHits,
    /// The leaf runs into the operator's body. `overlap`, `leaf_angle`.
    OperatorHitsLeaf,
    /// An older document gave the arm two widths; the larger is kept. `kept`, `other`: half of each.
    ArmWidthSaidTwice,
    /// An older document gave the leaf two thicknesses; the larger is kept. `kept`, `other`.
    LeafThicknessSaidTwice,
    /// Between the arm and something in the room an arm or hand would be crushed. `gap`, `limit`, `leaf_angle`.
    ArmCrushes,
    /// Between elbow and leaf an arm or hand would be crushed or sheared. `gap`, `limit`, `leaf_angle`.
    ElbowNearsLeaf,
    /// Too little room is left behind the open leaf. `gap`, `limit`.
    OpenGapSmall,
    /// The gap at the hinge post is wide enough for a finger, and closes on it. `widest`, `gap`, `limit`, `leaf_angle`.
    HingeGapCloses,
    /// An error of the tape leaves too little reserve, or breaks the arm. `error`, `reserve`.
    TapeErrorCosts,
    /// With errors of the tape in all dimensions at once the arm does not work any more. `count` of 64 combinations, `error`.
    TapeErrorBreaks,
    /// The arm that was built does not work.
    BuiltBroken,
    /// The arm that was built asks more of the shaft than it is rated for. `torque`, `limit`.
    BuiltOverRated,
    /// It leaves less reserve than asked for. `reserve`, `limit`.
    BuiltReserveBelowRequired,
    /// Start and inertia bring the shaft torque over the peak torque. `torque`, `limit`, `leaf_angle`.
    MotionOverPeak,
    /// Start and inertia bring it over the rated torque, which the steady demand keeps. `torque`, `limit`, `leaf_angle`.
    MotionOverRated,
    /// The way is too short for the ramps: full speed is never reached. `speed`, `limit`.
    RampsTooLong,
    /// Let go at full speed with the wind behind, the leaf does not stop by itself.
    CoastRunsOn,
    /// By hand, arm disconnected, the leaf is heavier to move than it should be. `force`, `limit`, `leaf_angle`.
    HandForceHigh,
    /// The motor comes to a stand when opening. `leaf_angle`, `time`.
    OpeningStalls,
    /// The same when closing. `leaf_angle`, `time`.
    ClosingStalls,
    /// It comes to a stand when opening and is then pushed back. `leaf_angle`, `time`.
    OpeningDrivenBack,
    /// The same when closing. `leaf_angle`, `time`.
    ClosingDrivenBack,
    /// Opening it still creeps after half an hour. `leaf_angle`.
    OpeningCreeps,
    /// The same when closing. `leaf_angle`.
    ClosingCreeps,
    /// More cycles than the operator is rated for. `share`.
    DutyExceeded,
    /// An hour is too short for the cycles asked for. `share` of the hour they would take.
    DutyNoTime,
    /// Breakaway protects leaf and drive, and is never counted as protection of people.
    BreakawayNotForPeople,
    /// Near closed one slip torque gives the leaf several times the force. `leaf_angle`, up to which.
    BreakawayToggleZone,
    /// No slip torque holds in normal running and spares every part. `least`, `most`.
    BreakawayNoWindow,
    /// No limit of leaf, arm or gear is given: only the lower end is known. `least`.
    BreakawayNoLimit,
    /// The slip torque that is set slips in normal running. `torque`, `least`.
    BreakawaySlipsEarly,
    /// The slip torque that is set overloads a part first. `torque`, `most`.
    BreakawaySlipsLate,
    /// In the storm the arm does not hold the closed leaf: a lock or drop bolt is needed. `torque`, `force`.
    HoldingGivesWay,
    /// What the drive at a stand holds is not known: plan for a lock or drop bolt. `torque`, `force`.
    HoldingUnknown,
    /// The arm holds the closed leaf in the storm, and is no lock. `torque`, `force`.
    HoldingIsNoLock,
    /// Away from closed the storm asks more of shaft and gear than they hold: the leaf is blown about. `torque`, `limit`, `leaf_angle`, `force` on
    /// a bolt at the latch edge there.
    StormMovesOpenLeaf,
    /// The same where it is not known what they hold. `torque`, `leaf_angle`, `force`.
    OpenLeafHoldingUnknown,
    /// Every force on a person is an estimate that must be measured with a calibrated instrument.
    ForceMustBeMeasured,
    /// The drive's push at the latch edge is over the static limit. `force`, `limit`, `leaf_angle`, `time` from which that limit holds.
    PushOverLimit,
    /// Closing, the blow of the latch edge is over the dynamic limit at a gap of 50 to 500 mm. `force`, `limit`, `gap`, `leaf_angle`, `speed`
    /// there that keeps it, `time` it may last, `static_limit` after that.
    ImpactOverLimit,
    /// The same where more than 500 mm is left, the `gap`.
    ImpactOverWideLimit,
    /// The drive lets go later than the dynamic limit may last. `time`, `limit`.
    ResponseTooLong,
    /// The safety edge gives less than it needs to. `needed`, `limit`.
    EdgeTravelShort,
    /// An answer that decides the class of use is missing.
    ClassUndecided,
    /// Too few independent means of protection when opening. `wanted`, `counted`.
    MeansMissingOpening,
    /// The same when closing. `wanted`, `counted`.
    MeansMissingClosing,
    /// Zones that no means of protection reaches. `count`.
    ZonesUnreached,
    /// Sensors do not sense where zones are that they are said to reach. `count` of them, `gap`, the widest.
    SensorsMissZones,
    /// The dynamic force measured on the finished gate is over its limit. `force`, `limit`.
    DynamicForceOver,
    /// The static force measured there is over its limit. `force`, `limit`.
    StaticForceOver,
    /// No warning sign on both faces is confirmed.
    SignsMissing,
    /// No way apart for people on foot is confirmed.
    PedestrianWayMissing,
}

/// One finding.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Finding {
    /// What was found: what to do about it stands in the string tables under the same name.
    pub code: FindingCode,
    /// The one subject it belongs to.
    pub about: Subject,
    /// Path of the field that would change it; `null` where none would.
    pub path: Option<&'static str>,
    /// How urgent it is.
    pub severity: Severity,
    /// Numbers for the sentence.
    pub values: Vec<NamedValue>,
}

/// Findings as they are collected.
#[derive(Default)]
pub(super) struct Findings(Vec<Finding>);

impl Findings {
    pub fn error(&mut self, code: FindingCode, values: &[NamedValue]) {
        self.push(Severity::Error, code, values);
    }

    pub fn warning(&mut self, code: FindingCode, values: &[NamedValue]) {
        self.push(Severity::Warning, code, values);
    }

    pub fn info(&mut self, code: FindingCode, values: &[NamedValue]) {
        self.push(Severity::Info, code, values);
    }

    fn push(&mut self, severity: Severity, code: FindingCode, values: &[NamedValue]) {
        self.0.push(Finding { code, about: code.about(), path: code.path(), severity, values: values.into() });
    }

    /// The most severe first; of equals the one that was found first.
    pub fn in_order(mut self) -> Vec<Finding> {
        insertion_sort(&mut self.0, |one, other| one.severity < other.severity);
        self.0
    }
}

pub(super) fn value(name: &'static str, value: f64, quantity: Quantity) -> NamedValue {
    NamedValue { name, value, quantity }
}
