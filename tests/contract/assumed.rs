//! What a plan says it assumed: every field with a default that was not said, and none that was.

use super::carriers::carrier;
use super::{answer, job, with};
use pintle_core::job::fields;
use serde_json::{Value, json};

fn assumed(job: &Value) -> Vec<&'static str> {
    answer(job).unwrap_or_else(|invalid| panic!("{invalid}")).assumed
}

/// The carrier of a rule with a value, or nothing, at its field.
fn at(rule: &str, value: Value) -> Value {
    let (mut job, path) = carrier(rule);
    let mut place = &mut job;
    for key in path.split('.') {
        place = match key.parse::<usize>() {
            Ok(index) => &mut place[index],
            Err(_) => &mut place[key],
        };
    }
    *place = value;
    job
}

#[test]
fn every_default_is_listed_where_it_stands_in() {
    for rule in fields() {
        let times = |value: Value| {
            let paths = assumed(&at(rule.path, value));
            paths.iter().filter(|path| **path == rule.path).count()
        };
        match rule.default {
            Some(default) => {
                assert_eq!(times(Value::Null), 1, "{} is assumed", rule.path);
                assert_eq!(times(json!(default)), 0, "{} is said", rule.path);
            }
            // What is derived from other fields stands for what was not said, too.
            None if ["leaf.mass_centroid_m", "leaf.wind_centroid_m", "leaf.inertia_kg_m2"].contains(&rule.path)
                || [
                    "motion.slow_speed_deg_s",
                    "motion.motor.supply_v",
                    "breakaway.push_radius_m",
                    "operator.back_efficiency",
                ]
                .contains(&rule.path) =>
            {
                assert_eq!(times(Value::Null), 1, "{} is assumed", rule.path);
                assert_eq!(times(json!(rule.example)), 0, "{} is said", rule.path);
            }
            // Unknown stays unknown.
            None if !rule.required && rule.path != "setout.straightness" => {
                assert_eq!(times(Value::Null), 0, "{} is not assumed", rule.path);
            }
            None => {}
        }
    }
    let straightness = |value: Value| assumed(&at("setout.straightness", value)).contains(&"setout.straightness");
    assert!(straightness(Value::Null) && !straightness(json!([0.9, 1.0])));
}

#[test]
fn the_storm_assumes_under_its_own_path() {
    let storm = |from: Value, shape: Value| {
        let mut job = with("/leaf/height_m", json!(1.6));
        job["storm"] = json!({ "from": from, "shape": shape });
        assumed(&job).into_iter().filter(|path| path.starts_with("storm")).collect::<Vec<_>>()
    };
    let asce7 = json!({ "kind": "asce7", "edition": "7-05", "level": "allowable", "exposure": "C", "speed_m_s": 40, "height_m": 2 });
    let mut paths = storm(asce7, json!({ "kind": "asce7_wall", "solidity": 1 }));
    paths.sort_unstable();
    let factors =
        ["storm.from.directionality", "storm.from.gust_effect", "storm.from.importance", "storm.from.topographic"];
    let mut expected = factors.to_vec();
    expected.extend(["storm.air_density_kg_m3", "storm.shape.clearance", "storm.shape.eccentric"]);
    expected.sort_unstable();
    assert_eq!(paths, expected);
    let en1991 = json!({ "kind": "en1991", "terrain": "II", "basic_m_s": 26, "height_m": 2, "orography": 1.0 });
    let mut paths = storm(en1991, json!({ "kind": "en1991_wall", "solidity": 1, "returns": false }));
    paths.sort_unstable();
    assert_eq!(paths, ["storm.air_density_kg_m3", "storm.from.yearly_probability", "storm.shape.shelter_factor"]);
    let en1991 =
        json!({ "kind": "en1991", "terrain": "II", "basic_m_s": 26, "height_m": 2, "yearly_probability": 0.1 });
    let mut paths = storm(en1991, json!({ "kind": "en1991_wall", "solidity": 1, "shelter_factor": 1 }));
    paths.sort_unstable();
    assert_eq!(paths, ["storm.air_density_kg_m3", "storm.from.orography", "storm.shape.returns"]);
}

/// Two members of steel are assumed once; a plumb line and members are answers, no assumptions.
#[test]
fn answers_are_no_assumptions() {
    let mut job = job();
    job["leaf"]["members"] = json!([
        { "section": "bar", "face_m": 0.05, "place": { "from_m": 0.1, "to_m": 2.9, "height_m": 1, "rise_m": 0 } },
        { "section": "bar", "face_m": 0.05, "place": { "from_m": 0.1, "to_m": 2.9, "height_m": 1, "rise_m": 0 } }]);
    let paths = assumed(&job);
    let times = |wanted: &str| paths.iter().filter(|path| **path == wanted).count();
    assert_eq!((times("leaf.members.density_kg_m3"), times("leaf.members.place.count")), (1, 1));
    assert_eq!(times("leaf.members.place.rise_m"), 0);
    assert!(
        paths.iter().all(|path| !["leaf.mass_centroid_m", "leaf.inertia_kg_m2", "leaf.members.corners"].contains(path))
    );
    job["leaf"]["members"][0] =
        json!({ "section": "tube", "face_m": 0.05, "wall_m": 0.003, "place": { "from_m": 0.1, "to_m": 2.9 } });
    assert!(assumed(&job).contains(&"leaf.members.corners"));
    job["leaf"]["members"][0]["corners"] = json!("aisc");
    assert!(!assumed(&job).contains(&"leaf.members.corners"));
    let plumb = json!({ "plumb_offset_m": 0.01, "plumb_height_m": 1.0 });
    assert!(!assumed(&with("/lean", plumb)).contains(&"lean.angle_deg"));
    assert!(assumed(&with("/lean", json!({}))).contains(&"lean.angle_deg"));
    for (collar, told) in [(Value::Null, true), (json!("uniform_wear"), false)] {
        assert_eq!(assumed(&with("/hinges/collar", collar)).contains(&"hinges.collar"), told);
    }
}
