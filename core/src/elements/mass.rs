//! Mass and inertia of the leaf.

/// Moment of inertia of a uniform bar or plate about one end or edge: `I = m·L²/3`, kg·m².
///
/// `mass_kg` in kg, `length_m` from the axis to the far end. Source: standard result, any mechanics text (for a worked example see
/// the tests).
#[must_use]
pub fn bar_inertia_kg_m2(mass_kg: f64, length_m: f64) -> f64 {
    mass_kg * length_m * length_m / 3.0
}

/// Moment of inertia about the axis of a mass spread evenly from `from_m` to `to_m` along the leaf, kg·m²:
/// `I = m·(a² + a·b + b²)/3`, which is `I_cm + m·d²` with `I_cm = m·(b − a)²/12`, `d = (a + b)/2`.
///
/// `from_m` may be negative (a counter-leaf beyond the hinge); with `from_m = to_m` it is a point mass, `m·d²`. The thickness of the
/// leaf is neglected. Source: parallel-axis theorem, any mechanics text.
#[must_use]
pub fn stretch_inertia_kg_m2(mass_kg: f64, from_m: f64, to_m: f64) -> f64 {
    mass_kg * (from_m * from_m + from_m * to_m + to_m * to_m) / 3.0
}
