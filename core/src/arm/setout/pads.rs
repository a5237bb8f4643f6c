//! One place after another: the best bracket and lengths for each shaft of a grid, each started from its neighbours.
//!
//! Every other row and column of every other row and column … is solved first, so a coarse picture stands early; whatever lies between starts
//! from the best of the solved places around it. A place costs a few descent steps in three variables, so the cost grows with the places alone,
//! and, per step, with the stations and rectangles as in [`search`](super::search).
//!
//! Where no neighbour has an arm a place is given up after one look; where the limits' own tangents leave half of an excess, after one step.
//!
//! # What bounds its error
//! A place keeps one arm, and a branch of arms is carried on from place to place only while it is the best of what is around; islands are looked
//! for by a scatter over all places at once and a longer one at the coarse places that have none. So a place may be missed where arms
//! exist that are the best nowhere nearby. `examples/map.rs` measures the error against the search for one place, and a test holds it on five
//! sites. Measured on maps of 10,000 places at 200 of them: the yard, median 0.02 %, nine in ten within 0.3 %, worst 0.5 %; square to the
//! leaf, 0.04 %, 0.1 %, 0.6 %; straight when closed, 0.03 %, 0.8 %, 1.4 %; leaning hinges, 0.2 %, 0.6 %, 1.8 %; none missed. On random
//! fragmented sites whose arms are about to turn back, where torque runs away from place to place, the worst are a few per cent.

use super::descent::{Budget, SlpScratch};
use super::found::Found;
use super::problem::Problem;
use super::variables::Point;
use alloc::vec::Vec;

/// Scattered arms and starts of a place without neighbours.
const SCATTERED: usize = 96;
const STARTS: usize = 2;
/// Steps of a place without neighbours, and of one between solved ones.
const ALONE: Budget = Budget { steps: 14, trust: 0.1, least_gain: 1e-4, curved: false, hopeful: false };
const BETWEEN: Budget = Budget { steps: 3, trust: 0.03, least_gain: 2e-4, curved: false, hopeful: true };
/// Arms scattered over all places at once, how many of them are descended from, and with how many steps: islands that a coarse grid misses.
const SEEDS_SCATTERED: usize = 3000;
const SEEDS: usize = 20;
const SEED: Budget = Budget { steps: 9, trust: 0.1, least_gain: 1e-4, curved: false, hopeful: false };
/// Scattered arms and starts where all else found none.
const LONGER_SCATTERED: usize = 400;
const LONGER_STARTS: usize = 4;
/// Steps from a neighbour whose arm is another one altogether.
const BESIDE: Budget = Budget { steps: 6, trust: 0.05, least_gain: 2e-4, curved: false, hopeful: true };
/// Excess a place may have, in metres, radians or plain: a tenth of a millimetre is less than a pencil line.
pub(crate) const PLACE_TOLERANCE: f64 = 1e-4;
/// Torque a mean arm may ask above the mean of its neighbours' torques, as a fraction, before it is descended from.
const MEAN_TORQUE_TOLERANCE: f64 = 3e-4;
/// Excess per distance that no place nearby makes up for; limits change about as fast as the shaft moves.
const STEEPEST_EXCESS_PER_M: f64 = 3.0;

impl Problem<'_> {
    fn bounds_at(&self, x_m: f64, y_m: f64) -> [Point; 2] {
        let [mut least, mut most] = self.bounds();
        (least[0], least[1], most[0], most[1]) = (x_m, y_m, x_m, y_m);
        [least, most]
    }

    /// The best found at a place that has no solved neighbours.
    pub fn best_alone(&self, scratch: &mut SlpScratch, x_m: f64, y_m: f64) -> Option<Found> {
        let bounds = self.bounds_at(x_m, y_m);
        let starts = self.scan_in(&bounds, SCATTERED, STARTS);
        starts.into_iter().map(|start| scratch.descend(self, start, &bounds, ALONE)).fold(None, better)
    }

    /// The best found at a place between solved ones, `pairs` of them on opposite sides, as far away as `apart_m`.
    ///
    /// The mean of two arms of one branch that both keep the limits errs by the square of their distance; where it keeps the limits too and asks
    /// no more than their mean torque it is taken as it stands. Anywhere else the best of what is around is descended from.
    pub fn best_between(
        &self,
        scratch: &mut SlpScratch,
        (x_m, y_m): (f64, f64),
        pairs: &[[Option<Found>; 2]],
        apart_m: f64,
        coarse: bool,
    ) -> Option<Found> {
        let at = |from: &Found, point: Point| {
            let [_, _, u, crank, z] = point;
            self.found(&[x_m, y_m, u, crank, z], from.elbow, from.sense)
        };
        let mut means: Option<Found> = None;
        for pair in pairs {
            let [Some(one), Some(other)] = pair else { continue };
            let alike = one.elbow == other.elbow && one.sense == other.sense;
            if !alike || one.excess > PLACE_TOLERANCE || other.excess > PLACE_TOLERANCE {
                continue;
            }
            let mean = at(one, core::array::from_fn(|i| 0.5 * (one.point[i] + other.point[i])));
            let level = 0.5 * (one.objective + other.objective) * (1.0 + MEAN_TORQUE_TOLERANCE);
            if mean.excess <= PLACE_TOLERANCE && mean.objective <= level {
                return Some(mean);
            }
            if means.is_none_or(|best| mean.merit(1.0) < best.merit(1.0)) {
                means = Some(mean);
            }
        }
        let around = || pairs.iter().flatten().flatten();
        let nearest = around().map(|found| found.excess).fold(f64::MAX, f64::min);
        let moved = around().map(|found| at(found, found.point));
        let start =
            moved.chain(means).reduce(|one, other| if other.merit(1.0) < one.merit(1.0) { other } else { one })?;
        // Between two places without an arm there is seldom one; what there is, the places that have one reach from their side.
        if nearest > PLACE_TOLERANCE && (nearest > STEEPEST_EXCESS_PER_M * apart_m || !coarse) {
            return Some(start);
        }
        Some(scratch.descend(self, start, &self.bounds_at(x_m, y_m), BETWEEN))
    }

    /// The best found at a place where all else found none: more is scattered, and more of it descended from.
    pub fn best_alone_longer(&self, scratch: &mut SlpScratch, x_m: f64, y_m: f64) -> Option<Found> {
        let bounds = self.bounds_at(x_m, y_m);
        let starts = self.scan_in(&bounds, LONGER_SCATTERED, LONGER_STARTS);
        starts.into_iter().map(|start| scratch.descend(self, start, &bounds, ALONE)).fold(None, better)
    }

    /// The arm that comes nearest at a place where the map found none.
    pub fn nearest_alone(&self, (x_m, y_m): (f64, f64), known: Found) -> Found {
        let mut scratch = SlpScratch::new();
        let further = scratch.descend(self, known, &self.bounds_at(x_m, y_m), ALONE);
        let found = better(self.best_alone_longer(&mut scratch, x_m, y_m), further);
        better(found, known).unwrap_or(known)
    }

    /// Arms anywhere, each a local optimum of the whole search or on its way to one.
    pub fn seeds(&self, scratch: &mut SlpScratch) -> Vec<Found> {
        let bounds = self.bounds();
        let starts = self.scan(SEEDS_SCATTERED, SEEDS);
        starts.into_iter().map(|start| scratch.descend(self, start, &bounds, SEED)).collect()
    }

    /// A seed brought to a place.
    pub fn seeded_at(&self, scratch: &mut SlpScratch, (x_m, y_m): (f64, f64), seed: &Found) -> Found {
        let [_, _, u, crank, z] = seed.point;
        let start = self.found(&[x_m, y_m, u, crank, z], seed.elbow, seed.sense);
        scratch.descend(self, start, &self.bounds_at(x_m, y_m), ALONE)
    }

    /// A place beside ones that have better arms: descended from the one that promises most here.
    pub fn best_beside(
        &self,
        scratch: &mut SlpScratch,
        (x_m, y_m): (f64, f64),
        neighbours: impl Iterator<Item = Found>,
    ) -> Option<Found> {
        let moved = neighbours.map(|neighbour| {
            let [_, _, u, crank, z] = neighbour.point;
            self.found(&[x_m, y_m, u, crank, z], neighbour.elbow, neighbour.sense)
        });
        let start = moved.reduce(|one, other| if other.merit(1.0) < one.merit(1.0) { other } else { one })?;
        Some(scratch.descend(self, start, &self.bounds_at(x_m, y_m), BESIDE))
    }
}

fn better(best: Option<Found>, found: Found) -> Option<Found> {
    match best {
        Some(best) if best.beats(&found) => Some(best),
        _ => Some(found),
    }
}

#[cfg(test)]
mod tests;
