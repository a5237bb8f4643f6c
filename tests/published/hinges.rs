//! Friction at the hinges. Where a source takes g = 9.81 m/s², its own g is used.

use super::check::{Check, Provenance::*, check};
use pintle_core::{
    elements::{
        collar_friction_uniform_pressure_n_m as pressure, collar_friction_uniform_wear_n_m as wear,
        helix_lowering_n_m as lowering, helix_raising_n_m,
    },
    leaf::{hinge_couple_n, pin_friction_n_m},
};
use std::f64::consts::TAU;

const BHANDARI: (&str, &str) = (
    "Bhandari, Design of Machine Elements (companion FOSSEE/Scilab-TBC-Uploads 764/CH6)",
    "Ex 6.4: T = μW(Ro+Ri)/2; a part of the printed effort",
);
const PIVOT: &str = "\"Statics: Pivot friction\", adaptivebooks.org";
const RING: (&str, &str) = (PIVOT, "uniform pressure: T = (2/3)μW(Ro³-Ri³)/(Ro²-Ri²)");
const WORN: (&str, &str) = (PIVOT, "constant wear: T = μW(Ro+Ri)/2");
const STATICS: (&str, &str) = ("statics", "moments about one hinge: H = W·x/spacing; g 9.81");
const JOURNAL: (&str, &str) = ("Shigley, Mechanical Engineering Design", "dry journal: T = μ·r·H; g 9.81");

const OVERHAULS: (&str, &str) = (
    "machine-design companion, FOSSEE/Scilab-TBC-Uploads 764/CH6",
    "Ex 6.1: square thread, 3 starts, collar by uniform wear: W·(dm/2)·tan(φ ± α) + μc·W·rc",
);
const TRAPEZOID: (&str, &str) = (
    "machine-design companion, FOSSEE/Scilab-TBC-Uploads 764/CH6",
    "Ex 6.2: trapezoid thread, 2 starts, tan φ = μ/cos β",
);
const JINDAL: (&str, &str) = (
    "Jindal, Machine Design (FOSSEE/Python-Textbook-Companions, Ch16_2)",
    "exa 16-1: thread and collar of mean radius",
);
const VECTOR: (&str, &str) =
    ("Vector Mechanics (FOSSEE/Python-Textbook-Companions, ch8_1)", "ex 8.5: clamp, tan(α ± φ)");
const WENTZELL: (&str, &str) = (
    "Wentzell, Machine Design (FOSSEE/Python-Textbook-Companions, Chapter18)",
    "ex 1-2: raising, lead angle, efficiency",
);
const SINGH: (&str, &str) = (
    "Singh, Machine Design-I (FOSSEE/Python-Textbook-Companions, chapter9)",
    "exa 9.5, 9.6: thread and collar by uniform pressure",
);

/// Moment that raises, on a lead for a whole turn; a helix of these examples does not bind.
fn raising(load: f64, radius: f64, lead: f64, friction: f64) -> f64 {
    helix_raising_n_m(load, radius, lead / TAU, friction).unwrap_or(f64::NAN)
}

/// The three-start screw of 50 mm and its collar, N·mm.
fn screw_1(collar: f64, thread: fn(f64, f64, f64, f64) -> f64) -> f64 {
    thread(15_000.0, 23.0, 24.0, 0.15) + wear(0.15, 15_000.0, collar * 50.0, collar * 32.5)
}

/// The trapezoid screw of 100 mm (β 15°), N·m.
fn screw_2(thread: fn(f64, f64, f64, f64) -> f64) -> f64 {
    thread(300e3, 0.047, 0.024, 0.15 / 15f64.to_radians().cos())
}

fn letting_down(load: f64, radius: f64, lead: f64, friction: f64) -> f64 {
    lowering(load, radius, lead / TAU, friction)
}

/// The clamp's force under 40 N·m, N.
fn clamp_n() -> f64 {
    40.0 / raising(1.0, 0.005, 0.004, 0.3)
}

/// The vice's force under 15 N·m, N, and the moment its thread takes of them, N·mm.
fn vice() -> (f64, f64) {
    let force = 15_000.0 / (raising(1.0, 5.5, 2.0, 0.15) + pressure(0.18, 1.0, 5.0, 0.0));
    (force, raising(force, 5.5, 2.0, 0.15))
}

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
    check(
        "S1 raise",
        "d 50, p 8, 3 starts, μ .15, collar 100/65 mm, 15 kN: N·mm",
        OVERHAULS,
        Seen,
        "204644.140833",
        || screw_1(1.0, raising),
    ),
    check("S1 lower", "the same, let down: N·mm", OVERHAULS, Seen, "87401.514671", || screw_1(1.0, letting_down)),
    check("S1 effort", "the same, raised at 500 mm: N", OVERHAULS, Seen, "409.288282", || {
        screw_1(1.0, raising) / 500.0
    }),
    check("S1 thread", "the thread alone overhauls: N·mm", OVERHAULS, Derived, "-5410.98533", || {
        screw_1(0.0, letting_down)
    }),
    check("S2 raise", "d 100, p 12, 2 starts, β 15°, μ .15, 300 kN: N·m", TRAPEZOID, Seen, "3378.159205", || {
        screw_2(raising)
    }),
    check("S2 lower", "the same, let down: N·m", TRAPEZOID, Seen, "1030.685630", || screw_2(letting_down)),
    check("S2 efficiency", "the same: W·lead/(2π·T), %", TRAPEZOID, Seen, "33.921302", || {
        100.0 * 300e3 * 0.024 / TAU / screw_2(raising)
    }),
    check("S4", "d 30, p 6, μ .2, collar at 12 mm μ .15, 20 kN: N·m", JINDAL, Seen, "110.148", || {
        raising(20e3, 0.0135, 0.006, 0.2) + wear(0.15, 20e3, 0.012, 0.012)
    }),
    check("S5 force", "double thread p 2, dm 10 mm, μ .30, 40 N·m: kN", VECTOR, Seen, "18.01", || clamp_n() / 1e3),
    check("S5 loosen", "the same, loosened: N·m", VECTOR, Seen, "14.97", || {
        letting_down(clamp_n(), 0.005, 0.004, 0.3)
    }),
    check("S7", "2900 lb, Dp 1.354 in, lead 1/3 in, μ .15: in-lb", WENTZELL, Seen, "453.68", || {
        raising(2900.0, 0.677, 1.0 / 3.0, 0.15)
    }),
    check("S7 efficiency", "the same: %", WENTZELL, Seen, "33.91", || {
        100.0 * raising(1.0, 0.677, 1.0 / 3.0, 0.0) / raising(1.0, 0.677, 1.0 / 3.0, 0.15)
    }),
    check("S9 force", "vice dm 11, p 2 mm, μ .15, solid end 10 mm μ .18, 15 N·m: N", SINGH, Seen, "8555", || {
        vice().0
    }),
    check("S9 thread", "the same, the thread's part: N·mm", SINGH, Seen, "9866.9", || vice().1),
    check("S9 efficiency", "the same: %", SINGH, Seen, "18.15", || 100.0 * vice().0 * 2.0 / TAU / 15_000.0),
    check("S10 collar", "100 kN, collar 84/21 mm, μ .15: N·mm", SINGH, Seen, "441000", || {
        pressure(0.15, 100e3, 42.0, 10.5)
    })
    .exact("the radii give a short decimal"),
    check("S10", "the same with its thread, dm 43.5, p 7, μ .2: N·mm", SINGH, Seen, "993064", || {
        raising(100e3, 21.75, 7.0, 0.2) + pressure(0.15, 100e3, 42.0, 10.5)
    }),
];
