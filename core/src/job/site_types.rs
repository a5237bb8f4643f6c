//! What the place adds: drag besides the hinges, ice, sloping ground.

use super::rules::default_of;
use serde::Serialize;

/// Drag besides the hinges.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Drag {
    /// Moment of seals and brushes about the hinge through the whole swing, N·m; default 0.
    pub seal_n_m: Option<f64>,
    /// Moment of latch or keeper about the hinge near closed, N·m; default 0.
    pub latch_n_m: Option<f64>,
    /// Leaf angle up to which the latch drags, degrees; default 2.
    pub latch_deg: Option<f64>,
    /// Load on a support wheel, N; default 0.
    pub wheel_load_n: Option<f64>,
    /// Hinge axis to the wheel, m; default 0.
    pub wheel_radius_m: Option<f64>,
    /// Rolling resistance of the wheel over its load; default 0.05.
    pub wheel_coefficient: Option<f64>,
}

/// Ice or wet snow on the leaf.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Ice {
    /// Thickness, m: all round the leaf's members where the job lists them, or else on each face of the wind area.
    pub thickness_m: f64,
    /// Density, kg/m³; default 900 (glaze; from memory of ISO 12494).
    pub density_kg_m3: Option<f64>,
    /// Wind area with ice over without; default 1. Listed members are wider by their ice in any case: this only raises what they come to.
    pub area_factor: Option<f64>,
}

/// The ground under the swing, and what the arm's joints allow.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Ground {
    /// Slope of the ground, degrees; default 0.
    pub slope_deg: Option<f64>,
    /// Plan direction of uphill in the frame of the closed leaf, degrees; default 0.
    pub uphill_deg: Option<f64>,
    /// Gap under the leaf at the hinge axis, leaf closed, m.
    pub gap_m: f64,
    /// How much higher the leaf's bottom is hung at the latch edge than square to the hinge axis, m; default 0.
    pub bottom_rise_m: Option<f64>,
    /// Rise and fall of the bracket pin that the arm's joints allow, in all, m.
    pub joint_allowance_m: Option<f64>,
}

impl Drag {
    /// Drag through the whole swing, N·m.
    pub fn steady_n_m(&self) -> f64 {
        let wheel_coefficient = self.wheel_coefficient.unwrap_or(default_of("drag.wheel_coefficient"));
        self.seal_n_m.unwrap_or(0.0)
            + self.wheel_load_n.unwrap_or(0.0) * wheel_coefficient * self.wheel_radius_m.unwrap_or(0.0)
    }
    /// Moment of the latch near closed, N·m.
    pub fn latch(&self) -> f64 {
        self.latch_n_m.unwrap_or(0.0)
    }
    /// Leaf angle up to which it drags, rad.
    pub fn latch_rad(&self) -> f64 {
        self.latch_deg.unwrap_or(default_of("drag.latch_deg")).to_radians()
    }
    pub(super) fn numbers(&self) -> [(&'static str, Option<f64>); 6] {
        [
            ("drag.seal_n_m", self.seal_n_m),
            ("drag.latch_n_m", self.latch_n_m),
            ("drag.latch_deg", self.latch_deg),
            ("drag.wheel_load_n", self.wheel_load_n),
            ("drag.wheel_radius_m", self.wheel_radius_m),
            ("drag.wheel_coefficient", self.wheel_coefficient),
        ]
    }
}

impl Ice {
    /// Density, kg/m³.
    pub fn density(&self) -> f64 {
        self.density_kg_m3.unwrap_or(default_of("ice.density_kg_m3"))
    }
    /// Wind area with ice over without.
    pub fn area_factor(&self) -> f64 {
        self.area_factor.unwrap_or(default_of("ice.area_factor"))
    }
    pub(super) fn numbers(&self) -> [(&'static str, Option<f64>); 3] {
        [
            ("ice.thickness_m", Some(self.thickness_m)),
            ("ice.density_kg_m3", self.density_kg_m3),
            ("ice.area_factor", self.area_factor),
        ]
    }
}

impl Ground {
    /// Slope, rad.
    pub fn slope_rad(&self) -> f64 {
        self.slope_deg.unwrap_or(default_of("ground.slope_deg")).to_radians()
    }
    /// Direction of uphill, rad.
    pub fn uphill_rad(&self) -> f64 {
        self.uphill_deg.unwrap_or(default_of("ground.uphill_deg")).to_radians()
    }
    /// Rise of the leaf's bottom towards the latch edge, m.
    pub fn bottom_rise(&self) -> f64 {
        self.bottom_rise_m.unwrap_or(default_of("ground.bottom_rise_m"))
    }
    pub(super) fn numbers(&self) -> [(&'static str, Option<f64>); 5] {
        [
            ("ground.slope_deg", self.slope_deg),
            ("ground.uphill_deg", self.uphill_deg),
            ("ground.gap_m", Some(self.gap_m)),
            ("ground.bottom_rise_m", self.bottom_rise_m),
            ("ground.joint_allowance_m", self.joint_allowance_m),
        ]
    }
}
