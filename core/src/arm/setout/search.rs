//! The whole search: scatter, descend from the most promising starts, keep the best.
//!
//! # Cost
//! A scattered set-out costs the leaf angles of [`INTERVALS`](super::problem::INTERVALS) times one evaluation of the inner loop; a step of a descent
//! costs one small linear programme and the active terms in six points. Both grow with the stations and, per rectangle, with four
//! segments' worth of stations; of the scattered arms only those are looked at among the rectangles whose rank without them asks for it.
//!
//! # What it promises
//! The answer keeps every limit over the continuous swing within [`EXCESS_TOLERANCE`](super::descent::EXCESS_TOLERANCE). That it is the global optimum is not proven: it
//! is compared with differential evolution in the tests.

use super::descent::{Budget, SlpScratch};
use super::found::Found;
use super::limit::Limit;
use super::problem::{Margin, Problem};
use crate::job::Aim;
use crate::order::insertion_sort;
use alloc::vec::Vec;

/// Scattered set-outs, and how many of them are descended from.
const SCATTERED: usize = 4000;
const STARTS: usize = 8;
/// The same where these find nothing: more of both before it is said that there is none.
const MANY_SCATTERED: usize = 16_000;
const MANY_STARTS: usize = 40;
/// The same where a limit is given up: a dozen such searches say what is in the way.
const FEW_SCATTERED: usize = 1200;
const FEW_STARTS: usize = 4;

/// The same where the optima of the search without the proof are starts as well.
const PROVEN_SCATTERED: usize = 600;
const PROVEN_STARTS: usize = 2;
const PROVEN_MORE: usize = 4;
const PROVEN_FURTHER_COUNT: usize = 4;
const PROVEN_FINE_COUNT: usize = 2;

/// All starts go a few steps, the best of what they reach some more, the best of that to the end.
const ROUGH: Budget = Budget { steps: 9, trust: 0.1, least_gain: 1e-4, curved: false, hopeful: false };
const FURTHER: Budget = Budget { steps: 16, trust: 0.05, least_gain: 1e-5, curved: true, hopeful: false };
const FURTHER_COUNT: usize = 7;
/// Least excess, in metres, radians or plain, from which on the limits are not missed by a margin: after the first few steps so many of the nearest
/// go on; after some more the nearest alone are told to the last digit, and none where a limit is given up to see what that would do.
const HOPELESS: f64 = 0.01;
const FURTHER_UNKEPT: usize = 24;
const FINE_COUNT: usize = 3;
const FINE: Budget = Budget { steps: 60, trust: 0.02, least_gain: 1e-8, curved: true, hopeful: false };

impl Problem<'_> {
    /// Local optima, the best first; kept ones before those that leave an excess. Never empty.
    ///
    /// Where ranges are too thin to stay inside by a margin, they are kept to the last digit instead.
    pub fn optima(&mut self) -> Vec<Found> {
        self.margin = Margin::USUAL;
        // Travel and force have narrower valleys than torque, and a limit beside the aim cuts them up: more is scattered there.
        let plain = self.setout.aim() == Aim::LeastShaftTorque && self.setout.most_shaft_torque_n_m.is_none();
        let (scattered, starts) = if plain { (SCATTERED, STARTS) } else { (MANY_SCATTERED, MANY_STARTS) };
        let found = self.descend_from(scattered, starts, &[]);
        if found.first().is_some_and(Found::kept) {
            return found;
        }
        // Where as much was scattered already and nothing comes near, no margin will do.
        if !plain && found.first().is_some_and(|found| found.excess > HOPELESS) {
            return found;
        }
        self.margin = Margin::NONE;
        self.descend_from(MANY_SCATTERED, MANY_STARTS, &[])
    }

    fn descend_from(&mut self, scattered: usize, starts: usize, more: &[Found]) -> Vec<Found> {
        let bounds = self.bounds();
        let mut scratch = SlpScratch::new();
        let mut starts = self.scan(scattered, starts);
        starts.extend_from_slice(more);
        let mut found: Vec<Found> =
            starts.into_iter().map(|start| scratch.descend(self, start, &bounds, ROUGH)).collect();
        insertion_sort(&mut found, Found::beats);
        // Where nothing keeps the limits yet, all go on: whichever does is worth more than the best of those that do not.
        let hopeless = |found: &[Found]| found.first().is_some_and(|found| found.excess > HOPELESS);
        if hopeless(&found) {
            found.truncate(FURTHER_UNKEPT);
        }
        let further = if self.proof.is_some() { PROVEN_FURTHER_COUNT } else { FURTHER_COUNT };
        let further = if found.first().is_some_and(Found::kept) { further } else { found.len() };
        for better in found.iter_mut().take(further) {
            *better = scratch.descend(self, *better, &bounds, FURTHER);
        }
        insertion_sort(&mut found, Found::beats);
        if hopeless(&found) {
            found.truncate(FINE_COUNT);
            if self.gives_up() {
                return found;
            }
        }
        self.exact = true;
        let fine = if self.proof.is_some() { PROVEN_FINE_COUNT } else { FINE_COUNT };
        for (rank, best) in found.iter_mut().enumerate() {
            // What was good enough to look around is evaluated again to the last digit, and brought inside the limits where it is not.
            let mut evaluated = self.found(&best.point, best.elbow, best.sense);
            if rank < fine {
                evaluated = scratch.descend(self, evaluated, &bounds, FINE);
            }
            let restored = scratch.restore(self, evaluated, &bounds);
            *best = if rank < fine { self.proven(&mut scratch, restored, &bounds) } else { restored };
        }
        if self.proof.is_some() && !self.gives_up() {
            // What was not checked is no answer.
            found.truncate(fine);
        }
        insertion_sort(&mut found, Found::beats);
        self.exact = false;
        found
    }

    /// Local optima that every tape error within the proof's leaves working, the best first; `planned` are those of the search without it, as
    /// [`optima`](Problem::optima) has them, and where it has none there is none here. Never empty.
    pub fn proven_optima(&mut self, planned: &[Found]) -> Vec<Found> {
        self.proof = None;
        let arms: Vec<_> = planned.iter().map(|found| (self.arm(&found.point, found.elbow), found.sense)).collect();
        self.prove();
        self.margin = Margin::USUAL;
        let starts = |problem: &Problem| -> Vec<Found> {
            arms.iter()
                .take(PROVEN_MORE)
                .map(|(arm, sense)| problem.found(&problem.shifted(arm), arm.elbow, *sense))
                .collect()
        };
        let plain = self.setout.aim() == Aim::LeastShaftTorque && self.setout.most_shaft_torque_n_m.is_none();
        let (scattered, count) = if plain { (PROVEN_SCATTERED, PROVEN_STARTS) } else { (SCATTERED, STARTS) };
        let more = starts(self);
        let found = self.descend_from(scattered, count, &more);
        if found.first().is_some_and(Found::kept) {
            return found;
        }
        self.margin = Margin::NONE;
        let again = self.descend_from(MANY_SCATTERED, MANY_STARTS, &more);
        if again.first().is_some_and(Found::kept) { again } else { found }
    }

    /// Local optima about arms that are known already, a little looked around beside.
    pub fn optima_beside(&mut self, known: &[Found]) -> Vec<Found> {
        self.descend_from(FEW_SCATTERED, FEW_STARTS, known)
    }

    /// The arm that keeps all that binds the planned one and breaks least at the corners; `None` where no arm that keeps it was found.
    pub fn least_broken(&mut self, planned: &[Found]) -> Option<Found> {
        self.corners_given_up = true;
        self.margin = Margin::NONE;
        let kept = planned.iter().filter(|found| found.kept());
        let starts: Vec<Found> = kept.map(|found| self.found(&found.point, found.elbow, found.sense)).collect();
        let found = self.descend_from(FEW_SCATTERED, FEW_STARTS, &starts);
        self.corners_given_up = false;
        found.into_iter().find(Found::kept)
    }

    /// The set-out with the least excess if one limit were given up, where all others can be kept; its objective is that limit's excess.
    pub fn without(&mut self, limit: Limit) -> Option<Found> {
        self.given_up = Some(limit);
        let found = self.descend_from(FEW_SCATTERED, FEW_STARTS, &[]);
        self.given_up = None;
        found.into_iter().find(Found::kept)
    }
}
