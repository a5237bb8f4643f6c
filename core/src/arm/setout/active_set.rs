//! What follows the tangent step of a descent: the curved step on the same active terms, the way back to curved limits, and the last excess.

use super::curved::{ActiveTerm, curvature, step as curved_step};
use super::descent::SlpScratch;
use super::found::{EXCESS_TOLERANCE, Found};
use super::journal;
use super::problem::Problem;
use super::variables::{DIMENSIONS, Point};
use crate::numerics::{Active, ROWS, VARIABLES};

/// What holds a step in place: active terms with their multipliers, and variables at their bounds.
pub(super) struct ActiveSet {
    terms: [ActiveTerm; VARIABLES],
    weights: [(usize, f64); VARIABLES],
    count: usize,
    held: [Option<f64>; DIMENSIONS],
}

/// Every direction alike.
pub(super) const EVEN: [[f64; DIMENSIONS]; DIMENSIONS] = {
    let mut even = [[0.0; DIMENSIONS]; DIMENSIONS];
    let mut i = 0;
    while i < DIMENSIONS {
        even[i][i] = 1.0;
        i += 1;
    }
    even
};

impl SlpScratch {
    /// What holds the programme just solved.
    pub(super) fn active_set(
        &self,
        problem: &Problem,
        tangent: &[f64; VARIABLES],
        [least, most]: &[Point; 2],
        trust: f64,
        slopes: &[[f64; VARIABLES]; ROWS],
    ) -> ActiveSet {
        let mut active_set = ActiveSet {
            terms: [ActiveTerm { slope: [0.0; VARIABLES], value: 0.0, objective: false }; VARIABLES],
            weights: [(0, 0.0); VARIABLES],
            count: 0,
            held: [None; DIMENSIONS],
        };
        for active in self.programme.active() {
            match active {
                Active::Row(row, share) if share > 1e-6 => {
                    let row = self.rows[row];
                    let objective = problem.is_objective(self.pieces[row].limit());
                    active_set.terms[active_set.count] = ActiveTerm { slope: slopes[row], value: 0.0, objective };
                    active_set.weights[active_set.count] = (row, share);
                    active_set.count += 1;
                }
                Active::Bound(i) if i < DIMENSIONS && tangent[i].abs() < trust => active_set.held[i] = Some(tangent[i]),
                _ => {}
            }
        }
        for i in 0..DIMENSIONS {
            if most[i] - least[i] < 1e-12 {
                active_set.held[i] = Some(0.0);
            }
        }
        active_set
    }

    /// The curved step from the programme just solved, kept within the bounds and the trust box.
    pub(super) fn curved(
        &self,
        problem: &Problem,
        here: &Found,
        active_set: &ActiveSet,
        values: &[f64; ROWS],
        [least, most]: &[Point; 2],
        trust: f64,
    ) -> Option<Found> {
        let bent = curvature(&here.point, |point| {
            let kernel = problem.kernel(point, here.elbow);
            let weights = active_set.weights[..active_set.count].iter();
            weights.map(|&(row, share)| share * problem.value(&kernel, here.sense, &self.pieces[row])).sum()
        });
        let mut terms = active_set.terms;
        for (term, &(row, _)) in terms[..active_set.count].iter_mut().zip(&active_set.weights) {
            term.value = values[row];
        }
        let step = curved_step(&bent, &active_set.held, &terms[..active_set.count])?;
        let longest = step.iter().fold(0.0, |most: f64, value| most.max(value.abs()));
        let scale = if longest > 4.0 * trust { 4.0 * trust / longest } else { 1.0 };
        let point = core::array::from_fn(|i| (here.point[i] + scale * step[i]).clamp(least[i], most[i]));
        Some(problem.found(&point, here.elbow, here.sense))
    }

    /// A step along curved limits leaves them by its square; the shortest way back to those that hold it, by the same slopes. Without it
    /// the weight of that excess, not the limits, would decide how long a step may be.
    pub(super) fn corrected(
        &self,
        problem: &Problem,
        tried: Found,
        active_set: &ActiveSet,
        [least, most]: &[Point; 2],
        weight: f64,
    ) -> Found {
        let mut best = tried;
        for _ in 0..2 {
            if best.excess < 1e-10 {
                break;
            }
            let kernel = problem.kernel(&best.point, best.elbow);
            let mut terms = active_set.terms;
            let mut count = 0;
            for (term, &(row, _)) in active_set.terms[..active_set.count].iter().zip(&active_set.weights) {
                if !term.objective {
                    let value = problem.value(&kernel, best.sense, &self.pieces[row]);
                    terms[count] = ActiveTerm { value, ..*term };
                    count += 1;
                }
            }
            let held = active_set.held.map(|held| held.map(|_| 0.0));
            let Some(step) = curved_step(&EVEN, &held, &terms[..count]) else { break };
            let point = core::array::from_fn(|i| (best.point[i] + step[i]).clamp(least[i], most[i]));
            let merit = best.merit(weight);
            let there = problem.found_within(&point, best.elbow, best.sense, [weight, merit]);
            if there.merit(weight) >= merit {
                break;
            }
            best = there;
        }
        best
    }

    /// Brings an excess left by the descent to nothing: tangent steps that look at the limits alone, each in a
    /// box no larger than the excess asks for.
    pub fn restore(&mut self, problem: &Problem, start: Found, bounds: &[Point; 2]) -> Found {
        journal::descent(&problem.journal, start, || self.restore_now(problem, start, bounds))
    }

    fn restore_now(&mut self, problem: &Problem, start: Found, bounds: &[Point; 2]) -> Found {
        let [least, most] = bounds;
        let mut here = start;
        let (mut slopes, mut values) = ([[0.0; VARIABLES]; ROWS], [0.0; ROWS]);
        let mut trust = (100.0 * here.excess).clamp(1e-6, 0.05);
        for _ in 0..12 {
            if here.excess <= 0.3 * EXCESS_TOLERANCE {
                break;
            }
            self.tangents(problem, &here, &mut values, &mut slopes, bounds);
            self.programme.clear();
            for index in (0..self.count).filter(|&index| !problem.is_objective(self.pieces[index].limit())) {
                let mut row = slopes[index];
                row[DIMENSIONS + 1] = -1.0;
                self.programme.add(&row, -values[index]);
            }
            let (mut lo, mut hi) = ([0.0; VARIABLES], [0.0; VARIABLES]);
            for i in 0..DIMENSIONS {
                lo[i] = (least[i] - here.point[i]).max(-trust).min(0.0);
                hi[i] = (most[i] - here.point[i]).min(trust).max(0.0);
            }
            hi[DIMENSIONS + 1] = 1e3;
            let step = self.programme.solve(&[1.3e-9, 1.1e-9, 1.7e-9, 1.9e-9, 1.4e-9, 1.0, 1.0], &lo, &hi);
            let point = core::array::from_fn(|i| (here.point[i] + step[i]).clamp(least[i], most[i]));
            let there = problem.found(&point, here.elbow, here.sense);
            if there.excess < here.excess {
                here = there;
            } else {
                trust *= 0.25;
            }
        }
        here
    }
}

#[cfg(test)]
mod tests;
