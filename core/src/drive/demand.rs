//! Shaft torque at one leaf angle.

use crate::arm::{Leverage, Linkage, Pose};
use crate::elements::Efficiency;
use crate::leaf::{LeafLoads, LeafStation};
use crate::terms::{Direction, WindCase};

/// A leaf on an arm in a wind, moving steadily one way: shaft torque by leaf angle.
#[derive(Clone, Copy, Debug)]
pub struct Demand<'a> {
    /// The arm.
    pub linkage: &'a Linkage,
    /// The leaf.
    pub loads: &'a LeafLoads,
    /// Parts of the work that pass between shaft and leaf.
    pub efficiency: Efficiency,
    /// Which way the leaf moves.
    pub direction: Direction,
    /// How the wind stands to it.
    pub wind: WindCase,
}

impl Demand<'_> {
    /// Moment the drive must bring to the leaf, N·m, positive opening.
    #[must_use]
    pub fn leaf_torque_n_m(&self, leaf_rad: f64) -> f64 {
        self.loads.demand_n_m(leaf_rad, self.direction, self.wind)
    }

    /// Whether the leaf drives the shaft: the moment it asks for is against its own movement.
    #[must_use]
    pub fn leaf_drives(&self, leaf_torque_n_m: f64) -> bool {
        leaf_torque_n_m * self.direction.sign() < 0.0
    }

    /// Shaft torque at a pose, N·m, signed like the crank angle; 0 at a dead point.
    #[must_use]
    pub fn shaft_torque_n_m(&self, pose: &Pose) -> f64 {
        self.shaft_n_m(self.leaf_torque_n_m(pose.leaf_rad), pose.ratio)
    }

    /// Shaft torque of a leaf moment where the crank turns `ratio` times as fast as the leaf, N·m; 0 at a dead point.
    pub(crate) fn shaft_n_m(&self, leaf_torque_n_m: f64, ratio: Option<f64>) -> f64 {
        ratio.map_or(0.0, |ratio| effort_n_m(leaf_torque_n_m, self.direction, self.efficiency) / ratio)
    }

    /// Leaf moment, N·m, and a number with the sign of `d|T_shaft|/dθ`. `|T| ∝ |τ/n|`, so it is that of `(τ'·n − τ·n')·sign(τ·n)`; `None` at a
    /// dead point.
    pub(super) fn leaf_torque_and_slope(&self, lever: &Leverage, station: &LeafStation) -> (f64, Option<f64>) {
        let torque = self.loads.demand_of_n_m(station, self.direction, self.wind);
        let slope = lever.ratio.zip(lever.ratio_rate).map(|(ratio, rate)| {
            let slope = self.loads.demand_slope_n_m(station, self.wind) * ratio - torque * rate;
            if torque * ratio < 0.0 { -slope } else { slope }
        });
        (torque, slope)
    }
}

/// What a leaf moment asks of a shaft that turns as fast as the leaf, N·m; divided by the ratio it is the shaft torque.
///
/// `T_leaf/η` while the shaft drives the leaf, `T_leaf·η_b` while the leaf drives the shaft: losses always help whoever is
/// driven. Source: virtual work; efficiency as for any gear train.
pub(crate) fn effort_n_m(leaf_torque_n_m: f64, direction: Direction, efficiency: Efficiency) -> f64 {
    let Efficiency { forward, back } = efficiency;
    if leaf_torque_n_m * direction.sign() < 0.0 { leaf_torque_n_m * back } else { leaf_torque_n_m / forward }
}
