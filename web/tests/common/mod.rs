//! A job and a view as the page hands them over, and ways to change and look into values of the page.
#![allow(dead_code, reason = "each test file uses its part")]

use js_sys::{JSON, Reflect};
use pintle_web::Calculation;
use wasm_bindgen::JsValue;

/// A fresh copy of the job.
pub fn job() -> JsValue {
    JSON::parse(include_str!("job.json")).expect("JSON")
}

/// A fresh copy of the view.
pub fn view() -> JsValue {
    JSON::parse(include_str!("view.json")).expect("JSON")
}

/// The job with ramps, slow zones and a motor that has torque to spare.
pub fn moving() -> JsValue {
    let job = job();
    let motion = r#"{ "slow_open_deg": 15, "slow_close_deg": 20,
        "motor": { "stall_torque_n_m": 900, "no_load_speed_deg_s": 12, "rated_v": 24 } }"#;
    set(&job, "motion", JSON::parse(motion).expect("JSON"));
    job
}

/// The solved job.
pub fn calculation() -> Calculation {
    Calculation::new(job()).expect("a valid job")
}

/// Follows a dotted path.
pub fn get(value: &JsValue, path: &str) -> JsValue {
    path.split('.').fold(value.clone(), |inner, key| Reflect::get(&inner, &key.into()).expect("an object"))
}

/// Sets a dotted path.
pub fn set(value: &JsValue, path: &str, to: impl Into<JsValue>) {
    let (parent, key) = path.rsplit_once('.').map_or((value.clone(), path), |(parent, key)| (get(value, parent), key));
    Reflect::set(&parent, &key.into(), &to.into()).expect("an object");
}

/// Path and code of every fault thrown.
pub fn faults(thrown: &JsValue) -> Vec<(String, String)> {
    let text = |fault: &JsValue, key: &str| get(fault, key).as_string().expect("a text");
    js_sys::Array::from(&get(thrown, "errors"))
        .iter()
        .map(|fault| (text(&fault, "path"), text(&fault, "code")))
        .collect()
}
