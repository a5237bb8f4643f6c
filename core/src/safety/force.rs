//! Force of a moving leaf on a person: estimates, each to be measured on the finished gate with a calibrated instrument.

use crate::real::sqrt;

/// Mass that stands for the leaf at its edge, kg: `m = I/L²`. Source: rigid-body mechanics.
#[must_use]
pub fn edge_mass_kg(inertia_kg_m2: f64, radius_m: f64) -> f64 {
    inertia_kg_m2 / (radius_m * radius_m)
}

/// Peak force of a spring that takes a kinetic energy, N: `F = √(2·k·E)`, the same as `F = v·√(k·m)` with `E = ½·m·v²`.
///
/// `stiffness_n_per_m` in N/m. For a leaf rigid from its rotor to its edge, with all its energy going into what it meets, and without
/// what the motor still pushes. Source: energy of a linear spring, any mechanics text.
#[must_use]
pub fn spring_force_n(stiffness_n_per_m: f64, energy_j: f64) -> f64 {
    sqrt(2.0 * stiffness_n_per_m * energy_j)
}

/// The same from a mass and its speed, N: `F = v·√(k·m)`.
#[must_use]
pub fn impact_force_n(speed_m_s: f64, stiffness_n_per_m: f64, mass_kg: f64) -> f64 {
    speed_m_s * sqrt(stiffness_n_per_m * mass_kg)
}

/// Speed at which that force is just reached, m/s: `v = F/√(k·m)`.
#[must_use]
pub fn impact_speed_m_s(force_n: f64, stiffness_n_per_m: f64, mass_kg: f64) -> f64 {
    force_n / sqrt(stiffness_n_per_m * mass_kg)
}

/// How far the spring gives, m: `x = v·√(m/k)`.
#[must_use]
pub fn compression_m(speed_m_s: f64, stiffness_n_per_m: f64, mass_kg: f64) -> f64 {
    speed_m_s * sqrt(mass_kg / stiffness_n_per_m)
}

/// Compression a safety edge needs to keep a force, m: `x = v·t + m·v²/F`.
///
/// The leaf runs on at `speed_m_s` for `response_s` until the drive lets go; then an edge whose force rises evenly to `limit_n` takes its energy,
/// `½·m·v² = ½·F·x`. Foam is stiffer near its end: an estimate. Source: work and energy.
#[must_use]
pub fn edge_travel_m(speed_m_s: f64, response_s: f64, mass_kg: f64, limit_n: f64) -> f64 {
    speed_m_s * response_s + mass_kg * speed_m_s * speed_m_s / limit_n
}
