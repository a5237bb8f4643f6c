//! What an input does to the reserve is what the plan of the changed job says.

use crate::jobs::{job, planned};
use crate::plan::example;
use pintle_core::plan::{Model, Sensitivity, plan};
use serde_json::{Value, json};

fn asked(value: &Value) -> Vec<Sensitivity> {
    planned(value).sensitivity.expect("asked for")
}

fn number<'a>(value: &'a mut Value, path: &str) -> &'a mut Value {
    path.split('.').fold(value, |place, key| &mut place[key])
}

/// Reserve of the job with one input times a factor; `None` where that is no job.
fn reserve(value: &Value, path: &str, factor: f64) -> Option<f64> {
    let mut value = value.clone();
    let place = number(&mut value, path);
    *place = json!(place.as_f64().expect("a number") * factor);
    let document = serde_json::from_value(value).expect("a document");
    plan(&pintle_core::job::Job::read(&document).ok()?).ok()?.rating.reserve
}

fn leaning() -> Value {
    let mut value = example();
    value["lean"] = json!({ "angle_deg": 1.0, "downhill_deg": 0.0 });
    value["uncertainty"] = json!({ "leaf.mass_kg": 0.25, "arm.link_m": 0.02 });
    value
}

/// Ten per cent either way, or what is stated; each entry is two plans.
#[test]
fn every_entry_is_two_plans() {
    let value = leaning();
    let list = asked(&value);
    for entry in &list {
        let share = match entry.path {
            "leaf.mass_kg" => 0.25,
            "arm.link_m" => 0.02,
            _ => 0.1,
        };
        assert_eq!(entry.fraction, share, "{}", entry.path);
        assert_eq!(entry.low, reserve(&value, entry.path, 1.0 - share), "{} lowered", entry.path);
        assert_eq!(entry.high, reserve(&value, entry.path, 1.0 + share), "{} raised", entry.path);
    }
    let paths: Vec<&str> = list.iter().map(|entry| entry.path).collect();
    // What is zero is not varied (downhill), nor what was not said (air density), nor what a person asks for.
    for (path, there) in [
        ("leaf.mass_kg", true),
        ("leaf.length_m", true),
        ("hinges.friction_coefficient", true),
        ("wind.speed_m_s", true),
        ("swing.open_deg", true),
        ("operator.rated_torque_n_m", true),
        ("arm.shaft_x_m", true),
        ("lean.angle_deg", true),
        ("lean.downhill_deg", false),
        ("wind.air_density_kg_m3", false),
        ("required_reserve", false),
    ] {
        assert_eq!(paths.iter().filter(|other| **other == path).count(), usize::from(there), "{path}");
    }
    // A short arm that no longer closes tells nothing, and comes last.
    assert!(list.iter().any(|entry| entry.low.is_none() || entry.high.is_none()));
    let spread = |entry: &Sensitivity| entry.low.zip(entry.high).map(|(low, high)| (high - low).abs());
    let spreads: Vec<f64> = list.iter().map(|entry| spread(entry).unwrap_or(-1.0)).collect();
    assert!(spreads.windows(2).all(|pair| pair[0] >= pair[1]), "{spreads:?}");
    assert!(spreads[0] > spreads[1] && spreads[1] > 0.0);
    assert_eq!(*spreads.last().expect("some"), -1.0);
}

/// The reserve goes with the rated torque.
#[test]
fn a_rated_torque_is_proportional() {
    let entry = asked(&leaning()).into_iter().find(|entry| entry.path == "operator.rated_torque_n_m").expect("always");
    let planned = planned(&leaning()).rating.reserve.expect("a demand");
    assert!((entry.low.expect("some") / planned - 0.9).abs() < 1e-12);
    assert!((entry.high.expect("some") / planned - 1.1).abs() < 1e-12);
}

/// A coefficient of friction with ends of its own is varied between them, unless an uncertainty is stated for it.
#[test]
fn friction_is_varied_over_its_own_range() {
    let mut value = example();
    value["uncertainty"] = json!({});
    value["hinges"]["friction_low"] = json!(0.12);
    value["hinges"]["friction_high"] = json!(0.35);
    let of = |value: &Value| {
        let mut all = asked(value).into_iter().filter(|entry| entry.path == "hinges.friction_coefficient");
        let entry = all.next().expect("there is friction");
        assert!(all.next().is_none(), "told once");
        entry
    };
    let said = |friction: f64| {
        let mut value = example();
        value["hinges"]["friction_coefficient"] = json!(friction);
        planned(&value).rating.reserve
    };
    let entry = of(&value);
    assert!((entry.fraction - (0.35 / 0.2 - 1.0)).abs() < 1e-12, "{}", entry.fraction);
    assert_eq!((entry.low, entry.high), (said(0.12), said(0.35)));
    value["uncertainty"] = json!({ "hinges.friction_coefficient": 0.5 });
    let entry = of(&value);
    assert_eq!(entry.fraction, 0.5);
    assert_eq!((entry.low, entry.high), (said(0.2 * 0.5), said(0.2 * 1.5)));
    // From nothing any rise is the whole of it.
    value["uncertainty"] = json!({});
    value["hinges"]["friction_coefficient"] = json!(0.0);
    let entry = of(&value);
    assert_eq!((entry.fraction, entry.low, entry.high), (1.0, said(0.0), said(0.35)));
}

/// Asked one at a time there are as many as in the list, and nothing behind them; not asked, there is no list.
#[test]
fn inputs_asked_one_at_a_time_give_the_whole_list() {
    let value = leaning();
    let read = job(&value);
    let model = Model::new(&read).expect("valid");
    let count = asked(&value).len();
    assert!((0..count).all(|index| model.sensitivity_to(index).is_some()));
    assert!((count..count + 5).all(|index| model.sensitivity_to(index).is_none()));
    // Of inputs that do as much the one asked first stands first.
    let mut by_effect: Vec<Sensitivity> = (0..count).filter_map(|index| model.sensitivity_to(index)).collect();
    let spread = |entry: &Sensitivity| entry.low.zip(entry.high).map_or(-1.0, |(low, high)| (high - low).abs());
    by_effect.sort_by(|one, other| spread(other).total_cmp(&spread(one)));
    assert_eq!(by_effect, asked(&value));
    assert!(by_effect.windows(2).any(|pair| spread(&pair[0]) == spread(&pair[1])));
    let mut ranged = value.clone();
    ranged["hinges"]["friction_high"] = json!(0.35);
    let read = job(&ranged);
    let model = Model::new(&read).expect("valid");
    assert_eq!((0..100).map_while(|index| model.sensitivity_to(index)).count(), count);
    assert_eq!(planned(&example()).sensitivity, None);
    // Where nothing is demanded there is no reserve to change.
    let mut calm = example();
    calm["wind"]["speed_m_s"] = json!(0);
    calm["hinges"]["friction_coefficient"] = json!(0);
    calm["uncertainty"] = json!({});
    let entry = asked(&calm).into_iter().find(|entry| entry.path == "leaf.mass_kg").expect("always");
    assert_eq!((entry.low, entry.high), (None, None));
}

/// The band's rows and peaks are those of plans with that one coefficient.
#[test]
fn the_band_is_three_plans() {
    let with = |friction: Value| {
        let mut value = example();
        value["lean"] = json!({ "angle_deg": 1.0, "downhill_deg": 40.0 });
        value["hinges"].as_object_mut().expect("an object").extend(friction.as_object().expect("an object").clone());
        planned(&value)
    };
    let band = with(json!({ "friction_low": 0.12, "friction_high": 0.35 })).band.expect("a range");
    let [low, likely, high] = [0.12, 0.2, 0.35].map(|friction| with(json!({ "friction_coefficient": friction })));
    assert_eq!([band.friction.low, band.friction.likely, band.friction.high], [0.12, 0.2, 0.35]);
    let peaks = [&low, &likely, &high].map(|plan| plan.peak.shaft_torque_n_m);
    assert_eq!([band.peak_n_m.low, band.peak_n_m.likely, band.peak_n_m.high], peaks);
    assert_eq!(band.verdict_high, high.rating.verdict);
    assert_eq!(band.curve.len(), low.curve.len());
    for (row, (low, high)) in band.curve.iter().zip(low.curve.iter().zip(&high.curve)) {
        assert_eq!(row.leaf_deg, low.leaf_deg);
        assert_eq!(row.shaft_torque_open_low_n_m, low.shaft_torque_open_n_m);
        assert_eq!(row.shaft_torque_close_low_n_m, low.shaft_torque_close_n_m);
        assert_eq!(row.shaft_torque_open_high_n_m, high.shaft_torque_open_n_m);
        assert_eq!(row.shaft_torque_close_high_n_m, high.shaft_torque_close_n_m);
    }
}
