//! Moments about the hinge: mass, friction, wind, lean; and what the drive must supply against them.

mod hinges;
mod mass;
mod members;
mod wind;

pub use hinges::*;
pub use mass::{bar_inertia_kg_m2, stretch_inertia_kg_m2};
pub use members::*;
pub use wind::*;

use crate::STANDARD_GRAVITY_M_S2;
use crate::drive::{Direction, WindCase};
use crate::job::{Hinges, Job};
use crate::real::{cos, sin};

/// The loads on one leaf, ready to be evaluated at any leaf angle.
///
/// Neglected, and said so: the radial load that link and wind add at the hinges, and the cosine of the lean in the weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeafLoads {
    /// Friction moment of all hinges together, N·m, never negative.
    pub friction_n_m: f64,
    /// Moment of the gust square to the leaf, N·m, never negative.
    pub wind_n_m: f64,
    /// Moment of inertia about the hinge axis, kg·m².
    pub inertia_kg_m2: f64,
    /// Amplitude of the lean's moment, `W·x_c·sin λ`, N·m.
    lean_amplitude_n_m: f64,
    /// Plan direction of downhill, rad.
    downhill_rad: f64,
}

impl LeafLoads {
    /// The loads of a job that passed its checks.
    pub fn new(job: &Job) -> LeafLoads {
        let leaf = &job.leaf;
        let weight_n = leaf.mass_kg * STANDARD_GRAVITY_M_S2;
        let friction_n_m = match &job.hinges {
            Hinges::Plain(plain) => {
                let couple_n = hinge_couple_n(weight_n, leaf.mass_centroid(), plain.spacing_m);
                let (outer, inner) = (plain.thrust_outer_radius_m, plain.thrust_inner_radius_m);
                // Both hinges carry the couple.
                2.0 * pin_friction_n_m(plain.friction_coefficient, plain.pin_radius_m, couple_n)
                    + collar_friction_uniform_pressure_n_m(plain.friction_coefficient, weight_n, outer, inner)
            }
            Hinges::Measured(measured) => measured.friction_n_m(),
        };
        LeafLoads {
            friction_n_m,
            wind_n_m: wind_moment_n_m(&job.wind, leaf, job.wind.speed_m_s),
            inertia_kg_m2: leaf.inertia(),
            lean_amplitude_n_m: weight_n * leaf.mass_centroid() * sin(job.lean.angle().to_radians()),
            downhill_rad: job.lean.downhill().to_radians(),
        }
    }

    /// The same leaf in another gust.
    pub fn in_wind(&self, wind_n_m: f64) -> LeafLoads {
        LeafLoads { wind_n_m, ..*self }
    }

    /// Moment of gravity about a leaning hinge axis, N·m, positive opening: `−W·x_c·sin λ·sin(θ − ψ)`.
    /// At rest and without friction the leaf hangs at `θ = ψ`. Source: statics (moment of the weight's component along the slope).
    pub fn gravity_n_m(&self, leaf_rad: f64) -> f64 {
        -self.lean_amplitude_n_m * sin(leaf_rad - self.downhill_rad)
    }

    /// Moment the drive must supply to move the leaf steadily, N·m, positive opening:
    /// `s·τ_friction − M_wind − M_gravity` with `M_wind = −s·τ_w` against, `+s·τ_w` following.
    pub fn demand_n_m(&self, leaf_rad: f64, direction: Direction, wind: WindCase) -> f64 {
        direction.sign() * (self.friction_n_m + wind.sign() * self.wind_n_m) - self.gravity_n_m(leaf_rad)
    }

    /// Derivative of [`LeafLoads::demand_n_m`] by the leaf angle, N·m/rad. Only the lean varies with the angle.
    pub(crate) fn demand_slope_n_m(&self, leaf_rad: f64) -> f64 {
        self.lean_amplitude_n_m * cos(leaf_rad - self.downhill_rad)
    }

    /// Greatest moment the lean has anywhere, N·m.
    pub(crate) fn lean_amplitude_n_m(&self) -> f64 {
        self.lean_amplitude_n_m.abs()
    }
}
