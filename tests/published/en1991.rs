//! Wind by EN 1991-1-4:2005+A1:2010 with its recommended values.

use super::check::{Check, Provenance::*, check};
use pintle_core::{
    leaf::{
        Zones, en1991_lattice_coefficient, en1991_peak_pressure_pa, en1991_probability_factor, en1991_roughness_factor,
        en1991_turbulence_intensity, en1991_wall_moment_coefficient, en1991_zone_coefficients, velocity_pressure_pa,
    },
    terms::Terrain,
};

/// Said at the head of the group.
pub const NOTE: &str = "\
Edition: EN 1991-1-4:2005+A1:2010, recommended values. National annexes replace recommended values (basic velocity, terrain, turbulence, air
density, pressure and force coefficients): where one is in force its values go before these.";

const EDITION: &str = "EN 1991-1-4:2005+A1:2010";
const EXPOSURE: (&str, &str) = (EDITION, "Fig 4.2: ce at 10 m, terrain II");
const PROFILE: (&str, &str) = (EDITION, "eqs 4.4, 4.5, 4.7 by hand");
const CPROB: (&str, &str) = (EDITION, "eq. 4.2 note: 1 at p = .02");
const JRC: (&str, &str) =
    ("example SX016a as in dancergraham/eurocode ec1_monkey/ec1", "eq. 4.8; vb 26 m/s, terrain II, z 7.3 m");
const SHEET: (&str, &str) =
    ("wind calculation, scribd.com/doc/179494512", "eqs 4.4, 4.7, 4.8; vb 33 m/s, terrain I, z 5 m");
const TABLE: (&str, &str) =
    ("xcfem/xc python_modules/actions/wind/ec1_wind.py", "EN 1991-1-4 Table 7.9, zones from the free end");
const TABLE_5: (&str, &str) =
    ("eurocodeapplied.com, wind pressure on freestanding walls", "EN 1991-1-4 Table 7.9, l/h 5");
const SHELTER: (&str, &str) = (EDITION, "7.4.2(2): no shelter within h of the free end; ∫ψ(x)c(x)x dx/(L²/2) by hand");
const MOMENT: (&str, &str) =
    (EDITION, "Table 7.9 over the leaf: c = ∫ c(x)·x dx/(L²/2) by hand, zones from the latch edge");

const LATTICE: (&str, &str) = (
    "knowledge base article 001491, plane lattice structures (2017)",
    "EN 1991-1-4 7.11: Fig 7.33, 7.36; members 6.214 of 20 m²",
);
const LATTICE_FORCE: (&str, &str) = (EDITION, "Fig 7.33, corners of the curve");

fn zone(aspect: f64, solidity: f64, returns: bool, index: usize) -> f64 {
    en1991_zone_coefficients(aspect, solidity, returns)[index]
}

/// Where a zone ends, heights from the free end: its own moment and that of what lies outside it, told as a length.
fn end_of(zone: usize) -> f64 {
    let outside: Zones = std::array::from_fn(|index| if index <= zone { 1.0 } else { 0.0 });
    let length = 8.0;
    length * (1.0 - (1.0 - en1991_wall_moment_coefficient(length, 1.0, outside, 1.0)).sqrt())
}

const PRESSURE: &[Check] = &[
    check("4.14", "vb 26 m/s, terrain II, 7.3 m: qp, Pa", JRC, Seen, "911", || {
        en1991_peak_pressure_pa(26.0, Terrain::II, 7.3, 1.0)
    }),
    check("4.15 cr", "terrain I, 5 m: cr", SHEET, Seen, "1,055", || en1991_roughness_factor(Terrain::I, 5.0)),
    check("4.15 Iv", "terrain I, 5 m: Iv", SHEET, Seen, "0,1609", || en1991_turbulence_intensity(Terrain::I, 5.0, 1.0)),
    check("4.15 qp", "vb 33 m/s, terrain I, 5 m: qp, kPa", SHEET, Seen, "1,61", || {
        en1991_peak_pressure_pa(33.0, Terrain::I, 5.0, 1.0) / 1e3
    }),
    check("EN ce(10) II", "peak over basic pressure at 10 m, terrain II", EXPOSURE, FromMemory, "2.35", || {
        en1991_peak_pressure_pa(26.0, Terrain::II, 10.0, 1.0) / velocity_pressure_pa(1.25, 26.0)
    }),
    check("EN cr(10) II", ".19·ln 200", PROFILE, Derived, "1.00668", || en1991_roughness_factor(Terrain::II, 10.0)),
    check("EN Iv(10) II", "1/ln 200", PROFILE, Derived, "0.18874", || {
        en1991_turbulence_intensity(Terrain::II, 10.0, 1.0)
    }),
    check("EN cr(zmin) IV", ".19·(1/.05)^.07·ln 10, at 2 m as at 10 m", PROFILE, Derived, "0.53956", || {
        en1991_roughness_factor(Terrain::IV, 2.0)
    }),
    check("EN cprob 50 years", "probability factor at .02", CPROB, Derived, "1.000", || {
        en1991_probability_factor(0.02)
    }),
];

macro_rules! zones {
    ($name:ident, $source:expr, $what:literal, ($aspect:expr, $solidity:expr, $returns:expr): $($zone:literal $index:literal $expected:literal;)*) => {
        const $name: &[Check] = &[$(
            check(concat!("T7.9 ", $what, " ", $zone), concat!($what, ", zone ", $zone), $source, Seen, $expected,
                || zone($aspect, $solidity, $returns, $index)).repeated()
        ),*];
    };
}

zones! { WALL_3, TABLE, "solid, l/h 3", (3.0, 1.0, false): "A" 0 "2.3"; "B" 1 "1.4"; "C" 2 "1.2"; "D" 3 "1.2"; }
zones! { WALL_5, TABLE_5, "solid, l/h 5", (5.0, 1.0, false): "A" 0 "2.9"; "B" 1 "1.8"; "C" 2 "1.4"; "D" 3 "1.2"; }
zones! { WALL_10, TABLE, "solid, l/h 10", (10.0, 1.0, false): "A" 0 "3.4"; "B" 1 "2.1"; "C" 2 "1.7"; "D" 3 "1.2"; }
zones! { RETURNS, TABLE, "returns", (5.0, 1.0, true): "A" 0 "2.1"; "B" 1 "1.8"; "C" 2 "1.4"; "D" 3 "1.2"; }
zones! { OPENINGS, TABLE, "solidity .8", (5.0, 0.8, false): "A" 0 "1.2"; "B" 1 "1.2"; "C" 2 "1.2"; "D" 3 "1.2"; }

const ENDS: &[Check] = &[
    check("4.11 end A", "zone A ends, heights from the free end", TABLE, Seen, "0.3", || end_of(0)).repeated(),
    check("4.11 end B", "zone B ends", TABLE, Seen, "2", || end_of(1)).repeated(),
    check("4.11 end C", "zone C ends", TABLE, Seen, "4", || end_of(2)).repeated(),
    check("4.10 unsheltered", "3.2 × 1.6 m solid leaf: moment coefficient", MOMENT, Derived, "1.64975", || {
        en1991_wall_moment_coefficient(3.2, 1.6, en1991_zone_coefficients(2.0, 1.0, false), 1.0)
    }),
    check("4.10 sheltered", "the same, shelter factor .3: moment coefficient", SHELTER, Derived, "1.40475", || {
        en1991_wall_moment_coefficient(3.2, 1.6, en1991_zone_coefficients(2.0, 1.0, false), 0.3)
    }),
];

const LATTICES: &[Check] = &[
    check("4.8 cf0", "members 6.214 of 20 m²: cf,0", LATTICE, Seen, "1.6", || {
        en1991_lattice_coefficient(6.214 / 20.0, 1.0)
    })
    .repeated(),
    check("4.8 cf", "the same with its end effect of .95: cf", LATTICE, Seen, "1.52", || {
        en1991_lattice_coefficient(6.214 / 20.0, 0.95)
    })
    .exact("1.6 and .95 have few digits"),
    check("EN cf0(0)", "next to nothing solid: cf,0", LATTICE_FORCE, FromMemory, "2.0", || {
        en1991_lattice_coefficient(0.0, 1.0)
    })
    .repeated(),
    check("EN cf0(.6)", "solidity .6: cf,0", LATTICE_FORCE, FromMemory, "1.6", || en1991_lattice_coefficient(0.6, 1.0))
        .repeated(),
];

pub const CHECKS: &[&[Check]] = &[PRESSURE, WALL_3, WALL_5, WALL_10, RETURNS, OPENINGS, ENDS, LATTICES];
