//! Friction at the hinges. Where a source takes g = 9.81 m/s², its own g is used.

use super::check::{Check, Provenance::*, check};
use pintle_core::{
    collar_friction_uniform_pressure_n_m as pressure, collar_friction_uniform_wear_n_m as wear, hinge_couple_n,
    pin_friction_n_m,
};

const BHANDARI: (&str, &str) = (
    "Bhandari, Design of Machine Elements (companion FOSSEE/Scilab-TBC-Uploads 764/CH6)",
    "Ex 6.4: T = μW(Ro+Ri)/2; a part of the printed effort",
);
const PIVOT: &str = "\"Statics: Pivot friction\", adaptivebooks.org";
const RING: (&str, &str) = (PIVOT, "uniform pressure: T = (2/3)μW(Ro³-Ri³)/(Ro²-Ri²)");
const WORN: (&str, &str) = (PIVOT, "constant wear: T = μW(Ro+Ri)/2");
const STATICS: (&str, &str) = ("statics", "moments about one hinge: H = W·x/spacing; g 9.81");
const JOURNAL: (&str, &str) = ("Shigley, Mechanical Engineering Design", "dry journal: T = μ·r·H; g 9.81");

const MASS_200_N: f64 = 200.0 * 9.81;

pub const CHECKS: &[Check] = &[
    check("2.1 wear", "collar μ .12, 7000 N, 80/40 mm, uniform wear: N·m", BHANDARI, Derived, "25.200", || {
        wear(0.12, 7000.0, 0.04, 0.02)
    }),
    check("2.1 pressure", "the same, uniform pressure: N·m", RING, Derived, "26.1333", || {
        pressure(0.12, 7000.0, 0.04, 0.02)
    }),
    check(
        "2.3 pressure",
        "collar μ .15, 200 kg, Ro 20, Ri 10 mm, uniform pressure: N·m",
        RING,
        Derived,
        "4.5780",
        || pressure(0.15, MASS_200_N, 0.02, 0.01),
    ),
    check("2.3 wear", "the same, uniform wear: N·m", WORN, Derived, "4.4145", || wear(0.15, MASS_200_N, 0.02, 0.01)),
    check(
        "2.4 pressure",
        "solid pivot μ .15, 2943 N, R 25 mm, uniform pressure: N·m",
        RING,
        Derived,
        "7.3575",
        || pressure(0.15, 2943.0, 0.025, 0.0),
    ),
    check("2.4 wear", "the same, uniform wear: N·m", WORN, Derived, "5.51813", || wear(0.15, 2943.0, 0.025, 0.0)),
    check(
        "2.6 couple",
        "leaf 200 kg, centre at 1.75 m, hinges 1.2 m apart: each hinge, N",
        STATICS,
        Derived,
        "2861.25",
        || hinge_couple_n(MASS_200_N, 1.75, 1.2),
    ),
    check("2.6 pin", "the same, μ .15, pin radius 10 mm: one pin, N·m", JOURNAL, Derived, "4.29188", || {
        pin_friction_n_m(0.15, 0.01, hinge_couple_n(MASS_200_N, 1.75, 1.2))
    }),
    check("2.6 pins", "the same: both pins, N·m", JOURNAL, Derived, "8.58375", || {
        2.0 * pin_friction_n_m(0.15, 0.01, hinge_couple_n(MASS_200_N, 1.75, 1.2))
    }),
];
