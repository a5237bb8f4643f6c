//! Wind square to the leaf.

/// Moment of a gust about the hinge, N·m, never negative: `τ_w = ½·ρ·V²·C_f·A·|x_w|`.
///
/// `speed_m_s` is the gust speed at the gate; `A` the area that stops the wind, `x_w` the distance of its centre from the hinge axis.
/// Without regard to the side of the hinge the centre is on: as the working case takes the wind against the leaf at every angle, a
/// counter-leaf that reaches beyond the hinge must not turn it into help. Source: velocity pressure, EN 1991-1-4 eq. 4.10.
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
pub fn velocity_pressure_pa(density_kg_m3: f64, speed_m_s: f64) -> f64 {
    0.5 * density_kg_m3 * speed_m_s * speed_m_s
}

/// Factor on the force coefficient of a wall with openings: `1 − (1 − ε)^1.5`, `ε` solid over gross area, 0…1.
///
/// Meant for `ε ≥ 0.7`; below that the wall is an open lattice with coefficients of its own. Source: ASCE 7 Fig 29.3-1, note (from memory).
pub fn openings_factor(solidity: f64) -> f64 {
    let open = (1.0 - solidity).clamp(0.0, 1.0);
    1.0 - open * crate::real::root(open)
}

/// Part of the square-on pressure that a wind of fixed bearing has on the leaf, −1…1, positive opening: `c·|c|`, the law of the normal
/// component (`c = cos α`, `α` between the wind and the leaf's normal), here `c = sin(β − θ)` for a wind blowing towards `β`.
///
/// Real plates keep more of their pressure at a slant than this law says; the wind that is always square to the leaf is the careful case.
/// Source: normal-component (independence) principle, common practice.
pub fn normal_component(bearing_rad: f64, leaf_rad: f64) -> f64 {
    let c = crate::real::sin(bearing_rad - leaf_rad);
    c * c.abs()
}

/// [`normal_component`] and its derivative by the leaf angle, to the bit the same.
pub(crate) fn normal_component_and_slope(bearing_rad: f64, leaf_rad: f64) -> (f64, f64) {
    let (sine, cosine) = crate::real::sin_cos(bearing_rad - leaf_rad);
    (sine * sine.abs(), -2.0 * sine.abs() * cosine)
}
