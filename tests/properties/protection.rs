//! What protects against the bench's zones: where sensors reach in plan, which means count, which class the site is.

use crate::bench::{bench, near};
use crate::jobs::planned;
use crate::zones::{obstacle, placed, site};
use pintle_core::{
    job::Means,
    safety::{UseClass, Zone, count_means, use_class},
    terms::{
        Direction::{self, Close, Open},
        MeansKind, ZoneKind,
    },
};
use serde_json::{Value, json};

/// The elbow closes when opening, the edge when closing, the ground is there both ways: each is reached by a means of its own movement.
#[test]
fn a_zone_is_reached_in_the_movements_that_make_it() {
    let unreached = |means: Value| {
        let mut kinds = site(json!({ "means": means })).unreached;
        kinds.retain(|kind| [ZoneKind::Elbow, ZoneKind::LeadingEdgeClosing, ZoneKind::Bottom].contains(kind));
        kinds
    };
    let means = |direction: Value| json!({ "kind": "inherent", "direction": direction, "reaches": ["elbow", "leading_edge_closing", "bottom"] });
    use ZoneKind::{Bottom, Elbow, LeadingEdgeClosing};
    assert_eq!(unreached(json!([])), [LeadingEdgeClosing, Bottom, Elbow]);
    assert_eq!(unreached(json!([means(json!("open"))])), [LeadingEdgeClosing, Bottom]);
    assert_eq!(unreached(json!([means(json!("close"))])), [Bottom, Elbow]);
    assert_eq!(unreached(json!([means(json!("open")), means(json!("close"))])), []);
    assert_eq!(unreached(json!([means(json!(null))])), []);
    // Two of a kind are named once; one that does not count is not named at all.
    let wall = json!({ "x_m": [0.2, 0.4], "y_m": [1.0, 1.2] });
    let twice =
        placed(json!({ "latch_gap_m": 0.5 }), json!({ "obstacles": [wall, { "x_m": [0.2, 0.4], "y_m": [1.0, 1.3] }, { "x_m": [9, 9.5], "y_m": [9, 9.5] }], "front_m": 0.03, "back_m": 0.03 })).unreached;
    assert_eq!(twice.iter().filter(|kind| **kind == ZoneKind::BehindLeaf).count(), 1);
    assert!(!twice.contains(&LeadingEdgeClosing));
}

fn area(on: &str, from: [f64; 2], to: [f64; 2], half: f64) -> Value {
    json!({ "kind": "non_contact", "monitored": true, "area": { "on": on, "from_x_m": from[0], "from_y_m": from[1],
        "to_x_m": to[0], "to_y_m": to[1], "half_width_m": half } })
}

/// Distance of a place from a line of some width, beside it and past its ends, on the ground and on the leaf.
#[test]
fn a_sensor_s_gap_is_the_distance_from_its_line() {
    let closed = |from, to| {
        let at = site(json!({ "means": [area("ground", from, to, 0.1)] }));
        let gap = at.sensors[0].zones[0];
        assert_eq!((gap.zone, gap.kind), (0, ZoneKind::LeadingEdgeClosing));
        gap.gap_m
    };
    near(closed([1.0, 1.0], [3.0, 1.0]), 0.9, 1e-12);
    near(closed([1.0, -1.0], [1.5, -1.0]), 1.25f64.sqrt() - 0.1, 1e-12);
    near(closed([3.0, 1.0], [2.5, 1.0]), 1.25f64.sqrt() - 0.1, 1e-12);
    near(closed([2.0, 1.0], [2.0, 1.0]), 0.9, 1e-12);
    // From (1, 0) to (3, 1) the foot is at two fifths: (−0.4, 0.8)·½ off.
    near(closed([1.0, 0.0], [3.0, 1.0]), 0.2f64.sqrt() - 0.1, 1e-12);
    assert_eq!(closed([1.95, 0.0], [1.95, 1.0]), 0.0);
    // The elbow is 0.2 off the leaf at 60°, on its opening side, `0.9 + 0.4·sin 60°` along it.
    let along = 0.9 + 0.4 * 60f64.to_radians().sin();
    let elbow = |from, to| {
        let at = site(json!({ "means": [area("leaf", from, to, 0.05)] }));
        let gaps = &at.sensors[0].zones;
        gaps.iter().find(|gap| gap.kind == ZoneKind::Elbow).expect("a zone").gap_m
    };
    near(elbow([0.0, 0.0], [2.0, 0.0]), 0.15, 1e-9);
    near(elbow([0.0, 0.5], [2.0, 0.5]), 0.25, 1e-9);
    near(elbow([along + 0.3, 0.2], [along + 0.6, 0.2]), 0.25, 1e-9);
}

/// A round area of 0.2 m on the edge's circle of 2 m at 30°: sensed within 2·asin(0.05) of it either way; what is left is unseen.
#[test]
fn the_edge_is_seen_where_it_is_within_the_area() {
    let spot = [2.0 * 30f64.to_radians().cos(), 1.0];
    let mut closing = area("ground", spot, spot, 0.2);
    closing["direction"] = json!("close");
    let at = site(json!({ "means": [{ "kind": "inherent" }, closing] }));
    assert_eq!((at.sensors.len(), at.sensors[0].means, at.sensors[0].edge.len()), (1, 1, 1));
    let half = 2.0 * 0.05f64.asin().to_degrees();
    let seen = at.sensors[0].edge[0];
    // Known to a step of the swing, inside what is true.
    let step = 60.0 / 720.0;
    assert!(seen.from_deg >= 30.0 - half && seen.from_deg < 30.0 - half + step, "{seen:?}");
    assert!(seen.to_deg <= 30.0 + half && seen.to_deg > 30.0 + half - step, "{seen:?}");
    let [opening, closing] = &at.edge_unseen;
    assert_eq!((opening.len(), opening[0].from_deg, closing.len(), closing[0].from_deg), (1, 0.0, 2, 0.0));
    near(opening[0].to_deg, 60.0, 1e-12);
    near(closing[0].to_deg, seen.from_deg - step, 1e-9);
    near(closing[1].from_deg, seen.to_deg + step, 1e-9);
    near(closing[1].to_deg, 60.0, 1e-12);
}

fn zone(directions: Vec<Direction>, present: bool) -> Zone {
    Zone { directions, present, ..obstacle([1.8, 2.2], [1.5, 1.9]) }
}

/// Two where a zone counts in that movement, one where none does.
#[test]
fn means_are_wanted_by_the_movement_s_own_zones() {
    let wanted = |zones: &[Zone]| [Open, Close].map(|way| count_means(way, zones, &[]).wanted);
    assert_eq!(wanted(&[]), [1, 1]);
    assert_eq!(wanted(&[zone(vec![Close], true)]), [1, 2]);
    assert_eq!(wanted(&[zone(vec![Open], true)]), [2, 1]);
    assert_eq!(wanted(&[zone(vec![Open, Close], false)]), [1, 1]);
    let fitted = |kind, monitored, direction| {
        Means::builder().kind(kind).maybe_direction(direction).maybe_monitored(monitored).build()
    };
    let counts = |means: &[Means]| {
        let count = count_means(Open, &[], means);
        (count.counted, count.not_counted)
    };
    // Outside the operator only what is watched counts.
    for (kind, unwatched) in [
        (MeansKind::Inherent, (1, 0)),
        (MeansKind::InherentForce, (1, 0)),
        (MeansKind::ConstantPressure, (1, 0)),
        (MeansKind::NonContact, (0, 1)),
        (MeansKind::Contact, (0, 1)),
    ] {
        assert_eq!(counts(&[fitted(kind, None, None)]), unwatched);
        assert_eq!(counts(&[fitted(kind, Some(false), None)]), unwatched);
        assert_eq!(counts(&[fitted(kind, Some(true), Some(Open))]), (1, 0));
        assert_eq!(counts(&[fitted(kind, Some(true), Some(Close))]), (0, 0));
        assert_eq!(counts(&[fitted(kind, Some(true), None), fitted(kind, Some(true), None)]), (1, 1));
    }
}

/// The public decides, then homes, then guards; five homes are as good as the public; an answer that decides and is missing leaves it open.
#[test]
fn the_class_follows_the_three_answers() {
    let (yes, no) = (Some(true), Some(false));
    for (public, guarded, homes, class) in [
        (yes, yes, Some(0), Some(UseClass::II)),
        (no, yes, Some(5), Some(UseClass::II)),
        (None, None, Some(5), Some(UseClass::II)),
        (no, yes, Some(4), Some(UseClass::I)),
        (no, yes, Some(0), Some(UseClass::IV)),
        (no, yes, None, None),
        (no, no, Some(4), Some(UseClass::I)),
        (no, no, Some(1), Some(UseClass::I)),
        (no, no, Some(0), Some(UseClass::III)),
        (None, yes, Some(4), None),
        (no, None, Some(4), Some(UseClass::I)),
        (no, None, Some(0), None),
        (no, no, None, None),
    ] {
        assert_eq!(use_class(public, guarded, homes), class, "{public:?} {guarded:?} {homes:?}");
    }
}

/// A clutch that slips, however it is set, adds to neither count; what is fitted is counted as without it.
#[test]
fn a_breakaway_is_counted_nowhere() {
    let means = json!({ "means": [{ "kind": "contact", "monitored": true }] });
    for (fitted, counted) in [(json!({}), 0), (means, 1)] {
        for slip in [json!(null), json!({}), json!({ "slip_torque_n_m": 5 }), json!({ "slip_torque_n_m": 500 })] {
            let mut value = bench();
            (value["site"], value["breakaway"]) = (fitted.clone(), slip);
            let counts = planned(&value).entrapment.expect("a site").means;
            assert_eq!(counts.map(|count| (count.counted, count.not_counted)), [(counted, 0); 2]);
        }
    }
}
