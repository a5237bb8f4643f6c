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
    /// It is still moving, slower than at release, where its way ends: a stop takes the rest.
    ReachesStop,
    /// Nothing brakes it on the whole: it meets the stop as fast as it was let go, or faster.
    RunsOn,
}

/// Stretches the way is cut into.
const STRETCHES: u32 = 720;

/// How a leaf that was let go ends, and the leaf angle it turns on, rad: the whole way where it does not stop by itself.
///
/// `energy_j` is its kinetic energy at release, `way_rad` the leaf angle left to the stop, `taken_j` the work that brakes it up to an angle from
/// there (negative where wind or lean drive it), looked at along the whole way; a leaf at rest stays only where nothing moves it.
/// Source: work and energy.
pub fn coast(energy_j: f64, way_rad: f64, taken_j: impl Fn(f64) -> f64) -> (CoastState, f64) {
    let left_j = |angle: f64| energy_j - taken_j(angle);
    let step = way_rad / f64::from(STRETCHES);
    let mut before = energy_j;
    for index in 1..=STRETCHES {
        let after = left_j(step * f64::from(index));
        if after <= 0.0 {
            // Within a stretch the braking moment hardly changes, and with it the energy falls evenly.
            let share = if before > after { before / (before - after) } else { 0.0 };
            return (CoastState::Stops, step * (f64::from(index - 1) + share));
        }
        before = after;
    }
    (if before < energy_j { CoastState::ReachesStop } else { CoastState::RunsOn }, way_rad)
}

/// Force of a stop that ends a turning leaf by giving way, N: `F = ω·√(k·I)`, whatever its distance from the hinge.
///
/// `stiffness_n_per_m` that of stop and leaf together in N/m, at the stop. The same as `F = v·√(k·m)` with `v = ω·r`, `m = I/r²`; the drive's own push
/// comes on top. Source: energy of a linear spring.
pub fn stop_force_n(leaf_rad_s: f64, inertia_kg_m2: f64, stiffness_n_per_m: f64) -> f64 {
    leaf_rad_s.abs() * root(inertia_kg_m2 * stiffness_n_per_m)
}
