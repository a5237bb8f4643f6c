//! How the leaf is to move, what drives it, what lets go, and what holds it.

use super::rules::default_of;
use serde::Serialize;

/// The shaft's speed through time, its motor, its stops.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct MotionFacts {
    /// Time from rest to the operator's shaft speed, s; default 1 (common practice, no source).
    pub ramp_up_s: Option<f64>,
    /// Time from that speed to rest, s; default 1 (common practice, no source).
    pub ramp_down_s: Option<f64>,
    /// Shaft angle before the open limit at which the slow zone starts, degrees; default 0, none.
    pub slow_open_deg: Option<f64>,
    /// Shaft angle before the closed limit at which the slow zone starts, degrees; default 0, none.
    pub slow_close_deg: Option<f64>,
    /// Shaft speed in the slow zones, degrees a second; default a third of the operator's.
    pub slow_speed_deg_s: Option<f64>,
    /// Drag of the released drive at the operator's shaft, N·m; default 0, running free.
    pub coast_drag_n_m: Option<f64>,
    /// Stiffness of an end stop with the leaf where it meets it, N/m; no stop force without it.
    pub stop_stiffness_n_per_m: Option<f64>,
    /// The motor; no driven run without it.
    pub motor: Option<MotorFacts>,
    /// How often it is to run; nothing said of duty without it.
    pub duty: Option<Duty>,
}

/// A linear (permanent-magnet direct-current) motor and its gear.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct MotorFacts {
    /// Torque at standstill at the rated voltage, at the motor, N·m.
    pub stall_torque_n_m: f64,
    /// Speed without load at the rated voltage, at the motor, degrees a second.
    pub no_load_speed_deg_s: f64,
    /// Voltage the two above are given for, V.
    pub rated_v: f64,
    /// Voltage there is at the motor under load, V; default the rated one.
    pub supply_v: Option<f64>,
    /// Turns of the motor for one turn of the operator's shaft; default 1: the numbers above are those of the shaft.
    pub gear_ratio: Option<f64>,
    /// Part of the motor's work that reaches the operator's shaft; default 1.
    pub gear_efficiency: Option<f64>,
    /// Time in which motor and gear alone reach 63 % of the no-load speed, s; default 0.05 (common practice, no source).
    pub run_up_s: Option<f64>,
}

/// Cycles, one opening and one closing each, asked for and rated.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Duty {
    /// Most cycles expected in an hour.
    pub cycles_per_hour: Option<f64>,
    /// Most cycles expected in a day.
    pub cycles_per_day: Option<f64>,
    /// Cycles an hour the operator is rated for.
    pub rated_cycles_per_hour: Option<f64>,
    /// Cycles a day the operator is rated for.
    pub rated_cycles_per_day: Option<f64>,
}

/// The slipping clutch or current limit, and what it has to let go before.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct BreakawayFacts {
    /// Slip torque it is set to, at the operator's shaft, N·m; unknown unless given.
    pub slip_torque_n_m: Option<f64>,
    /// Slip torque over the largest torque of normal running; default 1.25 (common practice, no source).
    pub hold_factor: Option<f64>,
    /// Part of a limit below that may be reached; default 0.8 (common practice, no source).
    pub release_factor: Option<f64>,
    /// Most moment about the hinge the leaf stands, N·m; no limit unless given.
    pub leaf_moment_n_m: Option<f64>,
    /// Most force the link stands, N; no limit unless given.
    pub link_force_n: Option<f64>,
    /// Most force the bracket stands, N; no limit unless given.
    pub bracket_force_n: Option<f64>,
    /// Most torque the operator's shaft and gear stand, N·m; no limit unless given.
    pub gearbox_torque_n_m: Option<f64>,
    /// Hinge axis to where the leaf is pushed to test it, m; default the leaf's length.
    pub push_radius_m: Option<f64>,
}

/// What holds the closed leaf in the storm while the drive is off. Needs `storm`.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct HoldingFacts {
    /// Torque at which the drive at a stand begins to give way, N·m; unknown unless given.
    pub shaft_torque_n_m: Option<f64>,
    /// Most force the link stands, N; no limit unless given.
    pub link_force_n: Option<f64>,
    /// Most force the bracket stands, N; no limit unless given.
    pub bracket_force_n: Option<f64>,
    /// Leaf angle by which play and a limit set short may leave the leaf off closed, degrees; default 0.5 (common practice, no source).
    pub play_deg: Option<f64>,
}

impl MotionFacts {
    /// Time up to the operator's speed, s.
    pub fn ramp_up(&self) -> f64 {
        self.ramp_up_s.unwrap_or(default_of("motion.ramp_up_s"))
    }
    /// Time down from it, s.
    pub fn ramp_down(&self) -> f64 {
        self.ramp_down_s.unwrap_or(default_of("motion.ramp_down_s"))
    }
    /// Slow zone before the open limit, degrees of the shaft.
    pub fn slow_open(&self) -> f64 {
        self.slow_open_deg.unwrap_or(default_of("motion.slow_open_deg"))
    }
    /// Slow zone before the closed limit, degrees of the shaft.
    pub fn slow_close(&self) -> f64 {
        self.slow_close_deg.unwrap_or(default_of("motion.slow_close_deg"))
    }
    /// Drag of the released drive, N·m.
    pub fn coast_drag(&self) -> f64 {
        self.coast_drag_n_m.unwrap_or(default_of("motion.coast_drag_n_m"))
    }
    pub(super) fn numbers(&self) -> alloc::vec::Vec<(&'static str, Option<f64>)> {
        let mut numbers = alloc::vec![
            ("motion.ramp_up_s", self.ramp_up_s),
            ("motion.ramp_down_s", self.ramp_down_s),
            ("motion.slow_open_deg", self.slow_open_deg),
            ("motion.slow_close_deg", self.slow_close_deg),
            ("motion.slow_speed_deg_s", self.slow_speed_deg_s),
            ("motion.coast_drag_n_m", self.coast_drag_n_m),
            ("motion.stop_stiffness_n_per_m", self.stop_stiffness_n_per_m),
        ];
        if let Some(motor) = &self.motor {
            numbers.extend([
                ("motion.motor.stall_torque_n_m", Some(motor.stall_torque_n_m)),
                ("motion.motor.no_load_speed_deg_s", Some(motor.no_load_speed_deg_s)),
                ("motion.motor.rated_v", Some(motor.rated_v)),
                ("motion.motor.supply_v", motor.supply_v),
                ("motion.motor.gear_ratio", motor.gear_ratio),
                ("motion.motor.gear_efficiency", motor.gear_efficiency),
                ("motion.motor.run_up_s", motor.run_up_s),
            ]);
        }
        if let Some(duty) = &self.duty {
            numbers.extend([
                ("motion.duty.cycles_per_hour", duty.cycles_per_hour),
                ("motion.duty.cycles_per_day", duty.cycles_per_day),
                ("motion.duty.rated_cycles_per_hour", duty.rated_cycles_per_hour),
                ("motion.duty.rated_cycles_per_day", duty.rated_cycles_per_day),
            ]);
        }
        numbers
    }
}

impl MotorFacts {
    /// Voltage at the motor, V.
    pub fn supply(&self) -> f64 {
        self.supply_v.unwrap_or(self.rated_v)
    }
    /// Turns of the motor for one of the shaft.
    pub fn gear_ratio(&self) -> f64 {
        self.gear_ratio.unwrap_or(default_of("motion.motor.gear_ratio"))
    }
    /// Part of the motor's work that reaches the shaft.
    pub fn gear_efficiency(&self) -> f64 {
        self.gear_efficiency.unwrap_or(default_of("motion.motor.gear_efficiency"))
    }
    /// Run-up time of motor and gear alone, s.
    pub fn run_up(&self) -> f64 {
        self.run_up_s.unwrap_or(default_of("motion.motor.run_up_s"))
    }
}

impl BreakawayFacts {
    /// Slip torque over the largest torque of normal running.
    pub fn hold_factor(&self) -> f64 {
        self.hold_factor.unwrap_or(default_of("breakaway.hold_factor"))
    }
    /// Part of a limit that may be reached.
    pub fn release_factor(&self) -> f64 {
        self.release_factor.unwrap_or(default_of("breakaway.release_factor"))
    }
    pub(super) fn numbers(&self) -> [(&'static str, Option<f64>); 8] {
        [
            ("breakaway.slip_torque_n_m", self.slip_torque_n_m),
            ("breakaway.hold_factor", self.hold_factor),
            ("breakaway.release_factor", self.release_factor),
            ("breakaway.leaf_moment_n_m", self.leaf_moment_n_m),
            ("breakaway.link_force_n", self.link_force_n),
            ("breakaway.bracket_force_n", self.bracket_force_n),
            ("breakaway.gearbox_torque_n_m", self.gearbox_torque_n_m),
            ("breakaway.push_radius_m", self.push_radius_m),
        ]
    }
}

impl HoldingFacts {
    /// How far play may leave the leaf off closed, rad.
    pub fn play_rad(&self) -> f64 {
        self.play_deg.unwrap_or(default_of("holding.play_deg")).to_radians()
    }
    pub(super) fn numbers(&self) -> [(&'static str, Option<f64>); 4] {
        [
            ("holding.shaft_torque_n_m", self.shaft_torque_n_m),
            ("holding.link_force_n", self.link_force_n),
            ("holding.bracket_force_n", self.bracket_force_n),
            ("holding.play_deg", self.play_deg),
        ]
    }
}
