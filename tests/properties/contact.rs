//! Force on a person from the leaf's own numbers: `M/r`, `v·√(k·m)`, `v·√(m/k)`, `v·t + m·v²/F`.

use crate::bench::{Arm, EFFICIENCY, INERTIA, LENGTH, near, on_an_arm, tight_at_both_ends};
use crate::jobs::{planned, with};
use pintle_core::{
    plan::{ForceOnPerson, PushTorque},
    safety::{compression_m, edge_mass_kg, edge_travel_m, impact_force_n, impact_speed_m_s, spring_force_n},
};
use serde_json::{Value, json};

fn person(value: &Value) -> ForceOnPerson {
    planned(value).person.expect("a contact")
}

fn job() -> Value {
    let mut value = on_an_arm();
    // All but straight when closed: there is a toggle zone.
    value["arm"]["link_m"] = json!(0.63);
    value["contact"] = json!({ "stiffness_n_per_m": 2e4, "dynamic_limit_n": 350, "static_limit_n": 130, "response_s": 0.4,
        "near_m": 0.25 });
    value
}

#[test]
fn a_blow_and_an_edge_worked_by_hand() {
    near(edge_mass_kg(200.0, 2.0), 50.0, 1e-12);
    // ½·50·0.3² = ½·20 000·x² at x = 15 mm, where the spring gives 300 N.
    near(impact_force_n(0.3, 2e4, 50.0), 300.0, 1e-12);
    near(spring_force_n(2e4, 2.25), 300.0, 1e-12);
    near(compression_m(0.3, 2e4, 50.0), 0.015, 1e-12);
    near(impact_speed_m_s(300.0, 2e4, 50.0), 0.3, 1e-12);
    // 0.12 m run on, then ½·50·0.3² = ½·300·x.
    near(edge_travel_m(0.3, 0.4, 50.0, 300.0), 0.12 + 0.015, 1e-12);
}

#[test]
fn every_row_is_the_torque_s_moment_over_its_distance() {
    let (value, arm) = (job(), Arm::of(&job()));
    let person = person(&value);
    let mass = INERTIA / LENGTH / LENGTH;
    near(person.edge_mass_kg, mass, 1e-12);
    assert_eq!((person.torque_n_m, person.torque_from), (250.0, PushTorque::Peak));
    assert_eq!((person.blows[0].dynamic_limit_n, person.static_limit_n, person.dynamic_time_s), (350.0, 130.0, 0.75));
    for row in &person.curve {
        let ratio = arm.at(row.leaf_deg.to_radians()).ratio.abs();
        let moment = 250.0 * ratio * EFFICIENCY;
        near(row.edge_n.expect("no dead point"), moment / LENGTH, 1e-9);
        near(row.middle_n.expect("no dead point"), moment / (LENGTH / 2.0), 1e-9);
        near(row.near_n.expect("no dead point"), moment / 0.25, 1e-9);
        near(row.over_static_within_m.expect("no dead point"), (moment / 130.0).min(LENGTH), 1e-9);
        let full = 10f64.to_radians() / ratio * LENGTH;
        near(row.full_edge_speed_m_s.expect("a speed"), full, 1e-9);
        near(row.impact_n.expect("a speed"), full * (2e4 * mass).sqrt(), 1e-9);
    }
    assert_eq!(person.edge_travel_m, None);
}

/// Where the ratio is at most twice that half open: at the end of the toggle zone, or at the open end. At 50, 300 and 500 mm before closed it is
/// measured wherever they lie: 50 mm of a 2 m leaf are 1.43°, in the toggle zone of an arm that is all but straight when closed.
#[test]
fn the_largest_push_is_looked_for_outside_the_toggle_zone_and_at_the_gaps() {
    // Reach √(1.2² + 0.35²) = 1.25 m when closed.
    let mut straight = job();
    straight["arm"] = json!({ "shaft_x_m": -0.3, "shaft_y_m": 0.43, "bracket_u_m": 0.9, "bracket_v_m": 0.08, "crank_m": 0.75,
        "link_m": 0.5001, "elbow": "left" });
    let tight = with(&tight_at_both_ends(), "contact", json!({}));
    for (value, at_gap, at_open) in [(job(), false, false), (tight, false, true), (straight, true, false)] {
        let arm = Arm::of(&value);
        let (open, ratio) = (90f64.to_radians(), |leaf: f64| arm.at(leaf).ratio.abs());
        let grid = |index: u32| open * f64::from(index) / 20_000.0;
        let twice = 2.0 * ratio(open / 2.0);
        let from = (0..10_000).rev().map(grid).find(|leaf| ratio(*leaf) >= twice).expect("a toggle zone");
        let gaps = [0.05, 0.3, 0.5].map(|gap: f64| 2.0 * (gap / (2.0 * LENGTH)).asin());
        let looked_at = (0..=20_000).map(grid).filter(|leaf| *leaf > from).chain(gaps);
        let (leaf, most) = looked_at.fold((0.0, 0.0), |most, leaf| {
            let push = 250.0 * ratio(leaf) * EFFICIENCY / LENGTH;
            if push > most.1 { (leaf, push) } else { most }
        });
        assert!(gaps[0] < from || !at_gap, "{from}");
        assert_eq!((leaf == gaps[0], leaf == open), (at_gap, at_open), "{leaf}");
        let person = person(&value);
        assert!((person.edge_push_n / most - 1.0).abs() < 1e-3, "{} {most}", person.edge_push_n);
        assert!((person.edge_push_leaf_deg - leaf.to_degrees()).abs() < 0.3, "{} {leaf}", person.edge_push_leaf_deg);
    }
}

/// Slip torque before peak torque before rated torque; a hand no further out than the leaf reaches.
#[test]
fn what_is_known_decides_what_is_reckoned_with() {
    let mut value = job();
    value["operator"]["peak_torque_n_m"] = Value::Null;
    let rated = person(&value);
    assert_eq!((rated.torque_n_m, rated.torque_from), (160.0, PushTorque::Rated));
    value["operator"]["peak_torque_n_m"] = json!(250);
    value["breakaway"] = json!({ "slip_torque_n_m": 90 });
    value["contact"]["near_m"] = json!(3);
    let slip = person(&value);
    assert_eq!((slip.torque_n_m, slip.torque_from), (90.0, PushTorque::Slip));
    assert!(slip.curve.iter().all(|row| row.near_n == row.edge_n));
    let arm = Arm::of(&value);
    let mut within = 0;
    for row in &slip.curve {
        let wanted = 90.0 * arm.at(row.leaf_deg.to_radians()).ratio.abs() * EFFICIENCY / 130.0;
        near(row.over_static_within_m.expect("no dead point"), wanted.min(LENGTH), 1e-9);
        within += u32::from(wanted < LENGTH);
    }
    assert!(within > 20);
}
