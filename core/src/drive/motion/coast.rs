//! What happens once the drive lets go, and what a positive stop takes.

use crate::real::root;
use serde::Serialize;

/// How a leaf that was let go ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum CoastState {
    /// It comes to rest by itself.
    Stops,
    /// Wind or lean is stronger than what brakes it: only a stop ends it.
    RunsOn,
}

/// Leaf angle that a leaf turns on after the drive lets go, rad: `Δθ = ½·I·ω²/M`. `None` where nothing brakes it.
///
/// `energy_j` is its kinetic energy, `braking_n_m` the moment that brakes it, held at its value at release; over a longer way a moment that
/// changes with the angle makes this an estimate. Source: work and energy.
pub fn coast_rad(energy_j: f64, braking_n_m: f64) -> Option<f64> {
    if energy_j <= 0.0 {
        return Some(0.0);
    }
    (braking_n_m > 0.0).then(|| energy_j / braking_n_m)
}

/// Force of a stop that ends a turning leaf by giving way, N: `F = ω·√(k·I)`, whatever its distance from the hinge.
///
/// `stiffness_n_per_m` that of stop and leaf together in N/m, at the stop. The same as `F = v·√(k·m)` with `v = ω·r`, `m = I/r²`; the drive's own push
/// comes on top. Source: energy of a linear spring.
pub fn stop_force_n(leaf_rad_s: f64, inertia_kg_m2: f64, stiffness_n_per_m: f64) -> f64 {
    leaf_rad_s.abs() * root(inertia_kg_m2 * stiffness_n_per_m)
}
