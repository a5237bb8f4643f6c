//! The loads on one leaf.

use super::Body;
use super::hinges::*;
use super::wind::{Gust, wind_moment_n_m};
use crate::STANDARD_GRAVITY_M_S2;
use crate::elements::Collar;
use crate::job::{Drag, Hinges, Job};
use crate::real::sin;
use crate::terms::Direction;

/// The loads on one leaf, ready to be evaluated at any leaf angle.
///
/// Neglected, and said so: the radial load that link and wind add at the hinges, and the cosine of the lean in the weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeafLoads {
    /// Friction moment of all hinges and of drag through the whole swing together when opening and when closing, N·m, never negative. They
    /// differ on a ramp only.
    friction_n_m: [f64; 2],
    /// Moment of the gust square to the leaf, N·m, never negative.
    pub wind_n_m: f64,
    /// Moment of inertia about the hinge axis, kg·m².
    pub inertia_kg_m2: f64,
    /// Amplitude of the lean's moment, `W·x_c·sin λ`, N·m.
    pub(super) lean_amplitude_n_m: f64,
    /// Plan direction of downhill, rad.
    pub(super) downhill_rad: f64,
    /// Moment of the weight on the ramp of rising hinges, `W·dz/dθ`, N·m; positive where the leaf rises on opening.
    pub(super) rise_n_m: f64,
    /// Drag of the latch near closed, N·m.
    latch_n_m: f64,
    /// Leaf angle up to which the latch drags, rad.
    latch_rad: f64,
    /// Plan direction a wind of fixed bearing blows towards, rad, and the side of the hinge its centre is on, ±1.
    pub(super) bearing: Option<(f64, f64)>,
}

impl LeafLoads {
    /// The loads of a job that passed its checks.
    #[must_use]
    pub fn new(job: &Job) -> LeafLoads {
        LeafLoads::with_friction(job, job.hinges.friction_range().map_or(0.0, |range| range.likely))
    }

    /// The same with another coefficient of friction; measured hinges have none and stay as they are.
    pub fn with_friction(job: &Job, friction_coefficient: f64) -> LeafLoads {
        let body = Body::of(job);
        let weight_n = body.mass_kg * STANDARD_GRAVITY_M_S2;
        let couple_n = |spacing_m| hinge_couple_n(weight_n, body.mass_centroid_m, spacing_m);
        let mut rise_n_m = 0.0;
        let mut friction_n_m = match &job.hinges {
            Hinges::Plain(hinge) => {
                let (outer, inner) = (hinge.thrust_outer_radius_m, hinge.thrust_inner_radius_m);
                // Both hinges carry the couple.
                let pins = 2.0 * pin_friction_n_m(friction_coefficient, hinge.pin_radius_m, couple_n(hinge.spacing_m));
                let collar = hinge.collar.unwrap_or(Collar::CAREFUL);
                [pins + collar.friction_n_m(friction_coefficient, weight_n, outer, inner); 2]
            }
            Hinges::Rising(hinge) => {
                let leaf = RisingLeaf {
                    weight_n,
                    couple_n: couple_n(hinge.spacing_m),
                    pin_radius_m: hinge.pin_radius_m,
                    collar_radius_m: hinge.collar_radius_m(),
                    rise_m_per_rad: (hinge.rise_m / job.open_rad()).abs(),
                    friction_coefficient,
                };
                // What the ramp gives back is gravity's; the rest is friction, more of it up than down.
                let (up, down) = (leaf.raising_n_m() - leaf.weight_n_m(), leaf.lowering_n_m() + leaf.weight_n_m());
                rise_n_m = leaf.weight_n_m() * hinge.rise_m.signum();
                let by_way = if hinge.rise_m < 0.0 { [down, up] } else { [up, down] };
                // Without friction only rounding is left of the difference.
                by_way.map(|friction_n_m| friction_n_m.max(0.0))
            }
            Hinges::Rolling(hinge) => {
                let couple_n = couple_n(hinge.spacing_m);
                [rolling_friction_n_m(friction_coefficient, hinge.pin_radius_m, couple_n, weight_n); 2]
            }
            Hinges::Measured(measured) => [measured.friction_n_m(); 2],
        };
        if let Some(drag) = &job.drag {
            friction_n_m = friction_n_m.map(|friction_n_m| friction_n_m + drag.steady_n_m());
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
    #[must_use]
    pub fn in_wind(&self, wind_n_m: f64) -> LeafLoads {
        LeafLoads { wind_n_m, ..*self }
    }

    /// Friction of the hinges and drag through the whole swing, N·m, never negative; by the way the leaf moves, because a ramp takes more of it
    /// up than down.
    #[must_use]
    pub fn friction_n_m(&self, direction: Direction) -> f64 {
        let [opening, closing] = self.friction_n_m;
        match direction {
            Direction::Open => opening,
            Direction::Close => closing,
        }
    }

    /// Friction and drag at a leaf angle, N·m: the latch adds near closed.
    #[must_use]
    pub fn friction_at_n_m(&self, leaf_rad: f64, direction: Direction) -> f64 {
        let latch_n_m = if leaf_rad <= self.latch_rad { self.latch_n_m } else { 0.0 };
        self.friction_n_m(direction) + latch_n_m
    }

    /// Moment of the weight on a ramp, `W·dz/dθ`, N·m; positive where the leaf rises on opening, 0 without a ramp.
    #[must_use]
    pub fn rise_n_m(&self) -> f64 {
        self.rise_n_m
    }

    /// Moment of gravity about a leaning hinge axis, N·m, positive opening: `−W·x_c·sin λ·sin(θ − ψ)`, and `−W·dz/dθ` of a rising hinge.
    /// At rest, plumb hinges apart and without friction, the leaf hangs at `θ = ψ`. Source: statics (moment of the weight's component
    /// along the slope); virtual work of the rise.
    #[must_use]
    pub fn gravity_n_m(&self, leaf_rad: f64) -> f64 {
        -self.lean_amplitude_n_m * sin(leaf_rad - self.downhill_rad) - self.rise_n_m
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
