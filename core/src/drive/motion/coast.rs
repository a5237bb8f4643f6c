//! What happens once the drive lets go.

use super::Moving;
use crate::terms::{Direction, WindCase};
use serde::Serialize;

/// How a leaf that was let go ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum CoastState {
    /// It comes to rest by itself.
    Stops,
    /// It is still moving, slower than at release, where its way ends: a stop takes the rest.
    ReachesStop,
    /// Nothing brakes it on the whole: it meets the stop as fast as it was let go, or faster.
    RunsOn,
    /// Its gear does not back-drive: it stops with the motor, and how soon is not reckoned.
    GearHolds,
}

/// Stretches the way is cut into.
const STRETCHES: u32 = 360;

/// How a leaf that was let go ends, and the way it does until then, rad: the whole way where it does not stop by itself.
///
/// `energy_j` is the kinetic energy at release, `way_rad` the way left to the stop, `rate_n_m(way, energy)` what the energy changes by on the
/// way, in J/rad: negative where it is braked, positive where wind or lean drive it. Looked at along the whole way, by the classical
/// Runge–Kutta rule; a leaf at rest stays only where nothing moves it. Source: work and energy.
pub fn coast(energy_j: f64, way_rad: f64, rate_n_m: impl Fn(f64, f64) -> f64) -> (CoastState, f64) {
    let step = way_rad / f64::from(STRETCHES);
    let mut before = energy_j;
    for index in 0..STRETCHES {
        let way = step * f64::from(index);
        let first = rate_n_m(way, before);
        let second = rate_n_m(way + step / 2.0, before + step / 2.0 * first);
        let third = rate_n_m(way + step / 2.0, before + step / 2.0 * second);
        let last = rate_n_m(way + step, before + step * third);
        let after = before + step / 6.0 * (first + 2.0 * (second + third) + last);
        if after <= 0.0 {
            // Within a stretch the braking moment hardly changes, and with it the energy falls evenly.
            let share = if before > after { before / (before - after) } else { 0.0 };
            return (CoastState::Stops, way + step * share);
        }
        before = after;
    }
    (if before < energy_j { CoastState::ReachesStop } else { CoastState::RunsOn }, way_rad)
}

/// Leaf and drive after the drive has let go, moving one way: motor and gear turn with the shaft, and nothing but drag holds them.
pub(crate) struct Released<'a> {
    pub moving: &'a Moving<'a>,
    /// Inertia of motor and gear at the operator's shaft, kg·m²; 0 leaves them out.
    pub inertia_kg_m2: f64,
    /// Drag of the released drive at the shaft, N·m.
    pub drag_n_m: f64,
    pub direction: Direction,
    pub wind: WindCase,
}

impl Released<'_> {
    /// Kinetic energy of leaf and drive at a shaft speed, J: `½·(J + I·θ'²)·q̇²`.
    pub fn energy_j(&self, progress_rad: f64, shaft_rad_s: f64) -> f64 {
        let gain = self.moving.path.at(progress_rad).gain;
        0.5 * (self.inertia_kg_m2 + self.moving.loads.inertia_kg_m2 * gain * gain) * shaft_rad_s * shaft_rad_s
    }

    /// What that energy changes by for each radian the shaft turns on, N·m: `s·(T − θ'·D) − loss`, the drag `T = −s·drag`.
    ///
    /// The arm takes `(1 − 1/e)·(T − J·q̈)`, where `T − J·q̈` is what the shaft brings to it and `q̈`, `e` are those of a driven run. Without
    /// inertia of the drive that is `drag·(1/η − 1)`: the leaf drives the shaft.
    pub fn rate_n_m(&self, progress_rad: f64, energy_j: f64) -> f64 {
        let (sign, station) = (self.direction.sign(), self.moving.path.at(progress_rad));
        let (gain, inertia, drive) = (station.gain, self.moving.loads.inertia_kg_m2, self.inertia_kg_m2);
        let torque = -sign * self.drag_n_m;
        let demand = self.moving.loads.demand_n_m(station.leaf_rad, self.direction, self.wind);
        let efficiency = self.moving.efficiency;
        let (share, brought) = if drive > 0.0 {
            // `A`, `e` and `q̈` as in a driven run, where they are derived.
            let squared = 2.0 * energy_j.max(0.0) / (drive + inertia * gain * gain);
            let steady = demand + inertia * station.gain_rate * squared;
            let driving = (steady * drive + inertia * gain * torque) * sign >= 0.0;
            let share = efficiency.share(driving);
            let acceleration = (torque - share * gain * steady) / (drive + share * inertia * gain * gain);
            (share, torque - drive * acceleration)
        } else {
            (efficiency.back, torque)
        };
        sign * (torque - gain * demand - (1.0 - 1.0 / share) * brought)
    }
}
