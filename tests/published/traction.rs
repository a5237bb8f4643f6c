//! Speed–time curves of railways and drives: trapezoids asked for from the other side, run-up and braking at a constant torque.

use super::check::{Check, Provenance::*, check};
use super::solve::solve;
use pintle_core::drive::Profile;
use std::f64::consts::TAU;

const RAILWAY: &str = "Theraja, Electrical Technology III (FOSSEE/Python-Textbook-Companions)";
const M1: (&str, &str) = (RAILWAY, "chapter43 ex 43.2: trapezoid, the acceleration asked for");
const M3: (&str, &str) = (RAILWAY, "chapter43 ex 43.10: trapezoid, the peak speed asked for");
const M4: (&str, &str) = (RAILWAY, "chapter43 ex 43.12: up, coasting, braking");
const DRIVES: &str = "Elements of Electric Drives (FOSSEE/Python-Textbook-Companions)";
const M9: (&str, &str) = (DRIVES, "Chapter1 ex 22, 23: run-up at a constant surplus of torque");
const M10: (&str, &str) = (DRIVES, "Chapter1 ex 42: braking at a constant torque; g 9.81");

/// km/h in m/s.
const KMH: f64 = 1000.0 / 3600.0;

/// Running distance of ex 43.12, km/h·s: to 50 km/h in 25 s, 70 s of coasting, from there to rest in 12 s at 3 km/h/s.
fn coasted() -> f64 {
    let (up, braking) = (50.0 / 25.0, 3.0);
    let braked_from: f64 = 12.0 * braking;
    let slowing = (50.0 - braked_from) / 70.0;
    let coasting = Profile::trapezoid(50.0 * 50.0 / 2.0 * (1.0 / up + 1.0 / slowing), 50.0, up, slowing);
    // The way to rest is as long as the way up.
    coasting.at(25.0 + 70.0).position + triangle(braked_from, braking).at(12.0).position
}

/// From rest to a speed and back at one acceleration: its halves are a run-up and a braking.
fn triangle(speed: f64, acceleration: f64) -> Profile {
    Profile::trapezoid(speed * speed / acceleration, speed, acceleration, acceleration)
}

fn run_up_s(speed: f64, acceleration: f64) -> f64 {
    triangle(speed, acceleration).time_s() / 2.0
}

fn rad_s(rpm: f64) -> f64 {
    rpm * TAU / 60.0
}

/// Full-load torque of 37.5 kW at 500 rpm, N·m.
fn full_n_m() -> f64 {
    37.5e3 / rad_s(500.0)
}

const BRAKE_N_M: f64 = (165.0 + 1.4) * 9.81;

pub const CHECKS: &[Check] = &[
    check(
        "M1",
        "1.5 km, 36 km/h with stops of 25 s, brakes 3 km/h/s, peak 1.25 × mean running speed: acceleration, km/h/s",
        M1,
        Seen,
        "1.7",
        || {
            let running_s = 1.5 / 36.0 * 3600.0 - 25.0;
            let peak = 1.25 * 1500.0 / running_s;
            let time = |up: f64| Profile::trapezoid(1500.0, peak, up * KMH, 3.0 * KMH).time_s();
            solve(running_s, 0.9, 9.0, time)
        },
    ),
    check("M3", "1250 m, 30 km/h with stops of 30 s, 1.9 and 3.2 km/h/s: peak speed, km/h", M3, Seen, "44.32", || {
        let running_s = 1.25 / 30.0 * 3600.0 - 30.0;
        let time = |peak: f64| Profile::trapezoid(1250.0, peak * KMH, 1.9 * KMH, 3.2 * KMH).time_s();
        solve(running_s, 38.0, 80.0, time)
    })
    .within(0.07, "The source rounds its constant K to 1.5: 0.15 % low."),
    check(
        "M4 20 s",
        "50 km/h in 25 s, 70 s of coasting, 12 s of braking at 3 km/h/s, stops of 20 s: schedule speed, km/h",
        M4,
        Seen,
        "30.3",
        || coasted() / (25.0 + 70.0 + 12.0 + 20.0),
    ),
    check("M4 15 s", "the same, stops of 15 s: km/h", M4, Seen, "31.6", || coasted() / (25.0 + 70.0 + 12.0 + 15.0)),
    check(
        "M9 inertia",
        "37.5 kW, 500 rpm, 20 kg·m², 1.25 of full-load torque against full load: s",
        M9,
        Seen,
        "5.85",
        || run_up_s(rad_s(500.0), 0.25 * full_n_m() / 20.0),
    ),
    check("M9 stored", "the same motor, 660 kgf·m stored a kW, twice full-load torque: s", M9, Seen, "12.95", || {
        let inertia = 2.0 * 660.0 * 9.81 * 37.5 / (rad_s(500.0) * rad_s(500.0));
        run_up_s(rad_s(500.0), full_n_m() / inertia)
    }),
    check("M10 time", "630 kg·m² from 750 rpm against 165 + 1.4 kgf·m: s", M10, Seen, "30.3", || {
        run_up_s(rad_s(750.0), BRAKE_N_M / 630.0)
    }),
    check("M10 turns", "the same: turns", M10, Seen, "189", || {
        let slowing = BRAKE_N_M / 630.0;
        triangle(rad_s(750.0), slowing).at(run_up_s(rad_s(750.0), slowing)).position / TAU
    }),
];
