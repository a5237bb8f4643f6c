//! A part that is begun is not counted and says what it needs; the rest is planned as if it were not there.

use crate::{job, with};
use pintle_core::{
    Document,
    fault::{FaultCode, LeftOut},
    job::{CheckedJob, Job},
    plan::{plan, plan_partial},
};
use serde_json::{Value, json};

fn document(value: &Value) -> Document {
    serde_json::from_value(value.clone()).expect("JSON is a document")
}

/// What was left out: path of the part, then path and code of each thing it needs.
fn told(left_out: &[LeftOut]) -> Vec<(&str, Vec<(&str, FaultCode)>)> {
    left_out
        .iter()
        .map(|part| {
            let needs = part.faults.iter().map(|fault| (fault.path.as_str(), fault.code));
            (part.path.as_str(), needs.collect())
        })
        .collect()
}

/// The plan without some parts equals that of the job in which they were never begun.
fn leaves(begun: &Value, rest: &Value, wanted: &[(&str, &[(&str, FaultCode)])]) {
    let partial = plan_partial(&document(begun)).expect("the rest stands");
    let told = told(&partial.left_out);
    let wanted: Vec<_> = wanted.iter().map(|(path, needs)| (*path, needs.to_vec())).collect();
    assert_eq!(told, wanted);
    let mut planned = plan(&Job::read(&document(rest)).expect("valid")).expect("it works");
    // What was begun is not judged: see the judgements.
    planned.judge(&partial.left_out);
    assert!(partial.plan == planned, "the rest is planned otherwise");
}

#[test]
fn a_whole_job_leaves_nothing_out() {
    leaves(&job(), &job(), &[]);
}

#[test]
fn a_block_begun_is_left_out_and_says_what_it_needs() {
    use FaultCode::Missing;
    leaves(
        &with("/storm", json!({})),
        &job(),
        &[("storm", &[("storm.speed_m_s", Missing), ("storm.force_coefficient", Missing)])],
    );
    // A word that is none, a number out of range, a key that nobody knows.
    leaves(
        &with("/drag", json!({ "latch_deg": -3 })),
        &job(),
        &[("drag", &[("drag.latch_deg", FaultCode::OutOfRange)])],
    );
    leaves(&with("/tape", json!({ "colour": 1 })), &job(), &[("tape", &[("tape.colour", FaultCode::UnknownField)])]);
}

/// Only the innermost part goes: the movement stays while its motor is begun.
#[test]
fn the_innermost_part_is_left_out() {
    let moving = |motor: Value| {
        let mut job = with("/motion", json!({ "ramp_up_s": 2 }));
        job["motion"]["motor"] = motor;
        job
    };
    leaves(
        &moving(json!({ "stall_torque_n_m": 900 })),
        &moving(Value::Null),
        &[(
            "motion.motor",
            &[("motion.motor.no_load_speed_deg_s", FaultCode::Missing), ("motion.motor.rated_v", FaultCode::Missing)],
        )],
    );
}

/// Items of a list keep the places that the document gives them, whichever of them are left out.
#[test]
fn an_item_of_a_list_is_left_out_under_its_own_place() {
    let wall = |y: f64| json!({ "x_m": [-0.3, 0.2], "y_m": [y, y + 0.2] });
    let begun = json!({ "x_m": [-0.3, 0.2] });
    let site = |obstacles: Value| with("/obstacles", obstacles);
    let needs = |place: usize| -> (String, String) { (format!("obstacles.{place}"), format!("obstacles.{place}.y_m")) };
    let ((first, first_needs), (third, third_needs)) = (needs(0), needs(2));
    leaves(
        &site(json!([begun, wall(3.4), begun, wall(4.0)])),
        &site(json!([wall(3.4), wall(4.0)])),
        &[(&first, &[(&first_needs, FaultCode::Missing)]), (&third, &[(&third_needs, FaultCode::Missing)])],
    );
    // A relation is told only once all can be read: its place counts what was left out before.
    let turned = json!({ "x_m": [0.2, -0.3], "y_m": [3.4, 3.6] });
    let (second, second_needs) = ("obstacles.1", "obstacles.1.x_m.1");
    let partial = plan_partial(&document(&site(json!([begun, turned, wall(4.0)])))).expect("the rest stands");
    let told = told(&partial.left_out);
    assert_eq!(told[0].0, first);
    assert_eq!((told[1].0, told[1].1[0].0), (second, second_needs));
}

/// What needs a part that is begun goes with it: nothing holds a leaf in a storm that nobody knows.
#[test]
fn what_asks_for_a_part_that_is_begun_goes_with_it() {
    let mut held = with("/storm", json!({ "speed_m_s": 30 }));
    held["holding"] = json!({ "shaft_torque_n_m": 300 });
    let partial = plan_partial(&document(&held)).expect("the rest stands");
    let parts: Vec<&str> = partial.left_out.iter().map(|part| part.path.as_str()).collect();
    assert_eq!(parts, ["storm", "holding"]);
    // A movement needs a speed that the operator does not say.
    let mut moving = with("/operator/shaft_speed_deg_s", Value::Null);
    moving["motion"] = json!({});
    let partial = plan_partial(&document(&moving)).expect("the rest stands");
    assert_eq!(told(&partial.left_out), [("motion", vec![("operator.shaft_speed_deg_s", FaultCode::Missing)])]);
}

/// Leaf, hinges, wind, swing, arm and operator are the gate itself; whatever is wrong there is told as before, all of it.
#[test]
fn what_a_plan_needs_is_never_left_out() {
    for (pointer, value) in [
        ("/leaf/mass_kg", json!(-1)),
        ("/hinges/friction_coefficient", json!("much")),
        ("/wind/from", json!({ "kind": "beaufort" })),
        ("/leaf/members", json!([{ "section": "tube" }])),
        ("/arm/crank_m", Value::Null),
        ("/arm", Value::Null),
        ("/colour", json!("red")),
        ("/schema", json!(99)),
    ] {
        let mut begun = with(pointer, value);
        begun["drag"] = json!({ "latch_deg": -3 });
        let refused = plan_partial(&document(&begun)).expect_err(pointer);
        let whole = CheckedJob::read(&document(&begun)).expect_err(pointer);
        assert_eq!(refused, whole, "{pointer}");
    }
    // Two bars that do not reach are no part of the job either.
    let short = with("/arm/crank_m", json!(0.02));
    assert_eq!(plan_partial(&document(&short)).map(|_| ()), plan(&Job::read(&document(&short)).unwrap()).map(|_| ()));
}
