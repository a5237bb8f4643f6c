//! Forces on people, class of use, means of protection, sensors.

use super::{LESS, MORE, job, planned, silent, tells};
use pintle_core::{FindingCode as Code, Severity};
use serde_json::{Value, json};

fn contact(contact: Value) -> Value {
    let mut job = job();
    job["contact"] = contact;
    job["motion"] = json!({});
    job
}

#[test]
fn forces_against_their_limits() {
    let person = planned(&contact(json!({}))).person.expect("asked for");
    tells(&contact(json!({})), Code::ForceMustBeMeasured, Severity::Note, &[]);
    silent(&job(), Code::ForceMustBeMeasured);
    let push = person.edge_push_n;
    let values = [("force", push), ("limit", push * LESS), ("leaf_angle", person.edge_push_leaf_deg)];
    tells(&contact(json!({ "static_limit_n": push * LESS })), Code::PushOverLimit, Severity::Look, &values);
    for limit in [push, push * MORE] {
        silent(&contact(json!({ "static_limit_n": limit })), Code::PushOverLimit);
    }
    // F = v·√(k·m) with k = 500 N/mm: the speed that keeps a limit is the limit over √(k·m).
    let impact = person.impact_n.expect("it moves");
    let root = (5e5 * person.edge_mass_kg).sqrt();
    assert!((impact - person.edge_speed_m_s.expect("it moves") * root).abs() < 1e-9 * impact);
    let values = [("force", impact), ("limit", impact * LESS), ("speed", impact * LESS / root)];
    tells(&contact(json!({ "dynamic_limit_n": impact * LESS })), Code::ImpactOverLimit, Severity::Look, &values);
    for limit in [impact, impact * MORE] {
        silent(&contact(json!({ "dynamic_limit_n": limit })), Code::ImpactOverLimit);
    }
    let mut still = contact(json!({ "dynamic_limit_n": 10 }));
    still["motion"] = Value::Null;
    silent(&still, Code::ImpactOverLimit);
}

#[test]
fn the_edge_gives_too_little() {
    let needed = planned(&contact(json!({}))).person.and_then(|person| person.edge_travel_m).expect("it moves");
    let edge = |travel: f64| contact(json!({ "edge_travel_m": travel }));
    let values = [("needed", needed), ("limit", needed * LESS)];
    tells(&edge(needed * LESS), Code::EdgeTravelShort, Severity::Look, &values);
    for travel in [needed, needed * MORE] {
        silent(&edge(travel), Code::EdgeTravelShort);
    }
    silent(&contact(json!({})), Code::EdgeTravelShort);
}

fn site(site: Value) -> Value {
    let mut job = job();
    job["site"] = site;
    job
}

#[test]
fn what_is_not_said_of_the_site() {
    let known =
        json!({ "public": false, "guarded": false, "homes": 1, "signs_both_faces": true, "pedestrian_way": true });
    for code in [Code::ClassUndecided, Code::SignsMissing, Code::PedestrianWayMissing] {
        silent(&site(known.clone()), code);
        silent(&job(), code);
    }
    for (key, code) in [("signs_both_faces", Code::SignsMissing), ("pedestrian_way", Code::PedestrianWayMissing)] {
        for answer in [json!(false), Value::Null] {
            let mut site = site(known.clone());
            site["site"][key] = answer;
            tells(&site, code, Severity::Look, &[]);
        }
    }
    tells(&site(json!({ "public": null })), Code::ClassUndecided, Severity::Look, &[]);
}

/// Two independent means in each direction where a zone exists (UL 325, from memory); one that is not monitored does not count.
#[test]
fn means_are_counted_each_way() {
    let means = |list: Value| site(json!({ "public": false, "guarded": false, "homes": 1, "means": list }));
    let none = planned(&means(json!([]))).entrapment.expect("a site").means;
    for (count, code) in none.iter().zip([Code::MeansMissingOpening, Code::MeansMissingClosing]) {
        assert!(count.wanted > 0);
        let values = [("wanted", f64::from(count.wanted)), ("counted", 0.0)];
        tells(&means(json!([])), code, Severity::Look, &values);
    }
    let sensor = |kind: &str, direction: &str| json!({ "kind": kind, "direction": direction, "monitored": true });
    let closing = means(json!([sensor("non_contact", "close"), sensor("contact", "close")]));
    let counted = planned(&closing).entrapment.expect("a site").means;
    assert_eq!(counted[0].counted, 0);
    assert_eq!((counted[1].counted, counted[1].wanted), (2, 2), "just as many as are wanted");
    silent(&closing, Code::MeansMissingClosing);
    let values = [("wanted", f64::from(counted[0].wanted)), ("counted", 0.0)];
    tells(&closing, Code::MeansMissingOpening, Severity::Look, &values);
}

#[test]
fn zones_that_nothing_reaches() {
    let all = [
        "leading_edge_closing",
        "leading_edge_opening",
        "hinge_side",
        "bottom",
        "elbow",
        "arm_scissors",
        "behind_leaf",
    ];
    let means = |reaches: &[&str]| {
        let list = json!([{ "kind": "contact", "monitored": true, "reaches": reaches }]);
        site(json!({ "means": list, "obstacles": [{ "x_m": [-1.0, -0.6], "y_m": [0.5, 3.0] }] }))
    };
    silent(&means(&all), Code::ZonesUnreached);
    let unreached = planned(&means(&[])).entrapment.expect("a site").unreached;
    assert!(unreached.len() >= 3, "{unreached:?}");
    tells(&means(&[]), Code::ZonesUnreached, Severity::Look, &[("count", unreached.len() as f64)]);
    tells(&means(&all[1..]), Code::ZonesUnreached, Severity::Look, &[("count", 1.0)]);
}

/// A strip on the leaf's edge senses what it is said to; 0.5 m short of the edge, and only 10 mm wide, it misses.
#[test]
fn a_sensor_that_misses_its_zone() {
    let strip = |x: f64, reaches: Value| {
        let area =
            json!({ "on": "leaf", "from_x_m": x, "from_y_m": 0, "to_x_m": x, "to_y_m": 0.01, "half_width_m": 0.01 });
        site(json!({ "means": [{ "kind": "contact", "monitored": true, "reaches": reaches, "area": area }] }))
    };
    silent(&strip(3.2, json!(["leading_edge_closing"])), Code::SensorsMissZones);
    let short = strip(2.7, json!(["leading_edge_closing"]));
    let sensors = planned(&short).entrapment.expect("a site").sensors;
    let gaps: Vec<f64> = sensors[0].zones.iter().filter(|zone| zone.gap_m > 0.0).map(|zone| zone.gap_m).collect();
    assert!(gaps.len() > 1, "others are missed too, and nothing said of them");
    let own = sensors[0]
        .zones
        .iter()
        .find(|zone| zone.kind == pintle_core::ZoneKind::LeadingEdgeClosing)
        .expect("it is there");
    let values = [("count", 1.0), ("gap", own.gap_m)];
    tells(&short, Code::SensorsMissZones, Severity::Look, &values);
    // Two that are missed: the widest gap is told.
    let both = strip(2.7, json!(["leading_edge_closing", "hinge_side"]));
    let of = |kind: pintle_core::ZoneKind| {
        sensors[0].zones.iter().find(|zone| zone.kind == kind).map_or(0.0, |zone| zone.gap_m)
    };
    let widest = of(pintle_core::ZoneKind::LeadingEdgeClosing).max(of(pintle_core::ZoneKind::HingeSide));
    tells(&both, Code::SensorsMissZones, Severity::Look, &[("count", 2.0), ("gap", widest)]);
    silent(&strip(2.7, Value::Null), Code::SensorsMissZones);
}
