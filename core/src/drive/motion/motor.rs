//! A motor's torque by its speed, seen at the operator's shaft.

use super::MotorTable;
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
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Motor {
    /// Torque at standstill, at the operator's shaft, N·m.
    pub stall_torque_n_m: f64,
    /// Speed without load, at the operator's shaft, rad/s.
    pub no_load_rad_s: f64,
    /// Inertia of motor and gear, at the operator's shaft, kg·m².
    pub inertia_kg_m2: f64,
    /// Its torque by speed where that is no straight line; `null` where it is.
    pub table: Option<MotorTable>,
}

impl MotionFacts {
    /// The motor at the operator's shaft; `None` where the job does not describe it.
    #[must_use]
    pub fn motor_at_shaft(&self) -> Option<Motor> {
        let facts = self.motor.as_ref()?;
        Some(Motor::of(facts)?.behind(self.supply_resistance(), facts))
    }
}

impl Motor {
    /// What a job says of a motor; `None` where it says neither a line nor a table, as no checked job does.
    ///
    /// Both ends of the line go with the supply voltage (`T_s`, `ω_n ∝ V`); the gear divides the speed and multiplies the torque, less its
    /// losses. The gear's losses are taken as the same when the leaf drives it: a gear that holds against being driven back brakes more than
    /// this says. The inertia is that which the motor alone brings to 63 % of its no-load speed in the run-up time, at rated voltage:
    /// `J = T_s·t/ω_n`. Of a table see [`MotorTable::of`].
    #[must_use]
    pub fn of(facts: &MotorFacts) -> Option<Motor> {
        let supply = facts.supply() / facts.rated_v;
        if let Some(points) = &facts.curve {
            let rated = MotorTable::of(points, facts.gear_ratio(), facts.gear_efficiency());
            let inertia_kg_m2 = rated.inertia_kg_m2(facts.run_up())?;
            let table = rated.at_voltage(supply);
            let (stall_torque_n_m, no_load_rad_s) = table.ends()?;
            return Some(Motor { stall_torque_n_m, no_load_rad_s, inertia_kg_m2, table: Some(table) });
        }
        let stall = facts.stall_torque_n_m? * facts.gear_ratio() * facts.gear_efficiency();
        let no_load = facts.no_load_speed_deg_s?.to_radians() / facts.gear_ratio();
        Some(Motor {
            stall_torque_n_m: stall * supply,
            no_load_rad_s: no_load * supply,
            inertia_kg_m2: stall * facts.run_up() / no_load,
            table: None,
        })
    }

    /// The same behind a source whose voltage sags by its current: `V = V_0 − I·R`.
    ///
    /// With `V = R_m·I + k·ω` and `T = k·I` the motor's own resistance is `R_m = V_r²/(ω_n·T_s)` by its rated line, and standstill draws
    /// `V_0/(R_m + R)`: the torque at standstill falls to `R_m/(R_m + R)` of what it was, the speed without load, where no current flows, stays.
    /// Where the motor's numbers are those of the shaft its gear's losses count for resistance, and the sag comes out too small by as much. Braking
    /// is taken along the same line, though a motor with its leads joined does not feel the source. Source: the linear motor's own relation.
    fn behind(self, resistance_ohm: f64, facts: &MotorFacts) -> Motor {
        // A table says nothing of the current; a resistance beside one is a fault.
        let Some((stall, no_load)) = facts.stall_torque_n_m.zip(facts.no_load_speed_deg_s) else { return self };
        let own_ohm = facts.rated_v * facts.rated_v / (no_load.to_radians() * stall);
        Motor { stall_torque_n_m: self.stall_torque_n_m * (own_ohm / (own_ohm + resistance_ohm)), ..self }
    }

    /// Torque at a shaft speed in the driving direction, N·m.
    #[must_use]
    pub fn torque_n_m(&self, speed_rad_s: f64) -> f64 {
        match &self.table {
            Some(table) => table.torque_n_m(speed_rad_s),
            None => motor_torque_n_m(self.stall_torque_n_m, self.no_load_rad_s, speed_rad_s),
        }
    }

    /// Torque nearest to a wanted one that the motor can have at a speed, both forward, N·m.
    ///
    /// A controller lowers the voltage from the supply's down to nothing. That moves a line down at one slope: between `T_s·(1 − ω/ω_n)` and
    /// `−T_s·ω/ω_n`, the braking of a motor with its leads joined. Source: the linear motor's own relation. Of a table it takes any part, down
    /// to no torque at all: what an induction motor may brake is not counted on.
    #[must_use]
    pub fn within_line_n_m(&self, wanted_n_m: f64, speed_rad_s: f64) -> f64 {
        let most = self.torque_n_m(speed_rad_s);
        let least = if self.table.is_some() { 0.0 } else { most - self.stall_torque_n_m };
        wanted_n_m.min(most).max(least)
    }
}
