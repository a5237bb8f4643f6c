//! Jobs to draw: the usual one, and odd ones that the ranges allow. All invented.

use pintle_core::{
    Document,
    job::Job,
    plan::{Model, Plan},
};
use serde_json::{Value, json};

/// The job of the contract, an invented gate.
pub fn usual() -> Value {
    serde_json::from_str(include_str!("../../web/tests/common/job.json")).expect("JSON")
}

/// The usual job with fields replaced, by JSON pointer.
pub fn changed(changes: &[(&str, Value)]) -> Value {
    let mut job = usual();
    for (pointer, value) in changes {
        let (parent, key) = pointer.rsplit_once('/').expect("a pointer");
        let parent = if parent.is_empty() { Some(&mut job) } else { job.pointer_mut(parent) };
        parent.expect("the parent exists")[key] = value.clone();
    }
    job
}

/// Solves a job; `None` when the core refuses it.
pub fn solved(job: &Value) -> Option<(Model, Plan)> {
    let document: Document = serde_json::from_value(job.clone()).expect("JSON is a document");
    let model = Model::new(&Job::read(&document).ok()?).ok()?;
    let plan = model.plan();
    Some((model, plan))
}

/// Distance shaft to bracket of a job's arm at a leaf angle, m: plain trigonometry, to make arms that are just straight or folded.
pub fn reach(job: &Value, leaf_deg: f64) -> f64 {
    let arm = |name: &str| job["arm"][name].as_f64().expect("a number");
    let (sine, cosine) = leaf_deg.to_radians().sin_cos();
    let x = arm("bracket_u_m") * cosine - arm("bracket_v_m") * sine - arm("shaft_x_m");
    let y = arm("bracket_u_m") * sine + arm("bracket_v_m") * cosine - arm("shaft_y_m");
    x.hypot(y)
}

/// Odd jobs with a name each.
pub fn odd() -> Vec<(&'static str, Value)> {
    let straight = {
        let closed = reach(&usual(), 0.0);
        changed(&[("/arm/crank_m", json!(0.9)), ("/arm/link_m", json!(closed - 0.9))])
    };
    vec![
        ("usual", usual()),
        ("left hand", changed(&[("/hand", json!("left"))])),
        ("straight when closed", straight),
        ("open one degree", changed(&[("/swing/open_deg", json!(1))])),
        ("open ten degrees", changed(&[("/swing/open_deg", json!(10))])),
        ("open thirty degrees", changed(&[("/swing/open_deg", json!(30))])),
        ("longest leaf", changed(&[("/leaf/length_m", json!(15))])),
        ("leaf as short as the bracket", changed(&[("/leaf/length_m", json!(1.2))])),
        ("light and calm", changed(&[("/leaf/mass_kg", json!(1)), ("/wind/speed_m_s", json!(0))])),
        ("no friction, no wind", changed(&[("/hinges/friction_coefficient", json!(0)), ("/wind/speed_m_s", json!(0))])),
        ("storm", changed(&[("/wind/speed_m_s", json!(100)), ("/leaf/wind_area_m2", json!(60))])),
        (
            "weak operator",
            changed(&[("/operator/rated_torque_n_m", json!(1)), ("/operator/peak_torque_n_m", json!(1))]),
        ),
        (
            "strong operator",
            changed(&[("/operator/rated_torque_n_m", json!(50000)), ("/operator/peak_torque_n_m", json!(50000))]),
        ),
        ("peak far off", changed(&[("/operator/peak_torque_n_m", json!(5000))])),
        ("peak like rated", changed(&[("/operator/peak_torque_n_m", json!(402))])),
        ("no peak torque", changed(&[("/operator/peak_torque_n_m", json!(null))])),
        (
            "lean that drives",
            changed(&[("/lean/angle_deg", json!(8)), ("/lean/downhill_deg", json!(90)), ("/wind/speed_m_s", json!(3))]),
        ),
        ("lean that hinders", changed(&[("/lean/angle_deg", json!(15)), ("/lean/downhill_deg", json!(-90))])),
        ("two samples", changed(&[("/samples", json!(2))])),
        ("shaft over the hinge", changed(&[("/arm/shaft_x_m", json!(0))])),
        ("shaft beyond the hinge", changed(&[("/arm/shaft_x_m", json!(0.2))])),
        ("long crank, shortest link", arm([-0.34, -0.18], [0.72, 0.17], [1.14, 0.1], "left", 60.0)),
        ("crank that circles the hinge", arm([0.14, 0.37], [0.98, 0.08], [0.83, 0.25], "left", 60.0)),
        ("shortest crank, long link", arm([-0.04, -0.01], [1.43, 0.19], [0.07, 1.46], "left", 60.0)),
        ("elbow right", arm([-0.36, -0.03], [1.37, 0.08], [0.92, 1.23], "right", 90.0)),
        ("elbow right, shaft beyond the hinge", arm([0.48, -0.1], [0.62, 0.11], [1.28, 1.18], "right", 90.0)),
        ("shaft on the closing side", arm([-0.3, -0.4], [1.1, 0.06], [0.8, 0.9], "left", 60.0)),
        ("far shaft", arm([-4.0, 6.0], [1.2, 0.06], [5.0, 4.0], "left", 45.0)),
        ("shaft in line with the hinge", arm([-0.5, 0.0], [1.0, 0.05], [0.9, 0.8], "left", 60.0)),
        ("nearly half a turn", arm([-0.2, 0.3], [0.6, 0.05], [0.7, 0.6], "left", 150.0)),
        ("half a turn", arm([-0.07, 0.2], [1.35, 0.1], [1.22, 1.42], "left", 180.0)),
        ("half a turn, shaft on the closing side", arm([0.29, -0.42], [0.26, 0.08], [0.98, 0.62], "left", 180.0)),
        ("half a turn, elbow right", arm([0.55, 0.32], [1.14, 0.09], [1.37, 1.37], "right", 180.0)),
        ("friction as a range", friction_range()),
        ("tiny", arm([-0.05, 0.06], [0.12, 0.0], [0.1, 0.12], "left", 60.0)),
    ]
}

/// The usual job with hinge friction anywhere from none to much.
pub fn friction_range() -> Value {
    changed(&[("/hinges/friction_low", json!(0.0)), ("/hinges/friction_high", json!(1.0))])
}

/// The usual job with another arm (shaft, bracket, crank and link, elbow) and swing.
fn arm([x, y]: [f64; 2], [u, v]: [f64; 2], [crank, link]: [f64; 2], elbow: &str, open_deg: f64) -> Value {
    let arm = json!({ "shaft_x_m": x, "shaft_y_m": y, "bracket_u_m": u, "bracket_v_m": v, "crank_m": crank, "link_m": link, "elbow": elbow });
    changed(&[("/arm", arm), ("/swing/open_deg", json!(open_deg))])
}
