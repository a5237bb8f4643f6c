//! The figures of an arm and the order of its dimensions, recomputed from the triangle and from what each error does.

use crate::{marks, read};
use pintle_core::plan::{DimensionCost, Fitted, TapeCost, plan, tape_cost};
use serde_json::{Value, json};

fn bent(error: f64) -> Value {
    let mut job = marks::job();
    job["arm"]["crank_m"] = json!(0.77);
    job["tape"] = json!({ "error_m": error });
    job
}

fn cost(value: &Value) -> TapeCost {
    tape_cost(&read(value)).expect("the arm works")
}

fn close(one: f64, other: f64) {
    assert!((one - other).abs() < 1e-9, "{one} is not {other}");
}

/// Shaft (−0.3, 0.43); closed the pin is at (0.9, 0.08), open at (−0.08, 0.9); crank 0.77 m, link 0.5 m, elbow to the left of the line.
#[test]
fn figures_are_those_of_the_triangle() {
    let planned = cost(&bent(0.002)).planned;
    let (a, b) = (0.77_f64, 0.5_f64);
    let crank = |dx: f64, dy: f64| {
        let d = dx.hypot(dy);
        dy.atan2(dx) + ((a * a + d * d - b * b) / (2.0 * a * d)).acos()
    };
    let (closed, open) = (crank(1.2, -0.35), crank(0.22, 0.47));
    close(planned.closed_deg, closed.to_degrees());
    close(planned.open_deg, open.to_degrees());
    // The open leaf points along +y: the link leans by the arc sine of its share that way.
    let elbow = 0.43 + a * open.sin();
    close(planned.off_square_deg, ((0.9 - elbow) / b).asin().to_degrees());
    assert!(planned.off_square_deg.abs() > 1.0 && planned.off_square_deg.abs() < 89.0);
    let planned_n_m = plan(&read(&bent(0.002))).expect("valid").peak.shaft_torque_n_m;
    close(planned.reserve.expect("a demand"), read(&bent(0.002)).operator.rated_torque_n_m / planned_n_m);
}

/// First how many ends of its error break the arm, then how much of the reserve it changes; without a demand, how far it moves the limits.
fn ordered(cost: &TapeCost) {
    let key = |row: &DimensionCost| {
        let ends = [row.short, row.long];
        let broken = ends.iter().filter(|end| end.is_none()).count();
        let change = |fitted: &Fitted| match (fitted.reserve, cost.planned.reserve) {
            (Some(reserve), Some(planned)) => (reserve / planned - 1.0).abs(),
            _ => (fitted.closed_deg - cost.planned.closed_deg).abs() + (fitted.open_deg - cost.planned.open_deg).abs(),
        };
        (broken, ends.iter().flatten().map(change).fold(0.0, f64::max))
    };
    let keys: Vec<(usize, f64)> = cost.dimensions.iter().map(key).collect();
    for pair in keys.windows(2) {
        assert!(pair[0].0 > pair[1].0 || pair[0].0 == pair[1].0 && pair[0].1 >= pair[1].1 - 1e-12, "{keys:?}");
    }
    assert!(keys[0].1 > keys[5].1 || keys[0].0 > keys[5].0, "{keys:?}");
    assert_eq!(cost.measure_twice, cost.dimensions[0].path);
    let mut paths: Vec<&str> = cost.dimensions.iter().map(|row| row.path).collect();
    paths.sort_unstable();
    let all = ["arm.bracket_u_m", "arm.bracket_v_m", "arm.crank_m", "arm.link_m", "arm.shaft_x_m", "arm.shaft_y_m"];
    assert_eq!(paths, all);
}

#[test]
fn dimensions_are_in_the_order_of_what_they_cost() {
    for error in [0.001, 0.005, 0.012, 0.03] {
        ordered(&cost(&bent(error)));
    }
    let mut straight = marks::job();
    straight["tape"] = json!({});
    ordered(&cost(&straight));
    // No wind, no friction: nothing is demanded and there is no reserve.
    let mut idle = bent(0.004);
    idle["wind"]["speed_m_s"] = json!(0);
    idle["hinges"] =
        json!({ "kind": "measured", "pull_open_n": 0, "pull_close_n": 0, "pull_radius_m": 1, "pull_leaf_deg": 0 });
    idle["lean"] = Value::Null;
    for (crank, error) in
        [(0.77, 0.004), (0.75, 0.002), (0.75, 0.012), (0.76, 0.02), (0.76, 0.03), (0.8, 0.05), (0.78, 0.06)]
    {
        idle["arm"]["crank_m"] = json!(crank);
        idle["tape"]["error_m"] = json!(error);
        let cost = cost(&idle);
        assert_eq!((cost.planned.reserve, cost.worst.reserve), (None, None));
        ordered(&cost);
    }
}

/// A crank that points straight back along the axis line, at half a turn, is on either side of that for either sign of an error, and no turn away:
/// elbow at (0.4, 0.5), 0.6 m from the shaft at (1.0, 0.5), the pin at (0.9, 0.08).
#[test]
fn directions_stay_beside_the_planned_one() {
    let mut value = marks::job();
    value["arm"] = json!({ "shaft_x_m": 1.0, "shaft_y_m": 0.5, "bracket_u_m": 0.9, "bracket_v_m": 0.08, "crank_m": 0.6,
        "link_m": 0.5_f64.hypot(0.42), "elbow": "right" });
    value["swing"]["open_deg"] = json!(20);
    value["tape"] = json!({ "error_m": 0.003 });
    let cost = cost(&value);
    let planned = cost.planned;
    assert!(180.0 - planned.closed_deg.abs() < 1e-6, "{}", planned.closed_deg);
    let mut sides = [0, 0];
    for row in &cost.dimensions {
        for fitted in [row.short, row.long].into_iter().flatten() {
            let (closed, open) = (fitted.closed_deg - planned.closed_deg, fitted.open_deg - planned.open_deg);
            assert!(closed.abs() < 5.0 && open.abs() < 5.0, "{closed} {open}");
            sides[usize::from(closed > 0.0)] += 1;
        }
        let slope = row.per_m.expect("it works on either side");
        assert!(slope.closed_deg.abs() < 1e3 && slope.open_deg.abs() < 1e3, "{slope:?}");
    }
    assert!(sides[0] > 3 && sides[1] > 3, "{sides:?}");
    for ([least, most], planned) in
        [(cost.worst.closed_deg, planned.closed_deg), (cost.worst.open_deg, planned.open_deg)]
    {
        assert!(least < planned && planned < most && most - least < 10.0, "{least} {planned} {most}");
    }
    // What was built is beside the plan, too.
    for built in [0.59, 0.61] {
        value["as_built"] = json!({ "crank_m": built });
        let fitted = plan(&read(&value)).expect("valid").as_built.and_then(|built| built.fitted).expect("it works");
        assert!((fitted.closed_deg - planned.closed_deg).abs() < 10.0, "{}", fitted.closed_deg);
    }
}

/// The link that gives the planned straightness back is reach over straightness less the crank; where that is nothing there is none.
#[test]
fn no_link_for_a_crank_that_is_too_long() {
    let mut value = bent(0.002);
    for (crank, link) in
        [(0.8, Some(1.27 - 0.8)), (1.0, Some(1.27 - 1.0)), (1.26, Some(0.01)), (1.28, None), (3.0, None)]
    {
        value["as_built"] = json!({ "crank_m": crank });
        let built = plan(&read(&value)).expect("the plan's own arm works").as_built.expect("asked for");
        match link {
            // Reach and straightness are the planned ones: the lengths together stay 1.27 m.
            Some(link) => close(built.link_for_straightness_m.expect("there is one"), link),
            None => assert_eq!(built.link_for_straightness_m, None),
        }
    }
}
