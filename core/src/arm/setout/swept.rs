//! The arm's way through the swing against the rectangles it has to stay out of.
//!
//! Elbow and bracket are worked out once an arm for all rectangles. Between two stations no point of the crank moves further than the elbow, none
//! of the link further than the elbow or the bracket; so a wide gap at one station vouches for all stations that are nearer by way than
//! what it has to spare, and most of the swing is never looked at. What the gap does between two stations is asked in [`dip`](super::dip).

use super::dip::{PartAt, arc_m, dip};
use super::kernel::{ArmKernel, SearchStation};
use super::part_box::PartBox;
use super::problem::{INTERVALS, Problem};
use crate::numerics::{Sides, separation_m};
use crate::real::{sin_cos, sqrt};

/// Parts of the arm.
pub(super) const CRANK: usize = 0;
pub(super) const LINK: usize = 1;

/// Stations at which the deepest rectangle is looked for, and where every rectangle near an arm has a term.
pub(super) const FEW: [usize; 4] = [0, INTERVALS / 3, 2 * INTERVALS / 3, INTERVALS];

/// Stations that share a box, and how many such boxes there are.
const GROUP: usize = 6;
const GROUPS: usize = (INTERVALS + GROUP) / GROUP;

/// What is this much above the least gap is not level with it, m.
const ABOVE_M: f64 = 1e-12;

/// What is this much beyond a line is beyond it, m.
const BEYOND_M: f64 = 1e-9;

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
        let way = |joints: &[(f64, f64); INTERVALS + 1], index: usize| arc_m(joints[index], joints[index - 1]);
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
            let sides = &keep_out.sides();
            for part in [CRANK, LINK] {
                // What is further from all that the part ever comes to is further from it anywhere.
                if self.around[part].0.box_gap_m(sides) >= least {
                    continue;
                }
                for index in FEW {
                    let gap = self.bars[part][index].parting_m(sides);
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
        let (bars, exact) = (&self.bars[part], self.problem.exact);
        // Stations that are vouched for stay at the most there is.
        let mut gaps = [f64::MAX; INTERVALS + 1];
        let (mut index, mut least) = (0, f64::MAX);
        let mut seen = GROUPS;
        // The stations that were looked at closely lie between these.
        let (mut first, mut last) = (INTERVALS, 0);
        loop {
            // Where only the lowest place counts, whatever is above the lowest so far need not be looked at either.
            let bar = if exact { bar } else { bar.min(least + ABOVE_M) };
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
                (first, last) = (first.min(index), index);
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
        if !exact && coarse - 0.5 * furthest >= bar {
            return least;
        }
        for index in first..=last {
            let (before, behind) = (index.saturating_sub(1), (index + 1).min(INTERVALS));
            let gap = gaps[index];
            let lowest = gap <= gaps[before] && gap <= gaps[behind] && (exact || gap <= coarse);
            if !lowest {
                continue;
            }
            let reach = 0.5 * moved[index].max(moved[behind]);
            if gap - reach >= bar {
                continue;
            }
            if gap - reach >= sharp {
                told(&self.problem.stations[index]);
                continue;
            }
            if part == CRANK && self.stays_at_the_shaft(keep_out, index, gap) {
                told(&self.problem.stations[index]);
                continue;
            }
            let stations = &self.problem.stations;
            let ends = [before, behind].map(|index| self.part_at(part, keep_out, index));
            // Where all is told, how deep it is counts even where that is not below the bar.
            let floor = (sharp >= bar).then_some(bar);
            let rounds = if exact { 44 } else { 12 };
            let Some((leaf_rad, refined)) = dip(ends, rounds, floor, |leaf_rad| {
                let (sine, cosine) = sin_cos(leaf_rad);
                let [bracket, elbow] = self.kernel.joints(cosine, sine);
                let other = if part == CRANK { self.kernel.shaft() } else { bracket };
                PartAt { leaf_rad, gap_m: separation_m(keep_out, elbow, other), elbow, other }
            }) else {
                continue;
            };
            if refined < gap {
                told(&self.problem.station(leaf_rad));
            } else {
                told(&stations[index]);
            }
            least = least.min(refined);
        }
        least
    }

    /// A part at a station.
    fn part_at(&self, part: usize, rectangle: &Sides, index: usize) -> PartAt {
        let (elbow, leaf_rad) = (self.elbows[index], self.problem.stations[index].leaf_rad);
        let other = if part == CRANK { self.kernel.shaft() } else { self.brackets[index] };
        PartAt { leaf_rad, gap_m: separation_m(rectangle, elbow, other), elbow, other }
    }

    /// Whether the gap between crank and rectangle at a station is that of the shaft itself, and stays so to both its neighbours: all that the elbow
    /// comes to lies beyond the line through the shaft square to the way the gap goes, so nothing of the crank is nearer than the shaft.
    fn stays_at_the_shaft(&self, [[x0, x1], [y0, y1]]: &Sides, index: usize, gap: f64) -> bool {
        let (shaft, elbow) = (self.kernel.shaft(), self.elbows[index]);
        let (ox, oy) = (shaft.0 - shaft.0.max(*x0).min(*x1), shaft.1 - shaft.1.max(*y0).min(*y1));
        let beyond = ox * (elbow.0 - shaft.0) + oy * (elbow.1 - shaft.1);
        let moved = self.moved[CRANK][index].max(self.moved[CRANK][(index + 1).min(INTERVALS)]);
        gap > 0.0 && sqrt(ox * ox + oy * oy) == gap && beyond > (moved + BEYOND_M) * gap
    }
}

#[cfg(test)]
mod tests;
