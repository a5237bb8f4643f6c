//! Arms that do not work, found again by looking at many leaf angles with compasses: two circles and their crossing.

use crate::plan::example;
use pintle_core::{
    arm::{DefectKind, Linkage},
    job::{Arm, Job},
    plan::Model,
};
use proptest::prelude::*;
use serde_json::json;

const STEPS: u32 = 1500;

/// Any arm, most of which do not work.
fn arm() -> impl Strategy<Value = Arm> {
    let place = (-1.0..1.0f64, -1.0..1.0f64, -0.3..1.5f64, -0.4..0.4f64);
    (place, 0.1..1.5f64, 0.1..1.5f64, any::<bool>()).prop_map(|((x, y, u, v), crank, link, left)| {
        let mut value = example();
        value["arm"] = json!({ "shaft_x_m": x, "shaft_y_m": y, "bracket_u_m": u, "bracket_v_m": v, "crank_m": crank,
            "link_m": link, "elbow": if left { "left" } else { "right" } });
        crate::jobs::job(&value).arm.expect("said")
    })
}

/// Bracket of a leaf angle, and what separates it from the shaft.
fn bracket(arm: &Arm, leaf: f64) -> ([f64; 2], f64) {
    let (sine, cosine) = leaf.sin_cos();
    let at = [arm.bracket_u_m * cosine - arm.bracket_v_m * sine, arm.bracket_u_m * sine + arm.bracket_v_m * cosine];
    (at, (at[0] - arm.shaft_x_m).hypot(at[1] - arm.shaft_y_m))
}

/// Moment about the hinge of a unit push along the link, m; the elbow where two circles cross.
fn lever(arm: &Arm, leaf: f64, left: bool) -> f64 {
    let ([x, y], apart) = bracket(arm, leaf);
    let along = [(x - arm.shaft_x_m) / apart, (y - arm.shaft_y_m) / apart];
    let foot = (arm.crank_m.powi(2) - arm.link_m.powi(2) + apart.powi(2)) / (2.0 * apart);
    let height = (arm.crank_m.powi(2) - foot.powi(2)).max(0.0).sqrt() * if left { 1.0 } else { -1.0 };
    let elbow =
        [arm.shaft_x_m + foot * along[0] - height * along[1], arm.shaft_y_m + foot * along[1] + height * along[0]];
    (x * (y - elbow[1]) - y * (x - elbow[0])) / arm.link_m
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn an_arm_that_does_not_work_is_told_and_no_other(arm in arm(), open in 0.3..3.1f64) {
        let left = serde_json::to_value(arm.elbow).unwrap() == "left";
        let defect = Linkage::new(&arm, open).defect();
        let angles = || (0..=STEPS).map(|step| open * f64::from(step) / f64::from(STEPS));
        let step = open / f64::from(STEPS);
        // Reach is at most a metre per radian times the shorter of two radii off between two looks; near an extreme far less.
        let reaches: Vec<f64> = angles().map(|leaf| bracket(&arm, leaf).1).collect();
        let (most, least) = (reaches.iter().copied().fold(0.0, f64::max), reaches.iter().copied().fold(f64::MAX, f64::min));
        let (short, long) = (most - arm.crank_m - arm.link_m, (arm.crank_m - arm.link_m).abs() - least);
        prop_assume!(short.abs() > 2.0 * step && long.abs() > 2.0 * step);
        if short > 0.0 || long > 0.0 {
            let defect = defect.expect("does not close");
            let (kind, gap) = if short > long { (DefectKind::TooShort, short) } else { (DefectKind::TooLong, long) };
            prop_assume!((short - long).abs() > 2.0 * step);
            prop_assert_eq!(defect.kind, kind);
            prop_assert!((defect.gap_m - gap).abs() <= 2.0 * step, "{} {gap}", defect.gap_m);
            let there = bracket(&arm, defect.leaf_rad).1;
            let extreme = if kind == DefectKind::TooShort { most } else { least };
            prop_assert!((there - extreme).abs() <= 2.0 * step);
            return Ok(());
        }
        let levers: Vec<f64> = angles().map(|leaf| lever(&arm, leaf, left)).collect();
        let turn = levers.windows(2).position(|pair| (pair[0] > 0.0) != (pair[1] > 0.0));
        match turn {
            Some(place) => {
                let defect = defect.expect("turns back");
                prop_assert_eq!(defect.kind, DefectKind::TurnsBack);
                let leaf = step * place as f64;
                prop_assert!(defect.leaf_rad >= leaf - 1e-6 && defect.leaf_rad <= leaf + step + 1e-6, "{} {leaf}", defect.leaf_rad);
                prop_assert_eq!(defect.gap_m, 0.0);
            }
            // A lever that only just does not change its sign may do so between two looks.
            None if levers.iter().any(|lever| lever.abs() < 4.0 * step) => {}
            None => prop_assert!(defect.is_none(), "{defect:?}"),
        }
    }

    /// What is told to be the least or the most a length may be is just that.
    #[test]
    fn the_length_that_is_told_would_do(arm in arm(), open in 0.3..2.2f64) {
        let mut value = example();
        value["swing"]["open_deg"] = json!(open.to_degrees());
        value["arm"] = serde_json::to_value(arm).unwrap();
        let Err(invalid) = Model::new(&crate::jobs::job(&value)) else { return Ok(()) };
        let told = serde_json::to_value(&invalid.errors[0]).unwrap();
        let code = told["code"].as_str().unwrap().to_owned();
        prop_assume!(code == "arm_too_short" || code == "arm_too_long");
        let range = told["allowed"].clone();
        let length = range["least"].as_f64().or(range["most"].as_f64()).expect("a bound");
        prop_assert_eq!(told["example"].as_f64(), Some(length));
        let gap = told["values"].as_array().unwrap().iter().find(|value| value["name"] == "gap").unwrap()["value"].as_f64();
        let name = told["path"].as_str().unwrap().trim_start_matches("arm.").to_owned();
        let found = value["arm"][&name].as_f64().unwrap();
        prop_assert!(((length - found).abs() - gap.unwrap()).abs() < 1e-12);
        prop_assert_eq!(code == "arm_too_short", length > found);
        // Too short: the link, too long: the longer of the two.
        let longer = if arm.crank_m > arm.link_m { "crank_m" } else { "link_m" };
        prop_assert_eq!(name.as_str(), if code == "arm_too_short" { "link_m" } else { longer });
        prop_assume!(length > 0.0);
        value["arm"][&name] = json!(length + if code == "arm_too_short" { 1e-6 } else { -1e-6 });
        let Ok(job) = Job::read(&crate::jobs::document(&value)) else { return Ok(()) };
        if let Err(invalid) = Model::new(&job) {
            let told = serde_json::to_value(&invalid.errors[0]).unwrap();
            prop_assert!(told["code"] != code, "{told}");
        }
    }
}

/// Straight in line with the hinge inside the swing: shaft half a metre behind the hinge, bracket a metre before it, 1.5 m of arm;
/// and folded, with the shaft before the hinge.
#[test]
fn a_dead_point_in_line_with_the_hinge_is_found() {
    for (shaft, [crank, link], leaf_deg) in [
        // Opposite to the bracket when the leaf stands at 40°.
        ([-0.5 * 40f64.to_radians().cos(), -0.5 * 40f64.to_radians().sin()], [0.9, 0.6], 40.0),
        // On the bracket's own side: 0.3 m of reach with the crank folded over a link of 0.3 m less.
        ([0.7 * 55f64.to_radians().cos(), 0.7 * 55f64.to_radians().sin()], [0.9, 0.6], 55.0),
    ] {
        let mut value = example();
        value["arm"] = json!({ "shaft_x_m": shaft[0], "shaft_y_m": shaft[1], "bracket_u_m": 1.0, "bracket_v_m": 0.0,
            "crank_m": crank, "link_m": link, "elbow": "left" });
        let job = crate::jobs::job(&value);
        let defect = Linkage::new(job.arm.as_ref().unwrap(), 90f64.to_radians()).defect().expect("a dead point");
        assert_eq!(defect.kind, DefectKind::DeadPointInside);
        assert!((defect.leaf_rad.to_degrees() - leaf_deg).abs() < 1e-6, "{}", defect.leaf_rad.to_degrees());
        assert_eq!(defect.gap_m, 0.0);
    }
}
