//! Marking out against numbers worked by hand, from right triangles of whole numbers.

use crate::{document, folder, read};
use pintle_core::{
    job::Job,
    plan::{mark_out, plan},
};
use serde_json::{Value, json};

/// Shaft 0.3 m behind the hinge line and 0.4 m from the leaf's face (3-4-5), 0.43 m from the axis line; from there to the bracket 1.2 m along and 0.35 m across, 1.25 m in all
/// (7-24-25), which a crank of 0.75 m and a link of 0.5 m span straight.
pub fn job() -> Value {
    let mut job = document(folder().join("sites").join("yard.json"));
    (job["setout"], job["obstacles"]) = (Value::Null, Value::Null);
    job["leaf"]["length_m"] = json!(3.0);
    job["arm"] = json!({ "shaft_x_m": -0.3, "shaft_y_m": 0.43, "bracket_u_m": 0.9, "bracket_v_m": 0.08, "crank_m": 0.75,
        "link_m": 0.5, "elbow": "left" });
    pintle_tests::around(&mut job, json!({ "front_m": 0.03, "back_m": 0.03 }));
    job["marks"] = json!({ "anchor_along_m": 0.25, "anchor_across_m": 0.15, "pad_level_m": 0.15, "crossbar_level_m": 0.62,
        "arm_height_m": 0.32, "overlap_m": 0.12, "crank_ends_m": 0.07, "link_ends_m": 0.06 });
    job
}

fn close(one: f64, other: f64) {
    assert!((one - other).abs() < 1e-9, "{one} is not {other}");
}

#[test]
fn a_job_is_marked_out() {
    let job = read(&job());
    let marks = mark_out(&job).expect("the arm works");
    close(marks.shaft.from_hinge_line_m, -0.3);
    close(marks.shaft.from_face_m, 0.4);
    close(marks.shaft.from_axis_line_m, 0.43);
    close(marks.shaft.diagonal_m, 0.2749_f64.sqrt());
    // 3.3 m along and 0.43 m across from the latch end of the axis line.
    close(marks.shaft.from_latch_m, 11.0749_f64.sqrt());
    // 0.75 m along (24, −7)/25 from the shaft.
    close(marks.elbow_closed.from_hinge_line_m, 0.42);
    close(marks.elbow_closed.from_face_m, 0.19);
    close(marks.bracket_along_m, 0.9);
    close(marks.bracket_proud_m, 0.05);
    close(marks.bracket_across_m, 0.08);
    close(marks.base_direction_deg, -(7.0_f64 / 24.0).atan().to_degrees());
    // Half spacings of 0.125 m along (24, −7)/25 and 0.075 m along (7, 24)/25.
    let hand = [(-0.201, 0.293), (-0.159, 0.437), (-0.399, 0.507), (-0.441, 0.363)];
    assert_eq!(marks.anchors.len(), 4);
    for (anchor, (x, y)) in marks.anchors.iter().zip(hand) {
        close(anchor.from_hinge_line_m, x);
        close(anchor.from_face_m, y);
        close(anchor.from_axis_line_m, y + 0.03);
        close(anchor.diagonal_m, x.hypot(y + 0.03));
    }
    close(marks.anchor_diagonal_m.expect("there are holes"), 0.085_f64.sqrt());
    close(marks.riser_m.expect("both levels are said"), 0.15);
    close(marks.crank.cut_m.expect("the tubes overlap"), 0.4);
    close(marks.link.cut_m.expect("the tubes overlap"), 0.28);
    assert_eq!(marks.assumed, ["marks.anchor_offset_along_m", "marks.anchor_offset_across_m", "marks.anchor_turn_deg"]);
    assert_eq!(plan(&job).expect("valid").mark_out, Some(marks));
}

#[test]
fn limits_are_where_the_triangle_says() {
    let marks = mark_out(&read(&job())).expect("the arm works");
    let [closed, open] = marks.limits;
    assert_eq!((closed.leaf_deg, closed.shaft_deg, open.leaf_deg), (0.0, 0.0, 90.0));
    // Open, the bracket is at (−0.08, 0.9): 0.22 m along and 0.47 m across from the shaft.
    let reach = 0.22_f64.hypot(0.47);
    let at_shaft = ((0.75_f64.powi(2) + reach.powi(2) - 0.5_f64.powi(2)) / (2.0 * 0.75 * reach)).acos();
    let direction = (0.47_f64.atan2(0.22) + at_shaft).to_degrees();
    close(open.crank_direction_deg, direction);
    close(open.shaft_deg, direction - closed.crank_direction_deg);
}

#[test]
fn holes_turn_and_shift_with_the_base() {
    let mut value = job();
    // Turned a quarter, and shifted by the sides of 3-4-5: along the base is now (7, 24)/25, across it (−24, 7)/25.
    value["marks"]["anchor_turn_deg"] = json!(90);
    value["marks"]["anchor_offset_along_m"] = json!(0.04);
    value["marks"]["anchor_offset_across_m"] = json!(-0.03);
    let marks = mark_out(&read(&value)).expect("the arm works");
    let middle = |of: fn(&pintle_core::plan::Mark) -> f64| marks.anchors.iter().map(of).sum::<f64>() / 4.0;
    close(middle(|mark| mark.from_hinge_line_m), -0.3 + 0.04 * 0.28 + 0.03 * 0.96);
    close(middle(|mark| mark.from_face_m), 0.4 + 0.04 * 0.96 - 0.03 * 0.28);
    close(marks.base_direction_deg, 90.0 - (7.0_f64 / 24.0).atan().to_degrees());
}

#[test]
fn what_is_not_said_is_assumed_or_left_out() {
    let mut value = job();
    value["leaf"]["face_m"] = Value::Null;
    value["marks"] = Value::Null;
    let job: Job = read(&value);
    let marks = mark_out(&job).expect("the arm works");
    assert!(marks.anchors.is_empty() && marks.riser_m.is_none() && marks.anchor_diagonal_m.is_none());
    // The face then lies on the axis line.
    close(marks.shaft.from_face_m, 0.43);
    close(marks.crank.cut_m.expect("no overlap"), 0.375);
    assert!(marks.assumed.contains(&"leaf.face_m") && marks.assumed.contains(&"marks.overlap_m"));
    value["marks"] = json!({ "overlap_m": 0.6 });
    let marks = mark_out(&read(&value)).expect("the arm works");
    assert!(marks.link.cut_m.is_none(), "half a metre cannot overlap by more");
}
