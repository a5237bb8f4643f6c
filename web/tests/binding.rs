//! The binding adds and loses nothing: what goes in is checked as natively, what comes out is the core's JSON.
#![cfg(target_arch = "wasm32")]

mod common;

use common::{calculation, faults, get, job, set};
use js_sys::JSON;
use pintle_web::{Calculation, fields, pareto_front, read, show, show_limit, unit, version};
use serde_json::Value;
use wasm_bindgen::JsValue;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

/// A value of the page as JSON.
fn json(value: &JsValue) -> Value {
    let text = JSON::stringify(value).expect("plain").as_string().expect("a text");
    serde_json::from_str(&text).expect("JSON")
}

fn refused(job: JsValue) -> Vec<(String, String)> {
    match Calculation::new(job) {
        Ok(_) => Vec::new(),
        Err(thrown) => faults(&thrown),
    }
}

fn fault(path: &str, code: &str) -> Vec<(String, String)> {
    vec![(path.into(), code.into())]
}

/// The core asked directly, without the binding, with the same text.
fn core_plan() -> pintle_core::plan::Plan {
    let document = serde_json::from_str(include_str!("common/job.json")).expect("JSON");
    pintle_core::plan::plan(&pintle_core::job::Job::read(&document).expect("a job")).expect("valid")
}

/// Compared as text, so that order and `null` count too; the browser writes both, so numbers are written alike.
#[wasm_bindgen_test]
fn the_plan_is_the_cores_json() {
    let text = |value: &JsValue| JSON::stringify(value).expect("plain").as_string().expect("a text");
    let core = serde_json::to_string(&core_plan()).expect("JSON");
    let same = text(&calculation().plan().expect("a plan")) == text(&JSON::parse(&core).expect("JSON"));
    assert!(same, "the binding's plan differs from the core's JSON");
}

/// Numbers of the contract for this job, solved outside this tree, to the digits printed there.
#[wasm_bindgen_test]
fn the_plan_has_the_contracts_numbers() {
    let plan = calculation().plan().expect("a plan");
    for (path, printed) in [
        ("loads.hinge_friction_n_m", "14.395"),
        ("loads.wind_n_m", "375.38"),
        ("loads.inertia_kg_m2", "546.13"),
        ("peak.leaf_deg", "37.768"),
        ("peak.shaft_torque_n_m", "308.27"),
        ("rating.reserve", "1.29757"),
        ("shaft_travel_deg", "130.91"),
        ("wind_limit.speed_m_s", "13.729"),
    ] {
        let decimals = printed.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        let value = get(&plan, path).as_f64().expect("a number");
        assert_eq!(format!("{value:.decimals$}"), printed, "{path}");
    }
}

#[wasm_bindgen_test]
fn a_pose_is_a_row_at_any_angle() {
    let calculation = calculation();
    let rows = json(&calculation.plan().expect("a plan"))["curve"].clone();
    let pose = json(&calculation.pose(45.0).expect("a pose"));
    for (name, value) in pose.as_object().expect("an object") {
        let row = rows[45][name].as_f64().expect("the row has it too");
        assert!((value.as_f64().expect("a number") - row).abs() <= 1e-9 * row.abs().max(1.0), "{name}");
    }
    assert_eq!(json(&calculation.pose(1e9).expect("held inside"))["leaf_deg"], 90.0);
    assert_eq!(faults(&calculation.pose(f64::NAN).expect_err("no angle")), fault("leaf_deg", "wrong_type"));
}

#[wasm_bindgen_test]
fn unknown_fields_are_refused() {
    let misspelt = job();
    set(&misspelt, "leaf.lenght_m", 3.0);
    assert_eq!(refused(misspelt), fault("leaf.lenght_m", "unknown_field"));
    let outside = job();
    set(&outside, "colour", "green");
    assert_eq!(refused(outside), fault("colour", "unknown_field"));
}

#[wasm_bindgen_test]
fn nan_is_refused_not_defaulted_and_undefined_is_absent() {
    for (path, bad) in
        [("leaf.mass_kg", f64::NAN), ("wind.air_density_kg_m3", f64::NAN), ("required_reserve", f64::INFINITY)]
    {
        let job = job();
        set(&job, path, bad);
        let refused = refused(job);
        assert_eq!(refused.len(), 1, "{path}");
        assert_eq!(refused[0].0, path);
    }
    let absent = job();
    set(&absent, "wind.air_density_kg_m3", JsValue::UNDEFINED);
    let plan = Calculation::new(absent).expect("the default is taken").plan().expect("a plan");
    assert!(json(&plan)["assumed"].as_array().expect("a list").contains(&"wind.air_density_kg_m3".into()));
    let missing = job();
    set(&missing, "leaf.mass_kg", JsValue::UNDEFINED);
    assert_eq!(refused(missing), fault("leaf.mass_kg", "missing"));
}

#[wasm_bindgen_test]
fn anything_at_all_is_answered_with_faults() {
    for odd in [
        JsValue::UNDEFINED,
        JsValue::NULL,
        JsValue::from(7),
        JsValue::from("text"),
        js_sys::Array::new().into(),
        js_sys::Function::new_no_args("").into(),
        js_sys::Symbol::for_("symbol").into(),
        js_sys::Date::new_0().into(),
    ] {
        assert!(!refused(odd.clone()).is_empty(), "{odd:?}");
    }
}

#[wasm_bindgen_test]
fn a_loop_of_objects_is_refused() {
    let job = job();
    set(&job, "leaf.itself", &job);
    assert!(!refused(job).is_empty());
}

#[wasm_bindgen_test]
fn an_unknown_aim_is_refused_by_name() {
    assert_eq!(faults(&pareto_front(job(), "least_weight", 3).expect_err("no such aim")), fault("aim", "not_one_of"));
}

#[wasm_bindgen_test]
fn numbers_for_people() {
    let (torque, metric, us) = (|| "torque".into(), || "metric".into(), || "us".into());
    assert_eq!(show(308.27, torque(), metric()).expect("shown"), "308\u{a0}N·m");
    assert_eq!(unit("short_length".into(), us()).expect("a unit"), "in");
    // 1 ft = 0.3048 m exactly (international yard and pound agreement, 1959).
    assert_eq!(read("10 ft", "length".into(), metric()).expect("read"), 3.048);
    let thrown = read("1,234", "length".into(), metric()).expect_err("a thousand, or a bit over one");
    assert_eq!(get(&thrown, "code").as_string().as_deref(), Some("ambiguous"));
    let (up, down) = ("up".into(), "down".into());
    assert_ne!(show_limit(1.0, "mass".into(), us(), up), show_limit(1.0, "mass".into(), us(), down));
    assert_eq!(
        faults(&show(1.0, "weight".into(), metric()).expect_err("no such quantity")),
        fault("quantity", "wrong_type")
    );
    assert_eq!(version(), env!("CARGO_PKG_VERSION"));
}

#[wasm_bindgen_test]
fn the_table_of_fields_is_whole() {
    let rules = json(&fields().expect("a table"));
    let rules = rules.as_array().expect("a list");
    assert_eq!(rules.len(), pintle_core::job::fields().len());
    let mass = rules.iter().find(|rule| rule["path"] == "leaf.mass_kg").expect("mass");
    assert_eq!((mass["least"].as_f64(), mass["most"].as_f64()), (Some(1.0), Some(5000.0)));
    assert_eq!(mass["quantity"], "mass");
    assert!(mass["default"].is_null());
}
