//! The one table of numbers a job may hold: range, quantity, whether it must be said, and what is assumed where it is not.
//! Validation, the published schema and the page's hints all read it.

use super::fault::{Allowed, Example, Fault, FaultCode};
use crate::{Document, units::Quantity};
use serde::Serialize;

/// The rule of one number field.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(ts_rs::TS))]
pub struct FieldRule {
    /// Dotted path in the job document.
    pub path: &'static str,
    /// Kind of quantity; the value stands in the document's unit (SI, degrees).
    pub quantity: Quantity,
    /// Least allowed value, included; `null` is no limit.
    pub least: Option<f64>,
    /// Greatest allowed value, included; `null` is no limit.
    pub most: Option<f64>,
    /// Whether the field must be given (within its `hinges` kind).
    pub required: bool,
    /// What is assumed where the field is absent; `null` where that depends on other fields or nothing is assumed.
    pub default: Option<f64>,
    /// A plausible value.
    pub example: f64,
    /// Key beside the field that a required one may be replaced by: a block or word from which the value follows.
    pub unless: Option<&'static str>,
}

const fn needed(path: &'static str, quantity: Quantity, least: f64, most: f64, example: f64) -> FieldRule {
    FieldRule {
        path,
        quantity,
        least: Some(least),
        most: Some(most),
        required: true,
        default: None,
        example,
        unless: None,
    }
}

const fn optional(path: &'static str, quantity: Quantity, least: f64, most: f64, example: f64) -> FieldRule {
    FieldRule { required: false, ..needed(path, quantity, least, most, example) }
}

const fn assumed(path: &'static str, quantity: Quantity, least: f64, most: f64, default: f64) -> FieldRule {
    FieldRule { default: Some(default), ..optional(path, quantity, least, most, default) }
}

const fn unless(key: &'static str, rule: FieldRule) -> FieldRule {
    FieldRule { unless: Some(key), ..rule }
}

const fn any_angle(path: &'static str, rule: FieldRule) -> FieldRule {
    FieldRule { path, least: None, most: None, ..rule }
}

use Quantity::{
    Angle, AngularSpeed, Area, Count, Density, Force, Inertia, Length, Mass, Ratio, Resistance, ShortLength, Speed,
    Stiffness, Time, Torque, Voltage,
};

/// Every number field of the job.
///
/// The bounds are the contract's, with one mended: an inertia is bounded above by 2 000 000 kg·m² (the heaviest, longest leaf has
/// 1 125 000) and below by a millionth, so that what is computed with it stays finite.
///
/// Each end of a set-out's range keeps the bounds of what it is a range of. The rest of that block is bounded by what can be meant: a link
/// cannot be further from square than 90°, a shaft with an arm on it does not turn more than once, no tape is read finer than
/// half a millimetre. A rule of a list's item carries no index
/// (`leaf.members.wall_m`), and the storm keeps the rules of the wind.
pub const FIELDS: &[FieldRule] = &[
    unless("members", needed("leaf.mass_kg", Mass, 1.0, 5000.0, 160.0)),
    needed("leaf.length_m", Length, 0.3, 15.0, 3.2),
    optional("leaf.height_m", Length, 0.2, 6.0, 1.6),
    unless("members", needed("leaf.wind_area_m2", Area, 0.0, 60.0, 1.9)),
    optional("leaf.mass_centroid_m", Length, -1.0, 15.0, 1.6),
    optional("leaf.wind_centroid_m", Length, -1.0, 15.0, 1.6),
    optional("leaf.inertia_kg_m2", Inertia, 1e-6, 2e6, 546.0),
    needed("hinges.spacing_m", Length, 0.1, 6.0, 1.3),
    needed("hinges.pin_radius_m", ShortLength, 0.001, 0.2, 0.012),
    needed("hinges.thrust_outer_radius_m", ShortLength, 0.001, 0.2, 0.02),
    needed("hinges.thrust_inner_radius_m", ShortLength, 0.001, 0.2, 0.012),
    unless("pairing", needed("hinges.friction_coefficient", Ratio, 0.0, 1.0, 0.2)),
    optional("hinges.friction_low", Ratio, 0.0, 1.0, 0.1),
    optional("hinges.friction_high", Ratio, 0.0, 1.0, 0.3),
    needed("hinges.rise_m", ShortLength, -0.5, 0.5, 0.04),
    needed("hinges.pull_open_n", Force, 0.0, 5000.0, 45.0),
    needed("hinges.pull_close_n", Force, 0.0, 5000.0, 41.0),
    needed("hinges.pull_radius_m", Length, 0.05, 15.0, 3.0),
    needed("hinges.pull_leaf_deg", Angle, 0.0, 180.0, 45.0),
    assumed("lean.angle_deg", Angle, 0.0, 15.0, 0.0),
    FieldRule { least: None, most: None, ..assumed("lean.downhill_deg", Angle, 0.0, 0.0, 0.0) },
    optional("lean.plumb_offset_m", ShortLength, 0.0, 1.0, 0.01),
    optional("lean.plumb_height_m", Length, 0.1, 6.0, 1.5),
    unless("from", needed("wind.speed_m_s", Speed, 0.0, 100.0, 12.0)),
    unless("shape", needed("wind.force_coefficient", Ratio, 0.0, 4.0, 1.4)),
    assumed("wind.air_density_kg_m3", Density, 0.5, 2.0, 1.225),
    any_angle("wind.bearing_deg", optional("", Angle, 0.0, 0.0, 90.0)),
    needed("wind.from.number", Count, 0.0, 11.0, 6.0),
    needed("wind.from.gust_factor", Ratio, 1.0, 3.0, 1.6),
    needed("wind.from.height_factor", Ratio, 0.1, 2.0, 0.7),
    needed("wind.from.speed_m_s", Speed, 0.0, 100.0, 45.0),
    needed("wind.from.basic_m_s", Speed, 0.0, 60.0, 26.0),
    needed("wind.from.height_m", Length, 0.2, 10.0, 2.0),
    assumed("wind.from.topographic", Ratio, 1.0, 3.0, 1.0),
    assumed("wind.from.directionality", Ratio, 0.5, 1.0, 0.85),
    assumed("wind.from.importance", Ratio, 0.5, 1.5, 1.0),
    assumed("wind.from.gust_effect", Ratio, 0.5, 2.0, 0.85),
    assumed("wind.from.orography", Ratio, 1.0, 3.0, 1.0),
    assumed("wind.from.yearly_probability", Ratio, 0.001, 0.5, 0.02),
    needed("wind.shape.solidity", Ratio, 0.0, 1.0, 1.0),
    assumed("wind.shape.clearance", Ratio, 0.7, 1.0, 1.0),
    assumed("wind.shape.shelter_factor", Ratio, 0.3, 1.0, 1.0),
    needed("wind.shape.bar_m", ShortLength, 0.001, 1.0, 0.04),
    needed("wind.shape.pitch_m", ShortLength, 0.002, 5.0, 0.12),
    needed("leaf.members.face_m", ShortLength, 0.001, 2.0, 0.05),
    optional("leaf.members.depth_m", ShortLength, 0.001, 2.0, 0.05),
    needed("leaf.members.wall_m", ShortLength, 0.0001, 0.05, 0.003),
    needed("leaf.members.thickness_m", ShortLength, 0.0001, 0.2, 0.002),
    assumed("leaf.members.gap_m", ShortLength, 0.0, 1.0, 0.0),
    needed("leaf.members.wire_m", ShortLength, 0.0005, 0.05, 0.005),
    needed("leaf.members.pitch_m", ShortLength, 0.002, 1.0, 0.05),
    assumed("leaf.members.density_kg_m3", Density, 50.0, 20_000.0, 7850.0),
    needed("leaf.members.place.from_m", Length, -1.0, 15.0, 0.0),
    needed("leaf.members.place.to_m", Length, -1.0, 15.0, 3.2),
    optional("leaf.members.place.height_m", Length, 0.01, 6.0, 1.6),
    assumed("leaf.members.place.rise_m", Length, -6.0, 6.0, 0.0),
    assumed("leaf.members.place.count", Count, 1.0, 500.0, 1.0),
    assumed("drag.seal_n_m", Torque, 0.0, 5000.0, 0.0),
    assumed("drag.latch_n_m", Torque, 0.0, 5000.0, 0.0),
    assumed("drag.latch_deg", Angle, 0.0, 45.0, 2.0),
    assumed("drag.wheel_load_n", Force, 0.0, 50_000.0, 0.0),
    assumed("drag.wheel_radius_m", Length, 0.0, 15.0, 0.0),
    assumed("drag.wheel_coefficient", Ratio, 0.0, 1.0, 0.05),
    needed("ice.thickness_m", ShortLength, 0.0, 0.2, 0.005),
    assumed("ice.density_kg_m3", Density, 50.0, 1000.0, 900.0),
    assumed("ice.area_factor", Ratio, 1.0, 5.0, 1.0),
    assumed("ground.slope_deg", Angle, 0.0, 30.0, 0.0),
    any_angle("ground.uphill_deg", assumed("", Angle, 0.0, 0.0, 0.0)),
    needed("ground.gap_m", ShortLength, 0.0, 2.0, 0.08),
    assumed("ground.bottom_rise_m", ShortLength, -2.0, 2.0, 0.0),
    optional("ground.joint_allowance_m", ShortLength, 0.0, 1.0, 0.02),
    needed("swing.open_deg", Angle, 1.0, 180.0, 90.0),
    needed("arm.shaft_x_m", ShortLength, -10.0, 10.0, -0.25),
    needed("arm.shaft_y_m", ShortLength, -10.0, 10.0, 0.45),
    needed("arm.bracket_u_m", ShortLength, -10.0, 10.0, 1.2),
    needed("arm.bracket_v_m", ShortLength, -10.0, 10.0, 0.06),
    needed("arm.crank_m", ShortLength, 0.02, 10.0, 0.8728),
    needed("arm.link_m", ShortLength, 0.02, 10.0, 0.6363),
    needed("operator.rated_torque_n_m", Torque, 1.0, 50_000.0, 400.0),
    optional("operator.peak_torque_n_m", Torque, 1.0, 50_000.0, 650.0),
    optional("operator.shaft_speed_deg_s", AngularSpeed, 0.1, 360.0, 9.0),
    assumed("operator.arm_efficiency", Ratio, 0.3, 1.0, 1.0),
    needed("setout.shaft_x_m", ShortLength, -10.0, 10.0, -0.25),
    needed("setout.shaft_y_m", ShortLength, -10.0, 10.0, 0.45),
    needed("setout.bracket_u_m", ShortLength, -10.0, 10.0, 1.2),
    needed("setout.bracket_v_m", ShortLength, -10.0, 10.0, 0.06),
    needed("setout.crank_m", ShortLength, 0.02, 10.0, 0.8728),
    needed("setout.link_m", ShortLength, 0.02, 10.0, 0.6363),
    optional("setout.straightness", Ratio, 0.0, 1.0, 0.98),
    assumed("setout.square_deg", Angle, 0.0, 90.0, 90.0),
    assumed("setout.least_lever_m", ShortLength, 0.0, 10.0, 0.0),
    assumed("setout.shaft_travel_deg", Angle, 1.0, 360.0, 360.0),
    optional("setout.most_shaft_torque_n_m", Torque, 0.0, 50_000.0, 400.0),
    optional("setout.step_m", ShortLength, 0.0005, 0.5, 0.005),
    assumed("setout.arm_half_width_m", ShortLength, 0.0, 0.5, 0.0),
    optional("setout.storm_speed_m_s", Speed, 0.0, 100.0, 30.0),
    needed("setout.keep_out.x_m", ShortLength, -20.0, 20.0, 0.1),
    needed("setout.keep_out.y_m", ShortLength, -20.0, 20.0, 0.2),
    needed("setout.place.x_m", ShortLength, -10.0, 10.0, -0.3),
    needed("setout.place.y_m", ShortLength, -10.0, 10.0, 0.4),
    assumed("room.front_m", ShortLength, -0.5, 0.5, 0.0),
    assumed("room.back_m", ShortLength, -0.5, 0.5, 0.0),
    assumed("room.heel_m", ShortLength, 0.0, 1.0, 0.0),
    assumed("room.arm_half_width_m", ShortLength, 0.0, 0.5, 0.0),
    needed("room.hinge_post.x_m", ShortLength, -20.0, 20.0, -0.1),
    needed("room.hinge_post.y_m", ShortLength, -20.0, 20.0, 0.1),
    needed("room.obstacles.x_m", ShortLength, -20.0, 20.0, -1.0),
    needed("room.obstacles.y_m", ShortLength, -20.0, 20.0, 2.0),
    optional("marks.anchor_along_m", ShortLength, 0.02, 2.0, 0.25),
    optional("marks.anchor_across_m", ShortLength, 0.02, 2.0, 0.15),
    assumed("marks.anchor_offset_along_m", ShortLength, -2.0, 2.0, 0.0),
    assumed("marks.anchor_offset_across_m", ShortLength, -2.0, 2.0, 0.0),
    any_angle("marks.anchor_turn_deg", assumed("", Angle, 0.0, 0.0, 0.0)),
    optional("marks.pad_level_m", Length, -5.0, 5.0, 0.1),
    optional("marks.crossbar_level_m", Length, -5.0, 10.0, 0.6),
    assumed("marks.arm_height_m", ShortLength, 0.0, 2.0, 0.0),
    assumed("marks.overlap_m", ShortLength, 0.0, 2.0, 0.0),
    assumed("marks.crank_ends_m", ShortLength, 0.0, 2.0, 0.0),
    assumed("marks.link_ends_m", ShortLength, 0.0, 2.0, 0.0),
    assumed("tape.error_m", ShortLength, 0.0001, 0.1, 0.005),
    optional("as_built.shaft_x_m", ShortLength, -10.0, 10.0, -0.25),
    optional("as_built.shaft_y_m", ShortLength, -10.0, 10.0, 0.45),
    optional("as_built.bracket_u_m", ShortLength, -10.0, 10.0, 1.2),
    optional("as_built.bracket_v_m", ShortLength, -10.0, 10.0, 0.06),
    optional("as_built.crank_m", ShortLength, 0.02, 10.0, 0.8728),
    optional("as_built.link_m", ShortLength, 0.02, 10.0, 0.6363),
    assumed("motion.ramp_up_s", Time, 0.02, 30.0, 1.0),
    assumed("motion.ramp_down_s", Time, 0.02, 30.0, 1.0),
    assumed("motion.slow_open_deg", Angle, 0.0, 360.0, 0.0),
    assumed("motion.slow_close_deg", Angle, 0.0, 360.0, 0.0),
    optional("motion.slow_speed_deg_s", AngularSpeed, 0.1, 360.0, 3.0),
    assumed("motion.coast_drag_n_m", Torque, 0.0, 50_000.0, 0.0),
    optional("motion.stop_stiffness_n_per_m", Stiffness, 1e3, 1e9, 5e5),
    needed("motion.motor.stall_torque_n_m", Torque, 0.01, 50_000.0, 900.0),
    needed("motion.motor.no_load_speed_deg_s", AngularSpeed, 0.5, 100_000.0, 12.0),
    needed("motion.motor.rated_v", Voltage, 1.0, 1000.0, 24.0),
    optional("motion.motor.supply_v", Voltage, 1.0, 1000.0, 22.0),
    assumed("motion.motor.gear_ratio", Ratio, 1.0, 10_000.0, 1.0),
    assumed("motion.motor.gear_efficiency", Ratio, 0.1, 1.0, 1.0),
    assumed("motion.motor.run_up_s", Time, 0.005, 5.0, 0.05),
    optional("motion.duty.cycles_per_hour", Count, 0.0, 1000.0, 6.0),
    optional("motion.duty.cycles_per_day", Count, 0.0, 10_000.0, 40.0),
    optional("motion.duty.rated_cycles_per_hour", Count, 1.0, 1000.0, 20.0),
    optional("motion.duty.rated_cycles_per_day", Count, 1.0, 10_000.0, 100.0),
    optional("breakaway.slip_torque_n_m", Torque, 1.0, 50_000.0, 450.0),
    assumed("breakaway.hold_factor", Ratio, 1.0, 3.0, 1.25),
    assumed("breakaway.release_factor", Ratio, 0.1, 1.0, 0.8),
    optional("breakaway.leaf_moment_n_m", Torque, 1.0, 500_000.0, 2000.0),
    optional("breakaway.link_force_n", Force, 1.0, 1e6, 6000.0),
    optional("breakaway.bracket_force_n", Force, 1.0, 1e6, 6000.0),
    optional("breakaway.gearbox_torque_n_m", Torque, 1.0, 50_000.0, 900.0),
    optional("breakaway.push_radius_m", Length, 0.1, 15.0, 3.0),
    optional("holding.shaft_torque_n_m", Torque, 0.0, 50_000.0, 300.0),
    optional("holding.link_force_n", Force, 1.0, 1e6, 6000.0),
    optional("holding.bracket_force_n", Force, 1.0, 1e6, 6000.0),
    assumed("holding.play_deg", Angle, 0.0, 10.0, 0.5),
    assumed("contact.stiffness_n_per_m", Stiffness, 1e3, 1e8, 5e5),
    assumed("contact.dynamic_limit_n", Force, 10.0, 5000.0, 400.0),
    assumed("contact.static_limit_n", Force, 10.0, 5000.0, 150.0),
    assumed("contact.response_s", Time, 0.0, 5.0, 0.3),
    optional("contact.edge_travel_m", ShortLength, 0.0, 0.5, 0.05),
    assumed("contact.near_m", Length, 0.05, 15.0, 0.3),
    optional("site.homes", Count, 0.0, 10_000.0, 1.0),
    assumed("site.latch_gap_m", ShortLength, 0.0, 1.0, 0.0),
    assumed("site.leaf_half_thickness_m", ShortLength, 0.0, 0.5, 0.03),
    needed("site.obstacles.x_m", ShortLength, -20.0, 20.0, 0.1),
    needed("site.obstacles.y_m", ShortLength, -20.0, 20.0, 0.2),
    needed("site.means.area.from_x_m", ShortLength, -20.0, 20.0, 3.3),
    needed("site.means.area.from_y_m", ShortLength, -20.0, 20.0, 0.0),
    needed("site.means.area.to_x_m", ShortLength, -20.0, 20.0, 0.0),
    needed("site.means.area.to_y_m", ShortLength, -20.0, 20.0, 3.3),
    assumed("site.means.area.half_width_m", ShortLength, 0.0, 5.0, 0.05),
    optional("settings.close_timer_s", Time, 0.0, 3600.0, 30.0),
    optional("record.shaft_travel_deg", Angle, 1.0, 360.0, 130.0),
    optional("record.open_leaf_deg", Angle, 1.0, 180.0, 90.0),
    optional("record.opening_s", Time, 0.5, 600.0, 15.0),
    optional("record.closing_s", Time, 0.5, 600.0, 15.0),
    optional("record.close_timer_s", Time, 0.0, 3600.0, 30.0),
    optional("record.pull_open_n", Force, -5000.0, 5000.0, 45.0),
    optional("record.pull_close_n", Force, -5000.0, 5000.0, 41.0),
    optional("record.pull_radius_m", Length, 0.05, 15.0, 3.0),
    optional("record.pull_leaf_deg", Angle, 0.0, 180.0, 45.0),
    optional("record.slip_open_n", Force, 0.0, 10_000.0, 220.0),
    optional("record.slip_close_n", Force, 0.0, 10_000.0, 220.0),
    optional("record.dynamic_force_n", Force, 0.0, 10_000.0, 350.0),
    optional("record.static_force_n", Force, 0.0, 10_000.0, 120.0),
    optional("record.motor_v", Voltage, 1.0, 1000.0, 24.0),
    optional("record.rod_ohm", Resistance, 0.0, 100_000.0, 18.0),
    assumed("required_reserve", Ratio, 1.0, 10.0, 1.5),
    assumed("samples", Count, 2.0, 2001.0, 91.0),
];

/// The rule of a path. Every path the crate asks for is in the table; a test walks them all.
pub(super) fn rule_of(path: &str) -> Option<&'static FieldRule> {
    FIELDS.iter().find(|rule| rule.path == path)
}

/// The assumed value of a field that has a fixed one.
pub(super) fn default_of(path: &str) -> f64 {
    rule_of(path).and_then(|rule| rule.default).unwrap_or(0.0)
}

impl FieldRule {
    /// The range as an error reports it.
    pub(super) fn allowed(&self) -> Allowed {
        Allowed::Range { least: self.least, most: self.most, quantity: self.quantity }
    }

    /// A fault if the value is not finite, out of range, or no whole number where one is wanted.
    pub(super) fn check(&self, value: f64) -> Option<Fault> {
        let whole = self.quantity != Count || value == libm::trunc(value);
        let above = self.least.is_none_or(|least| value >= least);
        let below = self.most.is_none_or(|most| value <= most);
        (!(value.is_finite() && whole && above && below)).then(|| {
            let code = if whole { FaultCode::OutOfRange } else { FaultCode::WrongType };
            Fault::new(self.path, code)
                .found(&Document::Number(value))
                .allowed(self.allowed())
                .example(Example::Number(self.example))
        })
    }
}
