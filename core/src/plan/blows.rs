//! The blow of the latch edge at the gaps for which there are limits.

use super::Model;
use super::motion::profile;
use crate::arm::ShaftPath;
use crate::drive::{Track, blocked_moment_n_m, trace};
use crate::job::Contact;
use crate::real::{atan2, sqrt};
use crate::safety::{compression_m, edge_mass_kg, edge_travel_m, impact_force_n, impact_speed_m_s};
use crate::terms::{Direction, WindCase};
use alloc::vec::Vec;
use serde::Serialize;

/// Gaps between the closing edge and what it closes on at which force is measured, m. EN 12445:2000 (superseded; from memory).
const TEST_GAPS_M: [f64; 3] = [0.05, 0.3, WIDE_GAP_M];

/// Gap beyond which the larger dynamic limit holds, m. EN 12453:2001 Annex A (superseded; from memory).
pub(super) const WIDE_GAP_M: f64 = 0.5;

/// Dynamic limit where more than that is left, N. EN 12453:2001 Annex A (superseded; from memory).
const WIDE_LIMIT_N: f64 = 1400.0;

/// Rows along each stretch of constant acceleration that are looked at for the hardest blow.
const POINTS: u32 = 129;

/// The latch edge meeting something while some gap is left.
///
/// The gap is the straight line from the latch edge to what the gate closes on, which lies `site.latch_gap_m` (`c`) beyond the closed edge:
/// `gap² = c² + 4·L·(L + c)·sin²(θ/2)`, the chord `2·L·sin(θ/2)` where the gate closes flush.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Blow {
    /// Gap that is left, m; `null` for the hardest blow where more than 500 mm is left.
    pub gap_m: Option<f64>,
    /// Leaf angle, degrees; `null` where more is left and motion is not described.
    pub leaf_deg: Option<f64>,
    /// Greatest speed of the latch edge there, prescribed or driven, the wind against or behind, m/s; `null` where motion is not described.
    pub edge_speed_m_s: Option<f64>,
    /// Mass that stands for leaf and drive at the latch edge, kg: `(I + J·n²)/L²`; of the leaf alone where the drive is not known, `null` at a
    /// dead point.
    pub edge_mass_kg: Option<f64>,
    /// Force of the blow, N, the motor's push apart.
    pub impact_n: Option<f64>,
    /// How far what is met gives then, m.
    pub compression_m: Option<f64>,
    /// Push of the blocked edge there, N.
    pub push_n: Option<f64>,
    /// What the blow may come to for `dynamic_time_s` at the most, N: the typed limit for gaps of 50 to 500 mm, 1,400 N beyond.
    pub dynamic_limit_n: f64,
    /// Edge speed that keeps it, m/s.
    pub speed_at_limit_m_s: Option<f64>,
    /// Compression a safety edge needs to keep it, m.
    pub edge_travel_m: Option<f64>,
}

impl Blow {
    /// Whether the blow is over its limit.
    pub(super) fn is_over(&self) -> bool {
        self.impact_n.is_some_and(|impact| impact > self.dynamic_limit_n)
    }
}

/// The edge's way to where a gap is left: leaf angle, rad; `None` where closed leaves more, or the open leaf less.
fn leaf_at_gap(gap_m: f64, length_m: f64, beyond_m: f64, open_rad: f64) -> Option<f64> {
    if gap_m <= beyond_m {
        return None;
    }
    let squared = (gap_m * gap_m - beyond_m * beyond_m) / (4.0 * length_m * (length_m + beyond_m));
    let leaf_rad = 2.0 * atan2(sqrt(squared), sqrt(1.0 - squared));
    (squared <= 1.0 && leaf_rad <= open_rad).then_some(leaf_rad)
}

/// What all blows of one gate have in common.
pub(super) struct Striking<'a> {
    pub model: &'a Model,
    pub contact: &'a Contact,
    pub path: ShaftPath<'a>,
    /// Torque at the shaft the push is reckoned with, N·m.
    pub torque_n_m: f64,
    /// Of the leaf about its hinge axis, kg·m².
    pub inertia_kg_m2: f64,
    /// Of motor and gear at the shaft, kg·m²; 0 where they are not known.
    pub drive_kg_m2: f64,
}

impl Striking<'_> {
    fn length_m(&self) -> f64 {
        self.model.job().leaf.length_m
    }

    /// Kinetic energy of leaf and drive at a speed of the shaft, J; `gain` is the leaf's turn over the shaft's.
    pub fn energy_j(&self, gain: f64, shaft_rad_s: f64) -> f64 {
        0.5 * (self.inertia_kg_m2 * gain * gain + self.drive_kg_m2) * shaft_rad_s * shaft_rad_s
    }

    /// Push of the latch edge on what blocks it, N; `None` at a dead point.
    pub fn push_n(&self, leaf_rad: f64) -> Option<f64> {
        let pose = self.model.linkage().pose(leaf_rad);
        let moment = blocked_moment_n_m(self.torque_n_m, &pose, self.model.job().operator.efficiency())?;
        Some(moment / self.length_m())
    }

    /// The row of a place of the shaft, and of the speed it has there.
    fn blow(&self, gap_m: Option<f64>, at: Option<(f64, Option<f64>)>) -> Blow {
        let (contact, length) = (self.contact, self.length_m());
        let limit = if gap_m.is_some() { contact.dynamic_limit() } else { WIDE_LIMIT_N };
        let station = at.map(|(progress, _)| self.path.at(progress));
        // At a dead point the leaf stands still while the drive turns: no mass at the edge stands for that.
        let mass = station
            .filter(|station| station.gain > 0.0)
            .map(|station| edge_mass_kg(self.inertia_kg_m2 + self.drive_kg_m2 / (station.gain * station.gain), length));
        let speed = station.zip(at.and_then(|(_, shaft)| shaft)).map(|(station, shaft)| station.gain * shaft * length);
        let met = speed.zip(mass);
        Blow {
            gap_m,
            leaf_deg: station.map(|station| station.leaf_rad.to_degrees()),
            edge_speed_m_s: speed,
            edge_mass_kg: mass,
            impact_n: met.map(|(speed, mass)| impact_force_n(speed, contact.stiffness(), mass)),
            compression_m: met.map(|(speed, mass)| compression_m(speed, contact.stiffness(), mass)),
            push_n: station.and_then(|station| self.push_n(station.leaf_rad)),
            dynamic_limit_n: limit,
            speed_at_limit_m_s: mass.map(|mass| impact_speed_m_s(limit, contact.stiffness(), mass)),
            edge_travel_m: met.map(|(speed, mass)| edge_travel_m(speed, contact.response(), mass, limit)),
        }
    }

    /// Blows at the test gaps, and the hardest where more is left.
    pub fn blows(&self, tracks: &[Track]) -> Vec<Blow> {
        let model = self.model;
        let beyond = model.job().site.as_ref().map_or(0.0, |site| site.latch_gap());
        let leaf_at = |gap| leaf_at_gap(gap, self.length_m(), beyond, model.linkage().open_rad);
        let moving = model.moving(model.loads());
        let facts = model.job().motion.as_ref().zip(model.speed_rad_s());
        let travel = moving.path.travel_rad();
        let closing = facts.map(|(facts, speed)| profile(&moving, facts, speed, Direction::Close));
        // Closing against the wind and with it.
        let closing_tracks = || tracks.iter().skip(1).step_by(2);
        let at_gap = |gap: f64, leaf_rad: f64| {
            let progress = model.linkage().pose(leaf_rad).crank_rad.abs();
            let prescribed = closing.as_ref().map(|closing| closing.where_at(travel - progress).speed);
            let driven = closing_tracks().filter_map(|track| track.speed_at(progress));
            let speed = driven.fold(prescribed, |most, speed| most.map(|most| most.max(speed)));
            self.blow(Some(gap), Some((progress, speed)))
        };
        let mut blows: Vec<Blow> =
            TEST_GAPS_M.into_iter().filter_map(|gap| leaf_at(gap).map(|leaf_rad| at_gap(gap, leaf_rad))).collect();
        // Opening the edge leaves what it closes on; closing it is wide up to the last of the gaps.
        let from = match leaf_at(WIDE_GAP_M) {
            Some(leaf_rad) => model.linkage().pose(leaf_rad).crank_rad.abs(),
            None if WIDE_GAP_M <= beyond => 0.0,
            None => travel,
        };
        let mut hardest: Option<(f64, f64, f64)> = None;
        let mut look = |direction, progress: f64, shaft: f64| {
            if direction == Direction::Open || progress >= from {
                let energy = self.energy_j(self.path.at(progress).gain, shaft);
                if hardest.is_none_or(|(most, _, _)| energy > most) {
                    hardest = Some((energy, progress, shaft));
                }
            }
        };
        if let Some((facts, speed)) = facts {
            for direction in Direction::BOTH {
                let speeds = profile(&moving, facts, speed, direction);
                trace(&moving, &speeds, direction, WindCase::Against, POINTS, &mut |point| {
                    look(direction, point.shaft_deg.to_radians().abs(), point.shaft_speed_deg_s.to_radians().abs());
                });
            }
        }
        for (track, direction) in tracks.iter().zip(Direction::BOTH.into_iter().cycle()) {
            track.steps.iter().for_each(|[_, progress, shaft]| look(direction, *progress, shaft.abs()));
        }
        blows.push(self.blow(None, hardest.map(|(_, progress, shaft)| (progress, Some(shaft)))));
        blows
    }
}
