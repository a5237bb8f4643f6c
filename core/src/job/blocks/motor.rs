//! What drives the leaf.

use crate::job::table::*;
use crate::units::Quantity::{AngularSpeed, Ratio, Time, Torque, Voltage};
use alloc::{format, vec::Vec};

block! {
    /// A motor and its gear: the straight line of a permanent-magnet direct-current motor, or a table of speed and torque.
    pub struct MotorFacts at "motion.motor." {
        /// Torque at standstill at the rated voltage, at the motor, N·m; unless `curve` says it.
        stall_torque_n_m: Option<f64> = number(Torque, 0.01, 50_000.0, 900.0).unless("curve"),
        /// Speed without load at the rated voltage, at the motor, degrees a second; unless `curve` says it.
        no_load_speed_deg_s: Option<f64> = number(AngularSpeed, 0.5, 100_000.0, 12.0).unless("curve"),
        /// Torque by speed at the rated voltage, at the motor, where it is no straight line: a three-phase or capacitor motor. From standstill to the
        /// speed without load, where the torque is 0.
        curve: Option<Vec<MotorPoint>> = list(&Kind::Block(MotorPoint::BLOCK), 60).of_at_least(2, FaultCode::TooFewPoints),
        /// Voltage the above are given for, V.
        rated_v: f64 = number(Voltage, 1.0, 1000.0, 24.0),
        /// Voltage there is at the motor under load, V; where `supply_resistance_ohm` is said, that of the source without load; default the rated one.
        supply_v: Option<f64> = number(Voltage, 1.0, 1000.0, 22.0).listed(),
        /// Turns of the motor for one turn of the operator's shaft; default 1: the numbers above are those of the shaft.
        gear_ratio: Option<f64> = assumed(Ratio, 1.0, 10_000.0, 1.0) => gear_ratio,
        /// Part of the motor's work that reaches the operator's shaft; default 1.
        gear_efficiency: Option<f64> = assumed(Ratio, 0.1, 1.0, 1.0) => gear_efficiency,
        /// Time in which motor and gear alone reach 63 % of the no-load speed, s; default 0.05 (common practice, no source).
        run_up_s: Option<f64> = assumed(Time, 0.005, 5.0, 0.05) => run_up,
    }
}

block! {
    /// One point of a motor's table.
    #[derive(Copy)]
    pub struct MotorPoint at "motion.motor.curve." {
        /// Speed of the motor, degrees a second: 0 in the first point, rising from point to point.
        speed_deg_s: f64 = number(AngularSpeed, 0.0, 100_000.0, 12.0),
        /// Its torque there, N·m: more than 0, and 0 in the last point.
        torque_n_m: f64 = number(Torque, 0.0, 50_000.0, 900.0),
    }
}

/// Least torque of a motor that still drives, N·m.
const LEAST_N_M: f64 = 0.01;

impl MotorFacts {
    /// Voltage at the motor, V.
    #[must_use]
    pub fn supply(&self) -> f64 {
        self.supply_v.unwrap_or(self.rated_v)
    }

    /// Faults between its numbers: a line beside a table, a table that is no curve of a motor.
    pub(in crate::job) fn relations(&self) -> Vec<Fault> {
        let Some(points) = &self.curve else { return Vec::new() };
        let line = [("stall_torque_n_m", self.stall_torque_n_m), ("no_load_speed_deg_s", self.no_load_speed_deg_s)];
        let twice = |(key, value): (&str, Option<f64>)| Some(Fault::said_twice(format!("motion.motor.{key}"), value?));
        let mut faults: Vec<Fault> = line.into_iter().filter_map(twice).collect();
        let [speed, torque] =
            const { [MotorPoint::BLOCK.number("speed_deg_s"), MotorPoint::BLOCK.number("torque_n_m")] };
        let mut wrong = |index: usize, key: &str, code, found, allowed: Number, example| {
            let fault = Fault::number(format!("motion.motor.curve.{index}.{key}"), code, found, allowed.allowed());
            faults.push(fault.example(Example::Number(example)));
        };
        let only = |row: Number| Number { most: Some(0.0), ..row };
        let last = points.len().saturating_sub(1);
        let mut before: Option<f64> = None;
        for (index, point) in points.iter().enumerate() {
            match before {
                None if point.speed_deg_s > 0.0 => {
                    wrong(index, "speed_deg_s", FaultCode::NoMotorCurve, point.speed_deg_s, only(speed), 0.0);
                }
                Some(before) if point.speed_deg_s <= before => {
                    let above = Number { least: Some(before), ..speed };
                    wrong(index, "speed_deg_s", FaultCode::NotRising, point.speed_deg_s, above, before + 1.0);
                }
                _ => {}
            }
            before = Some(point.speed_deg_s);
            if index < last && point.torque_n_m < LEAST_N_M {
                let some = Number { least: Some(LEAST_N_M), ..torque };
                wrong(index, "torque_n_m", FaultCode::NoMotorCurve, point.torque_n_m, some, torque.example);
            }
            if index == last && point.torque_n_m > 0.0 {
                wrong(index, "torque_n_m", FaultCode::NoMotorCurve, point.torque_n_m, only(torque), 0.0);
            }
        }
        faults
    }
}
