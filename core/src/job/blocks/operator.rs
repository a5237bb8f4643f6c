//! The operator's ratings.

use crate::elements::Efficiency;
use crate::job::table::*;
use crate::units::Quantity::{AngularSpeed, Length, Ratio, ShortLength, Torque};
use alloc::vec::Vec;

block! {
    /// The operator's ratings at its output shaft.
    #[derive(Copy)]
    pub struct Operator at "operator." {
        /// Rated torque, N·m.
        rated_torque_n_m: f64 = number(Torque, 1.0, 50_000.0, 400.0).varied(),
        /// Peak torque, N·m; unknown unless given.
        peak_torque_n_m: Option<f64> = number(Torque, 1.0, 50_000.0, 650.0),
        /// Speed of the shaft, degrees a second; unknown unless given.
        shaft_speed_deg_s: Option<f64> = number(AngularSpeed, 0.1, 360.0, 9.0),
        /// Part of the shaft's work that reaches the leaf; default 1.
        arm_efficiency: Option<f64> = assumed(Ratio, 0.3, 1.0, 1.0).varied() => efficiency,
        /// Part of the leaf's work that reaches the shaft while the leaf drives it: in a wind from behind, down a lean, at a stand; default
        /// `arm_efficiency`.
        back_efficiency: Option<f64> = number(Ratio, 0.1, 1.0, 0.9).listed(),
        /// Whether the leaf can turn the shaft while the drive is off; default yes. A gear that does not back-drive (a worm whose lead angle is below
        /// its angle of friction) still carries at its shaft what the leaf asks of it.
        back_drives: Option<bool> = flag().listed(),
        /// Its outline, where it is known: without, nothing but the shaft stands there.
        body: Option<OperatorBody> = block(OperatorBody::BLOCK),
    }
}

block! {
    /// The operator's body and base seen from above: a rectangle about the shaft, along and across the direction its base is laid in.
    ///
    /// The base is laid along the crank of the closed arm, turned as the marks say.
    #[derive(Copy)]
    pub struct OperatorBody at "operator.body." also at "operators.body." {
        /// From the shaft along the base, towards the elbow of the closed arm, m.
        along_m: [f64; 2] = range(ShortLength, -3.0, 3.0, 0.2),
        /// From the shaft across it, a quarter turn counter-clockwise from that, m.
        across_m: [f64; 2] = range(ShortLength, -3.0, 3.0, 0.15),
        /// How high it is, m; for the person who reads it.
        height_m: Option<f64> = number(Length, 0.0, 3.0, 0.4),
    }
}

impl Operator {
    /// Both efficiencies between shaft and leaf.
    #[must_use]
    pub fn efficiencies(&self) -> Efficiency {
        let forward = self.efficiency();
        Efficiency { forward, back: self.back_efficiency.unwrap_or(forward) }
    }

    /// Whether the leaf can turn the shaft while the drive is off.
    #[must_use]
    pub fn may_be_driven_back(&self) -> bool {
        self.back_drives.unwrap_or(true)
    }
}

impl OperatorBody {
    /// Its furthest point from the shaft, m.
    pub(crate) fn reach_m(&self) -> f64 {
        let furthest = |[from, to]: [f64; 2]| from.abs().max(to.abs());
        let (along, across) = (furthest(self.along_m), furthest(self.across_m));
        crate::real::sqrt(along * along + across * across)
    }

    /// Its sides along and across the base, m.
    pub(crate) fn sides_m(&self) -> [[f64; 2]; 2] {
        [self.along_m, self.across_m]
    }

    /// Ends that are the wrong way round.
    pub(in crate::job) fn relations(&self) -> Vec<Fault> {
        let along = const { OperatorBody::BLOCK.number("along_m") }.crossed("operator.body.along_m", self.along_m);
        let across = const { OperatorBody::BLOCK.number("across_m") }.crossed("operator.body.across_m", self.across_m);
        along.into_iter().chain(across).collect()
    }
}
