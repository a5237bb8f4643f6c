//! What to look at in a plan, most severe first.

mod belongs;
mod built;
mod finding;
mod motion;
mod room;

pub use finding::{Finding, FindingCode, Severity};
use finding::{Findings, value};

use super::Model;
use super::answer::Plan;
use crate::drive::Verdict;
use crate::fault::NamedValue;
use crate::job::{Asce7Wind, Hinges, WindFrom};
use crate::leaf::Body;
use crate::real::{cos, sin};
use crate::terms::{Direction, LoadLevel};
use crate::units::Quantity;
use alloc::vec::Vec;

/// Below this transmission angle a push along the link is mostly a push on the hinge.
/// Common practice in linkage design asks for 40° and takes 30° as the end; from memory.
const LEAST_TRANSMISSION_DEG: f64 = 30.0;

/// How far a typed solidity may be from the leaf's own: a tenth is more than a tape and a frame left out come to. A word of our own, no source.
const SOLIDITY_APART: f64 = 0.1;

/// All findings of a plan, most severe first.
pub(super) fn of(model: &Model, plan: &Plan, least_lever_rad: f64) -> Vec<Finding> {
    let mut findings = Findings::default();
    torque(model, plan, &mut findings);
    arm(model, plan, least_lever_rad, &mut findings);
    leaf(model, &mut findings);
    site(model, plan, &mut findings);
    room::of(model, plan, &mut findings);
    built::of(model, plan, &mut findings);
    motion::of(model, plan, &mut findings);
    findings.in_order()
}

fn torque(model: &Model, plan: &Plan, findings: &mut Findings) {
    let (operator, peak) = (&model.job().operator, &plan.peak);
    let demand = value("torque", peak.shaft_torque_n_m, Quantity::Torque);
    let angle = value("leaf_angle", peak.leaf_deg, Quantity::Angle);
    let limit = |limit| value("limit", limit, Quantity::Torque);
    match (plan.rating.verdict, plan.rating.reserve) {
        (Verdict::Over, _) => {
            findings.error(FindingCode::DemandOverRated, &[demand, limit(operator.rated_torque_n_m), angle])
        }
        (Verdict::Tight, Some(reserve)) => findings.warning(
            FindingCode::ReserveBelowRequired,
            &[
                value("reserve", reserve, Quantity::Ratio),
                value("limit", model.job().required_reserve(), Quantity::Ratio),
                angle,
            ],
        ),
        _ => {}
    }
    if let Some(peak_torque) = operator.peak_torque_n_m.filter(|&most| peak.shaft_torque_n_m > most) {
        findings.error(FindingCode::DemandOverPeak, &[demand, limit(peak_torque), angle]);
    }
}

fn arm(model: &Model, plan: &Plan, least_lever_rad: f64, findings: &mut Findings) {
    let linkage = model.linkage();
    let dead_at = |leaf_rad| linkage.pose(leaf_rad).ratio.is_none();
    if dead_at(0.0) {
        findings.info(FindingCode::DeadPointClosed, &[]);
    }
    if dead_at(linkage.open_rad) {
        findings.warning(FindingCode::DeadPointOpen, &[]);
    }
    // The bracket's radius is fixed, so the least lever is also where the transmission angle is least.
    let transmission_deg = linkage.pose(least_lever_rad).transmission_rad.to_degrees();
    if transmission_deg < LEAST_TRANSMISSION_DEG {
        findings.warning(
            FindingCode::TransmissionLow,
            &[
                value("transmission", transmission_deg, Quantity::Angle),
                value("limit", LEAST_TRANSMISSION_DEG, Quantity::Angle),
                NamedValue::leaf_angle(least_lever_rad),
            ],
        );
    }
    // Where the gear does not back-drive it holds what the leaf drives the shaft with, and the motor feels nothing of it.
    let driven = plan.overrun.as_ref().filter(|_| model.job().operator.may_be_driven_back());
    if let Some(overrun) = driven {
        findings.info(
            FindingCode::LeafDrivesShaft,
            &[
                value("torque", overrun.shaft_torque_n_m, Quantity::Torque),
                value("leaf_angle", overrun.leaf_deg, Quantity::Angle),
            ],
        );
    }
}

impl Model {
    /// Wind area over outline, without ice; `None` where the height is not said.
    fn solidity(&self) -> Option<f64> {
        let leaf = &self.job().leaf;
        Some(Body::without_ice(leaf).wind_area_m2 / (leaf.length_m * leaf.height_m?))
    }
}

fn leaf(model: &Model, findings: &mut Findings) {
    let loads = model.loads();
    if let Hinges::Measured(measured) = &model.job().hinges {
        // The bias resists opening; so does a gravity moment that is negative.
        let bias = measured.bias_n_m();
        let lean = -loads.gravity_n_m(measured.pull_leaf_deg.to_radians());
        // A spring balance is good for a few per cent of what it reads; a fifth of the friction is beyond that. Common practice, no source.
        if (bias - lean).abs() > 0.2 * loads.friction_n_m(Direction::Open) {
            findings.warning(
                FindingCode::PullBiasAgainstLean,
                &[value("bias_moment", bias, Quantity::Torque), value("lean_moment", lean, Quantity::Torque)],
            );
        }
    }
    let drift = loads.lean_amplitude_n_m();
    let [opening, closing] = Direction::BOTH.map(|direction| loads.friction_n_m(direction));
    if drift > opening.min(closing) {
        let downhill_deg = model.job().lean.downhill();
        let (sine, cosine) = (sin(downhill_deg.to_radians()), cos(downhill_deg.to_radians()));
        findings.warning(
            FindingCode::LeanDrift,
            &[
                value("lean_moment", drift, Quantity::Torque),
                value("limit", opening.min(closing), Quantity::Torque),
                // Folded to −180…180°, however many turns were written.
                value("leaf_angle", libm::atan2(sine, cosine).to_degrees(), Quantity::Angle),
            ],
        );
    }
    // Opening lets the leaf down where it falls open, closing where it rises.
    let (weight, down, code) = match loads.rise_n_m() {
        weight if weight < 0.0 => (-weight, opening, FindingCode::RampRunsOpen),
        weight => (weight, closing, FindingCode::RampRunsShut),
    };
    if weight > down {
        findings.warning(code, &[value("moment", weight, Quantity::Torque), value("limit", down, Quantity::Torque)]);
    }
}

/// Findings of the optional blocks.
fn site(model: &Model, plan: &Plan, findings: &mut Findings) {
    if let Some(WindFrom::Asce7(Asce7Wind { level: LoadLevel::Strength, .. })) = model.job().wind.from {
        findings.warning(FindingCode::WindAtStrengthLevel, &[]);
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
            findings.warning(code, &[solidity("solidity", typed), solidity("leaf_solidity", own)]);
        }
    }
    if let Some(band) = plan.band.as_ref().filter(|band| band.verdict_high == Verdict::Over)
        && plan.rating.verdict != Verdict::Over
    {
        let torque = value("torque", band.peak_n_m.high, Quantity::Torque);
        let limit = value("limit", model.job().operator.rated_torque_n_m, Quantity::Torque);
        findings.warning(FindingCode::BandOverRated, &[torque, limit]);
    }
    let (Some(over), Some(ground)) = (&plan.ground, &model.job().ground) else { return };
    if let Some(touch_deg) = over.touch_leaf_deg {
        let gap = value("gap", over.least_gap_m, Quantity::ShortLength);
        findings.warning(FindingCode::GroundTouches, &[gap, value("leaf_angle", touch_deg, Quantity::Angle)]);
    }
    if let Some(allowance_m) = ground.joint_allowance_m.filter(|&allowance_m| over.bracket_rise_m > allowance_m) {
        let rise = value("rise", over.bracket_rise_m, Quantity::ShortLength);
        findings.warning(FindingCode::BracketRise, &[rise, value("limit", allowance_m, Quantity::ShortLength)]);
    }
}
