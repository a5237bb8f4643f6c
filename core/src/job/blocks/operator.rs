//! The operator's ratings.

use crate::job::table::*;
use crate::units::Quantity::{AngularSpeed, Ratio, Torque};

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
    }
}
