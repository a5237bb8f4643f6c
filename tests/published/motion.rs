//! Motion, motors, stops and forces on people: values.md's closed forms and printed examples.

use super::check::{Check, Provenance::*, check};
use pintle_core::{
    Document, Job, Model, Profile, Source, SourceProvenance, compression_m, edge_mass_kg, holding_torque_n_m,
    impact_force_n, impact_speed_m_s, motor_power_w, motor_torque_n_m, spring_force_n, trapezoid_time_s,
};
use std::f64::consts::{FRAC_PI_2, TAU};

const PROFILE: (&str, &str) = ("tech-champion.com, Velocity time profiles", "v_pk = √(2abD/(a+b))");
const TRAPEZOID: (&str, &str) = ("constant-acceleration kinematics", "T = D/v + v/a; T = 2√(D/a), v_pk = √(aD)");
const MIT: (&str, &str) = ("lancet.mit.edu/motor/motors3-4.html", "half the no-load speed: T_s/2");
const MIT_POWER: (&str, &str) = ("lancet.mit.edu/motor/motors3-4.html", "inputs; P_max = T_s·ω_n/4");
const EDGE: (&str, &str) = ("standard result, any mechanics text", "m = I/L², E = ½mv², F = v√(km), x = v√(m/k)");
const EN_12453: (&str, &str) =
    ("EN 12453:2001 (superseded), Annex A", "dynamic force limits 400 N and 1400 N; v = F/√(km)");
const LEVER: (&str, &str) =
    ("dhf officer, Door Industry Journal Winter 2020 p96", "F = T/r: most near the hinge, least at the edge");

/// An uneven triangle: 100 long, 2 up, 4 down, no speed limit in reach.
fn uneven() -> Profile {
    Profile::trapezoid(100.0, 1e3, 2.0, 4.0)
}

/// A quarter turn at some speed and acceleration, rad.
fn quarter(speed: f64, acceleration: f64) -> Profile {
    Profile::trapezoid(FRAC_PI_2, speed, acceleration, acceleration)
}

fn rpm(turns: f64) -> f64 {
    turns * TAU / 60.0
}

/// 200 kg, 3.5 m: edge mass, kg.
fn edge() -> f64 {
    edge_mass_kg(200.0 * 3.5 * 3.5 / 3.0, 3.5)
}

/// A quarter turn in 15 s at constant speed: edge speed, m/s.
fn edge_speed() -> f64 {
    FRAC_PI_2 / 15.0 * 3.5
}

/// Push on a person at a distance from the hinge: the demonstration job, blocked half open.
fn push(share: f64) -> f64 {
    let mut job: serde_json::Value =
        serde_json::from_str(include_str!("../../www/data/starting-job.json")).expect("JSON");
    job["contact"] = serde_json::json!({ "near_m": share * 3.2 });
    job["samples"] = serde_json::json!(3);
    let document: Document = serde_json::from_value(job).expect("a document");
    let plan = pintle_core::plan(&Job::read(&document).expect("valid")).expect("valid");
    let row = plan.person.expect("a contact").curve[1];
    row.near_n.expect("no dead point") / row.edge_n.expect("no dead point")
}

/// Torque at the shaft that holds 100 N·m on the leaf of the reference arm, leaf closed.
fn holding(efficiency: f64) -> f64 {
    let mut job: serde_json::Value =
        serde_json::from_str(include_str!("../../www/data/starting-job.json")).expect("JSON");
    job["arm"] = serde_json::json!({ "shaft_x_m": -0.25, "shaft_y_m": 0.35, "bracket_u_m": 0.9, "bracket_v_m": 0,
        "crank_m": 0.5, "link_m": 0.75, "elbow": "left" });
    let document: Document = serde_json::from_value(job).expect("a document");
    let model = Model::new(&Job::read(&document).expect("valid")).expect("valid");
    holding_torque_n_m(100.0, &model.linkage().pose(0.0), efficiency)
}

pub const CHECKS: &[Check] = &[
    check("11 uneven peak", "D 100, a 2, b 4: peak speed", PROFILE, Derived, "16.3299", || uneven().peak_speed()),
    check("11 uneven time", "the same: time, s", PROFILE, Derived, "12.2474", || uneven().time_s()),
    check("11 quarter", "90°, ω .15 rad/s, α .1 rad/s²: s", TRAPEZOID, Derived, "11.9720", || {
        quarter(0.15, 0.1).time_s()
    }),
    check("11 quarter formula", "the same by the closed form: s", TRAPEZOID, Derived, "11.9720", || {
        trapezoid_time_s(FRAC_PI_2, 0.15, 0.1)
    }),
    check("11 triangle", "90°, α .1, no speed limit in reach: s", TRAPEZOID, Derived, "7.92665", || {
        quarter(9.0, 0.1).time_s()
    }),
    check("11 triangle formula", "the same by the closed form: s", TRAPEZOID, Derived, "7.92665", || {
        trapezoid_time_s(FRAC_PI_2, 9.0, 0.1)
    }),
    check("11 triangle peak", "the same: peak speed, rad/s", TRAPEZOID, Derived, "0.396333", || {
        quarter(9.0, 0.1).peak_speed()
    }),
    check("11 motor half", "ω_n 600 rpm, T_s .325 N·m, at 300 rpm: N·m", MIT, Seen, "0.163", || {
        motor_torque_n_m(0.325, 600.0, 300.0)
    }),
    check("11 motor power 1", "ω_n 600 rpm, T_s .325: W", MIT_POWER, Derived, "5.10509", || {
        motor_power_w(0.325, rpm(600.0), rpm(300.0))
    }),
    check("11 motor power 2", "ω_n 3750 rpm, T_s .0722: W", MIT_POWER, Derived, "7.08822", || {
        motor_power_w(0.0722, rpm(3750.0), rpm(1875.0))
    }),
    check("11 motor power 3", "ω_n 92 rpm, T_s 1.6: W", MIT_POWER, Derived, "3.85369", || {
        motor_power_w(1.6, rpm(92.0), rpm(46.0))
    }),
    check(
        "11 motor loaded",
        "Kt .12, Ke 12 V/krpm, R 1.5 Ω, 10 V (stall .8 N·m, no load 833.333 rpm): N·m at 208.333 rpm",
        ("store.perpetualshade.com/juntos/45751752", "inputs; T = T_s(1 − ω/ω_n)"),
        Derived,
        "0.6",
        || motor_torque_n_m(0.8, 833.333, 208.333),
    ),
    check("10 edge mass", "200 kg, 3.5 m: kg at the edge", EDGE, Derived, "66.6667", edge),
    check("10 edge speed", "90° in 15 s at 3.5 m: m/s", EDGE, Derived, "0.366519", edge_speed),
    check("10 energy", "the same: J", EDGE, Derived, "4.47788", || 0.5 * edge() * edge_speed() * edge_speed()),
    check("10 impact", "the same, k 500 N/mm: N", EDGE, Derived, "2116.10", || {
        impact_force_n(edge_speed(), 5e5, edge())
    }),
    check("10 stop", "the same by the energy about the hinge, wherever it is met: N", EDGE, Derived, "2116.10", || {
        spring_force_n(5e5, 0.5 * (200.0 * 3.5 * 3.5 / 3.0) * (FRAC_PI_2 / 15.0).powi(2))
    }),
    check("10 force 1", "100 kg, .2 m/s, 5e5 N/m: N", EDGE, Derived, "1414.21", || impact_force_n(0.2, 5e5, 100.0)),
    check("10 compression 1", "the same: mm", EDGE, Derived, "2.82843", || 1e3 * compression_m(0.2, 5e5, 100.0)),
    check("10 force 2", "100 kg, .3 m/s, 5e4 N/m: N", EDGE, Derived, "670.820", || impact_force_n(0.3, 5e4, 100.0)),
    check("10 compression 2", "the same: mm", EDGE, Derived, "13.4164", || 1e3 * compression_m(0.3, 5e4, 100.0)),
    check("9 400 N 20 kg", "k 5e5: m/s", EN_12453, FromMemory, "0.126491", || impact_speed_m_s(400.0, 5e5, 20.0)),
    check("9 1400 N 20 kg", "k 5e5: m/s", EN_12453, FromMemory, "0.442719", || impact_speed_m_s(1400.0, 5e5, 20.0)),
    check("9 400 N 50 kg", "k 5e5: m/s", EN_12453, FromMemory, "0.08", || impact_speed_m_s(400.0, 5e5, 50.0)),
    check("9 1400 N 50 kg", "k 5e5: m/s", EN_12453, FromMemory, "0.28", || impact_speed_m_s(1400.0, 5e5, 50.0)),
    check("9 400 N 100 kg", "k 5e5: m/s", EN_12453, FromMemory, "0.0565685", || impact_speed_m_s(400.0, 5e5, 100.0)),
    check("9 1400 N 100 kg", "k 5e5: m/s", EN_12453, FromMemory, "0.197990", || impact_speed_m_s(1400.0, 5e5, 100.0)),
    check("9 400 N 200 kg", "k 5e5: m/s", EN_12453, FromMemory, "0.04", || impact_speed_m_s(400.0, 5e5, 200.0)),
    check("9 1400 N 200 kg", "k 5e5: m/s", EN_12453, FromMemory, "0.14", || impact_speed_m_s(1400.0, 5e5, 200.0)),
    check("9 near the hinge", "push at a tenth of the leaf over push at its edge", LEVER, Seen, "10.0", || push(0.1)),
    check(
        "1.5 holding",
        "reference arm, 100 N·m, closed, no loss: N·m at the shaft",
        ("values.md 1.5", "dθ/dφ = T_shaft/T_leaf"),
        Derived,
        "59.9938",
        || holding(1.0),
    ),
    check(
        "1.5 holding lossy",
        "the same, η .8: η·T/n",
        ("values.md 1.5", "dθ/dφ = T_shaft/T_leaf, losses help whoever is driven"),
        Derived,
        "47.995",
        || holding(0.8),
    ),
];

/// Values that the product shows beside their provenance: what is from memory or superseded says so.
#[test]
fn cautionary_limits_carry_their_provenance() {
    let mut job: serde_json::Value =
        serde_json::from_str(include_str!("../../www/data/starting-job.json")).expect("JSON");
    job["contact"] = serde_json::json!({});
    job["motion"] = serde_json::json!({});
    job["site"] = serde_json::json!({ "public": true });
    let document: Document = serde_json::from_value(job).expect("a document");
    let plan = pintle_core::plan(&Job::read(&document).expect("valid")).expect("valid");
    let (person, entrapment) = (plan.person.expect("a contact"), plan.entrapment.expect("a site"));
    // values.md 9: 400 N dynamic at gaps of 50 to 500 mm, 1,400 N beyond, for 0.75 s, then 150 N static; measured at 50, 300 and 500 mm (EN 12445).
    let limits: Vec<_> = person.blows.iter().map(|blow| (blow.gap_m, blow.dynamic_limit_n)).collect();
    assert_eq!(limits, [(Some(0.05), 400.0), (Some(0.3), 400.0), (Some(0.5), 400.0), (None, 1400.0)]);
    assert_eq!((person.dynamic_time_s, person.static_limit_n), (0.75, 150.0));
    assert!(person.must_be_measured && person.limits_source.superseded && person.measuring_source.superseded);
    assert_eq!(person.limits_source.provenance, SourceProvenance::FromMemory);
    // EN 12604, 150 N where people live: doubtful.
    let hand = plan.motion.expect("motion").hand;
    assert_eq!((hand.limit_n, hand.source.provenance), (150.0, SourceProvenance::Doubtful));
    // UL 325: two independent means each way where a zone exists.
    assert_eq!(entrapment.means.each_ref().map(|count| count.wanted), [2, 2]);
    assert_eq!(entrapment.means[0].source, Source::UL_325);
    assert_eq!(entrapment.class_source.provenance, SourceProvenance::Seen);
}

/// Common practice, no source: the breakaway is tried half open, and does not slip in ordinary running.
#[test]
fn the_breakaway_is_tried_half_open_and_holds_in_ordinary_running() {
    let mut job: serde_json::Value =
        serde_json::from_str(include_str!("../../www/data/starting-job.json")).expect("JSON");
    (job["motion"], job["breakaway"]) = (serde_json::json!({}), serde_json::json!({}));
    let document: Document = serde_json::from_value(job).expect("a document");
    let plan = pintle_core::plan(&Job::read(&document).expect("valid")).expect("valid");
    let breakaway = plan.breakaway.expect("asked for");
    assert_eq!(breakaway.trial.leaf_deg, 45.0);
    assert!(breakaway.least_slip_n_m > plan.peak.shaft_torque_n_m);
    // Limits are set with the leaf closed, then open: the shaft counts from closed.
    let limits = plan.motion.expect("motion").limits;
    assert_eq!(limits.closed_deg, 0.0);
    assert!((limits.open_deg.abs() - plan.shaft_travel_deg).abs() < 1e-9);
}
