//! What was judged and what came of it, a subject at a time.

use super::judgement::{Judged, Judgement};
use super::{CheckVerdict, Finding, FindingCode, Plan, Severity, Subject};
use crate::drive::Verdict;
use crate::fault::LeftOut;

impl Finding {
    /// Whether it is measured against a threshold that it states.
    fn has_threshold(&self) -> bool {
        self.values.iter().any(|value| matches!(value.name, "limit" | "least" | "most" | "wanted"))
    }
}

/// Whether what is needed to judge a subject was said.
fn asked(plan: &Plan, about: Subject) -> bool {
    match about {
        Subject::Torque | Subject::Arm => true,
        Subject::Tape => plan.tape.is_some(),
        Subject::Clearances => plan.clearances.is_some() || plan.ground.is_some(),
        Subject::Motion => plan.motion.is_some(),
        Subject::Breakaway => plan.breakaway.is_some(),
        Subject::Storm => plan.storm.is_some(),
        Subject::People => forces_were_measured(plan),
        Subject::AsBuilt => plan.as_built.is_some(),
        Subject::Record => plan.record.is_some(),
    }
}

/// Only a calibrated instrument on the finished gate tells the forces on a person: both of them, and within their limits.
fn forces_were_measured(plan: &Plan) -> bool {
    ["record.dynamic_force_n", "record.static_force_n"].iter().all(|path| {
        let checks = plan.record.iter().flat_map(|record| &record.checks);
        checks.filter(|check| check.path == *path).any(|check| check.verdict == CheckVerdict::Pass)
    })
}

/// Whether a finding is about a subject. A force that was measured and is over its limit is one of the record, and of the people it may hit.
fn is_about(code: FindingCode, about: Subject) -> bool {
    let measured = matches!(code, FindingCode::DynamicForceOver | FindingCode::StaticForceOver);
    code.about() == about || (measured && about == Subject::People)
}

impl Plan {
    /// Judges every subject, of what was computed and found; a subject of which a part is begun and left out is not judged, unless what is there
    /// is over already.
    pub fn judge(&mut self, left_out: &[LeftOut]) {
        self.judgements = Subject::ALL.iter().map(|&about| judgement(self, left_out, about)).collect();
    }
}

/// `findings` of the plan stand most severe first.
fn judgement(plan: &Plan, left_out: &[LeftOut], about: Subject) -> Judgement {
    let mut about_it = plan.findings.iter().filter(|finding| is_about(finding.code, about));
    let first = about_it.clone().next();
    let threshold = about_it.find(|finding| finding.severity < Severity::Info && finding.has_threshold());
    let begun = left_out.iter().any(|part| part_is_about(&part.path, about));
    let torque = if about == Subject::Torque { plan.rating.verdict } else { Verdict::Within };
    let (state, finding) = match first {
        Some(stop) if stop.severity == Severity::Error => (Judged::Over, first),
        _ if torque == Verdict::Over => (Judged::Over, first),
        _ if begun || !asked(plan, about) => (Judged::NotJudged, first),
        _ if threshold.is_some() || torque == Verdict::Tight => (Judged::Tight, threshold.or(first)),
        _ => (Judged::Within, first),
    };
    let code = finding.map(|finding| finding.code);
    Judgement { about, state, finding: code, path: code.and_then(FindingCode::path) }
}

/// Whether a part of the job that is left out is about a subject.
fn part_is_about(path: &str, about: Subject) -> bool {
    let subjects: &[Subject] = match path.split('.').next().unwrap_or_default() {
        "drag" | "ice" | "uncertainty" | "lean" => &[Subject::Torque],
        "ground" | "obstacles" | "operator" | "migrated" => &[Subject::Clearances],
        "tape" | "marks" => &[Subject::Tape],
        "as_built" => &[Subject::AsBuilt],
        "motion" => &[Subject::Motion],
        "breakaway" => &[Subject::Breakaway],
        "storm" | "holding" => &[Subject::Storm],
        "contact" => &[Subject::People],
        "site" => &[Subject::People],
        "record" | "settings" => &[Subject::Record],
        _ => &[],
    };
    subjects.contains(&about)
}

impl FindingCode {
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
