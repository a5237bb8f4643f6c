//! Zones on the bench's parallelogram, whose elbow stands `0.4·cos θ` off the leaf: every gap by plane geometry.

use crate::bench::{bench, near};
use crate::jobs::{planned, with};
use pintle_core::{
    plan::Entrapment,
    safety::{Source, Zone},
    terms::{
        Direction::{self, Close, Open},
        ZoneKind,
    },
};
use serde_json::{Value, json};

/// The bench with a site; `around` says what stands there and how thick the leaf is.
pub fn placed(site: Value, around: Value) -> Entrapment {
    let mut value = bench();
    value["site"] = site;
    pintle_tests::around(&mut value, around);
    planned(&value).entrapment.expect("a site")
}

pub fn site(site: Value) -> Entrapment {
    let mut value = bench();
    value["site"] = site;
    planned(&value).entrapment.expect("a site")
}

fn of(entrapment: &Entrapment, kind: ZoneKind) -> &Zone {
    entrapment.zones.iter().find(|zone| zone.kind == kind).expect("a zone")
}

/// Gap at which a kind does not count, m: ISO 13854 as AUVA prints it, a body 500, an arm and a foot 120 mm; 16 in of ASTM F2200 behind the leaf.
fn free(kind: ZoneKind) -> (f64, Source) {
    match kind {
        ZoneKind::ArmScissors | ZoneKind::Bottom => (0.12, Source::ISO_13854),
        ZoneKind::BehindLeaf => (0.4064, Source::F2200_GAPS),
        _ => (0.5, Source::ISO_13854),
    }
}

/// Two degrees of the leaf and a tenth of a metre are more than the steps that are looked at.
#[track_caller]
fn is(zone: &Zone, directions: &[Direction], gap_m: f64, leaf_deg: f64, place: [f64; 2]) {
    let (free_m, source) = free(zone.kind);
    assert_eq!((&zone.directions[..], zone.present), (directions, gap_m < free_m), "{zone:?}");
    assert_eq!((zone.free_gap_m, zone.source), (free_m, source), "{zone:?}");
    assert!((zone.gap_m.expect("known") - gap_m).abs() < 1e-3, "{zone:?} {gap_m}");
    assert!((zone.leaf_deg - leaf_deg).abs() < 0.2, "{zone:?} {leaf_deg}");
    assert!((zone.x_m - place[0]).hypot(zone.y_m - place[1]) < 0.01, "{zone:?} {place:?}");
}

/// Elbow at (0.9·cos θ, 0.4 + 0.9·sin θ), nearest at 60°; between crank and link `√(2 − 2·sin θ)` a metre from the joint.
#[test]
fn the_arm_s_own_zones_close_towards_open() {
    let at = placed(json!({ "latch_gap_m": 0.02 }), json!({ "front_m": 0.05, "back_m": 0.05 }));
    let elbow = [0.45, 0.4 + 0.9 * 60f64.to_radians().sin()];
    is(of(&at, ZoneKind::Elbow), &[Open], 0.2 - 0.05, 60.0, elbow);
    near(of(&at, ZoneKind::Elbow).leaf_deg, 60.0, 1e-12);
    is(of(&at, ZoneKind::ArmScissors), &[Open], 0.1 * (2.0 - 3f64.sqrt()).sqrt(), 60.0, elbow);
    is(of(&at, ZoneKind::LeadingEdgeClosing), &[Close], 0.02, 0.0, [2.0, 0.0]);
    let bottom = of(&at, ZoneKind::Bottom);
    assert_eq!((bottom.gap_m, bottom.leaf_deg, bottom.x_m, bottom.y_m, bottom.present), (None, 0.0, 2.0, 0.0, true));
    assert_eq!(bottom.directions, [Open, Close]);
    // A body's 500 mm: at them nobody is caught, below them somebody is.
    for (gap, present) in [(0.5, false), (0.4999, true), (0.4064, true)] {
        assert_eq!(of(&site(json!({ "latch_gap_m": gap })), ZoneKind::LeadingEdgeClosing).present, present);
    }
    // Closing comes nearer only where opening went away: a short swing keeps the elbow 0.4·cos 10° off.
    let mut short = bench();
    (short["swing"]["open_deg"], short["site"], short["leaf"]["thickness_m"]) = (json!(10), json!({}), json!(0));
    let short = planned(&short).entrapment.expect("a site");
    is(
        of(&short, ZoneKind::Elbow),
        &[Open],
        0.4 * 10f64.to_radians().cos(),
        10.0,
        [0.9 * 10f64.to_radians().cos(), 0.4 + 0.9 * 10f64.to_radians().sin()],
    );
}

pub fn obstacle(x: [f64; 2], y: [f64; 2]) -> Zone {
    let obstacles = json!([{ "x_m": [9, 9.5], "y_m": [9, 9.5] }, { "x_m": x, "y_m": y }]);
    let at = placed(json!({}), json!({ "front_m": 0.03, "back_m": 0.03, "obstacles": obstacles }));
    let far = at.zones.iter().find(|zone| zone.obstacle == Some(0)).expect("the first");
    assert!(!far.present && far.directions.is_empty());
    at.zones.iter().find(|zone| zone.obstacle == Some(1)).expect("the second").clone()
}

/// A rectangle beyond the edge's circle, one behind the open leaf, one at the hinge, ones the leaf sweeps into.
#[test]
fn every_place_of_an_obstacle_has_its_gap() {
    let turned = |deg: f64, r: f64| [r * deg.to_radians().cos(), r * deg.to_radians().sin()];
    // The corner (1.8, 1.5) is 2.343 m away at 39.81°: past it both ways lead away from it.
    let (corner, reach) = (1.5f64.atan2(1.8).to_degrees(), 1.8f64.hypot(1.5));
    let edge = obstacle([1.8, 2.2], [1.5, 1.9]);
    assert_eq!(edge.kind, ZoneKind::LeadingEdgeOpening);
    // The leaf's end is flat: one of its own corners, 30 mm off the middle, passes nearest.
    let off = (0.03 / reach).asin().to_degrees();
    is(&edge, &[Open, Close], (reach * reach - 0.0009).sqrt() - 2.0, corner + off, turned(corner + off, 2.0));
    // The corner (0.4, 1.0) is behind the open leaf.
    let (angle, r) = (1f64.atan2(0.4) - 60f64.to_radians(), 0.4f64.hypot(1.0));
    let behind = obstacle([0.2, 0.4], [1.0, 1.2]);
    assert_eq!(behind.kind, ZoneKind::BehindLeaf);
    is(&behind, &[Open], r * angle.sin() - 0.03, 60.0, turned(60.0, r * angle.cos()));
    // At the hinge the corner of the leaf's back comes nearer as it opens: 30 mm by the sine of 60°.
    let hinge = obstacle([-0.4, -0.3], [-0.1, 0.1]);
    assert_eq!(hinge.kind, ZoneKind::HingeSide);
    is(&hinge, &[Open], 0.3 - 0.03 * 60f64.to_radians().sin(), 60.0, [0.0, 0.0]);
    // Swept into where the face, 30 mm before the axis line, comes to the corner (1.5, 0.5), which is at 18.43°.
    let met = |x: f64, y: f64| y.atan2(x).to_degrees() - (0.03 / x.hypot(y)).asin().to_degrees();
    let at = |x: f64, y: f64| turned(met(x, y), (x * x + y * y - 0.0009).sqrt());
    let hit = obstacle([0.5, 1.5], [0.5, 0.6]);
    is(&hit, &[Open, Close], 0.0, met(1.5, 0.5), at(1.5, 0.5));
    // Beside the closed leaf, on its far side: opening leads away.
    is(&obstacle([0.6, 0.8], [-0.2, -0.1]), &[Close], 0.07, 0.0, [0.6, 0.0]);
    // On its near side: the corner (0.8, 0.1), which is at 7.125°.
    is(&obstacle([0.6, 0.8], [0.1, 0.2]), &[Open, Close], 0.0, met(0.8, 0.1), at(0.8, 0.1));
    // Across the closed leaf.
    is(&obstacle([0.6, 0.8], [-0.05, 0.05]), &[Close], 0.0, 0.0, [0.6, 0.0]);
    // Before the closed leaf's edge: 0.1 m of its line.
    // A corner of the leaf's end passes nearest, by less than a hinge's play nearer than closed: opening catches nobody.
    let (reach, angle) = (2f64.hypot(0.03), 0.015f64.atan().to_degrees());
    is(&obstacle([2.1, 2.3], [-0.05, 0.05]), &[Close], 2.1 - reach, angle, turned(angle, 2.0));
    // Half a metre from the hinge on is no longer its side.
    assert_eq!(obstacle([0.49, 0.52], [-0.2, -0.1]).kind, ZoneKind::HingeSide);
    assert_eq!(obstacle([0.51, 0.54], [-0.2, -0.1]).kind, ZoneKind::BehindLeaf);
    assert_eq!(obstacle([1.46, 1.49], [-0.2, -0.1]).kind, ZoneKind::BehindLeaf);
    assert_eq!(obstacle([1.51, 1.54], [-0.2, -0.1]).kind, ZoneKind::LeadingEdgeOpening);
}

/// Leaf and post catch in a movement that ends more than a millimetre nearer than it began, below the free gap.
#[test]
fn the_hinge_side_catches_where_its_gap_shrinks() {
    let mut caught = Vec::new();
    for (heel, back, post_x, post_y) in
        [(0.08, 0.05, -0.09, 0.2), (0.0, 0.0, -0.1, 0.1), (0.08, 0.0, -0.09, -0.05), (0.2, 0.1, -0.25, 0.3)]
    {
        let mut value = bench();
        value["site"] = json!({});
        pintle_tests::around(
            &mut value,
            json!({ "heel_m": heel, "front_m": 0, "back_m": back,
            "hinge_post": { "x_m": [-0.5, post_x], "y_m": [-0.3, post_y] } }),
        );
        let plan = planned(&value);
        let gap = plan.clearances.expect("a room").hinge_gap.expect("a post");
        let catches = |from: f64| gap.least_m < 0.5 && from - gap.least_m > 0.001;
        let entrapment = plan.entrapment.expect("a site");
        let zone = of(&entrapment, ZoneKind::HingeSide);
        let wanted: Vec<Direction> = [(Open, gap.closed_m), (Close, gap.open_m)]
            .into_iter()
            .filter(|(_, from)| catches(*from))
            .map(|(way, _)| way)
            .collect();
        assert_eq!((zone.present, &zone.directions), (!wanted.is_empty(), &wanted), "{gap:?}");
        near(zone.gap_m.expect("known"), gap.least_m.max(0.0), 1e-12);
        near(zone.leaf_deg, gap.least_leaf_deg, 1e-9);
        caught.push(wanted);
    }
    assert!(caught.iter().any(Vec::is_empty) && caught.iter().any(|ways| !ways.is_empty()), "{caught:?}");
}

/// An obstacle at the hinge is its side: nothing is asked about the post, and a post that is described comes beside it.
#[test]
fn the_hinge_side_is_there_once_for_each_thing_beside_it() {
    let sides = |value: &Value| {
        let zones = planned(value).entrapment.expect("a site").zones;
        let mut sides = zones.iter().filter(|zone| zone.kind == ZoneKind::HingeSide);
        (sides.clone().count(), sides.all(|zone| zone.gap_m.is_some()))
    };
    let mut value = with(&bench(), "site", json!({}));
    assert_eq!(sides(&value), (1, false));
    let stone = json!({ "x_m": [-0.4, -0.3], "y_m": [-0.1, 0.1] });
    let post = json!({ "x_m": [-0.3, -0.1], "y_m": [-0.1, 0.1], "hinge_post": true });
    value["obstacles"] = json!([stone]);
    assert_eq!(sides(&value), (1, true));
    value["obstacles"] = json!([stone, post]);
    assert_eq!(sides(&value), (2, true));
    value["obstacles"] = json!([post]);
    assert_eq!(sides(&value), (1, true));
}

/// Level ground: the gap is the same everywhere. A foot's 120 mm up to 6 in are free, a body's 500 mm from there on; a slope that takes more than
/// 6 in down below a body's gap is not.
#[test]
fn the_ground_is_a_zone_by_its_gap() {
    let bottom = |gap: f64, rise: f64| {
        let mut value = with(&bench(), "site", json!({ "latch_gap_m": 0.6 }));
        value["lean"] = Value::Null;
        value["ground"] = json!({ "gap_m": gap, "bottom_rise_m": rise });
        planned(&value).entrapment.expect("a site")
    };
    for (gap, rise, present, free_m) in [
        (0.05, 0.0, true, 0.12),
        (0.119, 0.0, true, 0.12),
        (0.12, 0.0, false, 0.12),
        (0.152, 0.0, false, 0.12),
        (0.153, 0.0, true, 0.5),
        (0.499, 0.0, true, 0.5),
        (0.5, 0.0, false, 0.5),
        // From hinge to latch edge.
        (0.13, 0.02, false, 0.12),
        (0.13, 0.03, true, 0.5),
        (0.1, 0.2, true, 0.12),
    ] {
        let at = bottom(gap, rise);
        let zone = of(&at, ZoneKind::Bottom);
        assert_eq!(
            (zone.present, zone.free_gap_m, zone.directions.is_empty()),
            (present, free_m, !present),
            "{gap} {rise}"
        );
        near(zone.gap_m.expect("known"), gap, 1e-12);
    }
}

/// Nothing to close on, room for a foot, a post whose gap stays: closing has no zone, and one means is wanted there (UL 325, from memory). Opening
/// has those of the arm.
#[test]
fn where_no_zone_is_left_one_means_is_wanted() {
    let wanted = |gap: f64| {
        let mut value = with(&bench(), "site", json!({ "latch_gap_m": 0.6 }));
        value["lean"] = Value::Null;
        value["ground"] = json!({ "gap_m": gap });
        pintle_tests::around(&mut value, json!({ "hinge_post": { "x_m": [-0.3, -0.1], "y_m": [-0.1, 0.1] } }));
        let means = planned(&value).entrapment.expect("a site").means;
        means.each_ref().map(|count| (count.direction, count.wanted))
    };
    assert_eq!(wanted(0.13), [(Open, 2), (Close, 1)]);
    assert_eq!(wanted(0.06), [(Open, 2), (Close, 2)]);
}
