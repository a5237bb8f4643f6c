//! Documents of schema 1 that said things in several places: the same gate on the same ground afterwards, and what was typed comes back.

use super::{faults, old};
use pintle_core::{
    Document,
    fault::FaultCode,
    job::{Job, Stopped},
    packed::unpack,
    plan::{FindingCode as Code, Plan, plan},
};
use serde_json::{Value, json};

const THREE_LISTS: &str = include_str!("../fixtures/links/three-lists.json");

fn before() -> Value {
    serde_json::from_str(THREE_LISTS).expect("JSON")
}

fn opened(job: &Value) -> Value {
    let document: Document = serde_json::from_value(job.clone()).expect("a document");
    serde_json::to_value(Job::open(&document).expect("it opens")).expect("JSON")
}

/// Whether two are one document: a number is a number, written with a point or without, and keys have no order.
#[track_caller]
fn same(one: &Value, other: Value) {
    fn plain(value: &Value) -> Value {
        match value {
            Value::Number(number) => json!(number.as_f64()),
            Value::Array(items) => items.iter().map(plain).collect(),
            Value::Object(entries) => {
                Value::Object(entries.iter().map(|(key, value)| (key.clone(), plain(value))).collect())
            }
            other => other.clone(),
        }
    }
    assert_eq!(plain(one), plain(&other));
}

fn planned(job: &Value) -> Plan {
    let document: Document = serde_json::from_value(job.clone()).expect("a document");
    plan(&Job::read(&document).expect("valid")).expect("it works")
}

/// One list, each thing once where it was said twice, in the order site, room, post, what the arm kept out of.
#[test]
fn three_lists_become_one() {
    let now = opened(&before());
    same(&now["schema"], json!(2));
    same(
        &now["obstacles"],
        json!([
            { "x_m": [4.0, 4.5], "y_m": [-0.2, 0.2] },
            { "x_m": [-1.5, -0.6], "y_m": [1.0, 3.0] },
            { "x_m": [-0.35, -0.12], "y_m": [-0.1, 0.1], "kind": "post", "hinge_post": true },
            { "x_m": [-0.9, -0.6], "y_m": [0.2, 0.4], "stops": ["pad", "arm"] },
        ]),
    );
    for gone in
        ["/room", "/setout/keep_out", "/setout/arm_half_width_m", "/site/obstacles", "/site/leaf_half_thickness_m"]
    {
        assert_eq!(now.pointer(gone), None, "{gone}");
    }
    // The larger of two that differ, 2 × 0.04 m against 0.0254 + 0.0254 m, and the other noted.
    assert_eq!((&now["arm_half_width_m"], &now["leaf"]["thickness_m"]), (&json!(0.03), &json!(0.08)));
    assert_eq!((&now["leaf"]["face_m"], &now["leaf"]["heel_m"]), (&json!(0.0254), &json!(0.05)));
    same(&now["migrated"], json!({ "arm_half_width_other_m": 0.02, "leaf_thickness_other_m": 0.0508 }));
    let job = Job::read(&serde_json::from_value(now.clone()).expect("a document")).expect("valid");
    let stopping = |what: Stopped| job.stopping(what).map(|(index, _)| index).collect::<Vec<_>>();
    assert_eq!(stopping(Stopped::Leaf), [0, 1, 2]);
    assert_eq!((stopping(Stopped::Arm), stopping(Stopped::Pad)), (vec![0, 1, 2, 3], vec![0, 1, 2, 3]));
    assert_eq!(job.hinge_posts().map(|(index, _)| index).collect::<Vec<_>>(), [2]);
    // What is in today's schema is handed through.
    assert_eq!(opened(&now), now);
}

/// The ground is marked where it was: 0.45 m from the axis line, and from a face an inch proud of it that much less.
#[test]
fn the_points_of_the_ground_are_the_same() {
    let (old_plan, new_plan) = (planned(&before()), planned(&opened(&before())));
    assert_eq!(old_plan, new_plan);
    let marks = new_plan.mark_out.expect("asked for");
    assert_eq!((marks.shaft.from_hinge_line_m, marks.shaft.from_axis_line_m), (-0.25, 0.45));
    assert!((marks.shaft.from_face_m - 0.4246).abs() < 1e-12 && marks.anchors.len() == 4);
    let told = |code: Code| {
        let finding = new_plan.findings.iter().find(|finding| finding.code == code).expect("said");
        finding.values.iter().map(|value| (value.name, value.value)).collect::<Vec<_>>()
    };
    assert_eq!(told(Code::ArmWidthSaidTwice), [("kept", 0.03), ("other", 0.02)]);
    assert_eq!(told(Code::LeafThicknessSaidTwice), [("kept", 0.08), ("other", 0.0508)]);
    // A face that was not said stays on the axis line.
    let mut silent = before();
    silent["room"]["front_m"] = Value::Null;
    silent["room"]["back_m"] = Value::Null;
    let now = opened(&silent);
    assert_eq!((now["leaf"].get("face_m"), &now["leaf"]["thickness_m"]), (None, &json!(0.08)));
    assert_eq!(planned(&silent).mark_out.expect("asked for").face_m, 0.0);
}

/// Every text under the path its number has now; those of a number that was not kept are gone, and a thickness said as half of it is written
/// anew in the units it was typed in.
#[test]
fn what_was_typed_comes_back() {
    let now = opened(&before());
    assert_eq!(
        now["entry"]["typed"],
        json!({
            "leaf.face_m": { "text": "1", "system": "us" },
            "arm_half_width_m": { "text": "30 mm", "system": "metric" },
            "obstacles.2.x_m.0": { "text": "-350", "system": "metric" },
            "leaf.thickness_m": { "text": "80", "system": "metric" },
            "obstacles.0.x_m.1": { "text": "4500 mm", "system": "metric" },
            "obstacles.1.y_m.0": { "text": "1000", "system": "metric" },
            "swing.open_deg": { "text": "90 °", "system": "us" },
            "obstacles.3.y_m.1": { "text": "400", "system": "metric" },
        })
    );
    assert_eq!(
        now["entry"]["setout"],
        json!({ "typed": { "setout.crank_m.1": { "text": "900", "system": "metric" } }, "choices": {} })
    );
    assert_eq!(now["entry"]["choices"], json!({ "site.looked_at": "yes" }));
    assert_eq!(now["entry"]["site"], json!({ "means": [] }));
    // A thickness between two faces, the front on the axis line, is the back's own text.
    let mut flush = before();
    flush["room"]["front_m"] = Value::Null;
    flush["site"]["leaf_half_thickness_m"] = Value::Null;
    flush["entry"]["setout"] = Value::Null;
    flush["entry"]["typed"] = json!({ "room.back_m": { "text": "1 in", "system": "us" } });
    assert_eq!(opened(&flush)["entry"]["typed"], json!({ "leaf.thickness_m": { "text": "1 in", "system": "us" } }));
    // Said by both faces, it is their sum.
    flush["room"]["front_m"] = json!(0.0254);
    assert_eq!(opened(&flush)["entry"]["typed"], json!({ "leaf.thickness_m": { "text": "2\"", "system": "us" } }));
}

/// The same as a link that was sent before.
#[test]
fn a_link_of_schema_1_opens_alike() {
    let file = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("fixtures/links/three-lists.link");
    let text = std::fs::read_to_string(file).expect("a link that was sent");
    let (_, sent) = text.trim().split_once("#job=").expect("a fragment");
    let link = unpack(sent).expect("a link");
    same(&serde_json::to_value(&link).expect("JSON"), before());
    same(&serde_json::to_value(Job::open(&link).expect("it opens")).expect("JSON"), opened(&before()));
}

/// Faults of an old document name its own paths, in a list of its own places.
#[test]
fn faults_name_the_old_paths() {
    let with = |pointer: &str, value: Value| {
        let mut job = before();
        *job.pointer_mut(pointer).expect("it stands") = value;
        faults(&job)
    };
    for (pointer, value, path, code) in [
        ("/room/front_m", json!(0.6), "room.front_m", FaultCode::OutOfRange),
        ("/room/front_m", json!("proud"), "room.front_m", FaultCode::WrongType),
        ("/room/heel_m", json!(-1), "room.heel_m", FaultCode::OutOfRange),
        ("/room/arm_half_width_m", json!(0.7), "room.arm_half_width_m", FaultCode::OutOfRange),
        ("/setout/arm_half_width_m", json!("wide"), "setout.arm_half_width_m", FaultCode::WrongType),
        ("/site/leaf_half_thickness_m", json!(0.6), "site.leaf_half_thickness_m", FaultCode::OutOfRange),
        ("/site/obstacles/1/x_m/0", json!(-21), "site.obstacles.1.x_m.0", FaultCode::OutOfRange),
        ("/setout/keep_out/1/y_m", json!([0.2]), "setout.keep_out.1.y_m", FaultCode::WrongType),
        ("/room/hinge_post/x_m", json!([1, 0]), "room.hinge_post.x_m.1", FaultCode::LeastAboveMost),
        ("/room/obstacles", json!("none"), "room.obstacles", FaultCode::WrongType),
        ("/room", json!([]), "room", FaultCode::WrongType),
        (
            "/site/obstacles/0",
            json!({ "x_m": [0, 1], "y_m": [0, 1], "kind": "post" }),
            "site.obstacles.0.kind",
            FaultCode::UnknownField,
        ),
    ] {
        assert_eq!(with(pointer, value), [(path.to_string(), code)], "{pointer}");
    }
    // What only schema 2 has, schema 1 does not know.
    for (pointer, value, path) in [
        ("/obstacles", json!([]), "obstacles"),
        ("/arm_half_width_m", json!(0.02), "arm_half_width_m"),
        ("/leaf/thickness_m", json!(0.05), "leaf.thickness_m"),
        ("/operator/body", json!({}), "operator.body"),
        ("/room", json!({ "colour": "red" }), "room.colour"),
    ] {
        assert_eq!(faults(&old(pointer, value)), [(path.to_string(), FaultCode::UnknownField)]);
    }
    // Uncertainties move with their fields, and back.
    let mut uncertain = before();
    uncertain["uncertainty"] = json!({ "room.heel_m": 0.1 });
    assert_eq!(faults(&uncertain), [("uncertainty.room.heel_m".to_string(), FaultCode::NotOneOf)]);
}
