//! Wind by ASCE 7, EN 1991-1-4 and Beaufort.

use super::check::{Check, Provenance::*, check};
use pintle_core::*;

const MPH: f64 = 1609.344 / 3600.0;
const FT: f64 = 0.3048;
const PSF: f64 = 0.45359237 * 9.80665 / (FT * FT);

const SIGN: &str = "ASCE 7-05 sign calculation, scribd.com/doc/828657211";
const SIGN_Q: (&str, &str) = (SIGN, "§6.5.10: .00256 Kz Kzt Kd V² I; Exp C, 35 ft");
const WALL: &str = "ASCE 7-05 wall calculation, scribd.com/document/458377490";
const WALL_Q: (&str, &str) = (WALL, "§6.5.10; Exp C, 6.6 ft, I 1.15");
const WALL_F: (&str, &str) = (WALL, "§6.5.14, Fig 6-20: F = qh·G·Cf·As");
const PLAIN: (&str, &str) = ("ASCE 7-16", "eq. 26.10-1, all factors 1");
const KZ: (&str, &str) = ("ASCE 7-16", "Table 26.10-1, at 15 ft and below");
const KZ_22: (&str, &str) = ("ASCE 7-22", "Table 26.10-1, at 15 ft and below");
const FIGURE: (&str, &str) = ("ASCE 7-16", "Fig 29.3-1, cases A and B");
const OPEN: (&str, &str) = ("ASCE 7-16", "Fig 29.4-2");
const EN_EXPOSURE: (&str, &str) = ("EN 1991-1-4", "Fig 4.2: ce at 10 m, terrain II");
const EN_PROFILE: (&str, &str) = ("EN 1991-1-4", "eqs 4.4, 4.5, 4.7 by hand");
const EN_CPROB: (&str, &str) = ("EN 1991-1-4", "eq. 4.2 note: 1 at p = .02");
const EN_WALL: (&str, &str) = ("EN 1991-1-4", "Table 7.9, solid");
const EN_WALL_SEEN: (&str, &str) =
    ("eurocodeapplied.com, wind pressure on freestanding walls", "EN 1991-1-4 Table 7.9, l/h 5");
const EN_PERFORATED: (&str, &str) = ("EN 1991-1-4", "Table 7.9, solidity .8");
const EN_RETURNS: (&str, &str) = ("EN 1991-1-4", "Table 7.9, return corners");
const EN_SHELTER: (&str, &str) =
    ("EN 1991-1-4:2005", "7.4.2(2): no shelter within h of the free end; ∫ψ(x)c(x)x dx/(L²/2) by hand");
const BEAUFORT: (&str, &str) = ("WMO Beaufort scale, delta-s.org/weer/beaufort.html and meteothes.gr", "m/s");

const WALL_GROSS_FT2: f64 = 6.6 * 689.0;

/// Pressure of the printed wall example times gust effect and coefficient, psf.
fn wall_psf() -> f64 {
    0.85 * asce7_wall_coefficient(689.0 / 6.6, 1.0) * asce7_velocity_pressure_pa(0.85 * 0.85 * 1.15, 100.0 * MPH) / PSF
}

const ASCE: &[Check] = &[
    check("4.1", "V 90 mph, Kz 1.01, Kd .85, I 1: qh, psf", SIGN_Q, Seen, "17.80", || {
        asce7_velocity_pressure_pa(1.01 * 0.85, 90.0 * MPH) / PSF
    }),
    check("4.1 Kz", "exposure C, 35 ft: Kz", (SIGN, "Table 6-3, exposure C"), Seen, "1.01", || {
        asce7_exposure_coefficient(Asce7Edition::E05, Exposure::C, 35.0 * FT)
    }),
    check("4.2 q", "V 100 mph, Kz .85, Kd .85, I 1.15: qh, psf", WALL_Q, Seen, "21.27", || {
        asce7_velocity_pressure_pa(0.85 * 0.85 * 1.15, 100.0 * MPH) / PSF
    }),
    check("4.2 Cf", "B 689 ft, h = s = 6.6 ft: Cf", WALL_F, Seen, "1.30", || asce7_wall_coefficient(689.0 / 6.6, 1.0)),
    check("4.2 Kz", "exposure C, 6.6 ft: Kz", (WALL, "Table 6-3, exposure C"), Seen, "0.85", || {
        asce7_exposure_coefficient(Asce7Edition::E05, Exposure::C, 6.6 * FT)
    }),
    check("4.2 p", "p = qh·G·Cf, psf", WALL_F, Seen, "24", wall_psf),
    check("4.2 F", "F on 4547.4 ft², kip", WALL_F, Seen, "106.88", || wall_psf() * WALL_GROSS_FT2 / 1000.0),
    check("4.2 M", "overturning F·0.55h, kip-ft", WALL_F, Seen, "387.98", || {
        wall_psf() * WALL_GROSS_FT2 / 1000.0 * 0.55 * 6.6
    }),
    check("4.2 T", "torsion .2·F·B (case B), kip-ft", WALL_F, Seen, "14728.22", || {
        ASCE7_ECCENTRICITY * wall_psf() * WALL_GROSS_FT2 / 1000.0 * 689.0
    }),
    check("4.5 20", ".00256V² at 20 mph, psf", PLAIN, Derived, "1.024", || {
        asce7_velocity_pressure_pa(1.0, 20.0 * MPH) / PSF
    }),
    check("4.5 30", ".00256V² at 30 mph, psf", PLAIN, Derived, "2.304", || {
        asce7_velocity_pressure_pa(1.0, 30.0 * MPH) / PSF
    }),
    check("4.5 40", ".00256V² at 40 mph, psf", PLAIN, Derived, "4.096", || {
        asce7_velocity_pressure_pa(1.0, 40.0 * MPH) / PSF
    }),
    check("4.5 50", ".00256V² at 50 mph, psf", PLAIN, Derived, "6.400", || {
        asce7_velocity_pressure_pa(1.0, 50.0 * MPH) / PSF
    }),
    check("4.5 60", ".00256V² at 60 mph, psf", PLAIN, Derived, "9.216", || {
        asce7_velocity_pressure_pa(1.0, 60.0 * MPH) / PSF
    }),
    check("4.5 90", ".00256V² at 90 mph, psf", PLAIN, Derived, "20.736", || {
        asce7_velocity_pressure_pa(1.0, 90.0 * MPH) / PSF
    }),
    check("4.5 115", ".00256V² at 115 mph, psf", PLAIN, Derived, "33.856", || {
        asce7_velocity_pressure_pa(1.0, 115.0 * MPH) / PSF
    }),
    check("Kz 7-16 B", "exposure B, 15 ft: Kz by 7-16", KZ, FromMemory, "0.57", || {
        asce7_exposure_coefficient(Asce7Edition::E16, Exposure::B, 2.0)
    }),
    check("Kz 7-16 C", "exposure C, 15 ft: Kz by 7-16", KZ, FromMemory, "0.85", || {
        asce7_exposure_coefficient(Asce7Edition::E16, Exposure::C, 2.0)
    }),
    check("Kz 7-16 D", "exposure D, 15 ft: Kz by 7-16", KZ, FromMemory, "1.03", || {
        asce7_exposure_coefficient(Asce7Edition::E16, Exposure::D, 2.0)
    }),
    check("Kz 7-22 B", "exposure B, 15 ft: Kz by 7-22", KZ_22, FromMemory, "0.57", || {
        asce7_exposure_coefficient(Asce7Edition::E22, Exposure::B, 2.0)
    }),
    check("Kz 7-22 C", "exposure C, 15 ft: Kz by 7-22", KZ_22, FromMemory, "0.85", || {
        asce7_exposure_coefficient(Asce7Edition::E22, Exposure::C, 2.0)
    }),
    check("Kz 7-22 D", "exposure D, 15 ft: Kz by 7-22", KZ_22, FromMemory, "1.03", || {
        asce7_exposure_coefficient(Asce7Edition::E22, Exposure::D, 2.0)
    })
    .within(0.01, "The table rounds 1.0347 down; the formula's own constants are rounded."),
];

macro_rules! walls {
    ($name:ident, $clearance:literal: $($aspect:literal $expected:literal;)*) => {
        const $name: &[Check] = &[$(
            check(concat!("Fig 29.3-1 ", $clearance, " ", $aspect), concat!("wall, s/h ", $clearance, ", B/s ", $aspect, ": Cf"), FIGURE, FromMemory,
                $expected, || asce7_wall_coefficient($aspect, $clearance))
        ),*];
    };
}

walls! { WALL_10, 1.0:
    0.05 "1.80"; 0.1 "1.70"; 0.2 "1.65"; 0.5 "1.55"; 1.0 "1.45"; 2.0 "1.40"; 4.0 "1.35"; 5.0 "1.35"; 10.0 "1.30"; 20.0 "1.30"; 30.0 "1.30"; 45.0 "1.30";
}
walls! { WALL_09, 0.9:
    0.05 "1.85"; 0.1 "1.75"; 0.2 "1.70"; 0.5 "1.60"; 1.0 "1.55"; 2.0 "1.50"; 4.0 "1.45"; 5.0 "1.45"; 10.0 "1.40"; 20.0 "1.40"; 30.0 "1.40"; 45.0 "1.40";
}
walls! { WALL_07, 0.7:
    0.05 "1.90"; 0.1 "1.85"; 0.2 "1.75"; 0.5 "1.70"; 1.0 "1.65"; 2.0 "1.60"; 4.0 "1.60"; 5.0 "1.55"; 10.0 "1.55"; 20.0 "1.55"; 30.0 "1.55"; 45.0 "1.55";
}

const OPEN_SIGNS: &[Check] = &[
    check("open flat 0.05", "open lattice, solidity 0.05, flat-sided: Cf", OPEN, FromMemory, "2.0", || {
        asce7_open_coefficient(0.05, BarShape::Flat, 0.05, 500.0)
    }),
    check("open slow 0.05", "the same, round, 25 mm at 500 Pa (D√q below 2.5): Cf", OPEN, FromMemory, "1.2", || {
        asce7_open_coefficient(0.05, BarShape::Round, 0.025, 500.0)
    }),
    check("open fast 0.05", "the same, round, 300 mm at 500 Pa (D√q above 2.5): Cf", OPEN, FromMemory, "0.8", || {
        asce7_open_coefficient(0.05, BarShape::Round, 0.3, 500.0)
    }),
    check("open flat 0.2", "open lattice, solidity 0.2, flat-sided: Cf", OPEN, FromMemory, "1.8", || {
        asce7_open_coefficient(0.2, BarShape::Flat, 0.05, 500.0)
    }),
    check("open slow 0.2", "the same, round, 25 mm at 500 Pa (D√q below 2.5): Cf", OPEN, FromMemory, "1.3", || {
        asce7_open_coefficient(0.2, BarShape::Round, 0.025, 500.0)
    }),
    check("open fast 0.2", "the same, round, 300 mm at 500 Pa (D√q above 2.5): Cf", OPEN, FromMemory, "0.9", || {
        asce7_open_coefficient(0.2, BarShape::Round, 0.3, 500.0)
    }),
    check("open flat 0.5", "open lattice, solidity 0.5, flat-sided: Cf", OPEN, FromMemory, "1.6", || {
        asce7_open_coefficient(0.5, BarShape::Flat, 0.05, 500.0)
    }),
    check("open slow 0.5", "the same, round, 25 mm at 500 Pa (D√q below 2.5): Cf", OPEN, FromMemory, "1.5", || {
        asce7_open_coefficient(0.5, BarShape::Round, 0.025, 500.0)
    }),
    check("open fast 0.5", "the same, round, 300 mm at 500 Pa (D√q above 2.5): Cf", OPEN, FromMemory, "1.1", || {
        asce7_open_coefficient(0.5, BarShape::Round, 0.3, 500.0)
    }),
];

/// Zone A of a wall of one length over height.
fn zone(aspect: f64, solidity: f64, returns: bool, index: usize) -> f64 {
    en1991_zone_coefficients(aspect, solidity, returns)[index]
}

const EN: &[Check] = &[
    check("EN ce(10) II", "peak over basic pressure at 10 m, terrain II", EN_EXPOSURE, FromMemory, "2.35", || {
        en1991_peak_pressure_pa(26.0, Terrain::II, 10.0, 1.0) / velocity_pressure_pa(1.25, 26.0)
    }),
    check("EN cr(10) II", ".19·ln 200", EN_PROFILE, Derived, "1.00668", || en1991_roughness_factor(Terrain::II, 10.0)),
    check("EN Iv(10) II", "1/ln 200", EN_PROFILE, Derived, "0.18874", || {
        en1991_turbulence_intensity(Terrain::II, 10.0, 1.0)
    }),
    check("EN cr(zmin) IV", ".19·(1/.05)^.07·ln 10, at 2 m as at 10 m", EN_PROFILE, Derived, "0.53956", || {
        en1991_roughness_factor(Terrain::IV, 2.0)
    }),
    check("EN cprob 50 years", "probability factor at .02", EN_CPROB, FromMemory, "1.000", || {
        en1991_probability_factor(0.02)
    }),
    check("T7.9 3.0 A", "solid wall, l/h 3.0, zone A", EN_WALL, FromMemory, "2.3", || zone(3.0, 1.0, false, 0)),
    check("T7.9 3.0 B", "solid wall, l/h 3.0, zone B", EN_WALL, FromMemory, "1.4", || zone(3.0, 1.0, false, 1)),
    check("T7.9 3.0 C", "solid wall, l/h 3.0, zone C", EN_WALL, FromMemory, "1.2", || zone(3.0, 1.0, false, 2)),
    check("T7.9 3.0 D", "solid wall, l/h 3.0, zone D", EN_WALL, FromMemory, "1.2", || zone(3.0, 1.0, false, 3)),
    check("T7.9 5.0 A", "solid wall, l/h 5.0, zone A", EN_WALL_SEEN, Seen, "2.9", || zone(5.0, 1.0, false, 0)),
    check("T7.9 5.0 B", "solid wall, l/h 5.0, zone B", EN_WALL_SEEN, Seen, "1.8", || zone(5.0, 1.0, false, 1)),
    check("T7.9 5.0 C", "solid wall, l/h 5.0, zone C", EN_WALL_SEEN, Seen, "1.4", || zone(5.0, 1.0, false, 2)),
    check("T7.9 5.0 D", "solid wall, l/h 5.0, zone D", EN_WALL_SEEN, Seen, "1.2", || zone(5.0, 1.0, false, 3)),
    check("T7.9 10.0 A", "solid wall, l/h 10.0, zone A", EN_WALL, FromMemory, "3.4", || zone(10.0, 1.0, false, 0)),
    check("T7.9 10.0 B", "solid wall, l/h 10.0, zone B", EN_WALL, FromMemory, "2.1", || zone(10.0, 1.0, false, 1)),
    check("T7.9 10.0 C", "solid wall, l/h 10.0, zone C", EN_WALL, FromMemory, "1.7", || zone(10.0, 1.0, false, 2)),
    check("T7.9 10.0 D", "solid wall, l/h 10.0, zone D", EN_WALL, FromMemory, "1.2", || zone(10.0, 1.0, false, 3)),
    check("T7.9 returns A", "solid wall with returns, zone A", EN_RETURNS, FromMemory, "2.1", || {
        zone(5.0, 1.0, true, 0)
    }),
    check("T7.9 returns B", "solid wall with returns, zone B", EN_RETURNS, FromMemory, "1.8", || {
        zone(5.0, 1.0, true, 1)
    }),
    check("T7.9 returns C", "solid wall with returns, zone C", EN_RETURNS, FromMemory, "1.4", || {
        zone(5.0, 1.0, true, 2)
    }),
    check("T7.9 returns D", "solid wall with returns, zone D", EN_RETURNS, FromMemory, "1.2", || {
        zone(5.0, 1.0, true, 3)
    }),
    check(
        "4.10 open",
        "leaf 3.2 × 1.6 m, solid, no shelter: moment coefficient",
        EN_SHELTER,
        Derived,
        "1.64975",
        || en1991_wall_moment_coefficient(3.2, 1.6, en1991_zone_coefficients(2.0, 1.0, false), 1.0),
    ),
    check("4.10 sheltered", "the same, shelter factor .3: moment coefficient", EN_SHELTER, Derived, "1.40475", || {
        en1991_wall_moment_coefficient(3.2, 1.6, en1991_zone_coefficients(2.0, 1.0, false), 0.3)
    }),
    check("T7.9 .8 A", "solidity .8, zone A", EN_PERFORATED, FromMemory, "1.2", || zone(5.0, 0.8, false, 0)),
];

macro_rules! numbers {
    ($($number:literal: $least:literal, $most:literal;)*) => {
        [$([
            check(concat!("Beaufort ", $number, " from"), concat!("least mean of number ", $number, ", m/s"), BEAUFORT, Seen, $least,
                || beaufort_range_m_s($number).0),
            check(concat!("Beaufort ", $number, " to"), concat!("greatest mean of number ", $number, ", m/s"), BEAUFORT, Seen, $most,
                || beaufort_range_m_s($number).1.unwrap_or(f64::MAX)),
            check(concat!("Beaufort of ", $most), concat!("number of ", $most, " m/s"), BEAUFORT, Seen, stringify!($number),
                || f64::from(beaufort_number($most.parse().unwrap_or(-1.0)))).within(1e-9, "A whole number."),
        ]),*]
    };
}

const SCALE: [[Check; 3]; 11] = numbers! {
    1: "0.3", "1.5";
    2: "1.6", "3.3";
    3: "3.4", "5.4";
    4: "5.5", "7.9";
    5: "8.0", "10.7";
    6: "10.8", "13.8";
    7: "13.9", "17.1";
    8: "17.2", "20.7";
    9: "20.8", "24.4";
    10: "24.5", "28.4";
    11: "28.5", "32.6";
};

const HURRICANE: &[Check] =
    &[check("Beaufort 12 from", "least mean of number 12, m/s", BEAUFORT, Seen, "32.7", || beaufort_range_m_s(12).0)];

pub const CHECKS: &[&[Check]] = &[ASCE, WALL_10, WALL_09, WALL_07, OPEN_SIGNS, EN, SCALE.as_flattened(), HURRICANE];
