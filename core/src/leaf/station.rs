//! The leaf at one angle: what of its loads depends on the angle by sine and cosine, worked out once for every direction, wind and friction.

use super::LeafLoads;
use super::wind::normal_component_and_slope;
use crate::real::sin_cos;
use crate::terms::{Direction, WindCase};

/// The loads at one leaf angle, the friction and the gust's strength apart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct LeafStation {
    /// Leaf angle, rad.
    pub leaf_rad: f64,
    /// Moment of gravity, N·m, positive opening: [`LeafLoads::gravity_n_m`].
    pub gravity_n_m: f64,
    /// Derivative of the lean's moment against the movement, N·m/rad.
    lean_slope_n_m: f64,
    /// Part of the square-on pressure that a wind of fixed bearing has here, and its derivative; 0 where there is none.
    normal: (f64, f64),
}

impl LeafLoads {
    /// The leaf at an angle.
    pub(crate) fn station(&self, leaf_rad: f64) -> LeafStation {
        let (sine, cosine) = sin_cos(leaf_rad - self.downhill_rad);
        LeafStation {
            leaf_rad,
            gravity_n_m: -self.lean_amplitude_n_m * sine - self.rise_n_m,
            lean_slope_n_m: self.lean_amplitude_n_m * cosine,
            normal: self
                .bearing
                .map_or((0.0, 0.0), |(bearing_rad, _)| normal_component_and_slope(bearing_rad, leaf_rad)),
        }
    }

    /// Whether another leaf's stations serve for this one: they differ in friction and in the gust's strength at most.
    pub(crate) fn hangs_like(&self, other: &LeafLoads) -> bool {
        let told = |loads: &LeafLoads| (loads.lean_amplitude_n_m, loads.downhill_rad, loads.rise_n_m, loads.bearing);
        told(self) == told(other)
    }

    /// Moment of the wind at a station, N·m, positive opening.
    pub(crate) fn wind_of_n_m(&self, station: &LeafStation, direction: Direction, wind: WindCase) -> f64 {
        match wind {
            WindCase::Against => -direction.sign() * self.wind_n_m,
            WindCase::Following => direction.sign() * self.wind_n_m,
            WindCase::Bearing => self.bearing.map_or(0.0, |(_, side)| self.wind_n_m * side * station.normal.0),
        }
    }

    /// Moment the drive must supply at a station, N·m: see [`LeafLoads::demand_n_m`].
    pub(crate) fn demand_of_n_m(&self, station: &LeafStation, direction: Direction, wind: WindCase) -> f64 {
        let friction_n_m = self.friction_at_n_m(station.leaf_rad, direction);
        let sign = direction.sign();
        match wind {
            WindCase::Against => sign * (friction_n_m + self.wind_n_m) - station.gravity_n_m,
            WindCase::Following => sign * (friction_n_m - self.wind_n_m) - station.gravity_n_m,
            WindCase::Bearing => sign * friction_n_m - self.wind_of_n_m(station, direction, wind) - station.gravity_n_m,
        }
    }

    /// Derivative of [`LeafLoads::demand_of_n_m`] by the leaf angle, N·m/rad, the latch's step apart.
    pub(crate) fn demand_slope_n_m(&self, station: &LeafStation, wind: WindCase) -> f64 {
        match (wind, self.bearing) {
            (WindCase::Bearing, Some((_, side))) => station.lean_slope_n_m - self.wind_n_m * side * station.normal.1,
            _ => station.lean_slope_n_m,
        }
    }

    /// Moment of the wind, N·m, positive opening.
    #[must_use]
    pub fn wind_at_n_m(&self, leaf_rad: f64, direction: Direction, wind: WindCase) -> f64 {
        self.wind_of_n_m(&self.station(leaf_rad), direction, wind)
    }

    /// Moment the drive must supply to move the leaf steadily, N·m, positive opening:
    /// `s·τ_friction − M_wind − M_gravity` with `M_wind = −s·τ_w` against, `+s·τ_w` following, by the normal component for a fixed bearing.
    #[must_use]
    pub fn demand_n_m(&self, leaf_rad: f64, direction: Direction, wind: WindCase) -> f64 {
        self.demand_of_n_m(&self.station(leaf_rad), direction, wind)
    }
}
