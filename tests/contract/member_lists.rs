//! Members of a leaf: sections that cannot be, places off the leaf, and what they come to.

use super::lists::{passes, refused};
use super::{fault, with};
use pintle_core::fault::{Allowed, FaultCode};
use serde_json::{Value, json};

fn member(member: Value) -> Value {
    let mut member = member;
    if member["place"].is_null() {
        member["place"] = json!({ "from_m": 0.1, "to_m": 2.9, "height_m": 1.4 });
    }
    with("/leaf/members", json!([member]))
}

/// Half the diameter is the most a round wall can be; an EN 10219 corner of 2·T, 2.5·T, 3·T leaves a square tube less.
#[test]
fn sections_that_cannot_be() {
    for section in ["bar", "round_bar"] {
        passes(&member(json!({ "section": section, "face_m": 0.05 })));
    }
    passes(&member(json!({ "section": "bar", "face_m": 0.05, "depth_m": 0.01 })));
    let round = |wall: f64| member(json!({ "section": "round_tube", "face_m": 0.06, "wall_m": wall }));
    passes(&round(0.03));
    passes(&round(0.03 * (1.0 + 1e-10)));
    let thick = fault(&round(0.0301));
    assert_eq!(
        (thick.path.as_str(), thick.code, thick.found.as_deref()),
        ("leaf.members.0.wall_m", FaultCode::WallTooThick, Some("0.0301"))
    );
    assert!(
        matches!(thick.allowed, Some(Allowed::Range { least: None, most: Some(most), .. }) if (most - 0.03).abs() < 1e-15),
        "{thick:?}"
    );
    let tube = |wall: f64| member(json!({ "section": "tube", "face_m": 0.1, "wall_m": wall }));
    passes(&tube(0.006));
    refused(&tube(0.04), "leaf.members.0.wall_m", FaultCode::WallTooThick);
    let mesh = |wire: f64| member(json!({ "section": "mesh", "wire_m": wire, "pitch_m": 0.02 }));
    passes(&mesh(0.02));
    passes(&mesh(0.005));
    refused(&mesh(0.021), "leaf.members.0.wire_m", FaultCode::OutOfRange);
}

#[test]
fn members_lie_on_the_leaf() {
    let bar = |from: f64, to: f64| {
        member(json!({ "section": "bar", "face_m": 0.05, "place": { "from_m": from, "to_m": to } }))
    };
    passes(&bar(0.0, 3.2));
    passes(&bar(-0.5, 3.2));
    refused(&bar(0.0, 3.21), "leaf.members.0.place.to_m", FaultCode::OutsideLeaf);
    refused(&bar(3.21, 0.0), "leaf.members.0.place.from_m", FaultCode::OutsideLeaf);
    for section in ["sheet", "boards", "mesh"] {
        let flat = json!({ "section": section, "thickness_m": 0.002, "place": { "from_m": 0.1, "to_m": 2.9 } });
        let mut flat = flat.as_object().expect("an object").clone();
        match section {
            "mesh" => {
                flat.remove("thickness_m");
                flat.extend([("wire_m".into(), json!(0.005)), ("pitch_m".into(), json!(0.05))]);
            }
            "boards" => drop(flat.insert("face_m".into(), json!(0.1))),
            _ => {}
        }
        refused(&member(Value::Object(flat.clone())), "leaf.members.0.place.height_m", FaultCode::Missing);
        flat["place"]["height_m"] = json!(1.4);
        passes(&member(Value::Object(flat)));
    }
    // What the members come to has to be a leaf: 5000 kg at most, 1 kg at least.
    let heavy = |face: f64| {
        member(json!({ "section": "bar", "face_m": face, "place": { "from_m": 0, "to_m": 1, "count": 1 } }))
    };
    for (face, told) in [(0.79, false), (0.80, true), (0.0114, false), (0.0112, true)] {
        match told {
            // 7850 kg/m³ of steel, a metre long: 4899 and 5024 kg, 1.02 and 0.985 kg.
            true => refused(&heavy(face), "leaf.members", FaultCode::OutOfRange),
            false => passes(&heavy(face)),
        }
    }
    // Mass and wind area may be left out where there are members, and both or neither otherwise.
    let mut bare = bar(0.0, 3.2);
    bare["leaf"]["mass_kg"] = Value::Null;
    bare["leaf"]["wind_area_m2"] = Value::Null;
    passes(&bare);
    for key in ["mass_kg", "wind_area_m2"] {
        refused(&with(&format!("/leaf/{key}"), Value::Null), &format!("leaf.{key}"), FaultCode::Missing);
    }
}
