//! What stands around, in its one list. Distances are worked by hand.

use super::{answer, job, with};
use pintle_core::{
    Document,
    job::Job,
    plan::{Against, Clearances, FindingCode as Code, Judged, Model, MovingPart, Plan, Severity, Subject},
};
use serde_json::{Value, json};

fn rectangle(x: [f64; 2], y: [f64; 2]) -> Value {
    json!({ "x_m": x, "y_m": y })
}

/// The demonstration job, its leaf of 3.2 m the axis line, among what stands around.
fn among(obstacles: Value) -> Value {
    let mut job = with("/site", json!({}));
    pintle_tests::around(&mut job, json!({ "obstacles": obstacles }));
    job
}

fn planned(job: &Value) -> Plan {
    answer(job).unwrap_or_else(|invalid| panic!("{invalid}"))
}

fn told(plan: &Plan, code: Code) -> Option<(Severity, Vec<(&'static str, f64)>)> {
    let finding = plan.findings.iter().find(|finding| finding.code == code)?;
    Some((finding.severity, finding.values.iter().map(|value| (value.name, value.value)).collect()))
}

fn near(one: f64, other: f64, by: f64) {
    assert!((one - other).abs() < by, "{one} is not {other}");
}

/// A square of 200 mm about (1, 1): the leaf's line meets it from atan(0.9/1.1) to atan(1.1/0.9), and at 45° it would have to go
/// 0.1·√2 m to one side.
#[test]
fn a_wall_inside_the_swing_is_a_stop() {
    let plan = planned(&among(json!([rectangle([0.9, 1.1], [0.9, 1.1])])));
    let (severity, values) = told(&plan, Code::LeafHits).expect("the leaf runs into it");
    assert_eq!((severity, values[0].0, values[1].0), (Severity::Error, "overlap", "leaf_angle"));
    near(values[0].1, 0.1 * 2f64.sqrt(), 1e-9);
    near(values[1].1, 45.0, 1e-3);
    assert_eq!((plan.overall.state, plan.overall.about), (Judged::Over, Subject::Clearances));
    // The same square beyond the latch edge, √2·2.3 m from the hinge axis, is in nobody's way.
    let clear = planned(&among(json!([rectangle([2.4, 2.6], [2.4, 2.6])])));
    assert_eq!(told(&clear, Code::LeafHits), None);
    assert_eq!(clear.overall.about, Subject::Torque);
}

#[test]
fn what_is_left_behind_the_open_leaf_is_looked_at() {
    // Open, the leaf lies along the y-axis: a wall's face at x = −0.2 is 200 mm away.
    let plan = planned(&among(json!([rectangle([-1.0, -0.2], [0.5, 3.0])])));
    let (severity, values) = told(&plan, Code::OpenGapSmall).expect("too little room");
    assert_eq!((severity, values[0].0), (Severity::Warning, "gap"));
    near(values[0].1, 0.2, 1e-12);
    let open = &plan.clearances.as_ref().expect("something stands around").open;
    near(open[0].reach_m, 3.0, 1e-12);
}

/// A stone at the shaft: (−0.25, 0.45).
#[test]
fn the_arm_meets_what_stands_around() {
    let plan = planned(&among(json!([rectangle([-0.3, -0.2], [0.4, 0.5])])));
    assert_eq!(told(&plan, Code::ArmHits).expect("the crank is in it").0, Severity::Error);
}

/// An index is a place in the list, whatever else in it is left out of a question.
#[test]
fn an_index_is_a_place_in_the_list() {
    let [one, mut two, three] = [0.0, 1.0, 2.0].map(|x| rectangle([5.0 + x, 5.5 + x], [5.0, 6.0]));
    two["stops"] = json!(["pad", "arm"]);
    let mut post = rectangle([-0.4, -0.1], [-0.1, 0.1]);
    post["hinge_post"] = json!(true);
    let plan = planned(&among(json!([one, two, post, three])));
    let gaps = plan.clearances.expect("said").gaps;
    let met = |part: MovingPart| {
        let of = gaps.iter().filter(|gap| gap.against == Against::Obstacle && gap.part == part);
        let mut met: Vec<usize> = of.map(|gap| gap.index).collect();
        met.sort_unstable();
        met
    };
    assert_eq!((met(MovingPart::Leaf), met(MovingPart::Crank)), (vec![0, 3], vec![0, 1, 3]));
    let at_post = gaps.iter().filter(|gap| gap.against == Against::HingePost);
    assert_eq!(at_post.map(|gap| gap.index).collect::<Vec<_>>(), [2; 4]);
    let mut zones: Vec<u32> = plan.entrapment.expect("a site").zones.iter().filter_map(|zone| zone.obstacle).collect();
    zones.sort_unstable();
    assert_eq!(zones, [0, 3]);
}

/// A leaf and an arm whose sizes nobody said are held against it by the usual ones, and that is listed.
#[test]
fn the_sizes_that_are_not_said_are_assumed() {
    let sizes = ["leaf.face_m", "leaf.thickness_m", "leaf.heel_m", "arm_half_width_m"];
    let plan = planned(&with("/obstacles", json!([rectangle([5.0, 6.0], [5.0, 6.0])])));
    for path in sizes {
        assert!(plan.assumed.contains(&path), "{path} in {:?}", plan.assumed);
    }
    let nothing = planned(&with("/obstacles", json!([])));
    assert!(nothing.clearances.is_some(), "said to be none, so that arm and leaf are looked at");
    let silent = planned(&job());
    assert!(silent.clearances.is_none() && sizes.iter().all(|path| !silent.assumed.contains(path)));
}

/// Before the job says anything of what stands around a search looks all the same.
#[test]
fn a_search_has_its_clearances_without_obstacles() {
    let searched = |half_width_m: f64, obstacles: Value| {
        let mut job = with("/obstacles", obstacles);
        job["arm_half_width_m"] = json!(half_width_m);
        let document: Document = serde_json::from_value(job).expect("a document");
        Model::new(&Job::read(&document).expect("valid")).expect("an arm that works")
    };
    let crank = |clearances: Clearances| {
        let of_leaf = |gap: &&pintle_core::plan::Gap| gap.against == Against::Leaf && gap.part == MovingPart::Crank;
        clearances.gaps.iter().find(of_leaf).expect("the crank").least_m
    };
    let silent = searched(0.03, Value::Null);
    assert_eq!(silent.clearances(), None);
    assert_eq!(Some(silent.clearances_of_search()), searched(0.03, json!([])).clearances());
    let line = crank(searched(0.0, Value::Null).clearances_of_search());
    near(line - crank(silent.clearances_of_search()), 0.03, 1e-9);
}
