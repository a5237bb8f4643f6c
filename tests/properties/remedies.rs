//! What would open a window of slip torque that is shut, held to the job with the change made.

use crate::bench::{near, on_an_arm};
use crate::jobs::{planned, with};
use crate::slip::{breakaway, breakaway_on, near_straight};
use pintle_core::{
    drive::SparedPart,
    plan::{RemedyKind, WindowState},
};
use serde_json::{Value, json};

/// What a change promises is what the job so changed has: no ramps, half the mass, no wind, a limit taken away.
#[test]
fn every_remedy_is_the_job_so_changed() {
    let mut value = on_an_arm();
    value["lean"]["angle_deg"] = json!(6);
    value["ice"] = json!({ "thickness_m": 0.01 });
    value["operator"]["shaft_speed_deg_s"] = json!(25);
    for ramps in [json!({ "ramp_up_s": 0.2, "ramp_down_s": 3 }), json!({ "ramp_up_s": 5, "ramp_down_s": 0.1 })] {
        value["motion"] = ramps;
        value["breakaway"] = json!({ "gearbox_torque_n_m": 20, "leaf_moment_n_m": 30, "link_force_n": 5000 });
        let shut = planned(&value).breakaway.expect("asked for");
        assert_eq!((shut.state, shut.remedies.len()), (WindowState::Shut, 4 + 6));
        let part = shut.highest.expect("limits").part;
        for remedy in &shut.remedies {
            let made = |kind| remedy.change == kind || remedy.with == Some(kind);
            let mut changed = value.clone();
            if made(RemedyKind::SlowerRamp) {
                changed["motion"] = Value::Null;
            }
            if made(RemedyKind::LighterLeaf) {
                // Ice on both faces of 1 m², 10 mm of 900 kg/m³, spread as a bar of 2 m.
                let ice = 2.0 * 0.01 * 900.0;
                let mass = 100.0 + ice;
                changed["ice"] = Value::Null;
                changed["leaf"]["mass_kg"] = json!(mass / 2.0);
                changed["leaf"]["mass_centroid_m"] = json!((100.0 * 0.75 + ice) / mass);
                changed["leaf"]["inertia_kg_m2"] = json!((200.0 + ice * 4.0 / 3.0) / 2.0);
            }
            if made(RemedyKind::LessWind) {
                changed["wind"]["speed_m_s"] = json!(0);
            }
            let freed = made(RemedyKind::StrongerPart) || made(RemedyKind::OtherOperator);
            if freed {
                let key = if part == SparedPart::Leaf { "leaf_moment_n_m" } else { "gearbox_torque_n_m" };
                changed["breakaway"][key] = Value::Null;
            }
            let so = planned(&changed).breakaway.expect("asked for");
            near(remedy.least_slip_n_m, so.least_slip_n_m, 1e-9);
            near(remedy.highest_slip_n_m.expect("others are left"), so.highest.expect("left").slip_torque_n_m, 1e-9);
            assert_eq!(remedy.opens, so.state != WindowState::Shut, "{remedy:?}");
        }
    }
}

/// The only limit taken away leaves none, whichever it is: that opens the window alone, and no pair is tried.
#[test]
fn the_part_that_decides_made_stronger_opens_the_window() {
    for (limit, change) in [
        (json!({ "leaf_moment_n_m": 20 }), RemedyKind::StrongerPart),
        (json!({ "link_force_n": 20 }), RemedyKind::StrongerPart),
        (json!({ "bracket_force_n": 20 }), RemedyKind::StrongerPart),
        (json!({ "gearbox_torque_n_m": 20 }), RemedyKind::OtherOperator),
    ] {
        let remedies = breakaway(limit).remedies;
        assert_eq!(remedies.len(), 4);
        let last = remedies[3];
        assert_eq!((last.change, last.with, last.highest_slip_n_m, last.opens), (change, None, None, true));
        assert!(remedies[..3].iter().all(|remedy| !remedy.opens));
    }
}

/// Enough for calm air and too little for the wind: to leave the wind out opens it, the limit still standing.
#[test]
fn a_change_that_keeps_the_limit_may_open_the_window() {
    let free = breakaway(json!({}));
    let calm =
        breakaway_on(&with(&near_straight(), "wind", json!({ "speed_m_s": 0, "force_coefficient": 1 })), json!({}));
    let between = (free.least_slip_n_m + calm.least_slip_n_m) / 2.0;
    let remedies = breakaway(json!({ "gearbox_torque_n_m": between, "release_factor": 1 })).remedies;
    let less = remedies.iter().find(|remedy| remedy.change == RemedyKind::LessWind).expect("tried");
    assert!(less.opens);
    near(less.highest_slip_n_m.expect("it stands"), between, 1e-12);
    assert!(remedies.iter().any(|remedy| !remedy.opens) && remedies.len() == 4);
}
