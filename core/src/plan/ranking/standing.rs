//! An operator on one arm, by the parts of the plan that it depends on.

use super::answer::OperatorStanding;
use super::known::{Known, arm_key, outline_key};
use super::refusal::{OperatorRefusal, RefusalCode, named};
use crate::drive::{Grid, Rating, Verdict};
use crate::job::{Arm, CheckedJob, MotionFacts};
use crate::operators::ListedOperator;
use crate::plan::motion::profile;
use crate::plan::{Against, DutyUse, Gap, Model, MovingPart};
use crate::terms::{Direction, WindCase};
use crate::units::Quantity;

/// Rounding of a length, m, and of an angle, degrees, that a place found may be off its limit.
const LENGTH_M: f64 = 1e-7;
const ANGLE_DEG: f64 = 1e-5;

/// The operator of a job fitted with it, on an arm; `None` where the arm does not work.
pub(super) fn standing(
    known: &mut Known,
    job: &CheckedJob,
    arm: &Arm,
    operator: &ListedOperator,
) -> Option<OperatorStanding> {
    let model = Model::of(job.on(*arm)).ok()?;
    let here = known.arms.entry(arm_key(arm, &model)).or_default();
    let ratings = &job.operator;
    let limit = ratings.rated_torque_n_m.to_bits();
    if here.peak.is_none() || !here.limits.contains_key(&limit) {
        let grid = Grid::with_step(model.linkage().open_rad, model.loads());
        let swept = grid.swept(model.linkage());
        here.peak = Some(model.largest(&swept, model.loads()));
        here.limits.insert(limit, model.wind_limit(&swept));
    }
    let (peak, wind_limit) = (here.peak?, *here.limits.get(&limit)?);
    let gaps = here
        .gaps
        .entry(outline_key(job))
        .or_insert_with(|| model.clearances().map_or_else(Default::default, |clearances| clearances.gaps));
    let demand_n_m = peak.shaft_torque_n_m;
    let required = job.required_reserve();
    let rating = Rating::new(demand_n_m, ratings.rated_torque_n_m, ratings.peak_torque_n_m, required);
    let [opening_s, closing_s] = times_s(&model);
    let cycle_s = opening_s.zip(closing_s).map(|(opening_s, closing_s)| opening_s + closing_s);
    let duty = job.motion.as_ref().and_then(|motion| motion.duty).zip(cycle_s);
    let mut standing = OperatorStanding {
        arm: *arm,
        shaft_torque_n_m: demand_n_m,
        leaf_deg: peak.leaf_rad.to_degrees(),
        rating,
        wind_limit,
        shaft_travel_deg: model.linkage().pose(model.linkage().open_rad).crank_rad.to_degrees().abs(),
        opening_s,
        closing_s,
        duty: duty.map(|(duty, cycle_s)| DutyUse::new(&duty, cycle_s)),
        clearance_m: gaps.iter().filter(|gap| gap.part == MovingPart::Operator).map(|gap| gap.least_m).reduce(f64::min),
        refusal: None,
    };
    let refusal = fits(&standing, operator).or_else(|| meets(gaps)).or_else(|| asks(&standing, &model));
    standing.refusal = refusal;
    Some(standing)
}

/// Times to open and to close, s.
fn times_s(model: &Model) -> [Option<f64>; 2] {
    let usual = MotionFacts::builder().build();
    let facts = model.job().motion.as_ref().unwrap_or(&usual);
    let moving = model.moving(model.loads());
    Direction::BOTH.map(|direction| model.speed_rad_s().map(|speed| profile(&moving, facts, speed, direction).time_s()))
}

/// Whether the arm is one of its kit, and its shaft turns so far.
fn fits(standing: &OperatorStanding, operator: &ListedOperator) -> Option<OperatorRefusal> {
    let kit = operator.kit.unwrap_or_default();
    let parts = [
        (RefusalCode::CrankOutsideKit, "crank", standing.arm.crank_m, kit.crank_m),
        (RefusalCode::LinkOutsideKit, "link", standing.arm.link_m, kit.link_m),
    ];
    for (code, name, length_m, range) in parts {
        let Some([least, most]) = range else { continue };
        if length_m < least - LENGTH_M || length_m > most + LENGTH_M {
            let short = |name, metres| named(name, metres, Quantity::ShortLength);
            return Some(OperatorRefusal::new(
                code,
                &[short(name, length_m), short("least", least), short("most", most)],
            ));
        }
    }
    let travel_deg = operator.shaft_travel_deg.filter(|most| standing.shaft_travel_deg > most + ANGLE_DEG)?;
    let angle = |name, degrees| named(name, degrees, Quantity::Angle);
    let values = [angle("angle", standing.shaft_travel_deg), angle("limit", travel_deg)];
    Some(OperatorRefusal::new(RefusalCode::TravelTooLong, &values))
}

/// What its arm and its body meet; what is asked is what the plan finds a stop.
fn meets(gaps: &[Gap]) -> Option<OperatorRefusal> {
    // Sorted by distance: of each sort the nearest is told.
    let meets = |gap: &&Gap| gap.least_m < -LENGTH_M && gap.part != MovingPart::Leaf;
    let of = |gap: &Gap| match (gap.part == MovingPart::Operator, gap.against == Against::Leaf) {
        (false, false) => RefusalCode::ArmMeetsObstacle,
        (false, true) => RefusalCode::ArmMeetsLeaf,
        (true, false) => RefusalCode::StandsInObstacle,
        (true, true) => RefusalCode::LeafMeetsOperator,
    };
    let gap = gaps.iter().find(meets)?;
    let overlap = named("overlap", -gap.least_m, Quantity::ShortLength);
    let values = [overlap, named("leaf_angle", gap.leaf_deg, Quantity::Angle)];
    let code = of(gap);
    let count = if code == RefusalCode::StandsInObstacle { 1 } else { 2 };
    Some(OperatorRefusal::new(code, &values[..count]))
}

/// What is asked of its shaft.
fn asks(standing: &OperatorStanding, model: &Model) -> Option<OperatorRefusal> {
    let (ratings, rating) = (&model.job().operator, &standing.rating);
    let torque = |name, torque_n_m| named(name, torque_n_m, Quantity::Torque);
    let at = |leaf_deg| named("leaf_angle", leaf_deg, Quantity::Angle);
    if rating.verdict == Verdict::Over {
        let values = [
            torque("torque", standing.shaft_torque_n_m),
            torque("limit", ratings.rated_torque_n_m),
            at(standing.leaf_deg),
        ];
        return Some(OperatorRefusal::new(RefusalCode::TorqueOverRated, &values));
    }
    if let Some((peak_n_m, most_n_m, leaf_deg)) = over_peak(model) {
        let values = [torque("torque", peak_n_m), torque("limit", most_n_m), at(leaf_deg)];
        return Some(OperatorRefusal::new(RefusalCode::MotionOverPeakTorque, &values));
    }
    let reserve = rating.reserve.filter(|_| rating.verdict == Verdict::Tight)?;
    let ratio = |name, ratio| named(name, ratio, Quantity::Ratio);
    let values = [ratio("reserve", reserve), ratio("limit", model.job().required_reserve())];
    Some(OperatorRefusal::new(RefusalCode::ReserveTooSmall, &values))
}

/// The largest torque of both runs, what it may be, and the leaf angle there, degrees, where it is more.
fn over_peak(model: &Model) -> Option<(f64, f64, f64)> {
    let most_n_m = model.job().operator.peak_torque_n_m?;
    let [opening, closing] = model.runs(model.loads(), WindCase::Against, 2)?.map(|run| run.peak);
    let peak = if closing.shaft_torque_n_m > opening.shaft_torque_n_m { closing } else { opening };
    (peak.shaft_torque_n_m > most_n_m).then_some((peak.shaft_torque_n_m, most_n_m, peak.leaf_deg))
}
