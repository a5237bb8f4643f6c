//! Where the job says what stands around does not matter: under `site`, under `room`, or some of it under each and some under both.

use crate::jobs::{planned, valid, with};
use pintle_core::plan::{FindingCode, Plan};
use proptest::prelude::*;
use serde_json::{Value, json};

fn rectangle() -> impl Strategy<Value = Value> {
    (-4.0..4.0f64, -4.0..6.0f64, 0.0..1.5f64, 0.0..1.5f64)
        .prop_map(|(x, y, wide, deep)| json!({ "x_m": [x, x + wide], "y_m": [y, y + deep] }))
}

/// Nothing said of leaf and arm as bodies, or something.
fn bodies() -> impl Strategy<Value = Value> {
    prop_oneof![
        Just(json!({})),
        (0.0..0.1f64, 0.0..0.1f64, 0.0..0.2f64, 0.0..0.08f64).prop_map(|(front, back, heel, half)| {
            json!({ "front_m": front, "back_m": back, "heel_m": heel, "arm_half_width_m": half,
                    "hinge_post": { "x_m": [-0.9, -0.4], "y_m": [-0.3, 0.3] } })
        })
    ]
}

/// As schema 1 said it: some of it under the site, some under the room.
fn placed(value: &Value, bodies: &Value, of_site: &[Value], of_room: &[Value]) -> Plan {
    let room = with(bodies, "obstacles", json!(of_room));
    let old = with(value, "schema", json!(1));
    planned(&with(&with(&old, "site", json!({ "obstacles": of_site, "leaf_half_thickness_m": 0 })), "room", room))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn where_an_old_document_said_it_does_not_matter(
        value in valid(), bodies in bodies(), all in prop::collection::vec(rectangle(), 1..5), cut in 0..5usize,
    ) {
        let cut = cut.min(all.len());
        let site = placed(&value, &bodies, &all, &[]);
        prop_assert!(site.clearances.is_some());
        let room = placed(&value, &bodies, &[], &all);
        // The first of it here, the rest there.
        let apart = placed(&value, &bodies, &all[..cut], &all[cut..]);
        let mut now = with(&value, "site", json!({}));
        pintle_tests::around(&mut now, with(&bodies, "obstacles", json!(&all)));
        let now = planned(&now);
        for other in [&room, &apart, &now] {
            prop_assert_eq!(&site.clearances, &other.clearances);
            prop_assert_eq!(&site.entrapment, &other.entrapment);
            let said_twice = |plan: &Plan| {
                let codes = plan.findings.iter().filter(|finding| finding.code != FindingCode::LeafThicknessSaidTwice);
                codes.cloned().collect::<Vec<_>>()
            };
            prop_assert_eq!(said_twice(&site), said_twice(other));
            prop_assert_eq!(&site.overall, &other.overall);
        }
        // What is said twice counts once.
        let again = placed(&value, &bodies, &all, &all);
        prop_assert_eq!(&site.clearances, &again.clearances);
        prop_assert_eq!(&site.entrapment, &again.entrapment);
    }

    /// A post that the leaf's line runs through at an angle within the swing is told, whatever the arm.
    #[test]
    fn a_post_in_the_way_of_the_leaf_is_told(value in valid(), along in 0.2..0.95f64, share in 0.1..0.9f64) {
        let length = value["leaf"]["length_m"].as_f64().unwrap();
        let angle = share * value["swing"]["open_deg"].as_f64().unwrap().to_radians();
        let (x, y) = (along * length * angle.cos(), along * length * angle.sin());
        let post = json!({ "x_m": [x - 0.05, x + 0.05], "y_m": [y - 0.05, y + 0.05] });
        let plan = planned(&with(&value, "obstacles", json!([post])));
        prop_assert!(plan.findings.iter().any(|finding| finding.code == FindingCode::LeafHits));
    }
}
