//! What the place adds: drag besides the hinges, ice, sloping ground.

use crate::job::table::*;
use crate::units::Quantity::{Angle, Density, Force, Length, Ratio, ShortLength, Torque};

block! {
    /// Drag besides the hinges.
    #[derive(Copy)]
    pub struct Drag at "drag." {
        /// Moment of seals and brushes about the hinge through the whole swing, N·m; default 0.
        seal_n_m: Option<f64> = assumed(Torque, 0.0, 5000.0, 0.0) => seal,
        /// Moment of latch or keeper about the hinge near closed, N·m; default 0.
        latch_n_m: Option<f64> = assumed(Torque, 0.0, 5000.0, 0.0) => latch,
        /// Leaf angle up to which the latch drags, degrees; default 2.
        latch_deg: Option<f64> = assumed(Angle, 0.0, 45.0, 2.0) => latch_angle,
        /// Load on a support wheel, N; default 0.
        wheel_load_n: Option<f64> = assumed(Force, 0.0, 50_000.0, 0.0) => wheel_load,
        /// Hinge axis to the wheel, m; default 0.
        wheel_radius_m: Option<f64> = assumed(Length, 0.0, 15.0, 0.0) => wheel_radius,
        /// Rolling resistance of the wheel over its load; default 0.05.
        wheel_coefficient: Option<f64> = assumed(Ratio, 0.0, 1.0, 0.05) => wheel_rolling,
    }
}

block! {
    /// Ice or wet snow on the leaf.
    #[derive(Copy)]
    pub struct Ice at "ice." {
        /// Thickness, m: all round the leaf's members where the job lists them, or else on each face of the wind area.
        thickness_m: f64 = number(ShortLength, 0.0, 0.2, 0.005),
        /// Density, kg/m³; default 900 (glaze; from memory of ISO 12494).
        density_kg_m3: Option<f64> = assumed(Density, 50.0, 1000.0, 900.0) => density,
        /// Wind area with ice over without; default 1. Listed members are wider by their ice in any case: this only raises what they come to.
        area_factor: Option<f64> = assumed(Ratio, 1.0, 5.0, 1.0) => area_factor,
    }
}

block! {
    /// The ground under the swing, and what the arm's joints allow.
    #[derive(Copy)]
    pub struct Ground at "ground." {
        /// Slope of the ground, degrees; default 0.
        slope_deg: Option<f64> = assumed(Angle, 0.0, 30.0, 0.0) => slope,
        /// Plan direction of uphill in the frame of the closed leaf, degrees; default 0.
        uphill_deg: Option<f64> = assumed_direction() => uphill,
        /// Gap under the leaf at the hinge axis, leaf closed, m.
        gap_m: f64 = number(ShortLength, 0.0, 2.0, 0.08),
        /// How much higher the leaf's bottom is hung at the latch edge than square to the hinge axis, m; default 0.
        bottom_rise_m: Option<f64> = assumed(ShortLength, -2.0, 2.0, 0.0) => bottom_rise,
        /// Rise and fall of the bracket pin that the arm's joints allow, in all, m.
        joint_allowance_m: Option<f64> = number(ShortLength, 0.0, 1.0, 0.02),
    }
}

impl Drag {
    /// Drag through the whole swing, N·m.
    #[must_use]
    pub fn steady_n_m(&self) -> f64 {
        self.seal() + self.wheel_load() * self.wheel_rolling() * self.wheel_radius()
    }
    /// Leaf angle up to which the latch drags, rad.
    #[must_use]
    pub fn latch_rad(&self) -> f64 {
        self.latch_angle().to_radians()
    }
}

impl Ground {
    /// Slope, rad.
    #[must_use]
    pub fn slope_rad(&self) -> f64 {
        self.slope().to_radians()
    }
    /// Direction of uphill, rad.
    #[must_use]
    pub fn uphill_rad(&self) -> f64 {
        self.uphill().to_radians()
    }
}
