//! Inertia of stretches of the leaf about the hinge.

use super::check::{Check, Provenance::*, check};
use pintle_core::elements::{bar_inertia_kg_m2, stretch_inertia_kg_m2};

const KNIGHT: &str = "Knight, Physics for Scientists and Engineers 5e";
const PRINTED: (&str, &str) = (KNIGHT, "Ch 12 Pr 16");
const FINE: (&str, &str) = (KNIGHT, "inputs of Ch 12 Pr 16; I = mL²/3, I = Icm + md²");
const EDGE: (&str, &str) = ("standard result, any mechanics text", "plate about one edge: I = mL²/3");
const PARTS: (&str, &str) = ("standard result, any mechanics text", "rod about its end mL²/3; stiles as points md²");

/// A vertical stile, thin beside its distance from the hinge axis.
fn stile(mass_kg: f64, at_m: f64) -> f64 {
    stretch_inertia_kg_m2(mass_kg, at_m, at_m)
}

pub const CHECKS: &[Check] = &[
    check("3.3 edge printed", "25 kg door, 0.91 m, about its edge: kg·m²", PRINTED, FromMemory, "6.9", || {
        bar_inertia_kg_m2(25.0, 0.91)
    }),
    check("3.3 offset printed", "the same, axis 0.15 m from the edge: kg·m²", PRINTED, FromMemory, "4.1", || {
        stretch_inertia_kg_m2(25.0, -0.15, 0.76)
    }),
    check("3.3 edge", "25 kg door, 0.91 m, about its edge: kg·m²", FINE, Derived, "6.90083", || {
        bar_inertia_kg_m2(25.0, 0.91)
    }),
    check("3.3 offset", "the same, axis 0.15 m from the edge: kg·m²", FINE, Derived, "4.05083", || {
        stretch_inertia_kg_m2(25.0, -0.15, 0.76)
    }),
    check("3.5", "200 kg, 3.5 m leaf: kg·m²", EDGE, Derived, "816.6667", || bar_inertia_kg_m2(200.0, 3.5)),
    check("3.5 edge mass", "the same: equivalent mass at the edge I/L², kg", EDGE, Derived, "66.6667", || {
        bar_inertia_kg_m2(200.0, 3.5) / (3.5 * 3.5)
    }),
    check("3.6 rail", "bottom rail 3.5 m, 15 kg: kg·m²", PARTS, Derived, "61.25", || {
        stretch_inertia_kg_m2(15.0, 0.0, 3.5)
    }),
    check("3.6 end stile", "stile 8 kg at 3.45 m: kg·m²", PARTS, Derived, "95.22", || stile(8.0, 3.45)),
    check("3.6 hinge stile", "stile 8 kg at 0.05 m: kg·m²", PARTS, Derived, "0.02", || stile(8.0, 0.05)),
    check("3.6", "rail and both stiles: kg·m²", PARTS, Derived, "156.49", || {
        stretch_inertia_kg_m2(15.0, 0.0, 3.5) + stile(8.0, 3.45) + stile(8.0, 0.05)
    }),
];
