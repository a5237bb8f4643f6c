//! Pulls, lean, wind level, ground.

use super::{LESS, MORE, job, measured, planned, silent, tells};
use pintle_core::{
    STANDARD_GRAVITY_M_S2,
    plan::{FindingCode as Code, Severity},
};
use serde_json::{Value, json};

/// Moment of the starting leaf (160 kg, centre at 1.6 m) on an axis leaning by so much, N·m: m·g·x·sin λ.
fn lean_n_m(angle_deg: f64) -> f64 {
    160.0 * STANDARD_GRAVITY_M_S2 * 1.6 * angle_deg.to_radians().sin()
}

fn pulled(open_n: f64, close_n: f64, lean: Value) -> Value {
    let mut job = job();
    job["hinges"] = measured(open_n, close_n);
    job["lean"] = lean;
    job
}

/// Pulls of 48 and 32 N, 2 m from the axis, resist by 80 N·m and differ by 16 N·m, a fifth of that.
#[test]
fn pulls_that_differ_without_a_lean() {
    for (open, close, told) in
        [(48.0, 32.0, false), (48.001, 31.999, true), (32.0, 48.0, false), (31.999, 48.001, true)]
    {
        let job = pulled(open, close, Value::Null);
        match told {
            true => {
                let values = [("bias_moment", open - close), ("lean_moment", 0.0)];
                tells(&job, Code::PullBiasAgainstLean, Severity::Warning, &values);
            }
            false => silent(&job, Code::PullBiasAgainstLean),
        }
    }
}

/// A lean towards closed resists opening: at 45° by m·g·x·sin λ·sin 45°, which explains pulls that differ by as much.
#[test]
fn a_lean_explains_pulls_that_differ() {
    let lean = lean_n_m(2.0) * 0.5_f64.sqrt();
    let towards = |downhill: f64| json!({ "angle_deg": 2.0, "downhill_deg": downhill });
    // Hinges that resist by 100 N·m may leave 20 N·m unexplained.
    let pulls = |bias: f64| (50.0 + 0.5 * bias, 50.0 - 0.5 * bias);
    for (unexplained, told) in [(0.0, false), (19.9, false), (20.1, true), (-19.9, false), (-20.1, true)] {
        let (open, close) = pulls(lean + unexplained);
        let job = pulled(open, close, towards(0.0));
        match told {
            true => {
                let values = [("bias_moment", lean + unexplained), ("lean_moment", lean)];
                tells(&job, Code::PullBiasAgainstLean, Severity::Warning, &values);
            }
            false => silent(&job, Code::PullBiasAgainstLean),
        }
    }
    // Leaning towards open it helps, and the same pulls contradict it.
    let (open, close) = pulls(lean);
    let values = [("bias_moment", lean), ("lean_moment", -lean)];
    tells(&pulled(open, close, towards(90.0)), Code::PullBiasAgainstLean, Severity::Warning, &values);
}

/// 1.9 m² of 3.2 by 1.6 m are 0.371 solid; a tenth either way is let pass, for the working wind and for the storm.
#[test]
fn a_typed_solidity_is_held_against_the_leaf() {
    let own = 1.9 / (3.2 * 1.6);
    let open = |bar_m: f64| json!({ "kind": "asce7_open", "bars": "flat", "bar_m": bar_m, "pitch_m": 1.0 });
    let at = |block: &str, shape: Value| {
        let mut job = job();
        job["leaf"]["height_m"] = json!(1.6);
        job[block] = json!({ "speed_m_s": 12, "shape": shape });
        job
    };
    for (block, code) in [("wind", Code::WindSolidityDiffers), ("storm", Code::StormSolidityDiffers)] {
        for typed in [0.8, own + 0.1 * MORE, own - 0.1 * MORE] {
            let values = [("solidity", typed), ("leaf_solidity", own)];
            let shape = if typed < 0.7 { open(typed) } else { json!({ "kind": "asce7_wall", "solidity": typed }) };
            tells(&at(block, shape), code, Severity::Warning, &values);
        }
        for typed in [own, own + 0.1 * LESS, own - 0.1 * LESS] {
            silent(&at(block, open(typed)), code);
        }
    }
    // Ice is none of the leaf's own, and a plain coefficient has no solidity.
    let mut iced = at("wind", open(own));
    iced["ice"] = json!({ "thickness_m": 0.02, "area_factor": 2 });
    silent(&iced, Code::WindSolidityDiffers);
    silent(&job(), Code::WindSolidityDiffers);
}

/// The leaf drifts where the lean's moment is more than the hinges resist; it comes to rest downhill.
#[test]
fn a_lean_moves_a_free_leaf() {
    let moment = lean_n_m(1.0);
    for (downhill, folded) in [(30.0, 30.0), (450.0, 90.0), (-200.0, 160.0)] {
        let lean = json!({ "angle_deg": 1.0, "downhill_deg": downhill });
        let drifts = pulled(0.5 * moment * LESS, 0.5 * moment * LESS, lean.clone());
        let values = [("lean_moment", moment), ("limit", moment * LESS), ("leaf_angle", folded)];
        tells(&drifts, Code::LeanDrift, Severity::Warning, &values);
        silent(&pulled(0.5 * moment * MORE, 0.5 * moment * MORE, lean), Code::LeanDrift);
    }
    // Without lean and without friction nothing moves it.
    silent(&pulled(0.0, 0.0, Value::Null), Code::LeanDrift);
}

#[test]
fn wind_at_strength_level() {
    for (level, told) in [("strength", true), ("allowable", false)] {
        let mut job = job();
        job["wind"]["speed_m_s"] = Value::Null;
        job["wind"]["from"] = json!({ "kind": "asce7", "edition": "7-16", "level": level, "exposure": "C", "speed_m_s": 20, "height_m": 2 });
        match told {
            true => tells(&job, Code::WindAtStrengthLevel, Severity::Warning, &[]),
            false => silent(&job, Code::WindAtStrengthLevel),
        }
    }
    silent(&job(), Code::WindAtStrengthLevel);
}

/// Ground rising towards the open leaf by 2°: under its edge, 3.2 m out, by 3.2·tan 2°·sin θ.
#[test]
fn the_leaf_touches_the_ground() {
    let rise = 3.2 * 2.0_f64.to_radians().tan();
    let ground = |gap: f64| {
        let mut job = job();
        job["ground"] = json!({ "gap_m": gap, "slope_deg": 2, "uphill_deg": 90 });
        job
    };
    let values = [("gap", 0.5 * rise - rise), ("leaf_angle", 30.0)];
    tells(&ground(0.5 * rise), Code::GroundTouches, Severity::Warning, &values);
    silent(&ground(rise * MORE), Code::GroundTouches);
}

/// The pin, √(1.2² + 0.06²) m out, falls by r·sin λ·cos(θ + β) on an axis leaning towards closed, β the pin's own angle.
#[test]
fn the_bracket_rises_more_than_the_joints_allow() {
    let (radius, beta) = (1.2_f64.hypot(0.06), 0.06_f64.atan2(1.2));
    // From closed to open the cosine goes from cos β to −sin β.
    let rise = radius * 1.0_f64.to_radians().sin() * (beta.cos() + beta.sin());
    let allowed = |allowance: f64| {
        let mut job = job();
        job["lean"] = json!({ "angle_deg": 1, "downhill_deg": 0 });
        job["ground"] = json!({ "gap_m": 0.2, "joint_allowance_m": allowance });
        job
    };
    let values = [("rise", rise), ("limit", rise * LESS)];
    tells(&allowed(rise * LESS), Code::BracketRise, Severity::Warning, &values);
    silent(&allowed(rise * MORE), Code::BracketRise);
    let exactly = planned(&allowed(1.0)).ground.expect("the ground is said").bracket_rise_m;
    silent(&allowed(exactly), Code::BracketRise);
}
