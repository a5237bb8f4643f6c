//! What feeds an operator.

use crate::job::table::*;
use crate::units::Quantity::{Charge, Current, Power, Ratio, Time, Voltage};

block! {
    /// What an operator is fed with, and what it takes.
    #[derive(Copy)]
    pub struct Supply at "operators.supply." {
        /// Voltage of the mains, V; none where it runs on a battery alone.
        mains_v: Option<f64> = number(Voltage, 1.0, 1000.0, 230.0),
        /// Voltage of the motor, V.
        motor_v: Option<f64> = number(Voltage, 1.0, 1000.0, 24.0),
        /// Current of the motor at rated torque, A.
        rated_current_a: Option<f64> = number(Current, 0.001, 1000.0, 6.0),
        /// Current of the motor at peak torque, A.
        peak_current_a: Option<f64> = number(Current, 0.001, 1000.0, 15.0),
        /// Current at rest, from the mains or the battery it runs on, A.
        standby_current_a: Option<f64> = number(Current, 0.0, 100.0, 0.05),
        /// Most it takes from the mains, W.
        most_power_w: Option<f64> = number(Power, 0.0, 100_000.0, 300.0),
    }
}

block! {
    /// What keeps an operator going without supply.
    #[derive(Copy)]
    pub struct Battery at "operators.battery." {
        /// Voltage, V.
        voltage_v: f64 = number(Voltage, 1.0, 1000.0, 24.0),
        /// What it holds, A·h.
        capacity_ah: f64 = number(Charge, 0.01, 10_000.0, 7.0),
        /// Part of that which may be taken; unknown unless given.
        usable: Option<f64> = number(Ratio, 0.05, 1.0, 0.5),
        /// How long it takes to charge, s; unknown unless given.
        charging_s: Option<f64> = number(Time, 1.0, 1e6, 36_000.0),
    }
}
