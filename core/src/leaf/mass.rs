//! Mass and inertia of the leaf.

/// Moment of inertia of a uniform bar or plate about one end or edge: `I = m·L²/3`, kg·m².
///
/// `mass_kg` in kg, `length_m` from the axis to the far end. Source: standard result, any mechanics text (for a worked example see
/// the tests).
pub fn bar_inertia_kg_m2(mass_kg: f64, length_m: f64) -> f64 {
    mass_kg * length_m * length_m / 3.0
}
