//! The arm's way through the swing against the rectangles it has to stay out of.
//!
//! Elbow and bracket are worked out once an arm for all rectangles. Between two stations no point of the crank moves further than the elbow, none
//! of the link further than the elbow or the bracket; so a wide gap at one station vouches for all stations that are nearer by way than
//! what it has to spare, and most of the swing is never looked at.

use super::kernel::{ArmKernel, SearchStation};
use super::problem::{INTERVALS, Problem};
use crate::numerics::{Sides, golden_section, separation_m};
use crate::real::{cos, sin, sqrt};

/// Parts of the arm.
pub(super) const CRANK: usize = 0;
pub(super) const LINK: usize = 1;

/// Stations at which the deepest rectangle is looked for.
const FEW: [usize; 4] = [0, INTERVALS / 3, 2 * INTERVALS / 3, INTERVALS];

/// An arc over its chord, for a crank that turns less than 50° from station to station.
const ARC: f64 = 1.04;

/// A part of the arm at a station as rectangles see it: its box, its unit normal, and where along that it lies.
///
/// Every arm is asked about every rectangle at many stations, so what does not depend on the rectangle is worked out once, root and division with it.
#[derive(Clone, Copy)]
struct PartBox {
    x_m: [f64; 2],
    y_m: [f64; 2],
    normal: (f64, f64),
    off_m: f64,
}

impl PartBox {
    const NONE: PartBox =
        PartBox { x_m: [f64::MAX, f64::MIN], y_m: [f64::MAX, f64::MIN], normal: (1.0, 0.0), off_m: 0.0 };

    fn new(from: (f64, f64), to: (f64, f64)) -> PartBox {
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let length = sqrt(dx * dx + dy * dy);
        // To a point every axis is a normal.
        let normal = if length > 0.0 { (-dy / length, dx / length) } else { (1.0, 0.0) };
        PartBox {
            x_m: [from.0.min(to.0), from.0.max(to.0)],
            y_m: [from.1.min(to.1), from.1.max(to.1)],
            normal,
            off_m: normal.0 * from.0 + normal.1 * from.1,
        }
    }

    /// The box around both.
    fn with(&self, other: &PartBox) -> PartBox {
        let around = |[a, b]: [f64; 2], [c, d]: [f64; 2]| [a.min(c), b.max(d)];
        PartBox { x_m: around(self.x_m, other.x_m), y_m: around(self.y_m, other.y_m), ..*self }
    }

    /// The gap between its box and a rectangle, m: no more than that between the part and the rectangle.
    fn box_gap_m(&self, rectangle: &Sides) -> f64 {
        let along = |[least, most]: [f64; 2], [from, to]: [f64; 2]| (from - most).max(least - to);
        let [x_m, y_m] = *rectangle;
        along(self.x_m, x_m).max(along(self.y_m, y_m))
    }

    /// The widest gap along the separating axes, m, as [`separation_m`] has it.
    fn parting_m(&self, rectangle: &Sides) -> f64 {
        let [[x0, x1], [y0, y1]] = *rectangle;
        let (nx, ny) = self.normal;
        let across = (0.5 * (nx * (x0 + x1) + ny * (y0 + y1)) - self.off_m).abs();
        self.box_gap_m(rectangle).max(across - 0.5 * (nx.abs() * (x1 - x0) + ny.abs() * (y1 - y0)))
    }
}

/// Stations that share a box, and how many such boxes there are.
const GROUP: usize = 6;
const GROUPS: usize = (INTERVALS + GROUP) / GROUP;

/// Where the joints are at every station.
pub(super) struct SweptParts<'a, 'b> {
    problem: &'a Problem<'b>,
    kernel: &'a ArmKernel,
    brackets: [(f64, f64); INTERVALS + 1],
    elbows: [(f64, f64); INTERVALS + 1],
    /// Most a point of crank, link moves on the way to a station from the one before, m.
    moved: [[f64; INTERVALS + 1]; 2],
    /// Crank and link at every station.
    bars: [[PartBox; INTERVALS + 1]; 2],
    /// The box around all of them, those around some that follow one another, and the most of their ways.
    around: [(PartBox, [PartBox; GROUPS], f64); 2],
}

impl<'a, 'b> SweptParts<'a, 'b> {
    pub fn new(problem: &'a Problem<'b>, kernel: &'a ArmKernel) -> SweptParts<'a, 'b> {
        let none = [(0.0, 0.0); INTERVALS + 1];
        let moved = [[0.0; INTERVALS + 1]; 2];
        let (bars, around) = ([[PartBox::NONE; INTERVALS + 1]; 2], [(PartBox::NONE, [PartBox::NONE; GROUPS], 0.0); 2]);
        let mut swept = SweptParts { problem, kernel, brackets: none, elbows: none, moved, bars, around };
        for (index, station) in problem.stations.iter().enumerate() {
            [swept.brackets[index], swept.elbows[index]] = kernel.joints(station.cosine, station.sine);
        }
        let way = |joints: &[(f64, f64); INTERVALS + 1], index: usize| {
            let (dx, dy) = (joints[index].0 - joints[index - 1].0, joints[index].1 - joints[index - 1].1);
            ARC * sqrt(dx * dx + dy * dy)
        };
        let bracket = way(&swept.brackets, 1);
        for index in 1..=INTERVALS {
            let elbow = way(&swept.elbows, index);
            swept.moved[CRANK][index] = elbow;
            swept.moved[LINK][index] = elbow.max(bracket);
        }
        for index in 0..=INTERVALS {
            let elbow = swept.elbows[index];
            swept.bars[CRANK][index] = PartBox::new(elbow, kernel.shaft());
            swept.bars[LINK][index] = PartBox::new(elbow, swept.brackets[index]);
        }
        for part in [CRANK, LINK] {
            let mut groups = [PartBox::NONE; GROUPS];
            for (group, bars) in groups.iter_mut().zip(swept.bars[part].chunks(GROUP)) {
                *group = bars.iter().fold(PartBox::NONE, |all, bar| all.with(bar));
            }
            let all = groups.iter().fold(PartBox::NONE, |all, bar| all.with(bar));
            swept.around[part] = (all, groups, swept.moved[part].iter().copied().fold(0.0, f64::max));
        }
        swept
    }

    /// The rectangle that is met deepest at a few stations, and its separation there, m.
    pub fn deepest(&self) -> (usize, f64) {
        let (mut deepest, mut least) = ((0, CRANK, 0), f64::MAX);
        for (rectangle, keep_out) in self.problem.setout.keep_out.iter().enumerate() {
            for part in [CRANK, LINK] {
                for index in FEW {
                    let gap = self.bars[part][index].parting_m(&keep_out.sides());
                    if gap < least {
                        (deepest, least) = ((rectangle, part, index), gap);
                    }
                }
            }
        }
        let (rectangle, part, index) = deepest;
        let other = if part == CRANK { self.kernel.shaft() } else { self.brackets[index] };
        (rectangle, separation_m(&self.problem.setout.keep_out[rectangle].sides(), self.elbows[index], other))
    }

    /// Least separation of a part from a rectangle over the swing, m, if it is less than `sharp`; else what it is at the stations if that is
    /// less than `bar`, which is not less than `sharp`, and something not less than `bar` otherwise. Extremes between the stations are
    /// refined that may be below `sharp`: the least of them, or all of them where the problem is [`exact`](Problem::exact). Every place where
    /// the separation is locally least and below `bar` is `told`, and some that are a little above.
    pub fn least_gap(
        &self,
        rectangle: usize,
        part: usize,
        [sharp, bar]: [f64; 2],
        mut told: impl FnMut(&SearchStation),
    ) -> f64 {
        let moved = &self.moved[part];
        let keep_out = &self.problem.setout.keep_out[rectangle].sides();
        // Most rectangles are far from everything the part ever comes to.
        let (around, groups, furthest) = &self.around[part];
        let away = around.box_gap_m(keep_out);
        if away - bar > *furthest {
            return away;
        }
        let bars = &self.bars[part];
        // Stations that are vouched for stay at the most there is.
        let mut gaps = [f64::MAX; INTERVALS + 1];
        let (mut index, mut least) = (0, f64::MAX);
        let mut seen = GROUPS;
        loop {
            let group = index / GROUP;
            if group != seen {
                seen = group;
                let away = groups[group].box_gap_m(keep_out);
                if away - bar > *furthest {
                    least = least.min(away);
                    index = (group + 1) * GROUP;
                    if index > INTERVALS {
                        break;
                    }
                    continue;
                }
            }
            let next = (index + 1).min(INTERVALS);
            let mut gap = bars[index].parting_m(keep_out);
            if gap - bar <= moved[index].max(moved[next]) {
                // Where they overlap that is the separation already.
                if gap > 0.0 {
                    let other = if part == CRANK { self.kernel.shaft() } else { self.brackets[index] };
                    gap = separation_m(keep_out, self.elbows[index], other);
                }
                gaps[index] = gap;
            }
            least = least.min(gap);
            if index == INTERVALS {
                break;
            }
            let mut spare = gap - bar - moved[next];
            index = next;
            while index < INTERVALS && spare >= moved[index + 1] {
                index += 1;
                spare -= moved[index];
            }
        }
        let coarse = least;
        for (index, &gap) in gaps.iter().enumerate() {
            let (before, behind) = (index.saturating_sub(1), (index + 1).min(INTERVALS));
            let reach = 0.5 * moved[index].max(moved[behind]);
            let lowest = gap <= gaps[before] && gap <= gaps[behind] && (self.problem.exact || gap <= coarse);
            if !lowest || gap - reach >= bar {
                continue;
            }
            if gap - reach >= sharp {
                told(&self.problem.stations[index]);
                continue;
            }
            let rounds = if self.problem.exact { 44 } else { 12 };
            let stations = &self.problem.stations;
            let (leaf_rad, refined) =
                golden_section(stations[before].leaf_rad, stations[behind].leaf_rad, rounds, |leaf_rad| {
                    let [bracket, elbow] = self.kernel.joints(cos(leaf_rad), sin(leaf_rad));
                    separation_m(keep_out, elbow, if part == CRANK { self.kernel.shaft() } else { bracket })
                });
            if refined < gap {
                told(&self.problem.station(leaf_rad));
            } else {
                told(&stations[index]);
            }
            least = least.min(refined);
        }
        least
    }
}

#[cfg(test)]
mod tests;
