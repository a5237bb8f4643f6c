//! Peak velocity pressure by EN 1991-1-4:2005 + A1:2010, with its recommended values; a national annex replaces them and goes first.

use crate::real::{log, pow, sqrt};
use crate::terms::Terrain;

/// Air density of the standard, kg/m³ (recommended value).
const DENSITY_KG_M3: f64 = 1.25;

impl Terrain {
    /// Roughness length and least height, m. Source: EN 1991-1-4 Table 4.1, from memory.
    const fn lengths_m(self) -> (f64, f64) {
        match self {
            Terrain::Sea => (0.003, 1.0),
            Terrain::I => (0.01, 1.0),
            Terrain::II => (0.05, 2.0),
            Terrain::III => (0.3, 5.0),
            Terrain::IV => (1.0, 10.0),
        }
    }
}

/// `ln(z/z0)` with the height not below the terrain's least one.
fn log_height(terrain: Terrain, height_m: f64) -> f64 {
    let (roughness_m, least_m) = terrain.lengths_m();
    log(height_m.max(least_m) / roughness_m)
}

/// Roughness factor: mean speed at a height over the basic one, `c_r = 0.19·(z0/0.05)^0.07·ln(z/z0)`.
///
/// `height_m` over ground, not above 200 m. Source: EN 1991-1-4 eqs 4.4, 4.5, from memory.
#[must_use]
pub fn en1991_roughness_factor(terrain: Terrain, height_m: f64) -> f64 {
    0.19 * pow(terrain.lengths_m().0 / 0.05, 0.07) * log_height(terrain, height_m)
}

/// Turbulence intensity, `I_v = k_I/(c_o·ln(z/z0))` with `k_I` = 1. Source: EN 1991-1-4 eq. 4.7, from memory.
#[must_use]
pub fn en1991_turbulence_intensity(terrain: Terrain, height_m: f64, orography: f64) -> f64 {
    1.0 / (orography * log_height(terrain, height_m))
}

/// Factor on the basic speed for another yearly probability of being exceeded than 0.02 (50 years):
/// `c_prob = ((1 − K·ln(−ln(1−p)))/(1 − K·ln(−ln 0.98)))^n`, `K` 0.2, `n` 0.5.
///
/// `probability` from 0.001 to 0.5. Source: EN 1991-1-4 eq. 4.2, from memory.
#[must_use]
pub fn en1991_probability_factor(probability: f64) -> f64 {
    let reduced = |p: f64| 1.0 - 0.2 * log(-log(1.0 - p));
    sqrt(reduced(probability) / reduced(0.02))
}

/// Peak velocity pressure, Pa: `q_p = (1 + 7·I_v)·½·ρ·v_m²`, `v_m = c_r·c_o·v_b`, ρ = 1.25 kg/m³.
///
/// `basic_m_s` ten-minute mean at 10 m in terrain II with its direction, season and probability factors. The structural factor `c_s·c_d` is
/// taken as 1. Source: EN 1991-1-4 eqs 4.3, 4.8, from memory.
#[must_use]
pub fn en1991_peak_pressure_pa(basic_m_s: f64, terrain: Terrain, height_m: f64, orography: f64) -> f64 {
    let mean_m_s = en1991_roughness_factor(terrain, height_m) * orography * basic_m_s;
    let turbulence = en1991_turbulence_intensity(terrain, height_m, orography);
    (1.0 + 7.0 * turbulence) * super::velocity_pressure_pa(DENSITY_KG_M3, mean_m_s)
}
