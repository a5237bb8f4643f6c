//! Breakaway and holding.

use super::{LESS, MORE, job, planned, silent, straight, tells};
use pintle_core::plan::{FindingCode as Code, Severity};
use serde_json::{Value, json};

#[test]
fn the_window_of_slip_torque() {
    let with = |breakaway: Value| {
        let mut job = job();
        job["breakaway"] = breakaway;
        job
    };
    let bare = planned(&with(json!({})));
    // Wind against is the most of normal running here, and the hold factor is 1.25.
    let least = 1.25 * bare.peak.shaft_torque_n_m.max(bare.overrun.expect("driven").shaft_torque_n_m);
    tells(&with(json!({})), Code::BreakawayNotForPeople, Severity::Info, &[]);
    tells(&with(json!({})), Code::BreakawayNoLimit, Severity::Warning, &[("least", least)]);
    silent(&with(json!({})), Code::BreakawayNoWindow);
    // The gear stands so much torque, of which 0.8 may be reached.
    for (gear, shut) in [(least / 0.8 * MORE, false), (least / 0.8 * LESS, true)] {
        let job = with(json!({ "gearbox_torque_n_m": gear }));
        silent(&job, Code::BreakawayNoLimit);
        match shut {
            true => tells(&job, Code::BreakawayNoWindow, Severity::Error, &[("least", least), ("most", 0.8 * gear)]),
            false => silent(&job, Code::BreakawayNoWindow),
        }
    }
    let set = |slip: f64| with(json!({ "gearbox_torque_n_m": 2000, "slip_torque_n_m": slip }));
    tells(
        &set(least * LESS),
        Code::BreakawaySlipsEarly,
        Severity::Warning,
        &[("torque", least * LESS), ("least", least)],
    );
    silent(&set(bare.breakaway.expect("asked for").least_slip_n_m), Code::BreakawaySlipsEarly);
    silent(&set(1600.0), Code::BreakawaySlipsLate);
    tells(
        &set(1600.0 * MORE),
        Code::BreakawaySlipsLate,
        Severity::Error,
        &[("torque", 1600.0 * MORE), ("most", 1600.0)],
    );
    // Without a limit no slip is too late.
    silent(&with(json!({ "slip_torque_n_m": 5000 })), Code::BreakawaySlipsLate);
}

/// A straight arm has a toggle zone, one well bent has none.
#[test]
fn the_toggle_zone() {
    let mut job = straight();
    job["breakaway"] = json!({});
    let zone = planned(&job).breakaway.expect("asked for").toggle_to_leaf_deg;
    assert!(zone > 0.0);
    tells(&job, Code::BreakawayToggleZone, Severity::Info, &[("leaf_angle", zone)]);
    job["arm"]["crank_m"] = json!(1.0);
    job["arm"]["link_m"] = json!(0.6);
    silent(&job, Code::BreakawayToggleZone);
}

/// The storm on a bent arm, whose drive holds by itself as much as is said.
#[test]
fn the_storm_on_the_closed_leaf() {
    let with = |holding: Value| {
        let mut job = job();
        job["storm"] = json!({ "speed_m_s": 28, "force_coefficient": 1.4 });
        job["holding"] = holding;
        job
    };
    let held = planned(&with(json!({}))).holding.expect("asked for");
    let (torque, force) = (held.torque_n_m, held.link_force_n);
    let values = [("torque", torque), ("force", force)];
    tells(&with(json!({})), Code::HoldingUnknown, Severity::Warning, &values);
    tells(&with(json!({ "shaft_torque_n_m": torque * LESS })), Code::HoldingGivesWay, Severity::Error, &values);
    tells(&with(json!({ "shaft_torque_n_m": torque })), Code::HoldingIsNoLock, Severity::Info, &values);
    tells(&with(json!({ "link_force_n": force * LESS })), Code::HoldingGivesWay, Severity::Error, &values);
    for code in [Code::HoldingUnknown, Code::HoldingGivesWay, Code::HoldingIsNoLock] {
        silent(&job(), code);
    }
}

/// A leaf that stands open: what the drive at a stand or a clutch holds decides, the lesser of them.
#[test]
fn the_storm_on_the_open_leaf() {
    let with = |holding: Value, slip: Option<f64>| {
        let mut job = job();
        job["storm"] = json!({ "speed_m_s": 28, "force_coefficient": 1.4 });
        job["holding"] = holding;
        job["breakaway"] = slip.map_or(Value::Null, |slip| json!({ "slip_torque_n_m": slip }));
        job
    };
    let worst = planned(&with(Value::Null, None)).storm.expect("asked for").stranded.worst;
    let (torque, at, bolt) = (worst.shaft_torque_n_m, ("leaf_angle", worst.leaf_deg), ("force", worst.bolt_n));
    let unknown = [("torque", torque), at, bolt];
    tells(&with(Value::Null, None), Code::OpenLeafHoldingUnknown, Severity::Warning, &unknown);
    let over = |limit: f64| [("torque", torque), ("limit", limit), at, bolt];
    let less = torque * LESS;
    let drive = json!({ "shaft_torque_n_m": less });
    tells(&with(drive, None), Code::StormMovesOpenLeaf, Severity::Warning, &over(less));
    tells(&with(Value::Null, Some(less)), Code::StormMovesOpenLeaf, Severity::Warning, &over(less));
    let strong = || json!({ "shaft_torque_n_m": torque });
    tells(&with(strong(), Some(less)), Code::StormMovesOpenLeaf, Severity::Warning, &over(less));
    for code in [Code::StormMovesOpenLeaf, Code::OpenLeafHoldingUnknown] {
        silent(&with(strong(), Some(torque)), code);
        silent(&with(strong(), None), code);
        silent(&job(), code);
    }
}
