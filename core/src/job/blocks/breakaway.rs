//! What lets go, and what holds.

use crate::job::table::*;
use crate::units::Quantity::{Angle, Force, Length, Ratio, Torque};

block! {
    /// The slipping clutch or current limit, and what it has to let go before.
    #[derive(Copy)]
    pub struct BreakawayFacts at "breakaway." {
        /// Slip torque it is set to, at the operator's shaft, N·m; unknown unless given.
        slip_torque_n_m: Option<f64> = number(Torque, 1.0, 50_000.0, 450.0),
        /// Slip torque over the largest torque of normal running; default 1.25 (common practice, no source).
        hold_factor: Option<f64> = assumed(Ratio, 1.0, 3.0, 1.25) => hold_factor,
        /// Part of a limit below that may be reached; default 0.8 (common practice, no source).
        release_factor: Option<f64> = assumed(Ratio, 0.1, 1.0, 0.8) => release_factor,
        /// Most moment about the hinge the leaf stands, N·m; no limit unless given.
        leaf_moment_n_m: Option<f64> = number(Torque, 1.0, 500_000.0, 2000.0),
        /// Most force the link stands, N; no limit unless given.
        link_force_n: Option<f64> = number(Force, 1.0, 1e6, 6000.0),
        /// Most force the bracket stands, N; no limit unless given.
        bracket_force_n: Option<f64> = number(Force, 1.0, 1e6, 6000.0),
        /// Most torque the operator's shaft and gear stand, N·m; no limit unless given.
        gearbox_torque_n_m: Option<f64> = number(Torque, 1.0, 50_000.0, 900.0),
        /// Hinge axis to where the leaf is pushed to test it, m; default the leaf's length.
        push_radius_m: Option<f64> = number(Length, 0.1, 15.0, 3.0).listed(),
    }
}

block! {
    /// What holds the closed leaf in the storm while the drive is off. Needs `storm`.
    #[derive(Copy)]
    pub struct HoldingFacts at "holding." {
        /// Torque at which the drive at a stand begins to give way, N·m; unknown unless given.
        shaft_torque_n_m: Option<f64> = number(Torque, 0.0, 50_000.0, 300.0),
        /// Most force the link stands, N; no limit unless given.
        link_force_n: Option<f64> = number(Force, 1.0, 1e6, 6000.0),
        /// Most force the bracket stands, N; no limit unless given.
        bracket_force_n: Option<f64> = number(Force, 1.0, 1e6, 6000.0),
        /// Leaf angle by which play and a limit set short may leave the leaf off closed, degrees; default 0.5 (common practice, no source).
        play_deg: Option<f64> = assumed(Angle, 0.0, 10.0, 0.5) => play,
    }
}

impl HoldingFacts {
    /// How far play may leave the leaf off closed, rad.
    #[must_use]
    pub fn play_rad(&self) -> f64 {
        self.play().to_radians()
    }
}
