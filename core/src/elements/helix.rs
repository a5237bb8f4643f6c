//! A load on a helix: a screw's thread, or the ramp of a rising hinge.
//!
//! `W` axial load, `r` mean radius of what slides, `p` rise per radian (lead/2π), `tan α = p/r`, `tan φ = μ`. The relations are homogeneous: any
//! consistent units do. Source: V-, square- or trapezoid-threaded power screws in any text of machine design; printed results in the tests.

/// Moment that turns a load up a helix: `T = W·r·tan(α + φ) = W·r·(p + μ·r)/(r − μ·p)`.
///
/// `load_n` N, `radius_m` m, `rise_m_per_rad` m/rad and not negative, `friction_coefficient` that of sliding; for a thread of half angle β
/// use `μ/cos β`. `None` from `α + φ = 90°` on (`μ·p ≥ r`): friction holds all that the moment pushes, the helix binds, and no moment raises
/// the load.
#[must_use]
pub fn helix_raising_n_m(load_n: f64, radius_m: f64, rise_m_per_rad: f64, friction_coefficient: f64) -> Option<f64> {
    let (r, p, mu) = (radius_m, rise_m_per_rad, friction_coefficient);
    (mu * p < r).then(|| load_n * r * (p + mu * r) / (r - mu * p))
}

/// Moment that turns a load down a helix: `T = W·r·tan(φ − α) = W·r·(μ·r − p)/(r + μ·p)`.
///
/// Arguments as of [`helix_raising_n_m`]. Negative where the load turns the helix by itself (`α > φ`, it overhauls) and has to be held
/// back by so much. No limit of its own: `α` and `φ` are each below 90°.
#[must_use]
pub fn helix_lowering_n_m(load_n: f64, radius_m: f64, rise_m_per_rad: f64, friction_coefficient: f64) -> f64 {
    let (r, p, mu) = (radius_m, rise_m_per_rad, friction_coefficient);
    load_n * r * (mu * r - p) / (r + mu * p)
}

/// Steepest rise a helix can be turned up, m/rad: `p < r/μ`, from `α + φ < 90°`. Infinite without friction.
#[must_use]
pub fn helix_steepest_m_per_rad(radius_m: f64, friction_coefficient: f64) -> f64 {
    radius_m / friction_coefficient
}
