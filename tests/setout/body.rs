//! The operator's body: it stands clear of post and leaf, and moves the search. Judged here by sampled corners and sides, not by the crate's own
//! separation.

use crate::{proof::corners, read};
use pintle_core::{
    job::{Arm, Job},
    plan::{Against, FindingCode, Model, MovingPart, plan, set_out},
};
use serde_json::{Value, json};

/// The yard with an operator 500 mm long and 240 mm wide about its shaft, a leaf 60 mm thick, and what stands around.
fn yard(body: Value, obstacles: Value) -> Value {
    let mut job = crate::document(crate::folder().join("sites").join("yard.json"));
    job["setout"]["step_m"] = Value::Null;
    job["operator"]["body"] = body;
    job["obstacles"] = obstacles;
    job
}

fn body() -> Value {
    json!({ "along_m": [-0.35, 0.15], "across_m": [-0.12, 0.12] })
}

/// Points all over the body as it stands, from the triangle of the closed arm.
fn points(arm: &Arm) -> Vec<(f64, f64)> {
    let (dx, dy) = (arm.bracket_u_m - arm.shaft_x_m, arm.bracket_v_m - arm.shaft_y_m);
    let reach = dx.hypot(dy);
    let turn =
        ((arm.crank_m.powi(2) + reach * reach - arm.link_m.powi(2)) / (2.0 * arm.crank_m * reach)).min(1.0).acos();
    let (sine, cosine) = (dy.atan2(dx) + arm.elbow.side() * turn).sin_cos();
    let grid = (0..=50).flat_map(|i| (0..=24).map(move |j| (-0.35 + 0.01 * f64::from(i), -0.12 + 0.01 * f64::from(j))));
    grid.map(|(u, v)| (arm.shaft_x_m + u * cosine - v * sine, arm.shaft_y_m + u * sine + v * cosine)).collect()
}

/// How deep the deepest of them is in a rectangle, m; less than nothing where all are outside.
fn depth(points: &[(f64, f64)], [x0, x1, y0, y1]: [f64; 4]) -> f64 {
    points.iter().map(|(x, y)| (x - x0).min(x1 - x).min(y - y0).min(y1 - y)).fold(f64::MIN, f64::max)
}

/// Deepest in the leaf (−60 mm to the axis line, 0 to its length) over the swing.
fn in_leaf(points: &[(f64, f64)], job: &Job) -> f64 {
    let turned = |degrees: f64| {
        let (sine, cosine) = degrees.to_radians().sin_cos();
        points.iter().map(|(x, y)| (x * cosine + y * sine, y * cosine - x * sine)).collect::<Vec<_>>()
    };
    let angles = (0..=180).map(|index| job.swing.open_deg * f64::from(index) / 180.0);
    angles.map(|angle| depth(&turned(angle), [0.0, job.leaf.length_m, -0.06, 0.0])).fold(f64::MIN, f64::max)
}

#[test]
fn a_body_against_a_post_moves_the_search() {
    let free = set_out(&read(&yard(Value::Null, json!([])))).expect("valid").best.expect("one").arm;
    // A post where the back of the body would be, out of the arm's way: it stops nothing but the pad.
    let at = points(&free)[12];
    let post = [at.0 - 0.06, at.0 + 0.06, at.1 - 0.06, at.1 + 0.06];
    let obstacles = json!([{ "kind": "post", "x_m": [post[0], post[1]], "y_m": [post[2], post[3]], "stops": ["pad"] }]);
    assert!(depth(&points(&free), post) > 0.0, "the post is in the body of the arm found without it");
    let without = set_out(&read(&yard(Value::Null, obstacles.clone()))).expect("valid").best.expect("one").arm;
    assert_eq!(without, free, "a shaft without a body stands beside it");
    let job = read(&yard(body(), obstacles));
    let found = set_out(&job).expect("valid").best.expect("one");
    assert_ne!(found.arm, free);
    let there = points(&found.arm);
    assert!(depth(&there, post) <= 1e-6, "{}", depth(&there, post));
    assert!(in_leaf(&there, &job) <= 1e-6, "{}", in_leaf(&there, &job));
    // Turned by the marks, the body is another one.
    let mut turned = yard(body(), json!([]));
    turned["marks"] = json!({ "anchor_turn_deg": 90 });
    let corner = |job: &Value| {
        let job = read(job);
        Model::new(&pintle_tests::changed!(job, arm: Some(free)))
            .expect("it works")
            .operator_corners_m()
            .expect("a body")[0]
    };
    let (straight, quarter) = (corner(&yard(body(), json!([]))), corner(&turned));
    let from = |(x, y): (f64, f64)| (x - free.shaft_x_m, y - free.shaft_y_m);
    let ((x, y), (u, v)) = (from(straight), from(quarter));
    assert!((u + y).abs() < 1e-12 && (v - x).abs() < 1e-12, "a quarter turn counter-clockwise");
    // The same arm, planned with the body: said to stand in the post.
    let job = pintle_tests::changed!(job, arm: Some(free));
    let planned = plan(&job).expect("it works");
    let finding =
        planned.findings.iter().find(|finding| finding.code == FindingCode::OperatorHits).expect("in the post");
    assert!(finding.values[0].value > 0.0);
    let gaps = planned.clearances.expect("looked at").gaps;
    let gap = gaps.iter().find(|gap| gap.part == MovingPart::Operator && gap.against == Against::Obstacle);
    assert!((gap.expect("a gap").least_m + finding.values[0].value).abs() < 1e-12);
}

/// A body so long that the leaf runs into it, wherever it is stood, is told as such.
#[test]
fn a_body_in_the_way_of_the_leaf_is_told() {
    let mut job = yard(json!({ "along_m": [0.0, 2.0], "across_m": [-0.3, 0.3] }), json!([]));
    job["arm"] = json!({ "shaft_x_m": -0.25, "shaft_y_m": 0.45, "bracket_u_m": 1.2, "bracket_v_m": 0.06, "crank_m": 0.8728,
        "link_m": 0.6363, "elbow": "left" });
    let planned = plan(&read(&job)).expect("it works");
    let codes: Vec<_> = planned.findings.iter().map(|finding| finding.code).collect();
    assert!(codes.contains(&FindingCode::OperatorHitsLeaf), "{codes:?}");
    job["site"] = json!({});
    let zones = plan(&read(&job)).expect("it works").entrapment.expect("a site").zones;
    assert_eq!(zones.iter().filter(|zone| zone.at_operator).count(), 1);
    assert_eq!(zones.iter().find(|zone| zone.at_operator).expect("one").gap_m, Some(0.0));
    job["operator"]["body"] = Value::Null;
    assert!(
        plan(&read(&job)).expect("it works").entrapment.expect("a site").zones.iter().all(|zone| !zone.at_operator)
    );
}

/// Where the tape errs the base goes with the closed arm, and the body with the base: clear of post and leaf at every corner, which it is not otherwise.
#[test]
fn a_body_is_clear_wherever_the_tape_puts_it() {
    let free = set_out(&read(&yard(Value::Null, json!([])))).expect("valid").best.expect("one").arm;
    let at = points(&free)[12];
    let post = [at.0 - 0.06, at.0 + 0.06, at.1 - 0.06, at.1 + 0.06];
    let obstacles = json!([{ "kind": "post", "x_m": [post[0], post[1]], "y_m": [post[2], post[3]], "stops": ["pad"] }]);
    let mut value = yard(body(), obstacles);
    value["tape"] = json!({ "error_m": 0.004 });
    let deepest = |job: &Job, arm: &Arm| {
        let at = |arm: Arm| depth(&points(&arm), post).max(in_leaf(&points(&arm), job));
        corners(arm, [0.004; 6]).map(at).fold(f64::MIN, f64::max)
    };
    let job = read(&value);
    let planned = set_out(&job).expect("valid").best.expect("one").arm;
    assert!(deepest(&job, &planned) > 1e-4, "the planned optimum has nothing to spare");
    value["setout"]["tape_proof"] = json!(true);
    let proven = set_out(&read(&value)).expect("valid").best.expect("one").arm;
    assert!(deepest(&job, &proven) <= 1e-6, "{}", deepest(&job, &proven));
}
