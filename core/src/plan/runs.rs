//! The leaf's runs told finely enough to be drawn and followed through time, whatever `samples` a job asks for.

use super::Model;
use super::motion::profile;
use crate::drive::{DrivenState, drive, trace};
use crate::terms::{Direction, WindCase};
use alloc::vec::Vec;
use serde::Serialize;

/// Rows along each stretch of constant acceleration of a prescribed run. The leaf angle between two is a straight line's: over a ramp of a
/// second at 10 degrees a second it is some 3e-4 degrees off.
const STRETCH_ROWS: u32 = 65;

/// Rows of a driven run.
const DRIVEN_ROWS: u32 = 401;

/// The leaf at one time of a run.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct RunPoint {
    /// Time from the start, s.
    pub time_s: f64,
    /// Leaf angle from closed, degrees.
    pub leaf_deg: f64,
    /// Speed of the latch edge, m/s, magnitude.
    pub edge_speed_m_s: f64,
    /// Torque at the operator's shaft, N·m, signed like the shaft angle.
    pub shaft_torque_n_m: f64,
}

/// One way, wind against.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// Which way.
    pub direction: Direction,
    /// How it ends; `None` for a prescribed one, which always arrives.
    pub state: Option<DrivenState>,
    /// Rows by time, the first at 0; at a step of the torque two of one time.
    pub rows: Vec<RunPoint>,
}

impl Run {
    /// From start to end, s.
    #[must_use]
    pub fn time_s(&self) -> f64 {
        self.rows.last().map_or(0.0, |row| row.time_s)
    }

    /// The leaf at a time, held between start and end; straight between two rows. `None` only for a run without rows.
    #[must_use]
    pub fn at(&self, time_s: f64) -> Option<RunPoint> {
        let behind = self.rows.partition_point(|row| row.time_s < time_s).min(self.rows.len().checked_sub(1)?);
        let (from, to) = (self.rows[behind.saturating_sub(1)], self.rows[behind]);
        let span = to.time_s - from.time_s;
        Some(between(&from, &to, if span > 0.0 { (time_s - from.time_s) / span } else { 1.0 }))
    }

    /// The leaf where it first has an angle, degrees; `None` where the run does not come to it.
    #[must_use]
    pub fn of_leaf(&self, leaf_deg: f64) -> Option<RunPoint> {
        // What is left of the way shrinks from row to row; what rounding leaves over at an end is not missed.
        let left = |row: &RunPoint| self.direction.sign() * (leaf_deg - row.leaf_deg);
        let behind = self.rows.iter().position(|row| left(row) <= 1e-9)?;
        let (from, to) = (self.rows[behind.saturating_sub(1)], self.rows[behind]);
        let way = left(&from) - left(&to);
        Some(between(&from, &to, if way > 0.0 { left(&from) / way } else { 1.0 }))
    }
}

fn between(from: &RunPoint, to: &RunPoint, share: f64) -> RunPoint {
    let share = share.clamp(0.0, 1.0);
    let mix = |a: f64, b: f64| if share == 1.0 { b } else { a + (b - a) * share };
    RunPoint {
        time_s: mix(from.time_s, to.time_s),
        leaf_deg: mix(from.leaf_deg, to.leaf_deg),
        edge_speed_m_s: mix(from.edge_speed_m_s, to.edge_speed_m_s),
        shaft_torque_n_m: mix(from.shaft_torque_n_m, to.shaft_torque_n_m),
    }
}

impl Model {
    /// Opening and closing as prescribed, then the same by the motor where the job describes it; none where it says nothing of motion.
    #[must_use]
    pub fn fine_runs(&self) -> Vec<Run> {
        let mut runs = Vec::new();
        let Some((facts, speed)) = self.job().motion.as_ref().zip(self.speed_rad_s()) else { return runs };
        let moving = self.moving(self.loads());
        for direction in Direction::BOTH {
            let mut rows = Vec::new();
            let speeds = profile(&moving, facts, speed, direction);
            trace(&moving, &speeds, direction, WindCase::Against, STRETCH_ROWS, &mut |point| {
                rows.push(RunPoint {
                    time_s: point.time_s,
                    leaf_deg: point.leaf_deg,
                    edge_speed_m_s: point.edge_speed_m_s,
                    shaft_torque_n_m: point.shaft_torque_n_m,
                });
            });
            runs.push(Run { direction, state: None, rows });
        }
        let Some(motor) = facts.motor_at_shaft() else { return runs };
        let moving = self.driven_moving();
        for direction in Direction::BOTH {
            let speeds = profile(&moving, facts, speed, direction);
            let (run, _) = drive(&moving, &motor, &speeds, direction, WindCase::Against, DRIVEN_ROWS);
            let rows = run.curve.iter().map(|point| RunPoint {
                time_s: point.time_s,
                leaf_deg: point.leaf_deg,
                edge_speed_m_s: point.edge_speed_m_s,
                shaft_torque_n_m: point.shaft_torque_n_m,
            });
            runs.push(Run { direction, state: Some(run.state), rows: rows.collect() });
        }
        runs
    }
}
