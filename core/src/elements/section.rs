//! Areas of hollow sections.

use crate::terms::words::words;
use core::f64::consts::PI;

/// Density of steel, kg/m³ (EN 10219-2 mass formulas; 490 lb/ft³).
pub const STEEL_KG_M3: f64 = 7850.0;

words! {
    /// How a rectangular hollow section's corners are reckoned.
    pub enum CornerRule {
        /// EN 10219-2, cold-formed: outer and inner radius 2T/1T up to 6 mm of wall, 2.5T/1.5T up to 10 mm, 3T/2T above.
        En10219 = "en10219",
        /// AISC nominal weights: outer radius 2t, inner t, with the nominal wall.
        Aisc = "aisc",
    }
}

impl CornerRule {
    /// Outer and inner corner radius in walls.
    fn radii(self, wall_m: f64) -> (f64, f64) {
        // A wall typed in inches or computed lands a hair beside the switch.
        let thicker_than = |limit_m: f64| wall_m > limit_m + 1e-9;
        match self {
            CornerRule::En10219 if thicker_than(0.010) => (3.0, 2.0),
            CornerRule::En10219 if thicker_than(0.006) => (2.5, 1.5),
            _ => (2.0, 1.0),
        }
    }
}

/// Cross-section of a square or rectangular tube, m²: `A = 2T(B + H − 2T) − (4 − π)(r_o² − r_i²)`.
///
/// `face_m` and `depth_m` outer sides, `wall_m` below [`hollow_largest_wall_m`]. Mass per length is `ρ·A`. Source: EN 10219-2 Annex B, from
/// memory, reproduces published section masses to their last digit; AISC: same form with 3t² for `r_o² − r_i²`.
#[must_use]
pub fn hollow_area_m2(face_m: f64, depth_m: f64, wall_m: f64, rule: CornerRule) -> f64 {
    let (outer, inner) = rule.radii(wall_m);
    let corners = (4.0 - PI) * (outer * outer - inner * inner) * wall_m * wall_m;
    2.0 * wall_m * (face_m + depth_m - 2.0 * wall_m) - corners
}

/// Largest wall with which the corners still fit the shorter side, m: beyond it the section cannot exist.
pub fn hollow_largest_wall_m(face_m: f64, depth_m: f64, rule: CornerRule) -> f64 {
    let half = face_m.min(depth_m) / 2.0;
    // The outer radius grows in steps with the wall: the largest wall of each step, as far as it fits, which then fits with its own radius,
    // no larger than the step's.
    [f64::MAX, 0.010, 0.006]
        .into_iter()
        .map(|limit_m| {
            let within = if limit_m == f64::MAX { 1.0 } else { limit_m };
            (half / rule.radii(within).0).min(limit_m)
        })
        .fold(0.0, f64::max)
}

/// Cross-section of a round tube, m²: `A = π·(D − T)·T`; in EN 10219-2 `M = 0.0246615·(D − T)·T` kg/m (mm).
///
/// `outer_m` outer diameter, `wall_m` at most half of it.
#[must_use]
pub fn round_hollow_area_m2(outer_m: f64, wall_m: f64) -> f64 {
    PI * (outer_m - wall_m) * wall_m
}

/// Mass of sheet, kg/m²: `ρ·t`; steel 7.85 kg/m² per mm. The US Manufacturers' Standard Gauge states masses 2.4 % above its thicknesses.
#[must_use]
pub fn sheet_mass_kg_m2(thickness_m: f64, density_kg_m3: f64) -> f64 {
    density_kg_m3 * thickness_m
}
