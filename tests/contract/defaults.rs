//! What is said is taken, and what is not said is assumed as the type of the field documents it.

use super::{answer, job};
use pintle_core::{
    Document,
    job::{Aim, Elbow, Hinges, Job},
};
use serde_json::{Value, json};

fn read(job: &Value) -> Job {
    let document: Document = serde_json::from_value(job.clone()).expect("any JSON is a document");
    Job::read(&document).unwrap_or_else(|invalid| panic!("{invalid}"))
}

fn setout() -> Value {
    json!({ "shaft_x_m": [-0.55, -0.15], "shaft_y_m": [0.25, 0.7], "bracket_u_m": [0.7, 1.5], "bracket_v_m": 0.06,
        "crank_m": [0.35, 0.9], "link_m": [0.35, 0.9] })
}

/// The blocks that may be empty, and the rest with no more than they need.
fn bare() -> Value {
    let mut job = job();
    for block in ["marks", "tape", "drag", "breakaway", "contact"] {
        job[block] = json!({});
    }
    job["setout"] = setout();
    job["ice"] = json!({ "thickness_m": 0.005 });
    job["ground"] = json!({ "gap_m": 0.3 });
    job["motion"] = json!({ "motor": { "stall_torque_n_m": 900, "no_load_speed_deg_s": 12, "rated_v": 24 } });
    job["storm"] = json!({ "speed_m_s": 28, "force_coefficient": 1.4 });
    job["holding"] = json!({});
    job["site"] = json!({ "means": [{ "kind": "contact",
        "area": { "on": "leaf", "from_x_m": 3.2, "from_y_m": 0, "to_x_m": 3.2, "to_y_m": 0.1 } }] });
    job["lean"] = Value::Null;
    job["wind"]["air_density_kg_m3"] = Value::Null;
    for (block, key) in [("operator", "arm_efficiency"), ("operator", "peak_torque_n_m")] {
        job[block][key] = Value::Null;
    }
    job["required_reserve"] = Value::Null;
    job["samples"] = Value::Null;
    job
}

type Of = fn(&Job) -> f64;

/// JSON pointer, the default, another value, how the job answers. Angles are answered in radians where the name says so.
#[rustfmt::skip]
const FIELDS: [(&str, f64, f64, Of); 48] = [
    ("/lean/angle_deg", 0.0, 2.0, |job| job.lean.angle()),
    ("/lean/downhill_deg", 0.0, 30.0, |job| job.lean.downhill()),
    ("/wind/air_density_kg_m3", 1.225, 1.1, |job| job.wind.air_density()),
    ("/storm/air_density_kg_m3", 1.225, 1.1, |job| job.storm.expect("said").air_density()),
    ("/operator/arm_efficiency", 1.0, 0.9, |job| job.operator.efficiency()),
    ("/required_reserve", 1.5, 2.0, Job::required_reserve),
    ("/samples", 91.0, 37.0, |job| f64::from(job.samples())),
    ("/setout/square_deg", 90.0, 12.0, |job| job.setout.as_ref().expect("said").square()),
    ("/setout/least_lever_m", 0.0, 0.2, |job| job.setout.as_ref().expect("said").least_lever()),
    ("/setout/shaft_travel_deg", 360.0, 170.0, |job| job.setout.as_ref().expect("said").shaft_travel()),
    ("/leaf/face_m", 0.0, 0.03, |job| job.leaf.face()),
    ("/leaf/thickness_m", 0.06, 0.02, |job| job.leaf.thickness()),
    ("/leaf/heel_m", 0.0, 0.1, |job| job.leaf.heel()),
    ("/arm_half_width_m", 0.0, 0.04, Job::arm_half_width),
    ("/marks/anchor_offset_along_m", 0.0, 0.1, |job| job.marks.expect("said").anchor_offset().0),
    ("/marks/anchor_offset_across_m", 0.0, 0.2, |job| job.marks.expect("said").anchor_offset().1),
    ("/marks/anchor_turn_deg", 0.0, 30.0, |job| job.marks.expect("said").anchor_turn_rad().to_degrees()),
    ("/marks/arm_height_m", 0.0, 0.3, |job| job.marks.expect("said").arm_height()),
    ("/marks/overlap_m", 0.0, 0.12, |job| job.marks.expect("said").overlap()),
    ("/marks/crank_ends_m", 0.0, 0.07, |job| job.marks.expect("said").ends().0),
    ("/marks/link_ends_m", 0.0, 0.06, |job| job.marks.expect("said").ends().1),
    ("/tape/error_m", 0.005, 0.002, |job| job.tape.expect("said").error()),
    ("/drag/latch_n_m", 0.0, 20.0, |job| job.drag.expect("said").latch()),
    ("/drag/latch_deg", 2.0, 5.0, |job| job.drag.expect("said").latch_rad().to_degrees()),
    ("/drag/seal_n_m", 0.0, 7.0, |job| job.drag.expect("said").steady_n_m()),
    ("/ice/density_kg_m3", 900.0, 500.0, |job| job.ice.expect("said").density()),
    ("/ice/area_factor", 1.0, 1.3, |job| job.ice.expect("said").area_factor()),
    ("/ground/slope_deg", 0.0, 1.5, |job| job.ground.expect("said").slope_rad().to_degrees()),
    ("/ground/uphill_deg", 0.0, 45.0, |job| job.ground.expect("said").uphill_rad().to_degrees()),
    ("/ground/bottom_rise_m", 0.0, 0.1, |job| job.ground.expect("said").bottom_rise()),
    ("/motion/ramp_up_s", 1.0, 2.0, |job| job.motion.as_ref().expect("said").ramp_up()),
    ("/motion/ramp_down_s", 1.0, 3.0, |job| job.motion.as_ref().expect("said").ramp_down()),
    ("/motion/slow_open_deg", 0.0, 20.0, |job| job.motion.as_ref().expect("said").slow_open()),
    ("/motion/slow_close_deg", 0.0, 25.0, |job| job.motion.as_ref().expect("said").slow_close()),
    ("/motion/coast_drag_n_m", 0.0, 15.0, |job| job.motion.as_ref().expect("said").coast_drag()),
    ("/motion/motor/supply_v", 24.0, 22.0, |job| job.motion.as_ref().and_then(|motion| motion.motor.as_ref()).expect("said").supply()),
    ("/motion/motor/gear_ratio", 1.0, 3.0, |job| job.motion.as_ref().and_then(|motion| motion.motor.as_ref()).expect("said").gear_ratio()),
    ("/motion/motor/gear_efficiency", 1.0, 0.8, |job| job.motion.as_ref().and_then(|motion| motion.motor.as_ref()).expect("said").gear_efficiency()),
    ("/motion/motor/run_up_s", 0.05, 0.2, |job| job.motion.as_ref().and_then(|motion| motion.motor.as_ref()).expect("said").run_up()),
    ("/breakaway/hold_factor", 1.25, 1.4, |job| job.breakaway.expect("said").hold_factor()),
    ("/breakaway/release_factor", 0.8, 0.7, |job| job.breakaway.expect("said").release_factor()),
    ("/holding/play_deg", 0.5, 1.5, |job| job.holding.expect("said").play_rad().to_degrees()),
    ("/contact/stiffness_n_per_m", 5e5, 4e5, |job| job.contact.expect("said").stiffness()),
    ("/contact/dynamic_limit_n", 400.0, 300.0, |job| job.contact.expect("said").dynamic_limit()),
    ("/contact/static_limit_n", 150.0, 120.0, |job| job.contact.expect("said").static_limit()),
    ("/contact/response_s", 0.3, 0.5, |job| job.contact.expect("said").response()),
    ("/contact/near_m", 0.3, 0.4, |job| job.contact.expect("said").near()),
    ("/site/latch_gap_m", 0.0, 0.05, |job| job.site.as_ref().expect("said").latch_gap()),
];

fn put(job: &mut Value, pointer: &str, value: Value) {
    let (parent, key) = pointer.rsplit_once('/').expect("pointers start with a slash");
    job.pointer_mut(parent).expect("the block is there")[key] = value;
}

#[test]
fn numbers_are_taken_or_assumed() {
    let close = |one: f64, other: f64| (one - other).abs() <= 1e-14 * other.abs();
    for (pointer, default, said, of) in FIELDS {
        let mut job = bare();
        if pointer.starts_with("/lean") {
            job["lean"] = json!({});
        }
        assert!(close(of(&read(&job)), default), "{pointer}: {} is assumed", of(&read(&job)));
        // A default need not be a default to the field beside it.
        put(&mut job, pointer, json!(said));
        assert!(close(of(&read(&job)), said), "{pointer}: {} is taken", of(&read(&job)));
    }
    let mut job = bare();
    let area = |job: &Value| read(job).site.and_then(|site| site.means).and_then(|means| means[0].area).expect("said");
    assert_eq!(area(&job).half_width(), 0.05);
    job["site"]["means"][0]["area"]["half_width_m"] = json!(0.02);
    assert_eq!(area(&job).half_width(), 0.02);
}

/// A wheel resists by coefficient × load × radius, besides the seal.
#[test]
fn the_drag_of_a_wheel() {
    let mut job = bare();
    job["drag"] = json!({ "wheel_load_n": 200, "wheel_radius_m": 3 });
    assert!((read(&job).drag.expect("said").steady_n_m() - 0.05 * 600.0).abs() < 1e-12);
    job["drag"] = json!({ "wheel_load_n": 200, "wheel_radius_m": 3, "wheel_coefficient": 0.1, "seal_n_m": 7 });
    assert!((read(&job).drag.expect("said").steady_n_m() - 67.0).abs() < 1e-12);
}

#[test]
fn words_and_ranges_are_taken_or_assumed() {
    let mut job = bare();
    let setout = read(&job).setout.expect("said");
    assert_eq!((setout.straightness(), setout.aim()), ([0.0, 1.0], Aim::LeastShaftTorque));
    assert_eq!(setout.elbows(), [Elbow::Left, Elbow::Right]);
    for (aim, expected) in [
        ("least_shaft_torque", Aim::LeastShaftTorque),
        ("least_link_force", Aim::LeastLinkForce),
        ("least_shaft_travel", Aim::LeastShaftTravel),
    ] {
        job["setout"]["aim"] = json!(aim);
        assert_eq!(read(&job).setout.expect("said").aim(), expected);
    }
    for (elbow, expected) in
        [("left", &[Elbow::Left][..]), ("right", &[Elbow::Right]), ("either", &[Elbow::Left, Elbow::Right])]
    {
        job["setout"]["elbow"] = json!(elbow);
        assert_eq!(read(&job).setout.expect("said").elbows(), expected);
    }
    job["setout"]["straightness"] = json!([0.9, 0.99]);
    assert_eq!(read(&job).setout.expect("said").straightness(), [0.9, 0.99]);
    assert_eq!((Elbow::Left.side(), Elbow::Right.side()), (1.0, -1.0));
    assert!((read(&job).open_rad() - std::f64::consts::FRAC_PI_2).abs() < 1e-15);
}

/// A plumb line 10 mm off over 0.5 m leans by the arc tangent of a fiftieth; said in degrees, that goes before.
#[test]
fn a_plumb_line_says_the_lean() {
    let mut job = bare();
    job["lean"] = json!({ "plumb_offset_m": 0.01, "plumb_height_m": 0.5 });
    assert!((read(&job).lean.angle() - 0.02_f64.atan().to_degrees()).abs() < 1e-14);
}

/// What was built goes before what was planned, field by field.
#[test]
fn an_arm_as_built() {
    let mut job = bare();
    let all = json!({ "shaft_x_m": -0.21, "shaft_y_m": 0.42, "bracket_u_m": 1.23, "bracket_v_m": 0.07, "crank_m": 0.88,
        "link_m": 0.65 });
    let planned = read(&job).arm.expect("said");
    for key in ["shaft_x_m", "shaft_y_m", "bracket_u_m", "bracket_v_m", "crank_m", "link_m"] {
        job["as_built"] = json!({ key: all[key] });
        let mut expected = job.clone();
        expected["arm"][key] = all[key].clone();
        let built = read(&job).as_built.expect("said").arm(&planned, 0.0);
        assert_eq!(built, read(&expected).arm.expect("said"), "{key}");
    }
}

/// A coefficient that is said, the handbook's range for a pairing, and the ends that widen it.
#[test]
fn a_range_of_friction() {
    let range = |hinges: Value| {
        let mut job = job();
        job["hinges"].as_object_mut().expect("an object").extend(hinges.as_object().expect("an object").clone());
        let job = read(&job);
        let range = job.hinges.friction_range().expect("a coefficient is used");
        ([range.low, range.likely, range.high], pintle_core::plan::plan(&job).expect("valid").band.is_some())
    };
    assert_eq!(range(json!({})), ([0.2, 0.2, 0.2], false));
    assert_eq!(range(json!({ "friction_low": 0.1 })), ([0.1, 0.2, 0.2], true));
    assert_eq!(range(json!({ "friction_high": 0.3 })), ([0.2, 0.2, 0.3], true));
    assert_eq!(range(json!({ "friction_low": 0.1, "friction_high": 0.3 })), ([0.1, 0.2, 0.3], true));
    // Ends on the wrong side of what is likely are no ends.
    assert_eq!(range(json!({ "friction_low": 0.25, "friction_high": 0.15 })), ([0.2, 0.2, 0.2], false));
    // A likely value outside the handbook's range widens it.
    let ([low, likely, high], there) = range(json!({ "pairing": "steel_steel_greased", "friction_coefficient": 0.9 }));
    assert!(low < 0.9 && likely == 0.9 && high == 0.9 && there);
    let ([low, likely, high], there) = range(json!({ "pairing": "steel_steel_greased", "friction_coefficient": 0.0 }));
    assert!(low == 0.0 && likely == 0.0 && high > 0.0 && there);
    let mut job = job();
    job["hinges"] =
        json!({ "kind": "measured", "pull_open_n": 45, "pull_close_n": 41, "pull_radius_m": 3.0, "pull_leaf_deg": 45 });
    let mut rolling = super::job();
    rolling["hinges"] =
        json!({ "kind": "rolling", "spacing_m": 1.3, "pin_radius_m": 0.02, "friction_coefficient": 0.002 });
    let Hinges::Rolling(bearings) = read(&rolling).hinges else { panic!("rolling bearings") };
    assert_eq!((bearings.spacing_m, bearings.pin_radius_m, bearings.friction_coefficient), (1.3, 0.02, Some(0.002)));
    assert!(matches!(read(&job).hinges, Hinges::Measured(_)) && read(&job).hinges.friction_range().is_none());
    assert!(answer(&job).expect("valid").band.is_none());
}
