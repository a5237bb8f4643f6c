//! A valid job in which a rule's field stands: blocks that the starting job does without are put in first.

use super::job;
use serde_json::{Value, json};

const PLACE: &str = "leaf.members.place.";

/// The member a rule of the list of members belongs to.
fn member(field: &str) -> Value {
    let place = json!({ "from_m": 0.1, "to_m": 2.9, "height_m": 1.4 });
    match field {
        "thickness_m" | "gap_m" => {
            json!({ "section": "boards", "thickness_m": 0.02, "face_m": 0.1, "density_kg_m3": 500, "place": place })
        }
        "wire_m" | "pitch_m" => json!({ "section": "mesh", "wire_m": 0.005, "pitch_m": 0.05, "place": place }),
        _ => json!({ "section": "tube", "face_m": 0.05, "wall_m": 0.003, "place": { "from_m": 0.1, "to_m": 2.9 } }),
    }
}

fn from(field: &str) -> Value {
    match field {
        "number" | "gust_factor" | "height_factor" => {
            json!({ "kind": "beaufort", "number": 6, "gust_factor": 1.6, "height_factor": 0.7 })
        }
        "basic_m_s" | "orography" | "yearly_probability" => {
            json!({ "kind": "en1991", "terrain": "II", "basic_m_s": 20, "height_m": 2 })
        }
        _ => {
            json!({ "kind": "asce7", "edition": "7-05", "level": "allowable", "exposure": "C", "speed_m_s": 20, "height_m": 2 })
        }
    }
}

fn shape(field: &str) -> Value {
    match field {
        "bar_m" | "pitch_m" => json!({ "kind": "asce7_open", "bars": "flat", "bar_m": 0.04, "pitch_m": 0.12 }),
        "end_effect" => json!({ "kind": "en1991_lattice", "solidity": 0.4 }),
        "shelter_factor" => json!({ "kind": "en1991_wall", "solidity": 1 }),
        _ => json!({ "kind": "asce7_wall", "solidity": 1 }),
    }
}

/// A set-out block in which every field stands.
fn setout() -> Value {
    json!({ "shaft_x_m": [-0.55, -0.15], "shaft_y_m": [0.25, 0.7], "bracket_u_m": [0.7, 1.5], "bracket_v_m": 0.06,
        "crank_m": [0.35, 0.9], "link_m": [0.35, 0.9], "straightness": [0.96, 1.0], "square_deg": 12, "least_lever_m": 0.25,
        "shaft_travel_deg": 170,
        "place": { "x_m": -0.3, "y_m": 0.4 } })
}

/// A motion block in which every field stands.
pub fn motion() -> Value {
    json!({ "motor": { "stall_torque_n_m": 900, "no_load_speed_deg_s": 12, "rated_v": 24 }, "duty": {} })
}

/// A site with means of protection.
pub fn site() -> Value {
    json!({ "public": false, "guarded": false, "homes": 1,
        "means": [{ "kind": "inherent" },
                  { "kind": "contact", "direction": "close", "monitored": true, "reaches": ["leading_edge_closing"],
                    "area": { "on": "leaf", "from_x_m": 3.2, "from_y_m": 0, "to_x_m": 3.2, "to_y_m": 0.1 } }] })
}

/// The job, and the path of the field in it: the rule's, with an index in a list.
pub fn carrier(rule: &str) -> (Value, String) {
    let mut job = job();
    let last = rule.rsplit('.').next().expect("a name");
    let mut path = rule.to_string();
    if rule.starts_with("hinges.pull") {
        job["hinges"] = json!({ "kind": "measured", "pull_open_n": 45, "pull_close_n": 41, "pull_radius_m": 3.0, "pull_leaf_deg": 45 });
    } else if rule == "hinges.rise_m" {
        job["hinges"]["kind"] = json!("rising");
        job["hinges"]["rise_m"] = json!(0.02);
        // With any friction the steepest ramps of the range bind.
        job["hinges"]["friction_coefficient"] = json!(0);
    } else if rule.starts_with("wind.from") {
        job["wind"]["from"] = from(last);
        job["wind"]["speed_m_s"] = Value::Null;
    } else if rule.starts_with("wind.shape") {
        job["leaf"]["height_m"] = json!(1.6);
        job["wind"]["shape"] = shape(last);
        job["wind"]["force_coefficient"] = Value::Null;
    } else if rule.starts_with("leaf.members") {
        let field = if rule.starts_with(PLACE) { "face_m" } else { last };
        job["leaf"]["members"] = json!([member(field)]);
        path = rule.replacen("members.", "members.0.", 1);
    } else if rule.starts_with("ice") {
        job["ice"] = json!({ "thickness_m": 0.005 });
    } else if rule.starts_with("ground") {
        job["ground"] = json!({ "gap_m": 0.08 });
    } else if rule.starts_with("drag") {
        job["drag"] = json!({});
    } else if rule.starts_with("obstacles") {
        job["obstacles"] = json!([{ "x_m": [-3, -2], "y_m": [2, 3] }]);
        path = rule.replacen("obstacles.", "obstacles.0.", 1);
    } else if ["leaf.face_m", "leaf.thickness_m", "leaf.heel_m", "arm_half_width_m"].contains(&rule) {
        // They are assumed where something is held against them.
        job["obstacles"] = json!([]);
    } else if rule.starts_with("operator.body") {
        job["operator"]["body"] = json!({ "along_m": [-0.1, 0.3], "across_m": [-0.1, 0.1] });
    } else if rule.starts_with("migrated") {
        job["migrated"] = json!({});
    } else if let Some(block) =
        ["marks", "tape", "as_built", "settings", "record"].into_iter().find(|block| rule.starts_with(block))
    {
        job[block] = json!({});
    } else if rule.starts_with("motion.motor.curve") {
        let row = |speed: f64, torque: f64| json!({ "speed_deg_s": speed, "torque_n_m": torque });
        job["motion"] =
            json!({ "motor": { "curve": [row(0.0, 500.0), row(9.0, 900.0), row(12.0, 0.0)], "rated_v": 230 } });
        path = rule.replacen("curve.", "curve.1.", 1);
    } else if rule.starts_with("motion") {
        job["motion"] = motion();
    } else if rule.starts_with("breakaway") || rule.starts_with("contact") {
        job[rule.split('.').next().expect("a block")] = json!({});
    } else if rule.starts_with("holding") {
        job["holding"] = json!({});
        job["storm"] = json!({ "speed_m_s": 28, "force_coefficient": 1.4 });
    } else if rule.starts_with("site") {
        job["site"] = site();
        path = rule.replacen("means.", "means.1.", 1);
    } else if rule.starts_with("setout") {
        job["setout"] = setout();
    }
    (job, path)
}

/// The carrier with a value put at the field; at the lower end of a range, unless the whole range is to be silent.
pub fn carried(rule: &str, value: Value) -> (Value, String) {
    let (mut job, mut path) = carrier(rule);
    let mut place = &mut job;
    for key in path.split('.') {
        place = match key.parse::<usize>() {
            Ok(index) => &mut place[index],
            Err(_) => &mut place[key],
        };
    }
    if place.is_array() && !value.is_null() {
        path += ".0";
        place = &mut place[0];
    }
    *place = value;
    (job, path)
}
