//! Identities of breakaway, holding, forces on people and zones.

use crate::jobs::{job, planned, valid, with};
use crate::plan::finite;
use pintle_core::{
    drive::{HoldingVerdict, SparedPart, TOGGLE_RATIO, toggle_zone_rad},
    plan::{Model, Plan, RemedyKind, WindowState},
    safety::UseClass,
    terms::{Direction, ZoneKind},
};
use proptest::prelude::*;
use serde_json::{Value, json};

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn every_limit_is_kept_at_the_highest_slip_torque(
        value in valid(), moment in 100.0..5000.0f64, link in 500.0..20_000.0f64, gear in 50.0..3000.0f64,
    ) {
        let facts = json!({ "leaf_moment_n_m": moment, "link_force_n": link, "gearbox_torque_n_m": gear, "release_factor": 1 });
        let planned = planned(&with(&value, "breakaway", facts));
        prop_assert!(finite(&planned));
        let breakaway = planned.breakaway.unwrap();
        let slip = breakaway.highest.unwrap().slip_torque_n_m;
        prop_assert!(slip <= gear * (1.0 + 1e-12));
        let model = Model::new(&job(&value)).unwrap();
        let efficiency = model.job().operator.efficiency();
        let from = toggle_zone_rad(model.linkage());
        let mut used = slip / gear;
        for index in 0..=2000 {
            let pose = model.linkage().pose(from + (model.linkage().open_rad - from) * f64::from(index) / 2000.0);
            let Some(ratio) = pose.ratio else { continue };
            // Virtual work from the leaf's side: M·dθ·η = T·dφ.
            let on_leaf = slip * ratio.abs() / efficiency;
            used = used.max(on_leaf / moment).max(on_leaf / pose.lever_m() / link);
        }
        prop_assert!((used - 1.0).abs() <= 1e-3, "{used}");
        prop_assert!(!breakaway.protects_people);
    }

    #[test]
    fn the_window_is_open_or_says_what_was_tried(value in valid(), gear in 20.0..3000.0f64) {
        let breakaway = planned(&with(&value, "breakaway", json!({ "gearbox_torque_n_m": gear }))).breakaway.unwrap();
        let highest = breakaway.highest.unwrap();
        prop_assert_eq!(highest.part, SparedPart::Gearbox);
        prop_assert!((highest.slip_torque_n_m - 0.8 * gear).abs() < 1e-9 * gear);
        if breakaway.state == WindowState::Open {
            prop_assert!(breakaway.least_slip_n_m < highest.slip_torque_n_m && breakaway.remedies.is_empty());
            prop_assert!(breakaway.trial.must_hold_n < breakaway.trial.must_slip_n.unwrap());
        } else {
            let other = breakaway.remedies.iter().find(|remedy| remedy.change == RemedyKind::OtherOperator).unwrap();
            prop_assert!(other.opens && other.highest_slip_n_m.is_none());
            for remedy in &breakaway.remedies {
                prop_assert!(remedy.least_slip_n_m <= breakaway.least_slip_n_m * (1.0 + 1e-9), "{remedy:?}");
            }
        }
    }

    #[test]
    fn a_remedy_keeps_its_word(value in valid(), share in 0.3..0.99f64) {
        prop_assume!(value["wind"]["speed_m_s"].as_f64().unwrap() > 5.0);
        let free = planned(&with(&value, "breakaway", json!({}))).breakaway.unwrap();
        let gear = (share * free.least_slip_n_m / 0.8).clamp(1.0, 50_000.0);
        let value = with(&value, "breakaway", json!({ "gearbox_torque_n_m": gear }));
        let shut = planned(&value).breakaway.unwrap();
        prop_assume!(shut.state == WindowState::Shut);
        let calm = shut.remedies.iter().find(|remedy| remedy.change == RemedyKind::LessWind).unwrap();
        let mut still = value.clone();
        still["wind"]["speed_m_s"] = json!(0);
        let still = planned(&still).breakaway.unwrap();
        prop_assert!((still.least_slip_n_m - calm.least_slip_n_m).abs() <= 1e-9 * calm.least_slip_n_m.max(1.0));
        prop_assert_eq!(still.state == WindowState::Open, calm.opens);
    }

    #[test]
    fn the_trial_push_slips_what_it_says(value in valid(), slip in 50.0..2000.0f64, radius in 0.5..3.0f64) {
        let value = with(&value, "breakaway", json!({ "slip_torque_n_m": slip, "push_radius_m": radius }));
        let breakaway = planned(&value).breakaway.unwrap();
        let model = Model::new(&job(&value)).unwrap();
        let (pose, loads) = (model.linkage().pose(model.linkage().open_rad / 2.0), model.loads());
        // Shaft torque that the push leaves, friction and weight taken off, is the slip torque.
        for (push, sign, direction) in [
            (breakaway.trial.set_open_n.unwrap(), 1.0, Direction::Open),
            (breakaway.trial.set_close_n.unwrap(), -1.0, Direction::Close),
        ] {
            let friction = loads.friction_n_m(direction);
            let reaches = push * radius - friction + sign * loads.gravity_n_m(pose.leaf_rad);
            let at_shaft = reaches * model.job().operator.efficiency() / pose.ratio.unwrap().abs();
            prop_assert!((at_shaft - slip).abs() <= 1e-9 * slip.max(friction), "{at_shaft} {slip}");
        }
    }

    #[test]
    fn the_toggle_zone_ends_at_its_ratio(value in valid()) {
        let model = Model::new(&job(&value)).unwrap();
        let (linkage, half) = (model.linkage(), model.linkage().open_rad / 2.0);
        let (end, middle) = (toggle_zone_rad(linkage), linkage.pose(half).ratio.unwrap());
        if end > 0.0 {
            let there = linkage.pose(end).ratio.unwrap() / middle;
            prop_assert!((there - TOGGLE_RATIO).abs() < 1e-5, "{there}");
        }
        for index in 1..500 {
            let pose = linkage.pose(end + (half - end) * f64::from(index) / 500.0);
            prop_assert!(pose.ratio.unwrap() / middle <= TOGGLE_RATIO * (1.0 + 1e-6));
        }
    }

    #[test]
    fn holding_is_the_storm_on_the_arm(value in valid(), speed in 5.0..50.0f64, limit in 1.0..3000.0f64, play in 0.0..2.0f64) {
        let mut value = with(&value, "storm", json!({ "speed_m_s": speed, "force_coefficient": 1.3 }));
        value["holding"] = json!({ "play_deg": play });
        let unknown = planned(&value);
        let (storm, holding) = (unknown.storm.unwrap(), unknown.holding.unwrap());
        // The storm's part, and the lean's by the share it adds to the moment.
        let model = Model::new(&job(&value)).unwrap();
        let held = storm.wind_n_m + model.loads().gravity_n_m(0.0).abs();
        let closed = storm.shaft_torque_n_m * held / storm.wind_n_m.max(f64::MIN_POSITIVE);
        prop_assume!(storm.wind_n_m > 0.0);
        prop_assert!((holding.closed_torque_n_m - closed).abs() <= 1e-9 * closed.max(1.0));
        prop_assert!(holding.torque_n_m >= holding.closed_torque_n_m);
        prop_assert!(holding.link_force_n >= storm.link_force_n * (1.0 - 1e-9));
        prop_assert_eq!((holding.verdict, holding.lock_needed), (HoldingVerdict::Unknown, true));
        value["holding"]["shaft_torque_n_m"] = json!(limit);
        let known = planned(&value).holding.unwrap();
        prop_assert_eq!(known.lock_needed, holding.torque_n_m > limit);
        prop_assert_eq!(known.lock_needed, known.verdict == HoldingVerdict::GivesWay);
    }

    #[test]
    fn a_push_times_its_distance_is_one_moment(value in valid(), near in 0.05..1.0f64) {
        let planned = planned(&with(&value, "contact", json!({ "near_m": near })));
        prop_assert!(finite(&planned));
        let person = planned.person.unwrap();
        let length = value["leaf"]["length_m"].as_f64().unwrap();
        for (row, point) in person.curve.iter().zip(&planned.curve) {
            let (Some(edge), Some(close)) = (row.edge_n, row.near_n) else { continue };
            let moment = person.torque_n_m * point.ratio.unwrap().abs() * value["operator"]["arm_efficiency"].as_f64().unwrap();
            prop_assert!((edge * length - moment).abs() <= 1e-9 * moment);
            prop_assert!((close * near.min(length) - moment).abs() <= 1e-9 * moment);
            prop_assert!(close >= edge * (1.0 - 1e-12));
            prop_assert!((row.middle_n.unwrap() - 2.0 * edge).abs() <= 1e-9 * edge);
        }
    }

    #[test]
    fn no_sampled_place_of_an_obstacle_is_nearer_than_its_gap(
        value in valid(), x in -2.0..5.0f64, y in 0.5..5.0f64, width in 0.05..1.0f64, depth in 0.05..1.0f64,
    ) {
        let obstacle = json!({ "x_m": [x, x + width], "y_m": [y, y + depth] });
        let mut value = with(&value, "site", json!({}));
        pintle_tests::around(&mut value, json!({ "obstacles": [obstacle] }));
        let planned = planned(&value);
        prop_assert!(finite(&planned));
        let entrapment = planned.entrapment.unwrap();
        let zone = entrapment.zones.iter().find(|zone| zone.obstacle == Some(0)).unwrap();
        let (length, open) = (value["leaf"]["length_m"].as_f64().unwrap(), job(&value).open_rad());
        let mut least = f64::MAX;
        for angle in 0..=360 {
            let turned = open * f64::from(angle) / 360.0;
            for along in 0..=100 {
                let u = length * f64::from(along) / 100.0;
                let (px, py) = (u * turned.cos(), u * turned.sin());
                let (nx, ny) = (px.clamp(x, x + width), py.clamp(y, y + depth));
                least = least.min((px - nx).hypot(py - ny));
            }
        }
        let gap = zone.gap_m.unwrap();
        prop_assert!(gap <= least + 1e-9, "{gap} {least}");
        // The samples along the leaf are at most a hundredth of it apart.
        prop_assert!(gap >= least - length / 100.0, "{gap} {least}");
    }
}

fn site(means: Value) -> Plan {
    let mut value = crate::plan::example();
    value["site"] = json!({ "public": false, "guarded": false, "homes": 1, "means": means });
    planned(&value)
}

#[test]
fn two_of_one_kind_count_once_and_unwatched_ones_not_at_all() {
    let edges = site(json!([
        { "kind": "contact", "monitored": true }, { "kind": "contact", "monitored": true },
        { "kind": "non_contact" }, { "kind": "non_contact", "monitored": false, "direction": "open" },
    ]));
    let entrapment = edges.entrapment.unwrap();
    assert_eq!(entrapment.class, Some(UseClass::I));
    let counted =
        entrapment.means.each_ref().map(|count| (count.direction, count.wanted, count.counted, count.not_counted));
    assert_eq!(counted, [(Direction::Open, 2, 1, 3), (Direction::Close, 2, 1, 2)]);
    let enough = site(json!([{ "kind": "inherent" }, { "kind": "contact", "monitored": true }])).entrapment.unwrap();
    assert!(enough.means.iter().all(|count| count.counted == count.wanted));
}

#[test]
fn what_no_means_reaches_is_named() {
    let reaches = site(
        json!([{ "kind": "inherent", "reaches": ["leading_edge_closing", "elbow", "arm_scissors", "hinge_side"] }]),
    );
    assert_eq!(reaches.entrapment.unwrap().unreached, [ZoneKind::Bottom]);
    // Reached when closing only: the ground is there in both movements.
    let closing = site(json!([{ "kind": "inherent", "direction": "close", "reaches": ["bottom"] }]));
    assert!(closing.entrapment.unwrap().unreached.contains(&ZoneKind::Bottom));
}

/// A hinge side nobody has described counts as a zone; a post whose gap does not close on anybody does not.
#[test]
fn the_hinge_side_is_a_zone_until_its_gap_is_known() {
    let zone = |plan: Plan| {
        let zones = plan.entrapment.unwrap().zones;
        zones.into_iter().find(|zone| zone.kind == ZoneKind::HingeSide).unwrap()
    };
    let unknown = zone(site(json!([])));
    assert!(unknown.present && unknown.gap_m.is_none() && unknown.directions == [Direction::Open, Direction::Close]);
    let mut value = crate::plan::example();
    value["site"] = json!({});
    // A leaf of no thickness before a post it turns beside: the gap stays as it is.
    pintle_tests::around(&mut value, json!({ "hinge_post": { "x_m": [-0.3, -0.1], "y_m": [-0.1, 0.1] } }));
    assert!(!zone(planned(&value)).present);
    // A leaf that reaches past its hinge swings its heel towards the axis line's far side.
    value["obstacles"] = json!([]);
    pintle_tests::around(
        &mut value,
        json!({ "heel_m": 0.08, "front_m": 0, "back_m": 0.05,
        "hinge_post": { "x_m": [-0.3, -0.09], "y_m": [-0.2, 0.2] } }),
    );
    let known = zone(planned(&value));
    assert!(known.present && known.gap_m.unwrap() < 0.05, "{known:?}");
}

/// Where no change opens the window by itself, pairs are tried; what a pair promises, the job so changed keeps.
#[test]
fn a_window_that_no_single_change_opens_is_tried_in_pairs() {
    let mut value = crate::plan::example();
    (value["operator"]["shaft_speed_deg_s"], value["motion"]) =
        (json!(40), json!({ "ramp_up_s": 0.2, "ramp_down_s": 0.2 }));
    value["breakaway"] = json!({ "gearbox_torque_n_m": 60, "leaf_moment_n_m": 60, "release_factor": 1 });
    let breakaway = planned(&value).breakaway.unwrap();
    assert_eq!(breakaway.state, WindowState::Shut);
    assert!(breakaway.remedies.iter().filter(|remedy| remedy.with.is_none()).all(|remedy| !remedy.opens));
    let pair = breakaway
        .remedies
        .iter()
        .find(|remedy| (remedy.change, remedy.with) == (RemedyKind::SlowerRamp, Some(RemedyKind::LessWind)));
    let pair = pair.expect("a pair");
    (value["motion"], value["wind"]["speed_m_s"]) = (json!(null), json!(0));
    let so = planned(&value).breakaway.unwrap();
    assert!((so.least_slip_n_m - pair.least_slip_n_m).abs() < 1e-9 * so.least_slip_n_m);
    assert_eq!(so.state == WindowState::Open, pair.opens);
    assert!(breakaway.remedies.len() == 4 + 6);
}

/// A quarter swing of a leaf of length L before a beam from (L, 0) to (0, L): the edge, on its circle, is nearest to the beam's ends and
/// furthest half way, `L·(1 − 1/√2)`; a strip on the leaf's own edge senses it at every angle.
#[test]
fn a_beam_across_the_swing_leaves_the_gap_of_the_chord() {
    let length = crate::plan::example()["leaf"]["length_m"].as_f64().unwrap();
    let beam = json!({ "on": "ground", "from_x_m": length, "from_y_m": 0, "to_x_m": 0, "to_y_m": length, "half_width_m": 0.1 });
    let means = |kind: &str, area: Value| json!({ "kind": kind, "monitored": true, "reaches": ["leading_edge_closing", "elbow"], "area": area });
    let entrapment = site(json!([means("non_contact", beam.clone())])).entrapment.unwrap();
    // On the circle the beam is L·(cos φ + sin φ − 1)/√2 away: within 0.1 m up to where that is 0.1.
    let within = entrapment.sensors[0].edge.clone();
    let away = |deg: f64| length * (deg.to_radians().cos() + deg.to_radians().sin() - 1.0) / 2f64.sqrt();
    assert_eq!(within.len(), 2);
    assert!((away(within[0].to_deg) - 0.1).abs() < 0.01 && within[0].from_deg == 0.0 && within[1].to_deg == 90.0);
    let [opening, closing] = &entrapment.edge_unseen;
    assert_eq!(opening, closing);
    assert!(
        (opening[0].from_deg - within[0].to_deg).abs() < 0.2 && (opening[0].to_deg - within[1].from_deg).abs() < 0.2
    );
    // The closed edge lies in the beam, the elbow does not: half a promise is kept, and said.
    let gap = |kind| entrapment.sensors[0].zones.iter().find(|zone| zone.kind == kind).unwrap().gap_m;
    assert!(gap(ZoneKind::LeadingEdgeClosing) == 0.0 && gap(ZoneKind::Elbow) > 0.5);
    let strip = json!({ "on": "leaf", "from_x_m": length, "from_y_m": -0.02, "to_x_m": length, "to_y_m": 0.02 });
    let strip = site(json!([means("contact", strip)])).entrapment.unwrap();
    assert!(strip.edge_unseen.iter().all(Vec::is_empty) && strip.sensors[0].edge.len() == 1);
    // A sensor for one movement leaves the other to itself.
    let mut closing = means("non_contact", beam.clone());
    closing["direction"] = json!("close");
    let [opening, _] = site(json!([closing])).entrapment.unwrap().edge_unseen;
    assert_eq!((opening[0].from_deg, opening[0].to_deg), (0.0, 90.0));
    let codes =
        |means: Value| site(means).findings.iter().map(|finding| format!("{:?}", finding.code)).collect::<Vec<_>>();
    assert!(codes(json!([means("non_contact", beam)])).contains(&"SensorsMissZones".to_owned()));
}
