//! Moments about the hinge: mass, friction, wind, lean; and what the drive must supply against them.

mod body;
mod hinges;
mod mass;
mod members;
mod wind;

pub use body::Body;
pub use hinges::*;
pub use mass::{bar_inertia_kg_m2, stretch_inertia_kg_m2};
pub use members::*;
pub use wind::*;

use crate::STANDARD_GRAVITY_M_S2;
use crate::drive::{Direction, WindCase};
use crate::job::{Drag, Hinges, Job};
use crate::real::{cos, sin};

/// The loads on one leaf, ready to be evaluated at any leaf angle.
///
/// Neglected, and said so: the radial load that link and wind add at the hinges, and the cosine of the lean in the weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeafLoads {
    /// Friction moment of all hinges and of drag through the whole swing together, N·m, never negative.
    pub friction_n_m: f64,
    /// Moment of the gust square to the leaf, N·m, never negative.
    pub wind_n_m: f64,
    /// Moment of inertia about the hinge axis, kg·m².
    pub inertia_kg_m2: f64,
    /// Amplitude of the lean's moment, `W·x_c·sin λ`, N·m.
    lean_amplitude_n_m: f64,
    /// Plan direction of downhill, rad.
    downhill_rad: f64,
    /// Moment of a rising hinge, `W·dz/dθ`, N·m; positive where the leaf rises on opening.
    rise_n_m: f64,
    /// Drag of the latch near closed, N·m.
    latch_n_m: f64,
    /// Leaf angle up to which the latch drags, rad.
    latch_rad: f64,
    /// Plan direction a wind of fixed bearing blows towards, rad, and the side of the hinge its centre is on, ±1.
    bearing: Option<(f64, f64)>,
}

impl LeafLoads {
    /// The loads of a job that passed its checks.
    pub fn new(job: &Job) -> LeafLoads {
        LeafLoads::with_friction(job, job.hinges.friction_range().map_or(0.0, |range| range.likely))
    }

    /// The same with another coefficient of friction; measured hinges have none and stay as they are.
    pub fn with_friction(job: &Job, friction_coefficient: f64) -> LeafLoads {
        let body = Body::of(job);
        let weight_n = body.mass_kg * STANDARD_GRAVITY_M_S2;
        let couple_n = |spacing_m| hinge_couple_n(weight_n, body.mass_centroid_m, spacing_m);
        let plain = |spacing_m, pin_radius_m, outer_m, inner_m, collar: Option<Collar>| {
            // Both hinges carry the couple.
            2.0 * pin_friction_n_m(friction_coefficient, pin_radius_m, couple_n(spacing_m))
                + collar.unwrap_or(Collar::UniformPressure).friction_n_m(
                    friction_coefficient,
                    weight_n,
                    outer_m,
                    inner_m,
                )
        };
        let mut rise_n_m = 0.0;
        let mut friction_n_m = match &job.hinges {
            Hinges::Plain(hinge) => {
                let (outer, inner) = (hinge.thrust_outer_radius_m, hinge.thrust_inner_radius_m);
                plain(hinge.spacing_m, hinge.pin_radius_m, outer, inner, hinge.collar)
            }
            Hinges::Rising(hinge) => {
                rise_n_m = weight_n * hinge.rise_m / job.open_rad();
                let (outer, inner) = (hinge.thrust_outer_radius_m, hinge.thrust_inner_radius_m);
                plain(hinge.spacing_m, hinge.pin_radius_m, outer, inner, hinge.collar)
            }
            Hinges::Rolling(hinge) => {
                let couple_n = couple_n(hinge.spacing_m);
                rolling_friction_n_m(friction_coefficient, hinge.pin_radius_m, couple_n, weight_n)
            }
            Hinges::Measured(measured) => measured.friction_n_m(),
        };
        if let Some(drag) = &job.drag {
            friction_n_m += drag.steady_n_m();
        }
        let gust = job.gust();
        LeafLoads {
            friction_n_m,
            wind_n_m: gust_moment_n_m(&gust, &body),
            inertia_kg_m2: body.inertia_kg_m2,
            lean_amplitude_n_m: weight_n * body.mass_centroid_m * sin(job.lean.angle().to_radians()),
            downhill_rad: job.lean.downhill().to_radians(),
            rise_n_m,
            latch_n_m: job.drag.as_ref().map_or(0.0, Drag::latch),
            latch_rad: job.drag.as_ref().map_or(0.0, Drag::latch_rad),
            bearing: job.wind.bearing_deg.map(|deg| (deg.to_radians(), body.wind_centroid_m.signum())),
        }
    }

    /// The same leaf in another gust.
    pub fn in_wind(&self, wind_n_m: f64) -> LeafLoads {
        LeafLoads { wind_n_m, ..*self }
    }

    /// Friction and drag at a leaf angle, N·m: the latch adds near closed.
    pub fn friction_at_n_m(&self, leaf_rad: f64) -> f64 {
        if self.latch_n_m > 0.0 && leaf_rad <= self.latch_rad {
            self.friction_n_m + self.latch_n_m
        } else {
            self.friction_n_m
        }
    }

    /// Moment of gravity about a leaning hinge axis, N·m, positive opening: `−W·x_c·sin λ·sin(θ − ψ)`, and `−W·dz/dθ` of a rising hinge.
    /// At rest, plumb hinges apart and without friction, the leaf hangs at `θ = ψ`. Source: statics (moment of the weight's component
    /// along the slope); virtual work of the rise.
    pub fn gravity_n_m(&self, leaf_rad: f64) -> f64 {
        -self.lean_amplitude_n_m * sin(leaf_rad - self.downhill_rad) - self.rise_n_m
    }

    /// Moment of the wind, N·m, positive opening.
    pub fn wind_at_n_m(&self, leaf_rad: f64, direction: Direction, wind: WindCase) -> f64 {
        match wind {
            WindCase::Against => -direction.sign() * self.wind_n_m,
            WindCase::Following => direction.sign() * self.wind_n_m,
            WindCase::Bearing => self
                .bearing
                .map_or(0.0, |(bearing_rad, side)| self.wind_n_m * side * normal_component(bearing_rad, leaf_rad)),
        }
    }

    /// Moment the drive must supply to move the leaf steadily, N·m, positive opening:
    /// `s·τ_friction − M_wind − M_gravity` with `M_wind = −s·τ_w` against, `+s·τ_w` following, by the normal component for a fixed bearing.
    pub fn demand_n_m(&self, leaf_rad: f64, direction: Direction, wind: WindCase) -> f64 {
        let friction_n_m = self.friction_at_n_m(leaf_rad);
        let sign = direction.sign();
        match wind {
            WindCase::Against => sign * (friction_n_m + self.wind_n_m) - self.gravity_n_m(leaf_rad),
            WindCase::Following => sign * (friction_n_m - self.wind_n_m) - self.gravity_n_m(leaf_rad),
            WindCase::Bearing => {
                sign * friction_n_m - self.wind_at_n_m(leaf_rad, direction, wind) - self.gravity_n_m(leaf_rad)
            }
        }
    }

    /// Derivative of [`LeafLoads::demand_n_m`] by the leaf angle, N·m/rad, the latch's step apart.
    pub(crate) fn demand_slope_n_m(&self, leaf_rad: f64, wind: WindCase) -> f64 {
        let lean = self.lean_amplitude_n_m * cos(leaf_rad - self.downhill_rad);
        match (wind, self.bearing) {
            (WindCase::Bearing, Some((bearing_rad, side))) => {
                lean - self.wind_n_m * side * normal_component_slope(bearing_rad, leaf_rad)
            }
            _ => lean,
        }
    }

    /// Where the demand steps inside the swing, rad.
    pub(crate) fn step_rad(&self) -> Option<f64> {
        (self.latch_n_m > 0.0 && self.latch_rad > 0.0).then_some(self.latch_rad)
    }

    /// Greatest moment the lean has anywhere, N·m.
    pub(crate) fn lean_amplitude_n_m(&self) -> f64 {
        self.lean_amplitude_n_m.abs()
    }
}

/// Moment of a gust square to the leaf, N·m, never negative.
pub(crate) fn gust_moment_n_m(gust: &Gust, body: &Body) -> f64 {
    let (density, speed) = (gust.air_density_kg_m3, gust.speed_m_s);
    wind_moment_n_m(density, speed, gust.force_coefficient, body.wind_area_m2, body.wind_centroid_m)
}
