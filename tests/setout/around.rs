//! The search among what stands around: a wall is kept out of wherever it is said, and the arm that is found meets nothing.

use crate::{block, check, read, site};
use pintle_core::{
    job::{Job, KeepOut, Room, Site},
    plan::{Against, FindingCode, PadMap, plan, set_out},
};
use serde_json::json;

/// A pillar where the yard's best arm would stand.
fn pillar() -> KeepOut {
    KeepOut::builder().x_m([-0.62, -0.22]).y_m([0.55, 0.75]).build()
}

fn with_room(job: &Job, room: Room) -> Job {
    pintle_tests::changed!(job.clone(), room: Some(room))
}

fn with_site(job: &Job, obstacles: Vec<KeepOut>) -> Job {
    let empty: Site = read(&json_site()).site.expect("said");
    pintle_tests::changed!(job.clone(), site: Some(pintle_tests::changed!(empty, obstacles: Some(obstacles))))
}

fn json_site() -> serde_json::Value {
    let mut job = crate::document(crate::folder().join("sites").join("yard.json"));
    job["site"] = json!({});
    job
}

#[test]
fn a_pillar_is_kept_out_of_wherever_it_is_said() {
    let yard = site("yard.json");
    let free = set_out(&yard).expect("valid").best.expect("one");
    let mut setout = block(&yard).clone();
    setout.keep_out.push(pillar());
    let kept = pintle_tests::changed!(yard.clone(), setout: Some(setout.clone()));
    let expected = set_out(&kept).expect("valid").best.expect("one");
    assert_ne!(expected.arm, free.arm, "the pillar is in nobody's way");
    let obstacles = Some(vec![pillar()]);
    let of_room = with_room(&yard, pintle_tests::changed!(Room::default(), obstacles: obstacles.clone()));
    let post = with_room(&yard, pintle_tests::changed!(Room::default(), hinge_post: Some(pillar())));
    for job in [with_site(&yard, vec![pillar()]), of_room, post, with_site(&kept, vec![pillar()])] {
        let found = set_out(&job).expect("valid").best.expect("one");
        assert_eq!(found, expected);
        // Judged by dense sampling, and by the plan of the arm where it stands.
        assert!(check::exceeded(&kept, &setout, &found.arm, crate::ROUNDING).is_empty());
        let planned = plan(&pintle_tests::changed!(job.clone(), arm: Some(found.arm))).expect("it works");
        assert!(planned.findings.iter().all(|finding| finding.code != FindingCode::ArmHits));
        let gaps = planned.clearances.expect("something stands around").gaps;
        let least =
            gaps.iter().filter(|gap| gap.against != Against::Leaf && gap.part != pintle_core::plan::MovingPart::Leaf);
        assert!(least.map(|gap| gap.least_m).fold(f64::MAX, f64::min) >= -1e-6);
    }
    // The map rules out the same places.
    let mut maps = [kept, with_site(&yard, vec![pillar()])].map(|job| PadMap::new(&job, 9, 9).expect("valid"));
    for map in &mut maps {
        while map.step(512) {}
    }
    let [one, other] = maps.map(|map| (0..81).map(|at| map.pad(at % 9, at / 9)).collect::<Vec<_>>());
    assert_eq!(one, other);
}

/// An arm has one width: the search keeps the wider of two off the wall.
#[test]
fn the_wider_of_two_widths_counts() {
    let yard = with_site(&site("yard.json"), vec![pillar()]);
    let wide = with_room(&yard, pintle_tests::changed!(Room::default(), arm_half_width_m: Some(0.04)));
    let mut setout = block(&yard).clone();
    setout.arm_half_width_m = Some(0.04);
    let same = pintle_tests::changed!(yard.clone(), setout: Some(setout));
    let [one, other] = [wide, same].map(|job| set_out(&job).expect("valid").best.expect("one"));
    assert_eq!(one, other);
    assert!(one.clearance_m.expect("something stands around") >= -1e-6);
}
