//! What to look at: codes with numbers. Sentences live with the page.

mod built;
mod motion;
mod room;

use super::{Model, Plan};
use crate::drive::{Direction, Verdict};
use crate::job::{Asce7Wind, Hinges, NamedValue, WindFrom};
use crate::leaf::{Body, LoadLevel};
use crate::order::arrange;
use crate::real::{cos, sin};
use crate::units::Quantity;
use alloc::vec::Vec;
use serde::Serialize;

/// Below this transmission angle a push along the link is mostly a push on the hinge.
/// Common practice in linkage design asks for 40° and takes 30° as the end; from memory.
const LEAST_TRANSMISSION_DEG: f64 = 30.0;

/// How far a typed solidity may be from the leaf's own: a tenth is more than a tape and a frame left out come to. A word of our own, no source.
const SOLIDITY_APART: f64 = 0.1;

/// How urgent a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum Severity {
    /// Do not build it like this.
    Stop,
    /// Look again.
    Look,
    /// Good to know.
    Note,
}

/// What a finding is about.
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
    /// What the drive at a stand holds is not known: reckon with a lock or drop bolt. `torque`, `force`.
    HoldingUnknown,
    /// The arm holds the closed leaf in the storm, and is no lock. `torque`, `force`.
    HoldingIsNoLock,
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
pub struct Finding {
    /// What it is about.
    pub code: FindingCode,
    /// How urgent it is.
    pub severity: Severity,
    /// Numbers for the sentence.
    pub values: Vec<NamedValue>,
}

pub(super) fn value(name: &'static str, value: f64, quantity: Quantity) -> NamedValue {
    NamedValue { name, value, quantity }
}

/// All findings of a plan, most severe first.
pub(super) fn of(model: &Model, plan: &Plan, least_lever_rad: f64) -> Vec<Finding> {
    let mut findings: Vec<Finding> =
        [torque(model, plan), arm(model, plan, least_lever_rad), leaf(model), site(model, plan), room::of(plan)]
            .concat();
    findings.extend(built::of(model, plan));
    findings.extend(motion::of(model, plan));
    arrange(&mut findings, |one, other| one.severity < other.severity);
    findings
}

fn torque(model: &Model, plan: &Plan) -> Vec<Finding> {
    let mut findings = Vec::new();
    let (operator, peak) = (&model.job().operator, &plan.peak);
    let demand = value("torque", peak.shaft_torque_n_m, Quantity::Torque);
    let angle = value("leaf_angle", peak.leaf_deg, Quantity::Angle);
    let limit = |limit| value("limit", limit, Quantity::Torque);
    match (plan.rating.verdict, plan.rating.reserve) {
        (Verdict::Over, _) => findings.push(Finding {
            code: FindingCode::DemandOverRated,
            severity: Severity::Stop,
            values: [demand, limit(operator.rated_torque_n_m), angle].into(),
        }),
        (Verdict::Tight, Some(reserve)) => findings.push(Finding {
            code: FindingCode::ReserveBelowRequired,
            severity: Severity::Look,
            values: [
                value("reserve", reserve, Quantity::Ratio),
                value("limit", model.job().required_reserve(), Quantity::Ratio),
                angle,
            ]
            .into(),
        }),
        _ => {}
    }
    if let Some(peak_torque) = operator.peak_torque_n_m.filter(|&most| peak.shaft_torque_n_m > most) {
        findings.push(Finding {
            code: FindingCode::DemandOverPeak,
            severity: Severity::Stop,
            values: [demand, limit(peak_torque), angle].into(),
        });
    }
    findings
}

fn arm(model: &Model, plan: &Plan, least_lever_rad: f64) -> Vec<Finding> {
    let mut findings = Vec::new();
    let linkage = model.linkage();
    let mut dead = |leaf_rad, code, severity| {
        if linkage.pose(leaf_rad).ratio.is_none() {
            findings.push(Finding { code, severity, values: Vec::new() });
        }
    };
    dead(0.0, FindingCode::DeadPointClosed, Severity::Note);
    dead(linkage.open_rad, FindingCode::DeadPointOpen, Severity::Look);
    // The bracket's radius is fixed, so the least lever is also where the transmission angle is least.
    let transmission_deg = linkage.pose(least_lever_rad).transmission_rad.to_degrees();
    if transmission_deg < LEAST_TRANSMISSION_DEG {
        findings.push(Finding {
            code: FindingCode::TransmissionLow,
            severity: Severity::Look,
            values: [
                value("transmission", transmission_deg, Quantity::Angle),
                value("limit", LEAST_TRANSMISSION_DEG, Quantity::Angle),
                NamedValue::leaf_angle(least_lever_rad),
            ]
            .into(),
        });
    }
    if let Some(overrun) = &plan.overrun {
        findings.push(Finding {
            code: FindingCode::LeafDrivesShaft,
            severity: Severity::Note,
            values: [
                value("torque", overrun.shaft_torque_n_m, Quantity::Torque),
                value("leaf_angle", overrun.leaf_deg, Quantity::Angle),
            ]
            .into(),
        });
    }
    findings
}

impl Model {
    /// Wind area over outline, without ice; `None` where the height is not said.
    fn solidity(&self) -> Option<f64> {
        let leaf = &self.job().leaf;
        Some(Body::without_ice(leaf).wind_area_m2 / (leaf.length_m * leaf.height_m?))
    }
}

fn leaf(model: &Model) -> Vec<Finding> {
    let mut findings = Vec::new();
    let loads = model.loads();
    if let Hinges::Measured(measured) = &model.job().hinges {
        // The bias resists opening; so does a gravity moment that is negative.
        let bias = measured.bias_n_m();
        let lean = -loads.gravity_n_m(measured.pull_leaf_deg.to_radians());
        // A spring balance is good for a few per cent of what it reads; a fifth of the friction is beyond that. Common practice, no source.
        if (bias - lean).abs() > 0.2 * loads.friction_n_m(Direction::Open) {
            findings.push(Finding {
                code: FindingCode::PullBiasAgainstLean,
                severity: Severity::Look,
                values: [value("bias_moment", bias, Quantity::Torque), value("lean_moment", lean, Quantity::Torque)]
                    .into(),
            });
        }
    }
    let drift = loads.lean_amplitude_n_m();
    let [opening, closing] = Direction::BOTH.map(|direction| loads.friction_n_m(direction));
    if drift > opening.min(closing) {
        let downhill_deg = model.job().lean.downhill();
        let (sine, cosine) = (sin(downhill_deg.to_radians()), cos(downhill_deg.to_radians()));
        findings.push(Finding {
            code: FindingCode::LeanDrift,
            severity: Severity::Look,
            values: [
                value("lean_moment", drift, Quantity::Torque),
                value("limit", opening.min(closing), Quantity::Torque),
                // Folded to −180…180°, however many turns were written.
                value("leaf_angle", libm::atan2(sine, cosine).to_degrees(), Quantity::Angle),
            ]
            .into(),
        });
    }
    // Opening lets the leaf down where it falls open, closing where it rises.
    let (weight, down, code) = match loads.rise_n_m() {
        weight if weight < 0.0 => (-weight, opening, FindingCode::RampRunsOpen),
        weight => (weight, closing, FindingCode::RampRunsShut),
    };
    if weight > down {
        findings.push(Finding {
            code,
            severity: Severity::Look,
            values: [value("moment", weight, Quantity::Torque), value("limit", down, Quantity::Torque)].into(),
        });
    }
    findings
}

/// Findings of the optional blocks.
fn site(model: &Model, plan: &Plan) -> Vec<Finding> {
    let mut findings = Vec::new();
    let mut look = |code, values: &[NamedValue]| {
        findings.push(Finding { code, severity: Severity::Look, values: values.into() });
    };
    if let Some(WindFrom::Asce7(Asce7Wind { level: LoadLevel::Strength, .. })) = model.job().wind.from {
        look(FindingCode::WindAtStrengthLevel, &[]);
    }
    let winds = [
        (Some(&model.job().wind), FindingCode::WindSolidityDiffers),
        (model.job().storm.as_ref(), FindingCode::StormSolidityDiffers),
    ];
    for (wind, code) in winds {
        let Some((typed, own)) = wind.and_then(|wind| wind.shape).zip(model.solidity()) else { continue };
        let typed = typed.solidity();
        if (typed - own).abs() > SOLIDITY_APART {
            let solidity = |name, solidity| value(name, solidity, Quantity::Ratio);
            look(code, &[solidity("solidity", typed), solidity("leaf_solidity", own)]);
        }
    }
    if let Some(band) = plan.band.as_ref().filter(|band| band.verdict_high == Verdict::Over)
        && plan.rating.verdict != Verdict::Over
    {
        let torque = value("torque", band.peak_n_m.high, Quantity::Torque);
        let limit = value("limit", model.job().operator.rated_torque_n_m, Quantity::Torque);
        look(FindingCode::BandOverRated, &[torque, limit]);
    }
    let (Some(over), Some(ground)) = (&plan.ground, &model.job().ground) else { return findings };
    if let Some(touch_deg) = over.touch_leaf_deg {
        let gap = value("gap", over.least_gap_m, Quantity::ShortLength);
        look(FindingCode::GroundTouches, &[gap, value("leaf_angle", touch_deg, Quantity::Angle)]);
    }
    if let Some(allowance_m) = ground.joint_allowance_m.filter(|&allowance_m| over.bracket_rise_m > allowance_m) {
        let rise = value("rise", over.bracket_rise_m, Quantity::ShortLength);
        look(FindingCode::BracketRise, &[rise, value("limit", allowance_m, Quantity::ShortLength)]);
    }
    findings
}
