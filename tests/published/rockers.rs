//! Four-bars whose velocities books measured on a drawing: a way that shares nothing with a formula, good to some parts in a hundred.
//!
//! Inputs as in [`super::linkage`]: the ground, the driving crank (the leaf here), the coupler (the link), the driven crank (the operator's).

use super::check::{Check, Provenance::*, check};
use super::linkage::four_bar_pose;
use super::solve::slope;
use pintle_core::{arm::Pose, drive::holding_torque_n_m, job::Elbow};
use std::f64::consts::TAU;

const MACHINES: &str = "Theory of Machines (FOSSEE/Python-Textbook-Companions Theory_Of_Machines)";
const L3: (&str, &str) = (MACHINES, "ch7 ex 7.1, measured on a drawing; wording mechdiploma.com/node/2");
const L4: (&str, &str) = (MACHINES, "ch8 ex 8.4, measured on a drawing; wording askfilo.com 3335343438353535");
const L6: (&str, &str) =
    ("Sarkar, Theory of Machines (FOSSEE/Python-Textbook-Companions)", "Chapter1_1 ex 6, measured on a drawing");
const L7: (&str, &str) = (MACHINES, "ch7 ex 7.10, measured on a drawing; the crank's 60° derived");
const L7_COUPLER: (&str, &str) = (MACHINES, "ch6 ex 6.1, measured on a drawing; the crank's 60° derived");

/// Driving crank at 60°, open circuit.
fn at(lengths: [f64; 4], crank_deg: f64) -> Pose {
    four_bar_pose(lengths, Elbow::Right, crank_deg)
}

fn rocker(pose: Pose) -> f64 {
    pose.ratio.expect("no dead point here").abs()
}

fn coupler(pose: Pose) -> f64 {
    pose.link_rate.expect("no dead point here").abs()
}

fn pqrs() -> [f64; 4] {
    [0.2, 0.0625, 0.175, 0.1125]
}

/// DC 600, DA 300, AB 360, CB 360 mm.
fn levers() -> Pose {
    at([0.6, 0.3, 0.36, 0.36], 60.0)
}

pub const CHECKS: &[Check] = &[
    check("L3 rocker", "AD 150, AB 40, BC 150, CD 80 mm, 60°, 120 rpm: ω of CD, rad/s", L3, Seen, "4.8", || {
        120.0 * TAU / 60.0 * rocker(at([0.15, 0.04, 0.15, 0.08], 60.0))
    }),
    check(
        "L4 coupler",
        "PS 200, PQ 62.5, QR 175, RS 112.5 mm, 60°, 10 rad/s: ω of QR, rad/s",
        L4,
        Seen,
        "1.9",
        || 10.0 * coupler(at(pqrs(), 60.0)),
    )
    .within(0.1, "Printed .333/.175 = 1.903 with velocities measured on a drawing and cut off: 4 % low."),
    check("L4 rocker", "the same: ω of RS, rad/s", L4, Seen, "3.79", || 10.0 * rocker(at(pqrs(), 60.0))),
    check("L4 coupler α", "the same: α of QR, rad/s²", L4, Seen, "23.43", || {
        let rate = |crank: f64| at(pqrs(), crank.to_degrees()).link_rate.expect("no dead point here");
        100.0 * slope(60f64.to_radians(), 1e-4, rate).abs()
    })
    .within(0.08, "Accelerations measured on a drawing: 0.3 % off."),
    check("L4 rocker α", "the same: α of RS, rad/s²", L4, Seen, "47.1", || {
        100.0 * at(pqrs(), 60.0).ratio_rate.expect("no dead point here").abs()
    })
    .within(1.0, "Accelerations measured on a drawing: 2 % off."),
    check("L6 rocker", "20, 6.25, 17.5, 11.25 cm, 60° (derived), 100 rpm: ω of CD, rad/s", L6, Seen, "4.000", || {
        100.0 * TAU / 60.0 * rocker(at(pqrs(), 60.0))
    })
    .within(0.04, "Velocities measured on a drawing: 0.9 % off."),
    check("L6 coupler", "the same: ω of BC, rad/s", L6, Seen, "2.143", || {
        100.0 * TAU / 60.0 * coupler(at(pqrs(), 60.0))
    })
    .within(0.075, "Velocities measured on a drawing: 3.4 % off."),
    check("L7 rocker", "DC 600, DA 300, AB 360, CB 360 mm, 100 rpm: ω of CB, rad/s", L7, Seen, "6.25", || {
        100.0 * TAU / 60.0 * rocker(levers())
    })
    .within(0.06, "Velocities measured on a drawing: 0.9 % off."),
    check("L7 coupler", "the same: ω of AB, rad/s", L7_COUPLER, Seen, "6.283", || {
        100.0 * TAU / 60.0 * coupler(levers())
    })
    .within(0.025, "Velocities measured on a drawing: 0.3 % off."),
    check("L7 advantage", "the same, η 70 %: torque on CB over torque on DA", L7, Seen, "1.17", || {
        holding_torque_n_m(1.0, &levers(), 0.7)
    })
    .within(0.01, "From the velocities measured on a drawing: 0.6 % off."),
    check("L7 torque", "the same, 50 N·m on DA: torque on CB, N·m", L7, Seen, "58.6", || {
        holding_torque_n_m(50.0, &levers(), 0.7)
    })
    .within(0.5, "From the velocities measured on a drawing: 0.8 % off."),
];
