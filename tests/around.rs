//! Leaf, arm and what stands around, put into a job as a test has them at hand.

use serde_json::{Map, Value, json};

/// Puts bodies and what stands around into a job: `front_m` and `back_m` are the leaf's faces before and behind the axis line, where neither is
/// said it is that line; `heel_m`, `arm_half_width_m`, `hinge_post`, and `obstacles` that stop everything, behind those the job has.
pub fn around(job: &mut Value, bodies: Value) {
    let said = |key: &str| bodies.get(key).filter(|value| !value.is_null());
    let metres = |key: &str| said(key).map_or(0.0, |value| value.as_f64().expect("a length"));
    let mut leaf = vec![("thickness_m", json!(((metres("front_m") + metres("back_m")) * 1e9).round() / 1e9))];
    leaf.extend(said("front_m").map(|front| ("face_m", front.clone())));
    leaf.extend(said("heel_m").map(|heel| ("heel_m", heel.clone())));
    for (key, value) in leaf {
        job["leaf"][key] = value;
    }
    if let Some(half) = said("arm_half_width_m") {
        job["arm_half_width_m"] = half.clone();
    }
    let mut all: Vec<Value> = job["obstacles"].as_array().cloned().unwrap_or_default();
    all.extend(said("obstacles").into_iter().flat_map(|list| list.as_array().expect("a list").clone()));
    if let Some(post) = said("hinge_post") {
        let mut post: Map<String, Value> = post.as_object().expect("a rectangle").clone();
        post.extend([("kind".into(), json!("post")), ("hinge_post".into(), json!(true))]);
        all.push(post.into());
    }
    job["obstacles"] = all.into();
}
