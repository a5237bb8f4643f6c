//! Stops and blows: a mass that a spring brings to rest, at the leaf's edge, in a buffer, on a person.

use super::check::{Check, Provenance::*, check};
use pintle_core::{
    Document,
    drive::holding_torque_n_m,
    job::Job,
    plan::Model,
    safety::{compression_m, edge_mass_kg, impact_force_n, impact_speed_m_s, spring_force_n},
};
use std::f64::consts::FRAC_PI_2;

const EDGE: (&str, &str) = ("standard result, any mechanics text", "m = I/L², E = ½mv², F = v√(km), x = v√(m/k)");
const EN_12453: (&str, &str) = (
    "standard result, any mechanics text",
    "v = F/√(km) at 400 N and 1400 N (EN 12453:2001, superseded, Annex A, from memory)",
);
const LEVER: (&str, &str) =
    ("dhf officer, Door Industry Journal Winter 2020 p96", "F = T/r, told without a number: most near the hinge");
const BUFFERS: (&str, &str) = (
    "Theory of Machines (FOSSEE/Python-Textbook-Companions Theory_Of_Machines)",
    "ch3 ex 3.8: 10 t at 1.8 m/s meets 15 t at .6 m/s, four springs of .7 MN/m",
);

/// Product of the masses over their sum, kg: what the springs between them see.
const BETWEEN_KG: f64 = 10e3 * 15e3 / (10e3 + 15e3);
const BUFFERS_N_PER_M: f64 = 4.0 * 0.7e6;

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
    let plan = pintle_core::plan::plan(&Job::read(&document).expect("valid")).expect("valid");
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
    check("M18 springs", "each spring gives, mm", BUFFERS, Seen, "56", || {
        1e3 * compression_m(1.8 - 0.6, BUFFERS_N_PER_M, BETWEEN_KG)
    }),
    check("M18 energy", "the springs take, kJ", BUFFERS, Seen, "4.32", || {
        let (speed, stiffness) = (1.8 - 0.6, BUFFERS_N_PER_M);
        let (force_n, way_m) =
            (impact_force_n(speed, stiffness, BETWEEN_KG), compression_m(speed, stiffness, BETWEEN_KG));
        0.5 * force_n * way_m / 1e3
    })
    .exact("Force and way are worked out; their product is ½·6 t·(1.2 m/s)², a short decimal."),
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
    check("9 400 N 20 kg", "k 5e5: m/s", EN_12453, Derived, "0.126491", || impact_speed_m_s(400.0, 5e5, 20.0)),
    check("9 1400 N 20 kg", "k 5e5: m/s", EN_12453, Derived, "0.442719", || impact_speed_m_s(1400.0, 5e5, 20.0)),
    check("9 400 N 50 kg", "k 5e5: m/s", EN_12453, Derived, "0.08", || impact_speed_m_s(400.0, 5e5, 50.0)),
    check("9 1400 N 50 kg", "k 5e5: m/s", EN_12453, Derived, "0.28", || impact_speed_m_s(1400.0, 5e5, 50.0)),
    check("9 400 N 100 kg", "k 5e5: m/s", EN_12453, Derived, "0.0565685", || impact_speed_m_s(400.0, 5e5, 100.0)),
    check("9 1400 N 100 kg", "k 5e5: m/s", EN_12453, Derived, "0.197990", || impact_speed_m_s(1400.0, 5e5, 100.0)),
    check("9 400 N 200 kg", "k 5e5: m/s", EN_12453, Derived, "0.04", || impact_speed_m_s(400.0, 5e5, 200.0)),
    check("9 1400 N 200 kg", "k 5e5: m/s", EN_12453, Derived, "0.14", || impact_speed_m_s(1400.0, 5e5, 200.0)),
    check("9 near the hinge", "push at a tenth of the leaf over push at its edge", LEVER, Derived, "10.0", || {
        push(0.1)
    }),
    check(
        "1.5 holding",
        "reference arm, 100 N·m, closed, no loss: N·m at the shaft",
        ("virtual work, by hand", "dθ/dφ = T_shaft/T_leaf"),
        Derived,
        "59.9938",
        || holding(1.0),
    ),
    check(
        "1.5 holding lossy",
        "the same, η .8: η·T/n",
        ("virtual work, by hand", "dθ/dφ = T_shaft/T_leaf, losses help whoever is driven"),
        Derived,
        "47.995",
        || holding(0.8),
    ),
];
