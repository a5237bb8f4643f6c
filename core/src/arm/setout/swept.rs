//! The arm's way through the swing against the rectangles it has to stay out of.
//!
//! Elbow and bracket are worked out once an arm for all rectangles. Between two stations no point of the crank moves further than the elbow, none
//! of the link further than the elbow or the bracket; so a wide gap at one station vouches for all stations that are nearer by way than
//! what it has to spare, and most of the swing is never looked at.

use super::kernel::{ArmKernel, SearchStation};
use super::problem::{INTERVALS, Problem};
use crate::numerics::{golden_section, parting_m, separation_m};
use crate::real::{cos, sin, sqrt};

/// Parts of the arm.
pub(super) const CRANK: usize = 0;
pub(super) const LINK: usize = 1;

/// An arc over its chord, for a crank that turns less than 50° from station to station.
const ARC: f64 = 1.04;

/// Where the joints are at every station.
pub(super) struct SweptParts<'a, 'b> {
    problem: &'a Problem<'b>,
    kernel: &'a ArmKernel,
    brackets: [(f64, f64); INTERVALS + 1],
    elbows: [(f64, f64); INTERVALS + 1],
    /// Most a point of crank, link moves on the way to a station from the one before, m.
    moved: [[f64; INTERVALS + 1]; 2],
}

impl<'a, 'b> SweptParts<'a, 'b> {
    pub fn new(problem: &'a Problem<'b>, kernel: &'a ArmKernel) -> SweptParts<'a, 'b> {
        let none = [(0.0, 0.0); INTERVALS + 1];
        let moved = [[0.0; INTERVALS + 1]; 2];
        let mut swept = SweptParts { problem, kernel, brackets: none, elbows: none, moved };
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
        swept
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
        // Stations that are vouched for stay at the most there is.
        let mut gaps = [f64::MAX; INTERVALS + 1];
        let (mut index, mut least) = (0, f64::MAX);
        loop {
            let other = if part == CRANK { self.kernel.shaft() } else { self.brackets[index] };
            let elbow = self.elbows[index];
            let next = (index + 1).min(INTERVALS);
            let mut gap = parting_m(keep_out, elbow, other);
            if gap - bar <= moved[index].max(moved[next]) {
                // Where they overlap that is the separation already.
                if gap > 0.0 {
                    gap = separation_m(keep_out, elbow, other);
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
