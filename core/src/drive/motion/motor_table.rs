//! A motor whose torque is no straight line of its speed: a three-phase or capacitor motor.

use crate::job::MotorPoint;
use alloc::vec::Vec;
use serde::Serialize;

/// Part of the no-load speed that the run-up time is told for: `1 − 1/e`.
const RUN_UP_TO: f64 = 1.0 - 1.0 / core::f64::consts::E;

/// Torque at one speed, at the operator's shaft.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct ShaftTorque {
    /// Speed, rad/s.
    pub speed_rad_s: f64,
    /// Torque, N·m.
    pub torque_n_m: f64,
}

/// Torque by rising speed, straight lines between the points, from standstill to the speed without load, where the last torque is 0.
///
/// Beyond the last point there is no torque. An induction motor that is driven over its synchronous speed does brake, as a generator on the
/// mains; that is not counted on, so a leaf that wind or lean drive comes out faster than it may be: the careful side for speeds and blows. A steady
/// curve stands for the motor at every moment: currents that settle within a turn or two of the mains are left out.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(transparent)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct MotorTable(Vec<ShaftTorque>);

impl MotorTable {
    /// A motor's points behind its gear, which divides the speed and multiplies the torque, less its losses.
    #[must_use]
    pub fn of(points: &[MotorPoint], gear_ratio: f64, gear_efficiency: f64) -> MotorTable {
        let behind = |point: &MotorPoint| ShaftTorque {
            speed_rad_s: point.speed_deg_s.to_radians() / gear_ratio,
            torque_n_m: point.torque_n_m * gear_ratio * gear_efficiency,
        };
        MotorTable(points.iter().map(behind).collect())
    }

    /// The same at a part of the rated voltage: the torque goes with its square, the speeds, which are the mains' frequency's, stay.
    ///
    /// Of an induction motor whose iron is not driven into saturation. Source: induction machines, any text (`T ∝ V²` at each slip).
    #[must_use]
    pub fn at_voltage(mut self, share: f64) -> MotorTable {
        for point in &mut self.0 {
            point.torque_n_m *= share * share;
        }
        self
    }

    /// Torque at standstill, N·m, and speed without load, rad/s; `None` without points.
    #[must_use]
    pub fn ends(&self) -> Option<(f64, f64)> {
        Some((self.0.first()?.torque_n_m, self.0.last()?.speed_rad_s))
    }

    /// Torque at a speed, N·m: that of standstill below it, none beyond the last point.
    #[must_use]
    pub fn torque_n_m(&self, speed_rad_s: f64) -> f64 {
        match self.0.partition_point(|point| point.speed_rad_s <= speed_rad_s) {
            0 => self.0.first().map_or(0.0, |first| first.torque_n_m),
            behind if behind == self.0.len() => 0.0,
            behind => between(&self.0[behind - 1], &self.0[behind], speed_rad_s),
        }
    }

    /// Inertia that this torque alone brings to 63 % of the speed without load in a time, kg·m²: `J = t/∫dω/T`, over each stretch
    /// `Δω·ln(T₂/T₁)/(T₂ − T₁)`. Of a straight line that is `T_s·t/ω_n`. `None` without points. Source: `J·ω̇ = T`.
    #[must_use]
    pub fn inertia_kg_m2(&self, time_s: f64) -> Option<f64> {
        let (_, no_load) = self.ends()?;
        let to = RUN_UP_TO * no_load;
        let spent = self.0.windows(2).filter(|pair| pair[0].speed_rad_s < to).map(|pair| {
            let end = pair[1].speed_rad_s.min(to);
            let torques = [pair[0].torque_n_m, between(&pair[0], &pair[1], end)];
            (end - pair[0].speed_rad_s) / mean_n_m(torques)
        });
        Some(time_s / spent.sum::<f64>())
    }
}

/// The torque that takes as long over a stretch as one that goes evenly from one end to the other, N·m: `(T₂ − T₁)/ln(T₂/T₁)`, both positive.
fn mean_n_m([from, to]: [f64; 2]) -> f64 {
    let part = (to - from) / from;
    // Where the two are almost alike the quotient loses its figures; the mean is then half way, to the square of the difference.
    if part.abs() < 1e-6 { (from + to) / 2.0 } else { (to - from) / libm::log1p(part) }
}

fn between(from: &ShaftTorque, to: &ShaftTorque, speed_rad_s: f64) -> f64 {
    let share = (speed_rad_s - from.speed_rad_s) / (to.speed_rad_s - from.speed_rad_s);
    from.torque_n_m + (to.torque_n_m - from.torque_n_m) * share
}
