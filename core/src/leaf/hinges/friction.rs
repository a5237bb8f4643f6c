//! What resists at the hinges.

use crate::elements::Collar;
use crate::job::{Hinges, MeasuredHinges};

/// Radial load at each of two hinges that hold a leaf up: `H = W·|x_c| / spacing`, N.
///
/// `weight_n` in N, `centroid_m` hinge axis to mass centre, `spacing_m` between the hinges. Source: statics, moments about one hinge.
#[must_use]
pub fn hinge_couple_n(weight_n: f64, centroid_m: f64, spacing_m: f64) -> f64 {
    weight_n * centroid_m.abs() / spacing_m
}

/// Friction moment of one pin under a radial load: `T = μ·r·H`, N·m.
///
/// Dry or boundary-lubricated journal, coefficient taken as that of sliding. Source: common textbook form, from memory.
#[must_use]
pub fn pin_friction_n_m(friction_coefficient: f64, radius_m: f64, radial_n: f64) -> f64 {
    friction_coefficient * radius_m * radial_n
}

/// Friction moment of rolling bearings, N·m: `T = μ·r·(2·H + W)`: two radial ones under the couple and one that carries the weight.
///
/// `radius_m` is half the bore. Without the drag of seals, which a greased small bearing has more of than of rolling. Source: bearing
/// handbooks (`M = μ·F·d/2`), from memory.
#[must_use]
pub fn rolling_friction_n_m(friction_coefficient: f64, radius_m: f64, couple_n: f64, weight_n: f64) -> f64 {
    friction_coefficient * radius_m * (2.0 * couple_n + weight_n)
}

/// The relations in symbols, as they are printed: each is what its hinges are computed by, which a test holds by evaluating it. `μ` coefficient, `H` radial
/// load of each hinge, `W` weight, `r` radius of the pins, `R_o`, `R_i` outer and inner radius of the collar.
const PLAIN_UNIFORM_PRESSURE: &str = "2·μ·r·H + ⅔·μ·W·(R_o³ − R_i³)/(R_o² − R_i²)";
const PLAIN_UNIFORM_WEAR: &str = "2·μ·r·H + μ·W·(R_o + R_i)/2";
const ROLLING: &str = "μ·r·(2·H + W)";
/// Moment in the sense of up, upper signs up and lower signs down the ramp: `R` mean radius of friction of the collar, `tan α = p/R`,
/// `tan γ = p/r`, `tan φ = μ`.
const RISING: &str = "±2·μ·H·r·cos γ + (W ± 2·μ·H·sin γ)·R·tan(α ± φ)";

impl Hinges {
    /// The relation by which their friction is computed, in symbols; `None` where it was measured.
    #[must_use]
    pub fn friction_relation(&self) -> Option<&'static str> {
        match self {
            Hinges::Plain(hinge) => Some(match hinge.collar.unwrap_or(Collar::CAREFUL) {
                Collar::UniformPressure => PLAIN_UNIFORM_PRESSURE,
                Collar::UniformWear => PLAIN_UNIFORM_WEAR,
            }),
            Hinges::Rolling(_) => Some(ROLLING),
            Hinges::Rising(_) => Some(RISING),
            Hinges::Measured(_) => None,
        }
    }
}

impl MeasuredHinges {
    /// Friction moment from steady pulls both ways, N·m: half their sum times the radius. What drives the leaf one way (lean) cancels.
    #[must_use]
    pub fn friction_n_m(&self) -> f64 {
        self.pull_radius_m * (self.pull_open_n + self.pull_close_n) / 2.0
    }

    /// Moment that resists opening and helps closing at the leaf angle of the measurement, N·m: half the pulls' difference times the
    /// radius. To be compared with the lean's moment there, never added to it.
    #[must_use]
    pub fn bias_n_m(&self) -> f64 {
        self.pull_radius_m * (self.pull_open_n - self.pull_close_n) / 2.0
    }
}
