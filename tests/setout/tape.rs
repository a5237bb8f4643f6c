//! What a tape error costs: derivatives against closed forms, errors against plans of the moved arm, as-built arms re-planned.

use crate::{marks, read};
use pintle_core::{
    job::Job,
    plan::{FindingCode, TapeCost, plan, tape_cost},
};
use serde_json::{Value, json};

const FIELDS: [&str; 6] = ["shaft_x_m", "shaft_y_m", "bracket_u_m", "bracket_v_m", "crank_m", "link_m"];

/// The arm of the marks with the crank 20 mm longer, so that it is bent when closed and an error does not break it.
fn bent() -> Value {
    let mut job = marks::job();
    job["arm"]["crank_m"] = json!(0.77);
    job["tape"] = json!({});
    job
}

fn moved(value: &Value, by: [f64; 6]) -> Job {
    let mut value = value.clone();
    for (field, by) in FIELDS.into_iter().zip(by) {
        value["arm"][field] = json!(value["arm"][field].as_f64().expect("a number") + by);
    }
    read(&value)
}

fn cost(value: &Value) -> TapeCost {
    tape_cost(&read(value)).expect("the arm works")
}

#[test]
fn the_default_is_five_millimetres_and_said() {
    let planned = plan(&read(&bent())).expect("valid");
    assert!(planned.assumed.contains(&"tape.error_m"));
    assert_eq!(planned.tape.as_ref().expect("asked for").error_m, 0.005);
    assert_eq!(planned.tape, Some(cost(&bent())));
}

#[test]
fn slopes_are_those_of_the_triangle() {
    let value = bent();
    let cost = cost(&value);
    // Reach 1.25 m along (24, −7)/25; straightness 1.25/1.27; bend from the law of cosines, cos β = (d² − a² − b²)/2ab.
    let (a, b, d) = (0.77_f64, 0.5_f64, 1.25_f64);
    let cosine = (d * d - a * a - b * b) / (2.0 * a * b);
    let bend = cosine.acos();
    assert!((cost.planned.straightness - d / (a + b)).abs() < 1e-12);
    assert!((cost.planned.bend_deg - bend.to_degrees()).abs() < 1e-9);
    let by_reach = -d / (a * b) / bend.sin();
    let by_crank = -((2.0 * a * a + d * d - a * a - b * b) / (-2.0 * a * a * b)) / bend.sin();
    for (path, straightness, bend) in [
        ("arm.shaft_x_m", -0.96 / (a + b), -0.96 * by_reach),
        ("arm.shaft_y_m", 0.28 / (a + b), 0.28 * by_reach),
        ("arm.bracket_u_m", 0.96 / (a + b), 0.96 * by_reach),
        ("arm.crank_m", -d / (a + b).powi(2), by_crank),
    ] {
        let slope = cost.dimensions.iter().find(|dimension| dimension.path == path).and_then(|row| row.per_m);
        let slope = slope.expect("a bent arm has slopes");
        assert!((slope.straightness - straightness).abs() < 1e-6, "{path} {} {straightness}", slope.straightness);
        assert!((slope.bend_deg - bend.to_degrees()).abs() < 1e-3, "{path} {} {}", slope.bend_deg, bend.to_degrees());
    }
}

#[test]
fn each_error_is_the_plan_of_the_moved_arm() {
    let value = bent();
    let cost = cost(&value);
    for (index, field) in FIELDS.into_iter().enumerate() {
        let row = cost.dimensions.iter().find(|row| row.path == format!("arm.{field}")).expect("every dimension");
        for (by, fitted) in [(-0.005, row.short), (0.005, row.long)] {
            let planned = plan(&moved(&value, std::array::from_fn(|i| if i == index { by } else { 0.0 })));
            let planned = planned.expect("the moved arm works");
            let fitted = fitted.expect("so does it here");
            assert_eq!(fitted.reserve, planned.rating.reserve, "{field}");
            assert!(((fitted.open_deg - fitted.closed_deg).abs() - planned.shaft_travel_deg).abs() < 1e-9);
        }
        // A slope is what a small error does.
        let by = 1e-4;
        let [short, long] = [-by, by].map(|by| {
            plan(&moved(&value, std::array::from_fn(|i| if i == index { by } else { 0.0 })))
                .expect("works")
                .rating
                .reserve
        });
        let slope = (long.expect("some") - short.expect("some")) / (2.0 * by);
        let told = row.per_m.and_then(|per_m| per_m.reserve).expect("a slope");
        assert!((told - slope).abs() < 0.02 * slope.abs().max(0.1), "{field}: {told} {slope}");
    }
}

#[test]
fn the_worst_is_the_worst_corner() {
    let value = bent();
    let cost = cost(&value);
    let corners = (0..64).map(|corner| std::array::from_fn(|i| if corner >> i & 1 == 1 { 0.005 } else { -0.005 }));
    let reserves: Vec<f64> =
        corners.filter_map(|by| plan(&moved(&value, by)).ok()).filter_map(|plan| plan.rating.reserve).collect();
    assert_eq!(cost.worst.broken as usize, 64 - reserves.len());
    assert_eq!(cost.worst.reserve, reserves.iter().copied().reduce(f64::min));
    let worst_alone = cost.dimensions.iter().flat_map(|row| [row.short, row.long]).flatten();
    assert!(
        worst_alone.filter_map(|fitted| fitted.reserve).all(|reserve| reserve >= cost.worst.reserve.expect("some"))
    );
    assert_eq!(cost.measure_twice, cost.dimensions[0].path);
}

#[test]
fn a_straight_arm_breaks_and_says_so() {
    let mut value = marks::job();
    value["tape"] = json!({ "error_m": 0.003 });
    let cost = cost(&value);
    // 1.25 m by lengths of 1.25 m: 3 mm short of either does not close, and neither does a longer reach.
    let crank = cost.dimensions.iter().find(|row| row.path == "arm.crank_m").expect("every dimension");
    assert!(crank.short.is_none() && crank.per_m.is_none());
    assert!(crank.long.is_some());
    // The reach grows by (24·(u − x) − 7·(v − y))/25, the lengths by a + b: of the 64 choices of sign it outgrows them in 28.
    assert_eq!(cost.worst.broken, 28);
    assert!(cost.dimensions[0].short.is_none() || cost.dimensions[0].long.is_none());
}

#[test]
fn what_was_built_is_planned_where_it_stands() {
    let mut value = bent();
    value["as_built"] = json!({ "shaft_x_m": -0.29, "bracket_u_m": 0.902 });
    let planned = plan(&read(&value)).expect("valid");
    let built = planned.as_built.expect("asked for");
    let again = plan(&moved(&value, [0.01, 0.0, 0.002, 0.0, 0.0, 0.0])).expect("works");
    assert_eq!(built.shaft_torque_n_m, Some(again.peak.shaft_torque_n_m));
    assert!((built.shaft_travel_deg.expect("works").abs() - again.shaft_travel_deg).abs() < 1e-9);
    assert_eq!((built.arm.shaft_x_m, built.arm.shaft_y_m), (-0.29, 0.43));
    // The link that gives the bend back: reach √(1.192² + 0.35²) over the planned straightness, less the crank.
    let link = 1.192_f64.hypot(0.35) / (1.25 / 1.27) - 0.77;
    assert!((built.link_for_straightness_m.expect("one exists") - link).abs() < 1e-12);
    value["as_built"] = json!({ "link_m": 0.4 });
    let planned = plan(&read(&value)).expect("the plan's own arm works");
    assert!(planned.findings.iter().any(|finding| finding.code == FindingCode::BuiltBroken));
    let built = planned.as_built.expect("asked for");
    assert!(built.fitted.is_none() && built.fault.is_some());
}
