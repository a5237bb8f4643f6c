//! A flat thrust collar.

use crate::terms::words::words;

words! {
    /// How a thrust collar carries its load.
    pub enum Collar {
        /// New and flat: the same pressure everywhere. The larger friction.
        UniformPressure = "uniform_pressure",
        /// Worn in: pressure falls as 1/r.
        UniformWear = "uniform_wear",
    }
}

impl Collar {
    /// What is taken where nothing is said: the larger friction.
    pub(crate) const CAREFUL: Collar = Collar::UniformPressure;

    /// Friction moment of the collar, N·m.
    #[must_use]
    pub fn friction_n_m(self, friction_coefficient: f64, axial_n: f64, outer_m: f64, inner_m: f64) -> f64 {
        match self {
            Collar::UniformPressure => {
                collar_friction_uniform_pressure_n_m(friction_coefficient, axial_n, outer_m, inner_m)
            }
            Collar::UniformWear => collar_friction_uniform_wear_n_m(friction_coefficient, axial_n, outer_m, inner_m),
        }
    }

    /// Mean radius of friction, m: where the whole load would meet the same friction moment, `T/(μ·W)`.
    #[must_use]
    pub fn mean_radius_m(self, outer_m: f64, inner_m: f64) -> f64 {
        self.friction_n_m(1.0, 1.0, outer_m, inner_m)
    }
}

/// Friction moment of a flat thrust collar under uniform pressure, N·m:
/// `T = (2/3)·μ·W·(R_o³ − R_i³)/(R_o² − R_i²) = (2/3)·μ·W·(R_o² + R_o·R_i + R_i²)/(R_o + R_i)`.
///
/// The second form also holds for a thin ring (`R_o = R_i`, `T = μ·W·R`). A worn-in collar (uniform wear) gives less, so this is
/// the careful choice. Source: "Statics: Pivot friction", adaptivebooks.org.
#[must_use]
pub fn collar_friction_uniform_pressure_n_m(
    friction_coefficient: f64,
    axial_n: f64,
    outer_m: f64,
    inner_m: f64,
) -> f64 {
    let (outer, inner) = (outer_m, inner_m);
    2.0 / 3.0 * friction_coefficient * axial_n * (outer * outer + outer * inner + inner * inner) / (outer + inner)
}

/// Friction moment of a flat thrust collar worn in (uniform wear), N·m: `T = μ·W·(R_o + R_i)/2`.
///
/// Pressure falls as `1/r` once the collar has worn to an even gap, so this is the lower of the two cases; see
/// [`collar_friction_uniform_pressure_n_m`]. Source: "Statics: Pivot friction", adaptivebooks.org (constant wear).
#[must_use]
pub fn collar_friction_uniform_wear_n_m(friction_coefficient: f64, axial_n: f64, outer_m: f64, inner_m: f64) -> f64 {
    friction_coefficient * axial_n * (outer_m + inner_m) / 2.0
}
