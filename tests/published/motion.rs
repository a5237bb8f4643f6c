//! Trapezoids of a shaft's speed.

use super::check::{Check, Provenance::*, check};
use pintle_core::drive::{Profile, trapezoid_time_s};
use std::f64::consts::FRAC_PI_2;

const PROFILE: (&str, &str) = ("tech-champion.com, Velocity time profiles", "v_pk = √(2abD/(a+b))");
const TRAPEZOID: (&str, &str) = ("constant-acceleration kinematics", "T = D/v + v/a; T = 2√(D/a), v_pk = √(aD)");

/// An uneven triangle: 100 long, 2 up, 4 down, no speed limit in reach.
fn uneven() -> Profile {
    Profile::trapezoid(100.0, 1e3, 2.0, 4.0)
}

/// A quarter turn at some speed and acceleration, rad.
fn quarter(speed: f64, acceleration: f64) -> Profile {
    Profile::trapezoid(FRAC_PI_2, speed, acceleration, acceleration)
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
];
