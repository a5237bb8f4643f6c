//! Masses of European hollow sections and of sheet.

use super::check::{Check, Provenance::*, check};
use pintle_core::elements::{CornerRule, STEEL_KG_M3, hollow_area_m2, round_hollow_area_m2, sheet_mass_kg_m2};

const DATA: &str = "EN 10219-2 profiles (xcfem/xc, bs_en_10219_profiles.json)";
const EN_DATA: (&str, &str) = (DATA, "A = 2T(B+H-2T)-(4-π)(ro²-ri²)");
const EN_ROUND: (&str, &str) = (DATA, "M = .0246615(D-T)T");
const EN_FORM: (&str, &str) = ("EN 10219-2", "M = .785A, A = 2T(B+H-2T)-(4-π)(ro²-ri²)");
const GENERATOR: (&str, &str) = ("sectionproperties 3.10.2", "rectangular hollow section generator, r_out = 2T");
const SHEET: (&str, &str) = ("EN 10219-2", "density of steel 7850 kg/m³");

/// kg/m of a rectangular tube, mm.
fn en(face: f64, depth: f64, wall: f64) -> f64 {
    STEEL_KG_M3 * hollow_area_m2(face / 1e3, depth / 1e3, wall / 1e3, CornerRule::En10219)
}

/// kg/m of a round tube, mm.
fn round(outer: f64, wall: f64) -> f64 {
    STEEL_KG_M3 * round_hollow_area_m2(outer / 1e3, wall / 1e3)
}

/// Rows of one family: size, its dimensions as the function takes them, what is printed.
macro_rules! sections {
    ($name:ident, $source:expr, $provenance:expr, $family:literal, $unit:literal, $of:ident: $($size:literal ($($side:expr),*) $expected:literal;)*) => {
        const $name: &[Check] = &[$(
            check(concat!("5 ", $family, " ", $size), concat!($family, " ", $size, ": ", $unit), $source, $provenance, $expected,
                || $of($($side),*))
        ),*];
    };
}
pub(crate) use sections;

sections! { SQUARE, EN_DATA, Seen, "SHS", "kg/m", en:
    "40x2" (40.0, 40.0, 2.0) "2.306";
    "40x2.5" (40.0, 40.0, 2.5) "2.817";
    "40x3" (40.0, 40.0, 3.0) "3.303";
    "40x4" (40.0, 40.0, 4.0) "4.198";
    "50x2" (50.0, 50.0, 2.0) "2.934";
    "50x3" (50.0, 50.0, 3.0) "4.245";
    "50x4" (50.0, 50.0, 4.0) "5.454";
    "50x5" (50.0, 50.0, 5.0) "6.56";
    "60x2.5" (60.0, 60.0, 2.5) "4.387";
    "60x3" (60.0, 60.0, 3.0) "5.187";
    "60x4" (60.0, 60.0, 4.0) "6.71";
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
    "90x4" (90.0, 90.0, 4.0) "10.478";
    "90x8" (90.0, 90.0, 8.0) "18.873";
    "100x4" (100.0, 100.0, 4.0) "11.734";
    "100x5" (100.0, 100.0, 5.0) "14.41";
    "100x6.3" (100.0, 100.0, 6.3) "17.466";
    "200x10" (200.0, 200.0, 10.0) "56.965";
    "200x12" (200.0, 200.0, 12.0) "65.987";
    "220x16" (220.0, 220.0, 16.0) "93.864";
}

sections! { RECTANGULAR, EN_DATA, Seen, "RHS", "kg/m", en:
    "75x50x3" (50.0, 75.0, 3.0) "5.423";
    "90x50x5" (50.0, 90.0, 5.0) "9.7";
    "100x50x2" (50.0, 100.0, 2.0) "4.504";
    "100x50x3" (50.0, 100.0, 3.0) "6.6";
    "100x50x4" (50.0, 100.0, 4.0) "8.594";
    "100x50x6.3" (50.0, 100.0, 6.3) "12.52";
    "125x50x4" (50.0, 125.0, 4.0) "10.164";
    "150x50x3" (50.0, 150.0, 3.0) "8.955";
}

sections! { ROUND, EN_ROUND, Seen, "CHS", "kg/m", round:
    "21.3x2" (21.3, 2.0) "0.952";
    "26.9x2.5" (26.9, 2.5) "1.504";
    "33.7x2.5" (33.7, 2.5) "1.924";
    "42.4x2" (42.4, 2.0) "1.993";
    "42.4x3" (42.4, 3.0) "2.915";
    "48.3x3" (48.3, 3.0) "3.351";
    "48.3x5" (48.3, 5.0) "5.339";
    "60.3x3" (60.3, 3.0) "4.239";
    "60.3x5" (60.3, 5.0) "6.819";
    "76.1x3" (76.1, 3.0) "5.408";
    "76.1x4" (76.1, 4.0) "7.112";
    "76.1x6.3" (76.1, 6.3) "10.845";
    "88.9x4" (88.9, 4.0) "8.375";
    "101.6x4" (101.6, 4.0) "9.628";
    "101.6x6.3" (101.6, 6.3) "14.807";
    "114.3x3" (114.3, 3.0) "8.234";
}

sections! { BY_HAND, EN_FORM, Derived, "RHS", "kg/m", en:
    "60x40x3" (60.0, 40.0, 3.0) "4.245";
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

const STEEL_SHEET: &[Check] =
    &[check("5 sheet", "steel sheet, 1 mm: kg/m²", SHEET, Derived, "7.85", || sheet_mass_kg_m2(0.001, STEEL_KG_M3))];

pub const CHECKS: &[&[Check]] = &[SQUARE, RECTANGULAR, ROUND, BY_HAND, GENERATED, STEEL_SHEET];
