//! Wind square to the leaf.

/// Moment of a gust about the hinge, N·m, never negative: `τ_w = ½·ρ·V²·C_f·A·|x_w|`.
///
/// `speed_m_s` is the gust speed at the gate; `A` the area that stops the wind, `x_w` the distance of its centre from the hinge axis.
/// Without regard to the side of the hinge the centre is on: as the working case takes the wind against the leaf at every angle, a
/// counter-leaf that reaches beyond the hinge must not turn it into help. Source: velocity pressure, EN 1991-1-4 eq. 4.10.
#[must_use]
pub fn wind_moment_n_m(
    density_kg_m3: f64,
    speed_m_s: f64,
    force_coefficient: f64,
    area_m2: f64,
    centroid_m: f64,
) -> f64 {
    velocity_pressure_pa(density_kg_m3, speed_m_s) * force_coefficient * area_m2 * centroid_m.abs()
}

/// Velocity pressure of air brought to rest, Pa: `q = ½·ρ·V²`.
///
/// `density_kg_m3` in kg/m³, `speed_m_s` in m/s. Source: EN 1991-1-4 eq. 4.10; with ρ = 1.226 the 0.613·V² of ASCE 7.
#[must_use]
pub fn velocity_pressure_pa(density_kg_m3: f64, speed_m_s: f64) -> f64 {
    0.5 * density_kg_m3 * speed_m_s * speed_m_s
}

/// Factor on the force coefficient of a wall with openings: `1 − (1 − ε)^1.5`, `ε` solid over gross area, 0…1.
///
/// Meant for `ε ≥ 0.7`; below that the wall is an open lattice with coefficients of its own. Source: ASCE 7 Fig 29.3-1, note (from memory).
#[must_use]
pub fn openings_factor(solidity: f64) -> f64 {
    let open = (1.0 - solidity).clamp(0.0, 1.0);
    1.0 - open * crate::real::sqrt(open)
}

/// Coefficients of a flat plate's normal force at a slant, `1/(0.222 + 0.283/sin α)`.
const SLANT: (f64, f64) = (0.222, 0.283);

/// Part of the square-on force that a wind of fixed bearing has on the leaf, −1…1, positive opening: the normal force of a flat plate at incidence
/// `α` over that at 90°, `0.505·sin α/(0.222·sin α + 0.283)`, `sin α = sin(β − θ)` for a wind blowing towards `β`; it changes sign with it.
///
/// A plate keeps 0.92 of its normal force at 60°, 0.81 at 45°, 0.64 at 30°, where the square of the sine would leave 0.75, 0.50, 0.25. The centre of
/// pressure is kept where it is; at a slant it moves towards the windward edge. The wind that is always square to the leaf stays the careful
/// case. Source: Hoerner, Fluid-Dynamic Lift, ch. XXI eq. 2 (flat plate, separated flow).
#[must_use]
pub fn normal_component(bearing_rad: f64, leaf_rad: f64) -> f64 {
    let sine = crate::real::sin(bearing_rad - leaf_rad);
    (SLANT.0 + SLANT.1) * sine / (SLANT.0 * sine.abs() + SLANT.1)
}

/// [`normal_component`] and its derivative by the leaf angle, `−0.505·0.283·cos α/(0.222·|sin α| + 0.283)²`.
pub(crate) fn normal_component_and_slope(bearing_rad: f64, leaf_rad: f64) -> (f64, f64) {
    let (sine, cosine) = crate::real::sin_cos(bearing_rad - leaf_rad);
    let below = SLANT.0 * sine.abs() + SLANT.1;
    ((SLANT.0 + SLANT.1) * sine / below, -(SLANT.0 + SLANT.1) * SLANT.1 * cosine / (below * below))
}
