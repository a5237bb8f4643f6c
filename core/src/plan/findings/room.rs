//! Findings of the room around leaf and arm, and of the tape.
//!
//! The figures are code-style ones, written from memory: the edition in force and local codes decide.

use super::finding::{FindingCode, Findings, value};
use crate::job::Job;
use crate::plan::{Against, Clearances, Gap, Model, MovingPart, Plan};
use crate::units::Quantity;

/// Least gaps that do not crush an arm or hand, and a finger. EN 349 (ISO 13854), from memory.
const ARM_M: f64 = 0.12;
const FINGER_M: f64 = 0.025;
/// A gap that no finger enters. Usual in standards for doors and gates, from memory.
const NO_FINGER_M: f64 = 0.008;
/// Beside the open leaf: either within the first of the hinge's centre line, or the second of clear room. ASTM F2200 (4 in, 16 in), from memory,
/// wording doubtful.
const COVERED_M: f64 = 0.102;
const BEHIND_M: f64 = 0.406;

pub(super) fn of(model: &Model, plan: &Plan, findings: &mut Findings) {
    said_twice(model.job(), findings);
    if let Some(room) = &plan.clearances {
        of_room(room, findings);
    }
    if let Some(tape) = &plan.tape
        && let Some(reserve) = tape.worst.reserve
        && let Some(planned) = tape.planned.reserve
        && reserve < 1.0
        && planned >= 1.0
    {
        let values = [value("error", tape.error_m, Quantity::ShortLength), value("reserve", reserve, Quantity::Ratio)];
        findings.warning(FindingCode::TapeErrorCosts, &values);
    }
    if let Some(tape) = plan.tape.as_ref().filter(|tape| tape.worst.broken > 0) {
        let count = value("count", f64::from(tape.worst.broken), Quantity::Count);
        let values = [count, value("error", tape.error_m, Quantity::ShortLength)];
        findings.error(FindingCode::TapeErrorBreaks, &values);
    }
}

/// Widths of an older document that were said twice, while the larger still stands.
fn said_twice(job: &Job, findings: &mut Findings) {
    let migrated = job.migrated.unwrap_or_default();
    let said = [
        (FindingCode::ArmWidthSaidTwice, job.arm_half_width(), migrated.arm_half_width_other_m),
        (FindingCode::LeafThicknessSaidTwice, job.leaf.thickness(), migrated.leaf_thickness_other_m),
    ];
    for (code, kept_m, other_m) in said {
        if let Some(other_m) = other_m.filter(|&other_m| kept_m > other_m) {
            let short = |name, metres| value(name, metres, Quantity::ShortLength);
            findings.info(code, &[short("kept", kept_m), short("other", other_m)]);
        }
    }
}

fn of_room(room: &Clearances, findings: &mut Findings) {
    let short = |name, metres| value(name, metres, Quantity::ShortLength);
    let angle = |degrees| value("leaf_angle", degrees, Quantity::Angle);
    // Sorted by distance: of each sort the nearest is told.
    let nearest = |of: &dyn Fn(&Gap) -> bool| room.gaps.iter().find(|gap| of(gap)).copied();
    let arm = |gap: &Gap| !matches!(gap.part, MovingPart::Leaf | MovingPart::Operator) && gap.against != Against::Leaf;
    if let Some(gap) = nearest(&arm) {
        if gap.least_m < 0.0 {
            findings.error(FindingCode::ArmHits, &[short("overlap", -gap.least_m), angle(gap.leaf_deg)]);
        } else if gap.least_m < ARM_M {
            let values = [short("gap", gap.least_m), short("limit", ARM_M), angle(gap.leaf_deg)];
            findings.warning(FindingCode::ArmCrushes, &values);
        }
    }
    // The link always nears the leaf at its own bracket, as far as that stands proud.
    let to_leaf =
        nearest(&|gap| gap.against == Against::Leaf && matches!(gap.part, MovingPart::Crank | MovingPart::Elbow));
    let link = nearest(&|gap| gap.against == Against::Leaf && gap.part == MovingPart::Link && gap.least_m < 0.0);
    let deepest = match (to_leaf, link) {
        (Some(one), Some(other)) if other.least_m < one.least_m => Some(other),
        (one, other) => one.or(other),
    };
    if let Some(gap) = deepest {
        if gap.least_m < 0.0 {
            findings.error(FindingCode::ArmHitsLeaf, &[short("overlap", -gap.least_m), angle(gap.leaf_deg)]);
        } else if gap.least_m < ARM_M {
            let values = [short("gap", gap.least_m), short("limit", ARM_M), angle(gap.leaf_deg)];
            findings.warning(FindingCode::ElbowNearsLeaf, &values);
        }
    }
    if let Some(gap) = nearest(&|gap| gap.part == MovingPart::Leaf && gap.least_m < 0.0) {
        findings.error(FindingCode::LeafHits, &[short("overlap", -gap.least_m), angle(gap.leaf_deg)]);
    }
    let stands = |gap: &Gap| gap.part == MovingPart::Operator && gap.least_m < 0.0;
    if let Some(gap) = nearest(&|gap| stands(gap) && gap.against != Against::Leaf) {
        findings.error(FindingCode::OperatorHits, &[short("overlap", -gap.least_m)]);
    }
    if let Some(gap) = nearest(&|gap| stands(gap) && gap.against == Against::Leaf) {
        findings.error(FindingCode::OperatorHitsLeaf, &[short("overlap", -gap.least_m), angle(gap.leaf_deg)]);
    }
    let behind = room.open.iter().filter(|open| open.reach_m > COVERED_M && (0.0..BEHIND_M).contains(&open.gap_m));
    if let Some(open) = behind.min_by(|one, other| one.gap_m.total_cmp(&other.gap_m)) {
        findings.warning(FindingCode::OpenGapSmall, &[short("gap", open.gap_m), short("limit", BEHIND_M)]);
    }
    let closes = |gap: &&crate::plan::HingeGap| gap.widest_m > NO_FINGER_M && gap.least_m < FINGER_M;
    // A gap that stays as it is crushes nobody: a millimetre is the hinge's own play.
    if let Some(gap) = room.hinge_gap.as_ref().filter(closes).filter(|gap| gap.widest_m - gap.least_m > 0.001) {
        let values = [
            short("widest", gap.widest_m),
            short("gap", gap.least_m),
            short("limit", FINGER_M),
            angle(gap.least_leaf_deg),
        ];
        findings.warning(FindingCode::HingeGapCloses, &values);
    }
}
