//! Factors of a standard's wind: each multiplies the wind's moment as its formula has it, and stands for its default where it is not said.

use super::{answer, job};
use serde_json::{Value, json};

fn moment(from: &Value, shape: &Value) -> f64 {
    let mut job = job();
    if !from.is_null() {
        job["wind"]["speed_m_s"] = Value::Null;
        job["wind"]["from"] = from.clone();
    }
    if !shape.is_null() {
        job["wind"]["force_coefficient"] = Value::Null;
        job["wind"]["shape"] = shape.clone();
    }
    answer(&job).unwrap_or_else(|invalid| panic!("{invalid}")).loads.wind_n_m
}

/// Silent, said as the default, and said otherwise with the ratio that makes.
#[track_caller]
fn factor(block: Value, of: impl Fn(&Value) -> f64, key: &str, default: Value, other: Value, ratio: f64) {
    let with = |value: Value| {
        let mut block = block.clone();
        block[key] = value;
        of(&block)
    };
    let silent = of(&block);
    assert!((with(default) / silent - 1.0).abs() < 1e-12, "{key}");
    let found = with(other) / silent;
    assert!((found / ratio - 1.0).abs() < 1e-9, "{key}: {found}, not {ratio}");
}

/// ASCE 7 (7-05 6.5.10, 7-16 26.10): q = 0.613·Kz·Kzt·Kd·V²·I, times the gust effect.
#[test]
fn asce7() {
    let from = json!({ "kind": "asce7", "edition": "7-05", "level": "allowable", "exposure": "C", "speed_m_s": 20, "height_m": 2 });
    let of = |from: &Value| moment(from, &Value::Null);
    factor(from.clone(), of, "topographic", json!(1), json!(1.5), 1.5);
    factor(from.clone(), of, "directionality", json!(0.85), json!(0.6), 0.6 / 0.85);
    factor(from.clone(), of, "importance", json!(1), json!(1.15), 1.15);
    factor(from, of, "gust_effect", json!(0.85), json!(1.0), 1.0 / 0.85);
}

/// EN 1991-1-4, 4.3 to 4.5: q = (1 + 7·I)·½ρ·v², v = c_r·c_o·v_b, I = 1/(c_o·ln(z/z₀)); terrain II has z₀ = 0.05 m. Of the yearly
/// probability (4.2, note 4): c² = (1 − 0.2·ln(−ln(1 − p)))/(1 − 0.2·ln(−ln 0.98)).
#[test]
fn en1991() {
    let from = json!({ "kind": "en1991", "terrain": "II", "basic_m_s": 20, "height_m": 2 });
    let of = |from: &Value| moment(from, &Value::Null);
    let rough = 7.0 / (2.0_f64 / 0.05).ln();
    factor(from.clone(), of, "orography", json!(1), json!(1.5), (1.5 * 1.5 + 1.5 * rough) / (1.0 + rough));
    let yearly = |p: f64| 1.0 - 0.2 * (-(1.0 - p).ln()).ln();
    factor(from, of, "yearly_probability", json!(0.02), json!(0.1), yearly(0.1) / yearly(0.02));
}

/// ASCE 7 Fig 29.3-1 (from memory): twice as long as high, C_f = 1.40 where it stands on the ground, 1.50 at s/h = 0.9. Case B puts the
/// resultant 0.2 of the length off the middle: 0.7 of it from the hinge instead of 0.5.
#[test]
fn asce7_wall() {
    let shape = json!({ "kind": "asce7_wall", "solidity": 1 });
    let of = |shape: &Value| moment(&Value::Null, shape);
    factor(shape.clone(), of, "clearance", json!(1), json!(0.9), 1.50 / 1.40);
    factor(shape, of, "eccentric", json!(true), json!(false), 0.5 / 0.7);
}

/// EN 1991-1-4 Table 7.9 at l/h = 2 (from memory): the end zone, 0.3 h long, has 2.3 without a return corner and 2.1 with one, the next, to 2 h,
/// 1.4 and 1.8; both reckoned from the latch edge, 3.2 m out, of a wall 1.6 m high.
#[test]
fn en1991_wall() {
    let shape = json!({ "kind": "en1991_wall", "solidity": 1 });
    let of = |shape: &Value| moment(&Value::Null, shape);
    let edge = 3.2 - 0.3 * 1.6;
    let zones = |end: f64, next: f64| end * (3.2 * 3.2 - edge * edge) + next * edge * edge;
    // Shelter ends a height, 1.6 m, before the latch edge (7.4.2): of zone B the inner 1.6 m have half.
    let sheltered = zones(2.3, 1.4) - 0.5 * 1.4 * 1.6 * 1.6;
    factor(shape.clone(), of, "shelter_factor", json!(1), json!(0.5), sheltered / zones(2.3, 1.4));
    factor(shape, of, "returns", json!(false), json!(true), zones(2.1, 1.8) / zones(2.3, 1.4));
}
