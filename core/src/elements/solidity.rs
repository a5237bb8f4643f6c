//! How much of the outline stops the wind.

/// Below this solidity the wall of EN 1991-1-4 does not apply: the leaf is a lattice.
pub const EN1991_LEAST_SOLIDITY: f64 = 0.8;

/// Below this solidity ASCE 7's wall does not apply either: the leaf is a lattice.
pub(crate) const ASCE7_LEAST_SOLIDITY: f64 = 0.7;

/// Solid over gross area of parallel bars: `ε = b/p`, bar width over pitch (centre to centre), 0…1.
#[must_use]
pub fn bar_solidity(bar_m: f64, pitch_m: f64) -> f64 {
    (bar_m / pitch_m).clamp(0.0, 1.0)
}

/// Solid over gross area of a square mesh of wire `w` at pitch `p`: `ε = 1 − (1 − w/p)²`.
#[must_use]
pub fn mesh_solidity(wire_m: f64, pitch_m: f64) -> f64 {
    let open = 1.0 - bar_solidity(wire_m, pitch_m);
    1.0 - open * open
}
