//! Snow in the way of the leaf: how much it roughly takes to push it.

/// Depth of snow the plan speaks of, m.
pub const SNOW_DEPTH_M: f64 = 0.1;

/// Weight of settled snow, N/m³: several hours or days after its fall. Source: EN 1991-1-3 Table E.1, from memory.
const SETTLED_N_M3: f64 = 2000.0;

/// Passive over vertical pressure of a loose heap with an angle of repose of 30°, `tan²(45° + 15°)`. Rankine; that snow behaves so is an
/// assumption, no source.
const PASSIVE: f64 = 3.0;

/// Rough moment about the hinge of pushing settled snow with the whole leaf, N·m: `½·γ·d²·K_p` a metre of leaf, `·L²/2` about the hinge.
///
/// `depth_m` of the snow above the leaf's lower edge, `length_m` of the leaf. A measure of size only: packed or frozen snow takes many times as
/// much, and the heap grows as the leaf pushes. Nothing is calculated with it. Source: Rankine's passive wedge, any text of soil mechanics.
#[must_use]
pub fn snow_moment_n_m(depth_m: f64, length_m: f64) -> f64 {
    0.5 * SETTLED_N_M3 * depth_m * depth_m * PASSIVE * length_m * length_m / 2.0
}
