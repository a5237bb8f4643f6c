//! The search among what stands around: a wall is kept out of whatever it is called, and the arm that is found meets nothing.

use crate::{check, read, site};
use pintle_core::{
    job::Job,
    plan::{Against, FindingCode, MovingPart, PadMap, plan, set_out},
};
use serde_json::{Value, json};

/// The yard with a pillar where its best arm would stand.
fn with_pillar(more: Value) -> Job {
    let mut job = crate::document(crate::folder().join("sites").join("yard.json"));
    let mut pillar = json!({ "x_m": [-0.62, -0.22], "y_m": [0.55, 0.75] });
    pillar.as_object_mut().expect("a rectangle").extend(more.as_object().expect("fields").clone());
    job["obstacles"].as_array_mut().expect("the yard's own").push(pillar);
    read(&job)
}

#[test]
fn a_pillar_is_kept_out_of_whatever_it_is() {
    let free = set_out(&site("yard.json")).expect("valid").best.expect("one");
    let kept = with_pillar(json!({ "stops": ["arm"] }));
    let expected = set_out(&kept).expect("valid").best.expect("one");
    assert_ne!(expected.arm, free.arm, "the pillar is in nobody's way");
    for more in [
        json!({}),
        json!({ "kind": "wall" }),
        json!({ "kind": "post", "hinge_post": true, "height_m": 2 }),
        json!({ "stops": ["pad", "arm"] }),
    ] {
        let job = with_pillar(more);
        let found = set_out(&job).expect("valid").best.expect("one");
        assert_eq!(found, expected);
        // Judged by dense sampling, and by the plan of the arm where it stands.
        assert!(check::exceeded(&kept, crate::block(&kept), &found.arm, crate::ROUNDING).is_empty());
        let planned = plan(&pintle_tests::changed!(job.clone(), arm: Some(found.arm))).expect("it works");
        assert!(planned.findings.iter().all(|finding| finding.code != FindingCode::ArmHits));
        let gaps = planned.clearances.expect("something stands around").gaps;
        let least = gaps.iter().filter(|gap| gap.against != Against::Leaf && gap.part != MovingPart::Leaf);
        assert!(least.map(|gap| gap.least_m).fold(f64::MAX, f64::min) >= -1e-6);
    }
    // What the arm passes over is in nobody's way, as long as the shaft stands beside it; what stops the leaf alone is not, either.
    for stops in [json!(["leaf"]), json!([])] {
        assert_eq!(set_out(&with_pillar(json!({ "stops": stops }))).expect("valid").best.expect("one").arm, free.arm);
    }
    // The map rules out the same places.
    let mut maps = [kept, with_pillar(json!({}))].map(|job| PadMap::new(&job, 9, 9).expect("valid"));
    for map in &mut maps {
        while map.step(512) {}
    }
    let [one, other] = maps.map(|map| (0..81).map(|at| map.pad(at % 9, at / 9)).collect::<Vec<_>>());
    assert_eq!(one, other);
}

/// A low bed that the arm passes over: nothing stands in it, and nothing else is asked of the arm.
#[test]
fn no_shaft_stands_where_a_pad_cannot() {
    let job = with_pillar(json!({ "kind": "kerb", "stops": ["pad"] }));
    let best = set_out(&job).expect("valid").best.expect("one");
    let [x, y] = [best.arm.shaft_x_m, best.arm.shaft_y_m];
    let inside = (-0.62..=-0.22).contains(&x) && (0.55..=0.75).contains(&y);
    assert!(!inside, "({x}, {y})");
    let arm_too = set_out(&with_pillar(json!({}))).expect("valid").best.expect("one");
    assert!(best.shaft_torque_n_m <= arm_too.shaft_torque_n_m * (1.0 + 1e-9), "the arm may pass");
}
