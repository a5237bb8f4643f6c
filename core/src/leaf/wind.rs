//! Wind square to the leaf.

use crate::job::{Leaf, Wind};

/// Moment of a gust about the hinge, N·m, never negative: `τ_w = ½·ρ·V²·C_f·A·|x_w|`.
///
/// `speed_m_s` is the gust speed at the gate; `A` the area that stops the wind, `x_w` the distance of its centre from the hinge axis.
/// Without regard to the side of the hinge the centre is on: as the working case takes the wind against the leaf at every angle, a
/// counter-leaf that reaches beyond the hinge must not turn it into help. Source: velocity pressure, EN 1991-1-4 eq. 4.10.
pub fn wind_moment_n_m(wind: &Wind, leaf: &Leaf, speed_m_s: f64) -> f64 {
    let pressure_pa = 0.5 * wind.air_density() * speed_m_s * speed_m_s;
    pressure_pa * wind.force_coefficient * leaf.wind_area_m2 * leaf.wind_centroid().abs()
}
