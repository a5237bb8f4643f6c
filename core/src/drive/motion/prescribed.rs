//! The leaf through time where the shaft keeps a given speed, and what that asks of the shaft.

use super::Moving;
use super::profile::{Moment, Profile};
use crate::drive::effort_n_m;
use crate::terms::{Direction, WindCase};
use alloc::vec::Vec;
use serde::Serialize;

/// Points looked at along each stretch of constant acceleration, both ends included. Every quantity is smooth in between, so a largest value
/// is missed by the square of a step at most: some 1e-5 of it.
const POINTS: u32 = 257;

/// The leaf at one time.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct MotionPoint {
    /// Time from the start, s.
    pub time_s: f64,
    /// Shaft angle from closed, degrees, signed.
    pub shaft_deg: f64,
    /// Leaf angle from closed, degrees.
    pub leaf_deg: f64,
    /// Shaft speed, degrees a second, signed like the shaft angle.
    pub shaft_speed_deg_s: f64,
    /// Leaf speed, degrees a second, positive opening.
    pub leaf_speed_deg_s: f64,
    /// Leaf acceleration, degrees a second squared, positive opening.
    pub leaf_acceleration_deg_s2: f64,
    /// Speed of the latch edge, m/s, magnitude.
    pub edge_speed_m_s: f64,
    /// Kinetic energy of the leaf, J.
    pub energy_j: f64,
    /// Moment the drive brings to the leaf, N·m, positive opening.
    pub leaf_torque_n_m: f64,
    /// Torque at the shaft, N·m, signed like the shaft angle.
    pub shaft_torque_n_m: f64,
    /// The part of it that accelerates the leaf, N·m, without the arm's losses.
    pub inertial_torque_n_m: f64,
    /// Power at the shaft, W; negative where the leaf drives it.
    pub shaft_power_w: f64,
}

/// A largest torque and where it falls.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct TimedTorque {
    /// Magnitude, N·m.
    pub shaft_torque_n_m: f64,
    /// Time from the start, s.
    pub time_s: f64,
    /// Leaf angle, degrees.
    pub leaf_deg: f64,
}

/// One way, wind against.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct PrescribedRun {
    /// From rest to rest, s.
    pub time_s: f64,
    /// Greatest speed of the shaft, degrees a second: less than the operator's where the way is too short for its ramps.
    pub shaft_speed_deg_s: f64,
    /// Greatest speed of the latch edge, m/s.
    pub edge_speed_m_s: f64,
    /// Leaf angle there, degrees.
    pub edge_speed_leaf_deg: f64,
    /// Speed of the latch edge where the last ramp begins, m/s.
    pub arrival_edge_speed_m_s: f64,
    /// Greatest acceleration of the leaf, degrees a second squared, magnitude.
    pub leaf_acceleration_deg_s2: f64,
    /// Greatest kinetic energy of the leaf, J.
    pub energy_j: f64,
    /// Largest shaft torque, inertia and wind against together.
    pub peak: TimedTorque,
    /// Largest part of it that accelerates the leaf, without losses.
    pub inertial: TimedTorque,
    /// Largest power at the shaft, W.
    pub shaft_power_w: f64,
    /// Rows at evenly spaced times.
    pub curve: Vec<MotionPoint>,
}

impl Moving<'_> {
    /// The leaf at one time of a prescribed motion: `θ̇ = θ'·q̇`, `θ̈ = θ'·q̈ + θ''·q̇²`, `τ = s·τ_f − M_w − M_g + I·θ̈`, `T = τ·θ'` with the arm's
    /// losses. `moment.position` counts from where the motion starts.
    fn point(&self, time_s: f64, moment: Moment, direction: Direction, wind: WindCase) -> MotionPoint {
        let sign = direction.sign();
        let progress = if sign > 0.0 { moment.position } else { self.path.travel_rad() - moment.position };
        let (speed, acceleration) = (sign * moment.speed, sign * moment.acceleration);
        let station = self.path.at(progress);
        let leaf_speed = station.gain * speed;
        let leaf_acceleration = station.gain * acceleration + station.gain_rate * speed * speed;
        let inertia = self.loads.inertia_kg_m2;
        let torque = self.loads.demand_n_m(station.leaf_rad, direction, wind) + inertia * leaf_acceleration;
        // The shaft's torque in the sense of its progress.
        let shaft = effort_n_m(torque, direction, self.efficiency) * station.gain;
        let turn = self.path.sign();
        MotionPoint {
            time_s,
            shaft_deg: (turn * progress).to_degrees(),
            leaf_deg: station.leaf_rad.to_degrees(),
            shaft_speed_deg_s: (turn * speed).to_degrees(),
            leaf_speed_deg_s: leaf_speed.to_degrees(),
            leaf_acceleration_deg_s2: leaf_acceleration.to_degrees(),
            edge_speed_m_s: leaf_speed.abs() * self.length_m,
            energy_j: 0.5 * inertia * leaf_speed * leaf_speed,
            leaf_torque_n_m: torque,
            shaft_torque_n_m: turn * shaft,
            inertial_torque_n_m: turn * inertia * leaf_acceleration * station.gain,
            shaft_power_w: shaft * speed,
        }
    }
}

/// Moves the leaf one way as a profile of the shaft says, the wind against it or as `wind` says.
pub(crate) fn prescribe(
    moving: &Moving,
    profile: &Profile,
    direction: Direction,
    wind: WindCase,
    samples: u32,
) -> PrescribedRun {
    let point = |time_s, moment| moving.point(time_s, moment, direction, wind);
    let last = samples.max(2) - 1;
    let time_s = profile.time_s();
    let row = |index: u32| {
        let at = if index == last { time_s } else { time_s * f64::from(index) / f64::from(last) };
        point(at, profile.at(at))
    };
    let mut run = PrescribedRun {
        time_s,
        shaft_speed_deg_s: profile.peak_speed().to_degrees(),
        edge_speed_m_s: 0.0,
        edge_speed_leaf_deg: 0.0,
        arrival_edge_speed_m_s: 0.0,
        leaf_acceleration_deg_s2: 0.0,
        energy_j: 0.0,
        peak: TimedTorque { shaft_torque_n_m: 0.0, time_s: 0.0, leaf_deg: 0.0 },
        inertial: TimedTorque { shaft_torque_n_m: 0.0, time_s: 0.0, leaf_deg: 0.0 },
        shaft_power_w: 0.0,
        curve: (0..=last).map(row).collect(),
    };
    trace(moving, profile, direction, wind, POINTS, &mut |point| run.look(point));
    if let Some(last) = profile.stretches().last() {
        run.arrival_edge_speed_m_s = point(last.start_s, last.after(0.0)).edge_speed_m_s;
    }
    run
}

/// The leaf at evenly spaced times along each stretch of constant acceleration, both ends included: where a stretch ends and the torque steps
/// there are two rows of one time.
pub(crate) fn trace(
    moving: &Moving,
    profile: &Profile,
    direction: Direction,
    wind: WindCase,
    points: u32,
    see: &mut dyn FnMut(&MotionPoint),
) {
    for stretch in profile.stretches() {
        for index in 0..points {
            let after = stretch.duration_s * f64::from(index) / f64::from(points - 1);
            see(&moving.point(stretch.start_s + after, stretch.after(after), direction, wind));
        }
    }
}

impl PrescribedRun {
    /// Keeps the largest of everything.
    fn look(&mut self, point: &MotionPoint) {
        if point.edge_speed_m_s > self.edge_speed_m_s {
            (self.edge_speed_m_s, self.edge_speed_leaf_deg) = (point.edge_speed_m_s, point.leaf_deg);
        }
        self.leaf_acceleration_deg_s2 = self.leaf_acceleration_deg_s2.max(point.leaf_acceleration_deg_s2.abs());
        self.energy_j = self.energy_j.max(point.energy_j);
        self.shaft_power_w = self.shaft_power_w.max(point.shaft_power_w);
        self.peak.look(point.shaft_torque_n_m, point);
        self.inertial.look(point.inertial_torque_n_m, point);
    }
}

impl TimedTorque {
    fn look(&mut self, torque_n_m: f64, point: &MotionPoint) {
        if torque_n_m.abs() > self.shaft_torque_n_m {
            *self = TimedTorque { shaft_torque_n_m: torque_n_m.abs(), time_s: point.time_s, leaf_deg: point.leaf_deg };
        }
    }
}
