//! The leaf through time: prescribed by the shaft's speed, or driven by a motor.

mod coast;
mod control;
mod driven;
mod motor;
mod motor_table;
mod prescribed;
mod profile;
mod track;

pub(crate) use coast::Released;
pub use coast::{CoastState, coast};
pub(crate) use driven::drive;
pub use driven::{DrivenPoint, DrivenRun, DrivenState, EnergyBalance};
pub use motor::{Motor, motor_power_w, motor_torque_n_m};
pub use motor_table::{MotorTable, ShaftTorque};
pub use prescribed::{MotionPoint, PrescribedRun, TimedTorque};
pub(crate) use prescribed::{prescribe, trace};
pub use profile::{Moment, Profile, trapezoid_time_s};
pub(crate) use track::Track;

use crate::arm::ShaftPath;
use crate::elements::Efficiency;
use crate::leaf::LeafLoads;

/// What moves: the leaf and its arm.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Moving<'a> {
    pub path: ShaftPath<'a>,
    pub loads: &'a LeafLoads,
    /// Parts of the work that pass between shaft and leaf.
    pub efficiency: Efficiency,
    /// Hinge axis to the latch edge, m.
    pub length_m: f64,
}
