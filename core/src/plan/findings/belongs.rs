//! What each finding is about, and which field would change it.

use super::finding::FindingCode;
use crate::plan::subject::Subject;

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

    /// Path of the field that would change it, as the job has it; `None` where no field would.
    #[must_use]
    pub fn path(self) -> Option<&'static str> {
        use FindingCode::*;
        Some(match self {
            DemandOverRated | ReserveBelowRequired => "operator.rated_torque_n_m",
            DemandOverPeak => "operator.peak_torque_n_m",
            BandOverRated | HandForceHigh => "hinges.friction_coefficient",
            PullBiasAgainstLean | LeanDrift => "lean.angle_deg",
            RampRunsShut | RampRunsOpen => "hinges.rise_m",
            WindAtStrengthLevel => "wind.from.level",
            WindSolidityDiffers => "wind.shape.solidity",
            StormSolidityDiffers => "storm.shape.solidity",
            DeadPointOpen | LeafHits | OpenGapSmall => "swing.open_deg",
            TransmissionLow => "arm.bracket_u_m",
            ArmHits | ArmHitsLeaf | ElbowNearsLeaf | ArmCrushes | OperatorHits | OperatorHitsLeaf => "arm.shaft_x_m",
            ArmWidthSaidTwice => "arm_half_width_m",
            LeafThicknessSaidTwice => "leaf.thickness_m",
            GroundTouches => "ground.gap_m",
            BracketRise => "ground.joint_allowance_m",
            TapeErrorCosts | TapeErrorBreaks => "tape.error_m",
            BuiltBroken | BuiltOverRated | BuiltReserveBelowRequired => "as_built.link_m",
            MotionOverPeak | MotionOverRated | RampsTooLong => "motion.ramp_up_s",
            CoastRunsOn => "motion.coast_drag_n_m",
            OpeningStalls | ClosingStalls | OpeningDrivenBack | ClosingDrivenBack | OpeningCreeps | ClosingCreeps => {
                "motion.motor.supply_v"
            }
            DutyExceeded | DutyNoTime => "motion.duty.cycles_per_hour",
            BreakawaySlipsEarly | BreakawaySlipsLate | BreakawayNoWindow => "breakaway.slip_torque_n_m",
            BreakawayNoLimit => "breakaway.leaf_moment_n_m",
            HoldingGivesWay | HoldingUnknown | StormMovesOpenLeaf | OpenLeafHoldingUnknown => {
                "holding.shaft_torque_n_m"
            }
            ForceMustBeMeasured | DynamicForceOver => "record.dynamic_force_n",
            StaticForceOver => "record.static_force_n",
            PushOverLimit | ImpactOverLimit | ImpactOverWideLimit => "operator.shaft_speed_deg_s",
            ResponseTooLong => "contact.response_s",
            EdgeTravelShort => "contact.edge_travel_m",
            ClassUndecided => "site.public",
            MeansMissingOpening | MeansMissingClosing | ZonesUnreached | SensorsMissZones => "site.means",
            SignsMissing => "site.signs_both_faces",
            PedestrianWayMissing => "site.pedestrian_way",
            DeadPointClosed
            | LeafDrivesShaft
            | HingeGapCloses
            | BreakawayNotForPeople
            | BreakawayToggleZone
            | HoldingIsNoLock => return None,
        })
    }
}
