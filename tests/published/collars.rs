//! Collars, pivots and journals as textbooks print them: the collar, the foot and the pin of a hinge.
//!
//! The examples print the power a shaft loses; friction times speed is theirs.

use super::check::{Check, Provenance::*, check};
use pintle_core::{
    elements::{collar_friction_uniform_pressure_n_m as pressure, collar_friction_uniform_wear_n_m as wear},
    leaf::pin_friction_n_m,
};
use std::f64::consts::TAU;

const MACHINES: &str = "Theory of Machines (FOSSEE/Python-Textbook-Companions Theory_Of_Machines)";
const COLLAR: (&str, &str) = (MACHINES, "ch10 ex 10.19: 100 kN, 600/300 mm, μ .12, 90 rpm");
const FOOT: (&str, &str) = (MACHINES, "ch10 ex 10.16: flat pivot, uniform pressure");
const PIN: (&str, &str) = (MACHINES, "ch10 ex 10.15: journal, T = μ·W·r");
const CONE: (&str, &str) = (MACHINES, "ch10 ex 10.18: cone of 120°; its face carries W/sin 60°");

fn watts(friction_n_m: f64, rpm: f64) -> f64 {
    friction_n_m * rpm * TAU / 60.0
}

/// Load on the face of a cone of 120° that carries 30 kN.
fn wedged_n() -> f64 {
    30e3 / 60f64.to_radians().sin()
}

pub const CHECKS: &[Check] = &[
    check("S12 pressure", "collar, uniform pressure: kW", COLLAR, Seen, "26.4", || {
        watts(pressure(0.12, 100e3, 0.3, 0.15), 90.0) / 1e3
    }),
    check("S12 wear", "the same, uniform wear: kW", COLLAR, Seen, "25.45", || {
        watts(wear(0.12, 100e3, 0.3, 0.15), 90.0) / 1e3
    }),
    check("S14 flat", "flat pivot 20 kN, diameter 150 mm, μ .05, 100 rpm: W", FOOT, Seen, "523.6", || {
        watts(pressure(0.05, 20e3, 0.075, 0.0), 100.0)
    }),
    check("S14 journal", "journal 2 kN, diameter 60 mm, μ .03, 1440 rpm: W", PIN, Seen, "271.4", || {
        watts(pin_friction_n_m(0.03, 0.03, 2e3), 1440.0)
    }),
    check(
        "S14 cone pressure",
        "30 kN, diameter 200 mm, μ .025, 140 rpm, uniform pressure: W",
        CONE,
        Seen,
        "846",
        || watts(pressure(0.025, wedged_n(), 0.1, 0.0), 140.0),
    ),
    check("S14 cone wear", "the same, uniform wear: W", CONE, Seen, "634.8", || {
        watts(wear(0.025, wedged_n(), 0.1, 0.0), 140.0)
    }),
];
