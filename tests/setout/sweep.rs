//! The ground the crank sweeps, in areas and outlines worked from the angle it turns: a convex sector, one beyond half a turn, and a whole turn.

use crate::{marks, read};
use pintle_core::plan::{ElbowSweep, Model};
use serde_json::json;
use std::f64::consts::{PI, TAU};

/// Shaft, crank, direction of the crank closed, angle it turns, sweep.
fn swept(arm: serde_json::Value, open_deg: f64, wide: f64) -> ([f64; 2], f64, f64, f64, ElbowSweep) {
    let mut job = marks::job();
    job["marks"] = serde_json::Value::Null;
    job["arm"] = arm;
    job["swing"]["open_deg"] = json!(open_deg);
    job["leaf"]["length_m"] = json!(4.0);
    pintle_tests::around(&mut job, json!({ "arm_half_width_m": wide }));
    let model = Model::new(&read(&job)).unwrap_or_else(|invalid| panic!("{invalid}"));
    let (shaft, crank) = (model.linkage().shaft, model.linkage().crank_m);
    let elbow = |leaf: f64| model.linkage().pose(leaf).elbow;
    let from = (elbow(0.0).y - shaft.y).atan2(elbow(0.0).x - shaft.x);
    // The angle turned, followed in small steps so that no whole turn is lost.
    let mut turned = 0.0;
    let mut last = from;
    for step in 1..=2000 {
        let place = elbow(open_deg.to_radians() * f64::from(step) / 2000.0);
        let now = (place.y - shaft.y).atan2(place.x - shaft.x);
        turned += (now - last + PI).rem_euclid(TAU) - PI;
        last = now;
    }
    ([shaft.x, shaft.y], crank, from, turned, model.swept())
}

/// Twice the area a polygon encloses counter-clockwise, halved: the shoelace.
fn polygon(outline: &[[f64; 2]]) -> f64 {
    let next = outline.iter().skip(1).chain(outline.first());
    outline.iter().zip(next).map(|([x0, y0], [x1, y1])| 0.5 * (x0 * y1 - x1 * y0)).sum()
}

/// Distance of a place from the sector of a radius, from a direction on counter-clockwise.
fn off_sector(place: [f64; 2], shaft: [f64; 2], radius: f64, from: f64, angle: f64) -> f64 {
    let (x, y) = (place[0] - shaft[0], place[1] - shaft[1]);
    let side = |direction: f64| {
        let along = (x * direction.cos() + y * direction.sin()).clamp(0.0, radius);
        (x - along * direction.cos()).hypot(y - along * direction.sin())
    };
    let (out, sides) = (x.hypot(y) - radius, side(from).min(side(from + angle)));
    match (angle >= TAU, (y.atan2(x) - from).rem_euclid(TAU) <= angle) {
        (true, _) => out,
        (false, true) if out < 0.0 => -sides.min(-out),
        (false, true) => out,
        (false, false) => sides,
    }
}

/// Every point of the outline is the half width off the sector, chords are five degrees at most, and it goes round once.
fn outlined(shaft: [f64; 2], radius: f64, (from, angle): (f64, f64), wide: f64, sweep: &ElbowSweep) {
    for &place in &sweep.outline {
        let off = off_sector(place, shaft, radius, from, angle);
        assert!((off - wide).abs() < 1e-9, "{place:?} is {off} m off");
    }
    // Each side runs straight from beside the shaft to beside the elbow: the four places are on the outline where the sector is convex.
    if angle < PI && wide > 0.0 {
        for (direction, square) in [(from, from - 0.5 * PI), (from + angle, from + angle + 0.5 * PI)] {
            for along in [0.0, radius] {
                let x = shaft[0] + along * direction.cos() + wide * square.cos();
                let y = shaft[1] + along * direction.sin() + wide * square.sin();
                let there = sweep.outline.iter().any(|place| (place[0] - x).hypot(place[1] - y) < 1e-9);
                assert!(there, "({x}, {y}) is on the outline");
            }
        }
        // Eighteen chords a quarter turn: the sector's arc, two quarters, and what is left of half a turn at the shaft.
        let chords = |turn: f64| (turn.to_degrees() / 5.0).ceil() as usize + 1;
        assert_eq!(sweep.outline.len(), chords(angle) + 2 * 19 + chords(PI - angle));
    }
    // Chords of at most five degrees lose 1 − sin(5°)/5° of a circle's area at most, and never gain.
    let share = polygon(&sweep.outline) / sweep.area_m2;
    assert!((1.0 - 1.3e-3..=1.0 + 1e-12).contains(&share), "{share}");
}

fn check(arm: serde_json::Value, open_deg: f64, wide: f64, area: impl Fn(f64, f64) -> f64) -> f64 {
    let (shaft, radius, closed, turned, sweep) = swept(arm, open_deg, wide);
    let angle = turned.abs();
    assert!((sweep.area_m2 - area(radius, angle)).abs() < 1e-9, "{} {}", sweep.area_m2, area(radius, angle));
    outlined(shaft, radius, (closed.min(closed + turned), angle), wide, &sweep);
    turned
}

fn left() -> serde_json::Value {
    json!({ "shaft_x_m": -0.3, "shaft_y_m": 0.43, "bracket_u_m": 0.9, "bracket_v_m": 0.08, "crank_m": 0.75, "link_m": 0.5,
        "elbow": "left" })
}

/// Steiner: a convex sector of radius a and angle φ widened by w has ½a²φ + w·(2a + aφ) + π·w².
#[test]
fn a_sector_below_half_a_turn() {
    for wide in [0.0, 0.06, 0.2] {
        let steiner = |a: f64, angle: f64| 0.5 * a * a * angle + wide * a * (2.0 + angle) + PI * wide * wide;
        let turned = check(left(), 90.0, wide, steiner);
        assert!((1.0..3.0).contains(&turned), "counter-clockwise by {turned}");
        // With the shaft beyond the bracket the crank turns the other way round.
        let beyond = json!({ "shaft_x_m": 0.96, "shaft_y_m": 0.25, "bracket_u_m": 0.56, "bracket_v_m": 0.0, "crank_m": 0.59,
            "link_m": 0.9, "elbow": "left" });
        let back = check(beyond, 150.0, wide, steiner);
        assert!((-3.0..-1.0).contains(&back), "clockwise by {back}");
    }
}

/// A short crank beside the hinge turns beyond half a turn. Of the gap γ = 2π − φ that is left the widened sides overlap by w²/tan(γ/2).
#[test]
fn a_sector_beyond_half_a_turn() {
    let arm = || {
        json!({ "shaft_x_m": 0.22, "shaft_y_m": 0.04, "bracket_u_m": 0.4, "bracket_v_m": 0.0, "crank_m": 0.25,
        "link_m": 0.42, "elbow": "right" })
    };
    let (.., turned, _) = swept(arm(), 180.0, 0.0);
    assert!((5.0..6.0).contains(&turned.abs()), "{turned}");
    let gap = TAU - turned.abs();
    for wide in [0.0, 0.02, 0.05] {
        assert!(wide / (0.5 * gap).tan() < 0.25, "the sides stay apart somewhere");
        check(arm(), 180.0, wide, |a, angle| {
            0.5 * (a + wide) * (a + wide) * angle + 2.0 * a * wide + 0.5 * PI * wide * wide
                - wide * wide / (0.5 * gap).tan()
        });
    }
    // So wide that the sides close the gap it is a disc.
    let wide = 0.25 * (0.5 * gap).tan() * 1.01;
    let (shaft, radius, _, _, sweep) = swept(arm(), 180.0, wide);
    assert!((sweep.area_m2 - PI * (radius + wide).powi(2)).abs() < 1e-12);
    outlined(shaft, radius, (0.0, TAU), wide, &sweep);
    let wide = wide / 1.02;
    let (.., sweep) = swept(arm(), 180.0, wide);
    assert!(sweep.area_m2 < PI * (radius + wide).powi(2));
}
