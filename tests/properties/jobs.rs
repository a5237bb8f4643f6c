//! Random jobs: valid ones drawn around arms that people build, and documents that may hold anything.

use pintle_core::{
    Document,
    job::Job,
    plan::{Model, Plan, plan},
};
use proptest::prelude::*;
use serde_json::{Value, json};

/// A document as the crate reads it.
pub fn document(value: &Value) -> Document {
    serde_json::from_value(value.clone()).expect("any JSON is a document")
}

pub fn job(value: &Value) -> Job {
    Job::read(&document(value)).unwrap_or_else(|invalid| panic!("{invalid}"))
}

/// The plan of a valid job.
pub fn planned(value: &Value) -> Plan {
    plan(&job(value)).unwrap_or_else(|invalid| panic!("{invalid}"))
}

/// A job with one of its entries put in place or replaced.
pub fn with(value: &Value, key: &str, entry: Value) -> Value {
    let mut value = value.clone();
    value[key] = entry;
    value
}

/// Shaft, bracket, lengths: the arm stretched to `straightness` of its length when closed.
fn arm() -> impl Strategy<Value = Value> {
    let place = (-0.8..0.3f64, -0.6..0.9f64, 0.4..2.0f64, -0.2..0.3f64);
    (place, 0.85..1.0f64, 0.35..0.7f64, any::<bool>()).prop_map(|((x, y, u, v), straightness, crank, left)| {
        let length = (u - x).hypot(v - y) / straightness;
        json!({ "shaft_x_m": x, "shaft_y_m": y, "bracket_u_m": u, "bracket_v_m": v, "crank_m": crank * length,
                "link_m": (1.0 - crank) * length, "elbow": if left { "left" } else { "right" } })
    })
}

fn hinges() -> impl Strategy<Value = Value> {
    let plain = (0.3..3.0f64, 0.005..0.03f64, 0.0..0.5f64).prop_map(|(spacing, radius, friction)| {
        json!({ "kind": "plain", "spacing_m": spacing, "pin_radius_m": radius, "thrust_outer_radius_m": 2.0 * radius,
                "thrust_inner_radius_m": radius, "friction_coefficient": friction })
    });
    let measured = (0.0..200.0f64, 0.0..200.0f64, 0.5..4.0f64, 0.0..90.0f64).prop_map(|(open, close, radius, at)| {
        json!({ "kind": "measured", "pull_open_n": open, "pull_close_n": close, "pull_radius_m": radius, "pull_leaf_deg": at })
    });
    prop_oneof![plain, measured]
}

/// A job whose arm works through the whole swing.
pub fn valid() -> impl Strategy<Value = Value> {
    let leaf = (20.0..800.0f64, 1.0..6.0f64, 0.0..8.0f64, 0.3..0.7f64);
    let lean = (0.0..5.0f64, -180.0..180.0f64);
    let loads = (lean, 0.0..40.0f64, 0.5..2.0f64, 50.0..3000.0f64, 0.5..1.0f64);
    (leaf, hinges(), loads, arm(), 20.0..120.0f64)
        .prop_map(|(leaf, hinges, ((lean, downhill), speed, coefficient, rated, efficiency), arm, open)| {
            let (mass, length, area, centre) = leaf;
            json!({
                "schema": 2,
                "leaf": { "mass_kg": mass, "length_m": length, "wind_area_m2": area, "mass_centroid_m": centre * length },
                "hinges": hinges, "lean": { "angle_deg": lean, "downhill_deg": downhill },
                "wind": { "speed_m_s": speed, "force_coefficient": coefficient },
                "swing": { "open_deg": open }, "arm": arm,
                "operator": { "rated_torque_n_m": rated, "arm_efficiency": efficiency },
            })
        })
        .prop_filter("the arm works", |value| Model::new(&job(value)).is_ok())
}

fn wind_from() -> impl Strategy<Value = Value> {
    let beaufort = (0..12u32, 1.0..2.0f64, 0.5..1.0f64).prop_map(|(number, gust, height)| {
        json!({ "kind": "beaufort", "number": number, "gust_factor": gust, "height_factor": height })
    });
    let edition = prop::sample::select(vec!["7-05", "7-10", "7-16", "7-22"]);
    let exposure = prop::sample::select(vec!["B", "C", "D"]);
    let level = prop::sample::select(vec!["strength", "allowable"]);
    let asce7 = (edition, exposure, level, 0.0..80.0f64, 0.5..6.0f64).prop_map(|(edition, exposure, level, speed, height)| {
        json!({ "kind": "asce7", "edition": edition, "level": level, "exposure": exposure, "speed_m_s": speed, "height_m": height })
    });
    let terrain = prop::sample::select(vec!["0", "I", "II", "III", "IV"]);
    let en1991 = (terrain, 0.0..40.0f64, 0.5..6.0f64, 0.001..0.5f64).prop_map(|(terrain, basic, height, probability)| {
        json!({ "kind": "en1991", "terrain": terrain, "basic_m_s": basic, "height_m": height, "yearly_probability": probability })
    });
    prop_oneof![beaufort, asce7, en1991]
}

fn wind_shape() -> impl Strategy<Value = Value> {
    prop_oneof![
        (0.7..1.0f64, any::<bool>()).prop_map(|(solidity, eccentric)| {
            json!({ "kind": "asce7_wall", "solidity": solidity, "eccentric": eccentric })
        }),
        (any::<bool>(), 0.001..0.06f64).prop_map(|(round, bar)| {
            json!({ "kind": "asce7_open", "bars": if round { "round" } else { "flat" }, "bar_m": bar, "pitch_m": 0.1 })
        }),
        (0.0..0.8f64, 0.5..1.0f64).prop_map(|(solidity, end_effect)| {
            json!({ "kind": "en1991_lattice", "solidity": solidity, "end_effect": end_effect })
        }),
        (0.8..1.0f64, any::<bool>(), 0.3..1.0f64).prop_map(|(solidity, returns, shelter)| {
            json!({ "kind": "en1991_wall", "solidity": solidity, "returns": returns, "shelter_factor": shelter })
        }),
    ]
}

/// Members that fit any leaf of [`valid`].
fn members() -> Value {
    json!([
        { "section": "tube", "face_m": 0.06, "depth_m": 0.04, "wall_m": 0.003, "place": { "from_m": 0, "to_m": 0.9, "count": 2 } },
        { "section": "round_tube", "face_m": 0.0337, "wall_m": 0.0025, "place": { "from_m": 0.1, "to_m": 0.8, "height_m": 1.5, "count": 7 } },
        { "section": "round_bar", "face_m": 0.012, "place": { "from_m": 0, "to_m": 0.9, "rise_m": 1.2 } },
        { "section": "boards", "thickness_m": 0.02, "face_m": 0.1, "gap_m": 0.02, "density_kg_m3": 500,
          "place": { "from_m": 0, "to_m": 0.9, "height_m": 1 } },
        { "section": "mesh", "wire_m": 0.004, "pitch_m": 0.05, "place": { "from_m": 0, "to_m": 0.9, "height_m": 0.5 } },
    ])
}

/// A valid job with every optional block.
pub fn loaded() -> impl Strategy<Value = Value> {
    let site = (0.0..10.0f64, -180.0..180.0f64, 0.0..0.03f64, 0.0..200.0f64, -180.0..180.0f64);
    // Sensitivity is sixty plans: not in every job.
    let asks = prop::bool::weighted(0.1);
    (valid(), wind_from(), wind_shape(), site, asks).prop_map(|(mut job, from, shape, site, asks)| {
        let (slope, uphill, ice, latch, bearing) = site;
        job["leaf"] = json!({ "length_m": job["leaf"]["length_m"], "height_m": 1.6, "members": members() });
        job["wind"] = json!({ "from": from, "shape": shape, "bearing_deg": bearing });
        job["storm"] = json!({ "from": from, "shape": shape });
        job["ground"] = json!({ "slope_deg": slope, "uphill_deg": uphill, "gap_m": 0.1, "joint_allowance_m": 0.02 });
        job["ice"] = json!({ "thickness_m": ice, "area_factor": 1.2 });
        job["drag"] = json!({ "seal_n_m": 3, "latch_n_m": latch, "wheel_load_n": 200, "wheel_radius_m": 0.8 });
        if job["hinges"]["kind"] == "plain" {
            job["hinges"]["pairing"] = json!("steel_bronze_greased");
            job["hinges"]["friction_coefficient"] = Value::Null;
        }
        job["operator"]["shaft_speed_deg_s"] = json!(9);
        job["motion"] = json!({ "slow_close_deg": 10, "stop_stiffness_n_per_m": 5e5, "duty": { "cycles_per_hour": 4 },
            "motor": { "stall_torque_n_m": 900, "no_load_speed_deg_s": 12, "rated_v": 24, "supply_v": 22 } });
        job["breakaway"] = json!({ "link_force_n": 4000, "slip_torque_n_m": 300 });
        job["holding"] = json!({ "shaft_torque_n_m": 300 });
        job["contact"] = json!({ "edge_travel_m": 0.05 });
        job["site"] = json!({ "public": false, "homes": 2,
            "means": [{ "kind": "contact", "monitored": true, "reaches": ["bottom"] }] });
        job["obstacles"] = json!([{ "x_m": [-0.3, 0.2], "y_m": [2, 3] }]);
        job["settings"] = json!({ "close_timer_s": 20 });
        job["record"] =
            json!({ "pull_open_n": 40, "opening_s": 14, "signs_fixed": true, "date": "2026-03-31", "owner": "n" });
        if asks {
            job["uncertainty"] = json!({ "swing.open_deg": 0.02 });
        }
        job["samples"] = json!(7);
        job
    })
}

/// Values that a form, a hand-written file or a hostile link may hold.
fn anything() -> impl Strategy<Value = Document> {
    let odd = prop_oneof![
        Just(f64::NAN),
        Just(f64::INFINITY),
        Just(f64::NEG_INFINITY),
        Just(0.0),
        Just(-0.0),
        Just(1e300),
        Just(f64::MIN_POSITIVE),
        any::<f64>(),
        -1.0..2.0f64,
        0.0..200.0f64,
    ];
    let leaf = prop_oneof![
        4 => odd.prop_map(Document::Number),
        1 => Just(Document::Null),
        1 => any::<bool>().prop_map(Document::Bool),
        1 => "[a-z]{0,8}".prop_map(Document::Text),
    ];
    leaf.prop_recursive(2, 8, 3, |inner| {
        prop_oneof![
            proptest::collection::vec(inner.clone(), 0..3).prop_map(Document::List),
            proptest::collection::vec(("[a-z_]{1,12}", inner), 0..3).prop_map(Document::Object),
        ]
    })
}

/// Every place in a document, as the list of indices that leads there.
fn places(document: &Document, here: &[usize], found: &mut Vec<Vec<usize>>) {
    let inner: Vec<&Document> = match document {
        Document::Object(entries) => entries.iter().map(|(_, value)| value).collect(),
        Document::List(items) => items.iter().collect(),
        _ => Vec::new(),
    };
    for (index, value) in inner.into_iter().enumerate() {
        let there = [here, &[index]].concat();
        places(value, &there, found);
        found.push(there);
    }
}

fn replace(document: &mut Document, place: &[usize], value: Document) {
    let Some((&first, rest)) = place.split_first() else {
        *document = value;
        return;
    };
    match document {
        Document::Object(entries) => replace(&mut entries[first].1, rest, value),
        Document::List(items) => replace(&mut items[first], rest, value),
        _ => {}
    }
}

/// A job with a few of its places overwritten by anything.
pub fn damaged(base: impl Strategy<Value = Value>) -> impl Strategy<Value = Document> {
    let wounds = proptest::collection::vec((any::<prop::sample::Index>(), anything()), 0..4);
    (base, wounds).prop_map(|(value, wounds)| {
        let mut document = document(&value);
        for (index, wound) in wounds {
            let mut found = Vec::new();
            places(&document, &[], &mut found);
            if !found.is_empty() {
                let place = index.get(&found).clone();
                replace(&mut document, &place, wound);
            }
        }
        document
    })
}
