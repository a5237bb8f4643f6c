//! What an operator's maker limits beside torque.

use crate::job::table::*;
use crate::units::Quantity::{Count, Length, Mass, Temperature};

block! {
    /// Most weight of a leaf up to a length.
    #[derive(Copy)]
    pub struct LeafLimit at "operators.leaf_limits." {
        /// Leaves up to this length, m.
        length_m: f64 = number(Length, 0.3, 15.0, 3.0),
        /// Most such a leaf may weigh, kg.
        mass_kg: f64 = number(Mass, 1.0, 5000.0, 300.0),
    }
}

block! {
    /// Cycles, one opening and one closing each, up to a temperature.
    #[derive(Copy)]
    pub struct DutyRating at "operators.duty." {
        /// In air up to this temperature, °C; in any where it is not said.
        up_to_c: Option<f64> = number(Temperature, -80.0, 100.0, 40.0),
        /// Cycles an hour.
        cycles_per_hour: Option<f64> = number(Count, 1.0, 1000.0, 20.0),
        /// Cycles a day.
        cycles_per_day: Option<f64> = number(Count, 1.0, 10_000.0, 100.0),
    }
}
