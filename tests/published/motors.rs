//! Motor lines: half their no-load speed, another supply, the time they take to run up.

use super::check::{Check, Provenance::*, check};
use super::solve::solve;
use pintle_core::{
    drive::{Motor, motor_power_w, motor_torque_n_m},
    job::{MotorFacts, MotorPoint},
};
use std::f64::consts::TAU;

const MIT: (&str, &str) = ("lancet.mit.edu/motor/motors3-4.html", "half the no-load speed: T_s/2");
const MIT_POWER: (&str, &str) = ("lancet.mit.edu/motor/motors3-4.html", "inputs; P_max = T_s·ω_n/4");
const DROP: (&str, &str) =
    ("Elements of Electric Drives (FOSSEE/Python-Textbook-Companions)", "Chapter1 ex 5: fixed field, speed ∝ V − R·I");
const KLOSS: (&str, &str) = (
    "FOSSEE/Scilab-TBC-Uploads 1994/CH10, Example10_19",
    "inputs; T = 3·E2²·s·R2/(2π·n_s·(R2² + (s·X2)²)), T_m = 3·E2²/(2π·n_s·2·X2), s_m = R2/X2",
);
const FIRST_ORDER: (&str, &str) = ("holooly.com/?p=897332", "System Dynamics ex 9.1.1: I·ω̇ + c·ω = T");

fn rpm(turns: f64) -> f64 {
    turns * TAU / 60.0
}

/// A motor of 1000 rpm at 220 V and 100 A through .1 Ω, torque in the unit that one ampere gives: its line without load and at standstill at
/// 220 V, and on another supply.
fn fixed_field(supply_v: f64) -> Motor {
    Motor::of(
        &MotorFacts::builder()
            .stall_torque_n_m(220.0 / 0.1)
            .no_load_speed_deg_s(1000.0 * 6.0 * 220.0 / (220.0 - 0.1 * 100.0))
            .rated_v(220.0)
            .supply_v(supply_v)
            .build(),
    )
    .expect("a line")
}

/// Inertia of a motor of 50 N·m at standstill whose torque is used up by 10 N·m·s/rad at 5 rad/s, by its time constant.
fn slowed_kg_m2(run_up_s: f64) -> f64 {
    Motor::of(
        &MotorFacts::builder()
            .stall_torque_n_m(50.0)
            .no_load_speed_deg_s((50f64 / 10.0).to_degrees())
            .rated_v(24.0)
            .run_up_s(run_up_s)
            .build(),
    )
    .expect("a line")
    .inertia_kg_m2
}

/// An induction motor of 12 poles at 50 Hz, rotor of .15 + .25j Ω at standstill and 32 V a phase: its curve by Kloss from breakdown torque and slip
/// as a table of every tenth of a turn a minute, read at a speed in rpm.
fn induction_n_m(turns: f64) -> f64 {
    const SYNCHRONOUS: f64 = 120.0 * 50.0 / 12.0;
    let (most, breakdown) = (3.0 * 32.0 * 32.0 / (rpm(SYNCHRONOUS) * 2.0 * 0.25), 0.15 / 0.25);
    let at = |index: u32| {
        let slip = 1.0 - f64::from(index) / 5000.0;
        let torque = if index == 5000 { 0.0 } else { most * 2.0 / (slip / breakdown + breakdown / slip) };
        MotorPoint::builder().speed_deg_s(6.0 * SYNCHRONOUS * (1.0 - slip)).torque_n_m(torque).build()
    };
    let facts = MotorFacts::builder().curve((0..=5000).map(at).collect()).rated_v(32.0).build();
    Motor::of(&facts).expect("a table").torque_n_m(rpm(turns))
}

pub const CHECKS: &[Check] = &[
    check(
        "M24 start",
        "12 poles, 50 Hz, R2 .15, X2 .25 Ω, E2 32 V; by Kloss as a table, at standstill: N·m",
        KLOSS,
        Derived,
        "103.54",
        || induction_n_m(0.0),
    ),
    check("M24 full load", "the same at 480 rpm: N·m", KLOSS, Derived, "15.576", || induction_n_m(480.0)),
    check("M24 breakdown", "the same at 500·(1 − .15/.25) rpm: N·m", KLOSS, Derived, "117.34", || {
        induction_n_m(200.0)
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
    check("M20", "1000 rpm at 220 V, 100 A, .1 Ω; the same current at 200 V: rpm", DROP, Seen, "905", || {
        solve(100.0, 1.0, 1000.0, |turns| fixed_field(200.0).torque_n_m(rpm(turns)))
    }),
    check("M23 τ", "50 kg·m², 50 N·m, 10 N·m·s/rad: time constant, s", FIRST_ORDER, Seen, "5", || {
        solve(50.0, 0.1, 100.0, slowed_kg_m2)
    })
    .exact("Solved from J = T_s·t/ω_n; whole numbers divide."),
];
