//! A motor's torque by its speed, seen at the operator's shaft.

use crate::job::{MotionFacts, MotorFacts};
use serde::Serialize;

/// Torque of a linear motor, N·m: `T = T_s·(1 − ω/ω_n)`; beyond the no-load speed it brakes.
///
/// Permanent-magnet direct current, steady supply, armature reaction and heat neglected. Units of both speeds are the caller's.
/// Source: lancet.mit.edu/motor/motors3-4.html.
#[must_use]
pub fn motor_torque_n_m(stall_n_m: f64, no_load: f64, speed: f64) -> f64 {
    stall_n_m * (1.0 - speed / no_load)
}

/// Shaft power of a linear motor, W, speeds in rad/s: `P = T·ω`, most at half the no-load speed: `T_s·ω_n/4`. Source: the same.
#[must_use]
pub fn motor_power_w(stall_n_m: f64, no_load_rad_s: f64, speed_rad_s: f64) -> f64 {
    motor_torque_n_m(stall_n_m, no_load_rad_s, speed_rad_s) * speed_rad_s
}

/// A motor behind its gear, at the supply it has.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Motor {
    /// Torque at standstill, at the operator's shaft, N·m.
    pub stall_torque_n_m: f64,
    /// Speed without load, at the operator's shaft, rad/s.
    pub no_load_rad_s: f64,
    /// Inertia of motor and gear, at the operator's shaft, kg·m².
    pub inertia_kg_m2: f64,
}

impl MotionFacts {
    /// The motor at the operator's shaft; `None` where the job does not describe it.
    #[must_use]
    pub fn motor_at_shaft(&self) -> Option<Motor> {
        self.motor.as_ref().map(|facts| Motor::of(facts).behind(self.supply_resistance(), facts))
    }
}

impl Motor {
    /// What a job says of a motor.
    ///
    /// Both ends of the line go with the supply voltage (`T_s`, `ω_n ∝ V`); the gear divides the speed and multiplies the torque, less its
    /// losses. The gear's losses are taken as the same when the leaf drives it: a gear that holds against being driven back brakes more than
    /// this says. The inertia is that which the motor alone brings to 63 % of its no-load speed in the run-up time, at rated voltage:
    /// `J = T_s·t/ω_n`.
    #[must_use]
    pub fn of(facts: &MotorFacts) -> Motor {
        let supply = facts.supply() / facts.rated_v;
        let stall = facts.stall_torque_n_m * facts.gear_ratio() * facts.gear_efficiency();
        let no_load = facts.no_load_speed_deg_s.to_radians() / facts.gear_ratio();
        Motor {
            stall_torque_n_m: stall * supply,
            no_load_rad_s: no_load * supply,
            inertia_kg_m2: stall * facts.run_up() / no_load,
        }
    }

    /// The same behind a source whose voltage sags by its current: `V = V_0 − I·R`.
    ///
    /// With `V = R_m·I + k·ω` and `T = k·I` the motor's own resistance is `R_m = V_r²/(ω_n·T_s)` by its rated line, and standstill draws
    /// `V_0/(R_m + R)`: the torque at standstill falls to `R_m/(R_m + R)` of what it was, the speed without load, where no current flows, stays.
    /// Where the motor's numbers are those of the shaft its gear's losses count for resistance, and the sag comes out too small by as much. Braking
    /// is taken along the same line, though a motor with its leads joined does not feel the source. Source: the linear motor's own relation.
    fn behind(self, resistance_ohm: f64, facts: &MotorFacts) -> Motor {
        let own_ohm = facts.rated_v * facts.rated_v / (facts.no_load_speed_deg_s.to_radians() * facts.stall_torque_n_m);
        Motor { stall_torque_n_m: self.stall_torque_n_m * (own_ohm / (own_ohm + resistance_ohm)), ..self }
    }

    /// Torque at a shaft speed in the driving direction, N·m.
    #[must_use]
    pub fn torque_n_m(&self, speed_rad_s: f64) -> f64 {
        motor_torque_n_m(self.stall_torque_n_m, self.no_load_rad_s, speed_rad_s)
    }
}
