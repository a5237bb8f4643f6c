//! Wind: velocity pressure, openings, moment about the hinge.

use super::check::{Check, Provenance::*, check};
use pintle_core::{
    job::{Member, MemberPlace, MemberTotals, RoundBar},
    leaf::{SNOW_DEPTH_M, normal_component, openings_factor, snow_moment_n_m, velocity_pressure_pa, wind_moment_n_m},
};

const EN: (&str, &str) = ("EN 1991-1-4:2005+A1:2010", "eq. 4.10: q = ½ρv², ρ 1.25");
const ASCE: (&str, &str) = ("ASCE 7-16", "eq. 26.10-1 in SI: q = .613 V², Kz = Kzt = Kd = 1");
const OPENINGS: (&str, &str) = ("ASCE 7-16", "Fig 29.3-1 note (from memory): 1-(1-ε)^1.5");
const HOERNER: (&str, &str) = ("Hoerner, Fluid-Dynamic Lift", "ch. XXI eq. 2: cN = 1/(0.222 + 0.283/sin α)");
const MOMENT: (&str, &str) = ("statics", "T = q·Cf·H·L²/2");

macro_rules! pressures {
    ($name:ident, $id:literal, $source:expr, $density:literal: $($speed:literal: $expected:literal;)*) => {
        const $name: &[Check] = &[$(
            check(concat!($id, " ", $speed, " m/s"), concat!("½ρV² at ", $speed, " m/s, ρ ", $density, ": Pa"), $source, Derived,
                $expected, || velocity_pressure_pa($density, $speed))
        ),*];
    };
}

pressures! { EN_PRESSURES, "4.4 EN", EN, 1.25:
    10.0: "62.5"; 13.8: "119.03"; 17.1: "182.76"; 20.7: "267.81"; 26.0: "422.5"; 30.0: "562.5";
}
pressures! { ASCE_PRESSURES, "4.4 ASCE", ASCE, 1.226:
    10.0: "61.3"; 13.8: "116.74"; 17.1: "179.25"; 20.7: "262.66"; 26.0: "414.39"; 30.0: "551.7";
}

fn wall_moment(solidity_factor: f64) -> f64 {
    // 10 m/s at 1.25 kg/m³ are the 62.5 Pa of the example.
    wind_moment_n_m(1.25, 10.0, 1.3 * solidity_factor, 1.8 * 3.5, 3.5 / 2.0)
}

const WALL: &[Check] = &[
    check("4.6 .9", "openings factor, solidity .9", OPENINGS, Derived, ".968377", || openings_factor(0.9)),
    check("4.6 .8", "openings factor, solidity .8", OPENINGS, Derived, ".910557", || openings_factor(0.8)),
    check("4.6 .7", "openings factor, solidity .7", OPENINGS, Derived, ".835683", || openings_factor(0.7)),
    check(
        "4.6 .5",
        "openings factor, solidity .5 (outside its range: arithmetic)",
        OPENINGS,
        Derived,
        ".646447",
        || openings_factor(0.5),
    ),
    check(
        "4.6 .3",
        "openings factor, solidity .3 (outside its range: arithmetic)",
        OPENINGS,
        Derived,
        ".414338",
        || openings_factor(0.3),
    ),
    check(
        "4.7",
        "q 62.5 Pa, Cf 1.3, leaf 1.8 × 3.5 m: moment about the hinge, N·m",
        MOMENT,
        Derived,
        "895.781",
        || wall_moment(1.0),
    ),
    check(
        "4.7 open",
        "the same × openings factor at solidity .5 (arithmetic): N·m",
        MOMENT,
        Derived,
        "579.075",
        || wall_moment(openings_factor(0.5)),
    ),
];

/// Incidence α on a closed leaf: the wind blows towards α in the leaf's own plane.
fn slanting(incidence_deg: f64) -> f64 {
    normal_component(incidence_deg.to_radians(), 0.0)
}

const PLATE: &[Check] = &[
    check("4.21 30", "flat plate at 30°: normal force over that at 90°", HOERNER, Derived, ".641", || slanting(30.0)),
    check("4.21 45", "flat plate at 45°: normal force over that at 90°", HOERNER, Derived, ".812", || slanting(45.0)),
    check("4.21 60", "flat plate at 60°: normal force over that at 90°", HOERNER, Derived, ".920", || slanting(60.0)),
];

const LB: f64 = 0.45359237;
const INCH: f64 = 0.0254;

/// A round bar 10 ft long under an inch of ice of 57.3 lb/ft³: weight with it, lb/ft, and width, in.
fn iced_bar() -> (f64, f64) {
    let (diameter, length) = (1.108 * INCH, 120.0 * INCH);
    // A density that gives the bar its printed weight.
    let density = 1.094 * LB / (12.0 * INCH) / (std::f64::consts::FRAC_PI_4 * diameter * diameter);
    let place = MemberPlace::builder().from_m(0.0).to_m(length).build();
    let bar = Member::RoundBar(RoundBar::builder().face_m(diameter).density_kg_m3(density).place(place).build());
    let iced = MemberTotals::iced(&[bar], INCH, 57.3 * LB / (12.0 * INCH).powi(3));
    (iced.mass_kg / LB / 10.0, iced.wind_area_m2 / length / INCH)
}

const ICE: (&str, &str) =
    ("unit test of a public line-loading library", "round bar 1.108 in of 1.094 lb/ft, 1 in radial ice of 57.3 lb/ft³");

const ICED: &[Check] = &[
    check("4.22 weight", "bar and ice: lb/ft", ICE, Seen, "3.729", || iced_bar().0),
    check("4.22 width", "width the wind meets, d + 2t: in", ICE, Derived, "3.108", || iced_bar().1),
];

const SNOW: (&str, &str) =
    ("EN 1991-1-3 Table E.1: settled snow 2.0 kN/m³", "½γd²·tan²(60°) a metre (Rankine, 30°), ·L²/2 by hand");

const PUSHED: &[Check] = &[check("snow", "0.1 m before a leaf of 3.2 m: N·m", SNOW, Derived, "153.6", || {
    snow_moment_n_m(SNOW_DEPTH_M, 3.2)
})];

pub const CHECKS: &[&[Check]] = &[EN_PRESSURES, ASCE_PRESSURES, WALL, PLATE, ICED, PUSHED];
