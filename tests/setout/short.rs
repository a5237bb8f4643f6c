//! A part shorter than the error of the tape comes out as none at all: such an arm is told as broken, like any that does not close.

use crate::{marks, read};
use pintle_core::plan::tape_cost;
use serde_json::json;

/// A crank of 50 mm and an error of 60 mm: half of the 64 corners leave no crank.
#[test]
fn a_length_of_less_than_nothing_is_no_arm() {
    let mut value = marks::job();
    value["arm"] = json!({ "shaft_x_m": 0.0, "shaft_y_m": 0.06, "bracket_u_m": 0.5, "bracket_v_m": 0.0, "crank_m": 0.05, "link_m": 0.5,
        "elbow": "left" });
    value["swing"]["open_deg"] = json!(5);
    value["tape"] = json!({ "error_m": 0.06 });
    let cost = tape_cost(&read(&value)).expect("the planned arm works");
    let crank = cost.dimensions.iter().find(|row| row.path == "arm.crank_m").expect("every dimension");
    assert!(crank.short.is_none());
    assert!(cost.worst.broken >= 32, "{}", cost.worst.broken);
}
