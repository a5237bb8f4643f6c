//! How the leaf is to move, and what drives it.

use super::MotorFacts;
use crate::job::table::*;
use crate::units::Quantity::{Angle, AngularSpeed, Count, Resistance, Stiffness, Time, Torque};
use alloc::vec::Vec;

block! {
    /// The shaft's speed through time, its motor, its stops.
    pub struct MotionFacts at "motion." {
        /// Time from rest to the operator's shaft speed, s; default 1 (common practice, no source).
        ramp_up_s: Option<f64> = assumed(Time, 0.02, 30.0, 1.0) => ramp_up,
        /// Time from that speed to rest, s; default 1 (common practice, no source).
        ramp_down_s: Option<f64> = assumed(Time, 0.02, 30.0, 1.0) => ramp_down,
        /// Shaft angle before the open limit at which the slow zone starts, degrees; default 0, none.
        slow_open_deg: Option<f64> = assumed(Angle, 0.0, 360.0, 0.0).usual(15.0) => slow_open,
        /// Shaft angle before the closed limit at which the slow zone starts, degrees; default 0, none.
        slow_close_deg: Option<f64> = assumed(Angle, 0.0, 360.0, 0.0).usual(15.0) => slow_close,
        /// Shaft speed in the slow zones, degrees a second; default a third of the operator's.
        slow_speed_deg_s: Option<f64> = number(AngularSpeed, 0.1, 360.0, 3.0).listed(),
        /// Drag of the released drive at the operator's shaft, N·m; default 0, running free.
        coast_drag_n_m: Option<f64> = assumed(Torque, 0.0, 50_000.0, 0.0) => coast_drag,
        /// Stiffness of an end stop with the leaf where it meets it, N/m; no stop force without it.
        stop_stiffness_n_per_m: Option<f64> = number(Stiffness, 1e3, 1e9, 5e5).usual(5e5),
        /// Resistance of battery and run to the motor together, Ω; default 0: the voltage does not sag under load.
        supply_resistance_ohm: Option<f64> = assumed(Resistance, 0.0, 100.0, 0.0) => supply_resistance,
        /// The motor; no driven run without it.
        motor: Option<MotorFacts> = block(MotorFacts::BLOCK),
        /// How often it is to run; nothing said of duty without it.
        duty: Option<Duty> = block(Duty::BLOCK),
    }
}

block! {
    /// Cycles, one opening and one closing each, asked for and rated.
    #[derive(Copy)]
    pub struct Duty at "motion.duty." {
        /// Most cycles expected in an hour.
        cycles_per_hour: Option<f64> = number(Count, 0.0, 1000.0, 6.0),
        /// Most cycles expected in a day.
        cycles_per_day: Option<f64> = number(Count, 0.0, 10_000.0, 40.0),
        /// Cycles an hour the operator is rated for.
        rated_cycles_per_hour: Option<f64> = number(Count, 1.0, 1000.0, 20.0),
        /// Cycles a day the operator is rated for.
        rated_cycles_per_day: Option<f64> = number(Count, 1.0, 10_000.0, 100.0),
    }
}

impl MotionFacts {
    /// Faults of a motor that is within its ranges.
    pub(in crate::job) fn relations(&self) -> Vec<Fault> {
        let Some(motor) = &self.motor else { return Vec::new() };
        let mut faults = motor.relations();
        if motor.curve.is_some()
            && let Some(resistance) = self.supply_resistance_ohm.filter(|&resistance| resistance > 0.0)
        {
            let row = const { MotionFacts::BLOCK.number("supply_resistance_ohm") };
            let none = Number { most: Some(0.0), ..row }.allowed();
            let fault = Fault::number("motion.supply_resistance_ohm", FaultCode::NoCurrentKnown, resistance, none);
            faults.push(fault.example(Example::Number(0.0)));
        }
        faults
    }
}
