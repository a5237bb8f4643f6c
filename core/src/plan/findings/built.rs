//! Findings of what was built and what was measured there.

use super::finding::{FindingCode, Findings, value};
use crate::plan::{CheckVerdict, Model, Plan};
use crate::units::Quantity;
use alloc::vec::Vec;

pub(super) fn of(model: &Model, plan: &Plan, findings: &mut Findings) {
    arm(model, plan, findings);
    forces(plan, findings);
}

/// The arm that stands there is judged as the planned one is.
fn arm(model: &Model, plan: &Plan, findings: &mut Findings) {
    let Some(built) = &plan.as_built else { return };
    if built.fault.is_some() {
        findings.error(FindingCode::BuiltBroken, &[]);
    }
    let Some((fitted, torque)) = built.fitted.zip(built.shaft_torque_n_m) else { return };
    let required = model.job().required_reserve();
    match fitted.reserve {
        Some(reserve) if reserve < 1.0 => {
            let limit = value("limit", model.job().operator.rated_torque_n_m, Quantity::Torque);
            findings.error(FindingCode::BuiltOverRated, &[value("torque", torque, Quantity::Torque), limit]);
        }
        Some(reserve) if reserve < required => {
            let limit = value("limit", required, Quantity::Ratio);
            let values = [value("reserve", reserve, Quantity::Ratio), limit];
            findings.warning(FindingCode::BuiltReserveBelowRequired, &values);
        }
        _ => {}
    }
}

/// A force that was measured on the finished gate is no estimate any more.
fn forces(plan: &Plan, findings: &mut Findings) {
    let checks = plan.record.iter().flat_map(|record| &record.checks);
    for check in checks.filter(|check| check.verdict == CheckVerdict::LookAgain) {
        let code = match check.path {
            "record.dynamic_force_n" => FindingCode::DynamicForceOver,
            "record.static_force_n" => FindingCode::StaticForceOver,
            _ => continue,
        };
        let force = |name, force: Option<f64>| force.map(|force| value(name, force, Quantity::Force));
        let values = [force("force", check.measured), force("limit", check.most)];
        findings.error(code, &values.into_iter().flatten().collect::<Vec<_>>());
    }
}
