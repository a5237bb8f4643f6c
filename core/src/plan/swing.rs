//! The least of a distance over the continuous swing, with its leaf angle.
//!
//! Distances are asked at leaf angles that crowd towards both ends of the swing, where an elbow near its dead point runs like a square root, and
//! every local least is refined between its neighbours; what two of them could hide between them is far below a millimetre for parts of a
//! gate's size. A distance changes by no more than what moves does, so of most of the swing it is known that it is no nearer than the nearest so
//! far, and it is not asked there.

use crate::arm::Linkage;
use crate::numerics::{ARC_OVER_CHORD, golden_section};
use crate::real::{cos, sin_cos};
use alloc::vec::Vec;
use core::f64::consts::PI;
use kurbo::Point;

/// Intervals of the swing that are looked at, those that are asked at both ends to begin with, and rounds of refinement between two angles.
const INTERVALS: usize = 240;
const FIRST: usize = 16;
const ROUNDS: usize = 40;

/// Difference from both its neighbours within which a least distance is level, m: rounding.
const LEVEL_M: f64 = 1e-12;

/// Leaf and arm at one leaf angle.
pub(super) struct Joints {
    pub leaf_rad: f64,
    /// Sine and cosine of the leaf angle, and of its opposite.
    pub there: (f64, f64),
    pub back: (f64, f64),
    pub elbow: Point,
    pub bracket: Point,
}

impl Joints {
    fn at(linkage: &Linkage, leaf_rad: f64) -> Joints {
        let lever = linkage.leverage(leaf_rad);
        let (sine, cosine) = sin_cos(leaf_rad);
        Joints { leaf_rad, there: (sine, cosine), back: (-sine, cosine), elbow: lever.elbow, bracket: lever.bracket }
    }
}

/// A joint that moves.
#[derive(Clone, Copy)]
pub(super) enum Joint {
    Elbow,
    Bracket,
}

/// What moves where a distance is told: its points move no further than the furthest of some joints, and by what turns with the leaf.
pub(super) struct Movers<'a> {
    pub joints: &'a [Joint],
    /// Distance from the hinge of the furthest point that turns with the leaf, or against it where the leaf is what stands still, m.
    pub turning_m: f64,
}

/// The swing at the leaf angles that are looked at: leaf and arm are worked out once for everything they could meet.
pub(super) struct SwingJoints<'a> {
    linkage: &'a Linkage,
    looked_at: Vec<Joints>,
    /// Way of elbow and bracket from closed to each angle, m, no less than it is.
    ways_m: [Vec<f64>; 2],
    /// Furthest a joint is from the hinge, m.
    pub furthest_m: f64,
}

impl SwingJoints<'_> {
    pub fn new(linkage: &Linkage) -> SwingJoints<'_> {
        let angle = |index: usize| match index {
            INTERVALS => linkage.open_rad,
            index => 0.5 * linkage.open_rad * (1.0 - cos(PI * index as f64 / INTERVALS as f64)),
        };
        let looked_at: Vec<Joints> = (0..=INTERVALS).map(|index| Joints::at(linkage, angle(index))).collect();
        let ways_m = [|joints: &Joints| joints.elbow, |joints: &Joints| joints.bracket].map(|joint| {
            let steps = looked_at.windows(2).map(|pair| ARC_OVER_CHORD * (joint(&pair[0]) - joint(&pair[1])).hypot());
            let so_far = steps.scan(0.0, |way, step| {
                *way += step;
                Some(*way)
            });
            core::iter::once(0.0).chain(so_far).collect()
        });
        let joints = looked_at.iter().flat_map(|joints| [joints.elbow, joints.bracket]);
        let furthest_m = joints.chain([linkage.shaft]).fold(0.0, |most: f64, joint| most.max(joint.to_vec2().hypot()));
        SwingJoints { linkage, looked_at, ways_m, furthest_m }
    }

    pub fn at(&self, leaf_rad: f64) -> Joints {
        Joints::at(self.linkage, leaf_rad)
    }

    /// Leaf angle at the end of the swing, rad.
    pub fn open_rad(&self) -> f64 {
        self.linkage.open_rad
    }

    fn angle(&self, index: usize) -> f64 {
        self.looked_at[index].leaf_rad
    }

    /// Most that anything moves between two of the angles, m. Between them a part's points stay between those of its ends, but each end has a
    /// way of its own.
    fn moved_m(&self, moves: &Movers, from: usize, to: usize) -> f64 {
        let way = |joint: &Joint| {
            let ways = &self.ways_m[*joint as usize];
            ways[to] - ways[from]
        };
        moves.joints.iter().map(way).fold(0.0, f64::max) + moves.turning_m * (self.angle(to) - self.angle(from))
    }

    /// Least value over the swing with its angle, of a distance that changes by no more than what `moves`.
    ///
    /// Between two angles no value falls further below their mean than half of what anything moves. So most of the angles need not be asked, and
    /// most local leasts cannot be the least of all. Where a distance stays level, to a shaft that does not move, there is nothing to refine.
    pub fn least(&self, moves: &Movers, value: &dyn Fn(&Joints) -> f64) -> (f64, f64) {
        let asked = &mut AskedGaps { swing: self, moves, value, values: [None; INTERVALS + 1], least: f64::MAX };
        for index in (0..=INTERVALS).step_by(INTERVALS / FIRST) {
            asked.at(index);
        }
        for index in (INTERVALS / FIRST..=INTERVALS).step_by(INTERVALS / FIRST) {
            asked.between(index - INTERVALS / FIRST, index);
        }
        // Of a level stretch the first angle counts.
        let first = asked.values.iter().position(|value| *value == Some(asked.least)).unwrap_or(0);
        let mut best = (self.angle(first), asked.least);
        for index in 0..=INTERVALS {
            let Some(here) = asked.values[index] else { continue };
            let (before, behind) = (index.saturating_sub(1), (index + 1).min(INTERVALS));
            if (before + 1..=behind).all(|index| asked.known_floor(index).is_none_or(|floor| floor >= best.1)) {
                continue;
            }
            let beside = [asked.at(before), asked.at(behind)];
            if here > beside[0] || here > beside[1] || beside[0].max(beside[1]) - here <= LEVEL_M {
                continue;
            }
            let refined =
                golden_section(self.angle(before), self.angle(behind), ROUNDS, |leaf_rad| value(&self.at(leaf_rad)));
            if refined.1 < best.1 {
                best = refined;
            }
        }
        best
    }
}

/// A distance at the angles where it was asked.
struct AskedGaps<'a> {
    swing: &'a SwingJoints<'a>,
    moves: &'a Movers<'a>,
    value: &'a dyn Fn(&Joints) -> f64,
    values: [Option<f64>; INTERVALS + 1],
    least: f64,
}

impl AskedGaps<'_> {
    fn at(&mut self, index: usize) -> f64 {
        if let Some(value) = self.values[index] {
            return value;
        }
        let value = (self.value)(&self.swing.looked_at[index]);
        self.values[index] = Some(value);
        self.least = self.least.min(value);
        value
    }

    /// Asks between two angles that were asked, wherever something could be as near as the nearest so far.
    fn between(&mut self, from: usize, to: usize) {
        if to - from < 2 {
            return;
        }
        let floor = 0.5 * (self.at(from) + self.at(to) - self.swing.moved_m(self.moves, from, to));
        if floor > self.least + LEVEL_M {
            return;
        }
        let middle = usize::midpoint(from, to);
        self.at(middle);
        self.between(from, middle);
        self.between(middle, to);
    }

    /// The least a distance can be between an angle and the one before; `None` where it was not asked at both, and is not as near as the nearest.
    fn known_floor(&self, index: usize) -> Option<f64> {
        let ends = self.values[index - 1].zip(self.values[index])?;
        Some(0.5 * (ends.0 + ends.1 - self.swing.moved_m(self.moves, index - 1, index)))
    }
}

pub(super) fn turned(place: Point, (sine, cosine): (f64, f64)) -> Point {
    Point::new(place.x * cosine - place.y * sine, place.x * sine + place.y * cosine)
}

#[cfg(test)]
mod tests;
