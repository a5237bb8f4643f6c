//! Findings about motion, breakaway, holding and people.

use super::finding::{FindingCode, Findings, value};
use crate::drive::{CoastState, DrivenRun, DrivenState, HoldingVerdict};
use crate::plan::{Driven, Model, Motion, Plan, WindowState};
use crate::terms::Direction;
use crate::units::Quantity;

/// All of them; empty where the job has none of these blocks.
pub(super) fn of(model: &Model, plan: &Plan, findings: &mut Findings) {
    if let Some(motion) = &plan.motion {
        moving(model, plan, motion, findings);
    }
    breakaway(model, plan, findings);
    holding(plan, findings);
    stranded(plan, findings);
    people(model, plan, findings);
    site(model, plan, findings);
}

fn moving(model: &Model, plan: &Plan, motion: &Motion, findings: &mut Findings) {
    let operator = &model.job().operator;
    let peak = [&motion.opening.peak, &motion.closing.peak]
        .into_iter()
        .fold(&motion.opening.peak, |most, one| if one.shaft_torque_n_m > most.shaft_torque_n_m { one } else { most });
    let torque = value("torque", peak.shaft_torque_n_m, Quantity::Torque);
    let at = value("leaf_angle", peak.leaf_deg, Quantity::Angle);
    let limit = |limit| value("limit", limit, Quantity::Torque);
    match operator.peak_torque_n_m {
        Some(most) if peak.shaft_torque_n_m > most => {
            findings.error(FindingCode::MotionOverPeak, &[torque, limit(most), at]);
        }
        // The steady demand has a finding of its own.
        _ if peak.shaft_torque_n_m > operator.rated_torque_n_m && plan.rating.utilisation <= 1.0 => {
            findings.warning(FindingCode::MotionOverRated, &[torque, limit(operator.rated_torque_n_m), at]);
        }
        _ => {}
    }
    let reached = motion.opening.shaft_speed_deg_s.max(motion.closing.shaft_speed_deg_s);
    if let Some(speed) = operator.shaft_speed_deg_s.filter(|speed| reached < speed * (1.0 - 1e-9)) {
        let values = [value("speed", reached, Quantity::AngularSpeed), value("limit", speed, Quantity::AngularSpeed)];
        findings.info(FindingCode::RampsTooLong, &values);
    }
    if [motion.coast_open, motion.coast_close].iter().any(|coast| coast.following == CoastState::RunsOn) {
        findings.warning(FindingCode::CoastRunsOn, &[]);
    }
    if motion.hand.calm_n > motion.hand.limit_n {
        let values = [
            value("force", motion.hand.calm_n, Quantity::Force),
            value("limit", motion.hand.limit_n, Quantity::Force),
            value("leaf_angle", motion.hand.leaf_deg, Quantity::Angle),
        ];
        findings.warning(FindingCode::HandForceHigh, &values);
    }
    if let Some(driven) = &motion.driven {
        runs(driven, findings);
    }
    if let Some(duty) = &motion.duty {
        let worst = duty.hour_utilisation.unwrap_or(0.0).max(duty.day_utilisation.unwrap_or(0.0));
        if worst > 1.0 {
            findings.warning(FindingCode::DutyExceeded, &[value("share", worst, Quantity::Percent)]);
        }
        if let Some(running) = duty.running.filter(|&running| running > 1.0) {
            findings.error(FindingCode::DutyNoTime, &[value("share", running, Quantity::Percent)]);
        }
    }
}

fn runs(driven: &Driven, findings: &mut Findings) {
    let stands = |run: &&DrivenRun| run.state != DrivenState::Arrives;
    for (run, open) in [(&driven.opening, true), (&driven.closing, false)] {
        let Some(run) = Some(run).filter(stands) else { continue };
        let code = match (run.state, open) {
            (DrivenState::DrivenBack, true) => FindingCode::OpeningDrivenBack,
            (DrivenState::DrivenBack, false) => FindingCode::ClosingDrivenBack,
            (DrivenState::Creeps, true) => FindingCode::OpeningCreeps,
            (DrivenState::Creeps, false) => FindingCode::ClosingCreeps,
            (_, true) => FindingCode::OpeningStalls,
            (_, false) => FindingCode::ClosingStalls,
        };
        let values = [value("leaf_angle", run.leaf_deg, Quantity::Angle), value("time", run.time_s, Quantity::Time)];
        findings.error(code, &values);
    }
}

fn breakaway(model: &Model, plan: &Plan, findings: &mut Findings) {
    let Some(breakaway) = &plan.breakaway else { return };
    let least = value("least", breakaway.least_slip_n_m, Quantity::Torque);
    findings.info(FindingCode::BreakawayNotForPeople, &[]);
    if breakaway.toggle_to_leaf_deg > 0.0 {
        let at = value("leaf_angle", breakaway.toggle_to_leaf_deg, Quantity::Angle);
        findings.info(FindingCode::BreakawayToggleZone, &[at]);
    }
    let most = breakaway.highest.map(|highest| value("most", highest.slip_torque_n_m, Quantity::Torque));
    match (breakaway.state, most) {
        (WindowState::Shut, Some(most)) => {
            findings.error(FindingCode::BreakawayNoWindow, &[least, most]);
        }
        (WindowState::NoLimit, _) => findings.warning(FindingCode::BreakawayNoLimit, &[least]),
        _ => {}
    }
    let Some(set) = model.job().breakaway.as_ref().and_then(|facts| facts.slip_torque_n_m) else { return };
    let torque = value("torque", set, Quantity::Torque);
    if set < breakaway.least_slip_n_m {
        findings.warning(FindingCode::BreakawaySlipsEarly, &[torque, least]);
    }
    if let (Some(most), Some(highest)) = (most, breakaway.highest)
        && set > highest.slip_torque_n_m
    {
        findings.error(FindingCode::BreakawaySlipsLate, &[torque, most]);
    }
}

fn holding(plan: &Plan, findings: &mut Findings) {
    let Some(holding) = &plan.holding else { return };
    let torque = value("torque", holding.torque_n_m, Quantity::Torque);
    let force = value("force", holding.link_force_n, Quantity::Force);
    match holding.verdict {
        HoldingVerdict::GivesWay => findings.error(FindingCode::HoldingGivesWay, &[torque, force]),
        HoldingVerdict::Unknown => findings.warning(FindingCode::HoldingUnknown, &[torque, force]),
        HoldingVerdict::Holds => findings.info(FindingCode::HoldingIsNoLock, &[torque, force]),
    }
}

/// A leaf that stands open in the storm: a gate waits open, and a power cut strands it anywhere.
fn stranded(plan: &Plan, findings: &mut Findings) {
    let Some(stranded) = plan.storm.as_ref().map(|storm| &storm.stranded) else { return };
    let worst = &stranded.worst;
    let torque = value("torque", worst.shaft_torque_n_m, Quantity::Torque);
    let at = value("leaf_angle", worst.leaf_deg, Quantity::Angle);
    let bolt = value("force", worst.bolt_n, Quantity::Force);
    match stranded.limit_n_m {
        Some(limit) if worst.shaft_torque_n_m > limit => {
            let values = [torque, value("limit", limit, Quantity::Torque), at, bolt];
            findings.warning(FindingCode::StormMovesOpenLeaf, &values);
        }
        Some(_) => {}
        None => findings.warning(FindingCode::OpenLeafHoldingUnknown, &[torque, at, bolt]),
    }
}

fn people(model: &Model, plan: &Plan, findings: &mut Findings) {
    let Some(person) = &plan.person else { return };
    findings.info(FindingCode::ForceMustBeMeasured, &[]);
    let over =
        |force: f64, limit: f64| [value("force", force, Quantity::Force), value("limit", limit, Quantity::Force)];
    let time = value("time", person.dynamic_time_s, Quantity::Time);
    if person.edge_push_n > person.static_limit_n {
        let at = value("leaf_angle", person.edge_push_leaf_deg, Quantity::Angle);
        let values = [&over(person.edge_push_n, person.static_limit_n)[..], &[at, time]].concat();
        findings.warning(FindingCode::PushOverLimit, &values);
    }
    // A safety edge that gives enough does not take the blow's finding away: it is one way to act on it.
    let last = value("static_limit", person.static_limit_n, Quantity::Force);
    for (wide, code) in [(false, FindingCode::ImpactOverLimit), (true, FindingCode::ImpactOverWideLimit)] {
        let own = person.blows.iter().filter(|blow| blow.gap_m.is_none() == wide && blow.is_over());
        let hardest = own.max_by(|one, other| one.impact_n.unwrap_or(0.0).total_cmp(&other.impact_n.unwrap_or(0.0)));
        let Some(blow) = hardest else { continue };
        let (Some(impact), Some(speed), Some(leaf_deg)) = (blow.impact_n, blow.speed_at_limit_m_s, blow.leaf_deg)
        else {
            continue;
        };
        let gap = value("gap", blow.gap_m.unwrap_or(person.wide_gap_m), Quantity::ShortLength);
        let at = value("leaf_angle", leaf_deg, Quantity::Angle);
        let speed = value("speed", speed, Quantity::Speed);
        let values = [&over(impact, blow.dynamic_limit_n)[..], &[gap, at, speed, time, last]].concat();
        findings.warning(code, &values);
    }
    let response = model.job().contact.as_ref().map_or(0.0, |contact| contact.response());
    if response > person.dynamic_time_s {
        let values = [value("time", response, Quantity::Time), value("limit", person.dynamic_time_s, Quantity::Time)];
        findings.warning(FindingCode::ResponseTooLong, &values);
    }
    let travel = model.job().contact.as_ref().and_then(|contact| contact.edge_travel_m);
    if let (Some(travel), Some(needed)) = (travel, person.edge_travel_m)
        && needed > travel
    {
        let values = [value("needed", needed, Quantity::ShortLength), value("limit", travel, Quantity::ShortLength)];
        findings.warning(FindingCode::EdgeTravelShort, &values);
    }
}

fn site(model: &Model, plan: &Plan, findings: &mut Findings) {
    let (Some(entrapment), Some(site)) = (&plan.entrapment, &model.job().site) else { return };
    if entrapment.class.is_none() {
        findings.warning(FindingCode::ClassUndecided, &[]);
    }
    for count in entrapment.means.iter().filter(|count| count.counted < count.wanted) {
        let code = match count.direction {
            Direction::Open => FindingCode::MeansMissingOpening,
            Direction::Close => FindingCode::MeansMissingClosing,
        };
        let values = [
            value("wanted", f64::from(count.wanted), Quantity::Count),
            value("counted", f64::from(count.counted), Quantity::Count),
        ];
        findings.warning(code, &values);
    }
    if !entrapment.unreached.is_empty() {
        let count = value("count", entrapment.unreached.len() as f64, Quantity::Count);
        findings.warning(FindingCode::ZonesUnreached, &[count]);
    }
    let fitted = site.means.as_deref().unwrap_or_default();
    let missed = entrapment.sensors.iter().flat_map(|sensor| {
        let said = fitted[sensor.means as usize].reaches.as_deref().unwrap_or_default();
        sensor.zones.iter().filter(|zone| zone.gap_m > 0.0 && said.contains(&zone.kind))
    });
    let (count, widest) = missed.fold((0.0, 0.0f64), |(count, gap), zone| (count + 1.0, gap.max(zone.gap_m)));
    if count > 0.0 {
        let values = [value("count", count, Quantity::Count), value("gap", widest, Quantity::ShortLength)];
        findings.warning(FindingCode::SensorsMissZones, &values);
    }
    if site.signs_both_faces != Some(true) {
        findings.warning(FindingCode::SignsMissing, &[]);
    }
    if site.pedestrian_way != Some(true) {
        findings.warning(FindingCode::PedestrianWayMissing, &[]);
    }
}
