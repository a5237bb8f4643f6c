//! The map: for a grid of shaft positions the best bracket and lengths at each, coarse first, a little at a time.

use super::setout::{Change, JobLoads};
use crate::arm::setout::{Found, Limit, PLACE_TOLERANCE, Problem, SlpScratch};
use crate::fault::{Invalid, missing_object};
use crate::job::{Arm, Job, SetOutSite, ToChecked};
use alloc::vec::Vec;
use serde::Serialize;

/// Places apart in the first pass of a large map; a power of two. A small one begins closer, so that there are some [`COARSE`] each way.
const FIRST: usize = 16;
const COARSE: usize = 6;

/// Sweeps over the finished map.
const SWEEPS: usize = 4;

/// Rounding of a multiple of a step, m.
const ON_STEP_M: f64 = 1e-9;

/// Columns and rows to a place's neighbours; the opposite of each is two further on.
const BESIDE: [(isize, isize); 4] = [(-1, 0), (0, -1), (1, 0), (0, 1)];

/// Torque of a neighbour over a place's own below which the place is on a worse branch.
const JUMP: f64 = 0.98;

/// A map being made. [`PadMap::step`] does a number of places and returns, so that a worker can be cancelled, show how far it is, and draw
/// what stands already; dropping it is cancelling it.
#[derive(Clone, Debug)]
pub struct PadMap {
    job: Job,
    setout: SetOutSite,
    columns: usize,
    rows: usize,
    places: Vec<Option<Found>>,
    /// From which of its neighbours a place was tried in vain, a bit for each of [`BESIDE`].
    tried: Vec<u8>,
    /// Places apart in the first pass.
    first: usize,
    /// Distance of the places of the pass, and the next place of it.
    apart: usize,
    next: usize,
    done: usize,
    /// Sweeps over the finished map that are left: forth and back.
    sweeps: usize,
}

/// What the map says of a place.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Pad {
    /// The best arm found with the shaft here, or the one that comes nearest.
    pub arm: Arm,
    /// Its peak shaft torque, N·m, within the map's stated error; `null` where no arm keeps the limits.
    pub shaft_torque_n_m: Option<f64>,
    /// Rated torque over it.
    pub reserve: Option<f64>,
    /// The limit that rules the place out, and by how much; `null` where none does.
    pub ruled_out: Option<Change>,
}

impl PadMap {
    /// A map over the shaft ranges of the job's `setout` block: `columns` along the leaf, `rows` across it, ends included; the aim is the
    /// least shaft torque, whatever the block's own, and its step is looked at by [`PadMap::pad`] alone.
    ///
    /// # Errors
    /// [`Invalid`] with every fault of the values, or naming the missing block.
    pub fn new(job: &impl ToChecked, columns: usize, rows: usize) -> Result<PadMap, Invalid> {
        let checked = job.checked()?;
        let job: &Job = &checked;
        let missing = || Invalid { errors: alloc::vec![missing_object("setout")] };
        let mut setout = job.setout_around().ok_or_else(missing)?;
        setout.setout.aim = None;
        let (columns, rows) = (columns.max(1), rows.max(1));
        let places = alloc::vec![None; columns * rows];
        let tried = alloc::vec![0; columns * rows];
        let mut first = FIRST;
        while first > 1 && columns.min(rows) < COARSE * first {
            first /= 2;
        }
        Ok(PadMap {
            job: job.clone(),
            setout,
            columns,
            rows,
            places,
            tried,
            first,
            apart: first,
            next: 0,
            done: 0,
            sweeps: SWEEPS,
        })
    }

    /// Places done, and places in all.
    #[must_use]
    pub fn progress(&self) -> (usize, usize) {
        (self.done, self.places.len())
    }

    /// Where the shaft stands at a column and row, m.
    #[must_use]
    pub fn place_m(&self, column: usize, row: usize) -> (f64, f64) {
        let along = |[least, most]: [f64; 2], index: usize, count: usize| {
            if count < 2 { 0.5 * (least + most) } else { least + (most - least) * index as f64 / (count - 1) as f64 }
        };
        (along(self.setout.shaft_x_m, column, self.columns), along(self.setout.shaft_y_m, row, self.rows))
    }

    /// Does up to `places` more; `true` while there are any left.
    pub fn step(&mut self, places: usize) -> bool {
        let setout = self.setout.clone();
        JobLoads::new(&self.job).with_problem(&setout, |problem| {
            problem.prove();
            let mut scratch = SlpScratch::new();
            let mut left = places;
            while left > 0 && self.apart > 0 {
                if self.next >= self.places.len() {
                    (self.apart, self.next) = (self.apart / 2, 0);
                    continue;
                }
                let (column, row) = (self.next % self.columns, self.next / self.columns);
                let on = column % self.apart == 0 && row % self.apart == 0;
                if on && self.places[self.next].is_none() {
                    let place = self.place_m(column, row);
                    self.places[self.next] = self.solve(problem, &mut scratch, column, row, place);
                    self.done += 1;
                    left -= 1;
                }
                self.next += 1;
            }
            if self.apart == 0 && self.sweeps == SWEEPS && self.next == 0 {
                self.plant(problem, &mut scratch);
            }
            while left > 0 && self.apart == 0 && self.sweeps > 0 {
                if self.next >= self.places.len() {
                    (self.sweeps, self.next) = (self.sweeps - 1, 0);
                    continue;
                }
                left -= usize::from(self.spread(problem, &mut scratch));
                self.next += 1;
            }
        });
        self.apart > 0 || self.sweeps > 0
    }

    /// Brings arms found anywhere to the places nearest to them, where those have none or worse: islands that the passes missed.
    fn plant(&mut self, problem: &Problem, scratch: &mut SlpScratch) {
        if self.places.iter().all(|place| place.is_some_and(|found| found.excess <= PLACE_TOLERANCE)) {
            return;
        }
        let nearest = |value: f64, [least, most]: [f64; 2], count: usize| {
            let share = if most > least { (value - least) / (most - least) } else { 0.0 };
            (libm::round(share * (count - 1) as f64).max(0.0) as usize).min(count - 1)
        };
        for seed in problem.seeds(scratch) {
            let column = nearest(seed.point[0], self.setout.shaft_x_m, self.columns);
            let row = nearest(seed.point[1], self.setout.shaft_y_m, self.rows);
            let found = problem.seeded_at(scratch, self.place_m(column, row), &seed);
            self.improve(row * self.columns + column, found);
        }
        for index in 0..self.places.len() {
            let (column, row) = (index % self.columns, index / self.columns);
            let coarse = column % self.first == 0 && row % self.first == 0;
            if coarse && self.places[index].is_none_or(|found| found.excess > PLACE_TOLERANCE) {
                let (x_m, y_m) = self.place_m(column, row);
                if let Some(found) = problem.best_alone_longer(scratch, x_m, y_m) {
                    self.improve(index, found);
                }
            }
        }
    }

    /// Takes what was found for a place, if it is better than what it has.
    fn improve(&mut self, index: usize, found: Found) {
        // Within a pencil line is kept, here as everywhere on the map.
        let level = |found: &Found| if found.excess <= PLACE_TOLERANCE { -1.0 } else { found.excess };
        let better = |place: &Found| (level(&found), found.objective) < (level(place), place.objective);
        if self.places[index].as_ref().is_none_or(better) {
            self.places[index] = Some(found);
            for (way, step) in BESIDE.into_iter().enumerate() {
                if let Some(neighbour) = self.beside(index, step) {
                    self.tried[neighbour] &= !(1 << ((way + 2) % 4));
                }
            }
        }
    }

    /// Tries the next place of a sweep from its neighbours, if it has no arm itself or one that is worse than theirs by more than a step
    /// between places explains: there it is on another branch. Whether that cost anything. A sweep forth carries arms along columns and
    /// rows, one back against them.
    fn spread(&mut self, problem: &Problem, scratch: &mut SlpScratch) -> bool {
        let forth = self.sweeps.is_multiple_of(2);
        let index = if forth { self.next } else { self.places.len() - 1 - self.next };
        let kept = |place: &Option<Found>| place.filter(|found| found.excess <= PLACE_TOLERANCE);
        let most = kept(&self.places[index]).map_or(f64::INFINITY, |found| found.objective * JUMP);
        let mut neighbours = [None; BESIDE.len()];
        for (way, step) in BESIDE.into_iter().enumerate() {
            let new = self.tried[index] & (1 << way) == 0;
            let neighbour =
                self.beside(index, step).filter(|_| new).and_then(|neighbour| kept(&self.places[neighbour]));
            neighbours[way] = neighbour.filter(|found| found.objective < most);
            if neighbours[way].is_some() {
                self.tried[index] |= 1 << way;
            }
        }
        let (column, row) = (index % self.columns, index / self.columns);
        let place = self.place_m(column, row);
        let Some(found) = problem.best_beside(scratch, place, neighbours.into_iter().flatten()) else { return false };
        self.improve(index, found);
        true
    }

    /// The place a step beside another.
    fn beside(&self, index: usize, (across, along): (isize, isize)) -> Option<usize> {
        let column = (index % self.columns).checked_add_signed(across).filter(|&column| column < self.columns)?;
        let row = (index / self.columns).checked_add_signed(along).filter(|&row| row < self.rows)?;
        Some(row * self.columns + column)
    }

    fn solve(
        &self,
        problem: &Problem,
        scratch: &mut SlpScratch,
        column: usize,
        row: usize,
        place: (f64, f64),
    ) -> Option<Found> {
        if self.apart == self.first {
            return problem.best_alone(scratch, place.0, place.1);
        }
        let apart = self.apart as isize;
        let neighbour = |across: isize, along: isize| {
            let column = column.checked_add_signed(across * apart).filter(|&column| column < self.columns)?;
            let row = row.checked_add_signed(along * apart).filter(|&row| row < self.rows)?;
            self.places[row * self.columns + column]
        };
        let opposite = [(1, 0), (0, 1), (1, 1), (1, -1)];
        let pairs = opposite.map(|(across, along)| [neighbour(across, along), neighbour(-across, -along)]);
        let (next, beside) = (self.place_m(column + 1, row).0 - place.0, self.place_m(column, row + 1).1 - place.1);
        problem.best_between(scratch, place, &pairs, next.abs().max(beside.abs()) * self.apart as f64, self.apart > 2)
    }

    fn with_problem<T>(&self, then: impl FnOnce(&mut Problem) -> T) -> T {
        JobLoads::new(&self.job).with_problem(&self.setout, |problem| {
            problem.prove();
            then(problem)
        })
    }

    /// The best arm that a tape can set and that its errors leave working, with the shaft at the place, or at the one next to it on the tape's step;
    /// a search for that shaft, begun at what the map has there.
    fn set_at(&self, (x_m, y_m): (f64, f64), known: &Found) -> Pad {
        let mut site = self.setout.clone();
        let on_step = |value: f64, [least, most]: [f64; 2]| match site.step_m {
            Some(step_m) => {
                let nearest = step_m * libm::round(value / step_m);
                // Beyond the range by rounding alone is the last multiple within it.
                if nearest > most + ON_STEP_M {
                    nearest - step_m
                } else if nearest < least - ON_STEP_M {
                    nearest + step_m
                } else {
                    nearest
                }
            }
            None => value,
        };
        let (x_m, y_m) = (on_step(x_m, site.shaft_x_m), on_step(y_m, site.shaft_y_m));
        let (step_m, block) = (site.step_m, &mut site.setout);
        (block.shaft_x_m, block.shaft_y_m) = ([x_m; 2], [y_m; 2]);
        JobLoads::new(&self.job).with_problem(&site, |problem| {
            problem.prove();
            let [_, _, u, crank, z] = known.point;
            let known = problem.found(&[x_m, y_m, u, crank, z], known.elbow, known.sense);
            let optima = problem.optima_beside(&[known]);
            let kept = optima[0].kept();
            let arm = match step_m {
                Some(step_m) => problem.best_on_lattice(step_m, &optima).map(|found| found.arm),
                None => kept.then(|| problem.arm(&optima[0].point, optima[0].elbow)),
            };
            let Some(arm) = arm else {
                let off_step = step_m.filter(|_| kept).map(|by| Change { limit: Limit::StepM, by });
                return Pad {
                    ruled_out: off_step.or_else(|| self.ruled_out(problem, &optima[0])),
                    ..self.pad_of(problem.arm(&optima[0].point, optima[0].elbow), None)
                };
            };
            self.pad_of(arm, Some(problem.peak_torque_n_m(&arm)))
        })
    }

    fn pad_of(&self, arm: Arm, torque_n_m: Option<f64>) -> Pad {
        let reserve = torque_n_m.map(|torque| self.job.operator.rated_torque_n_m / torque);
        Pad { arm, shaft_torque_n_m: torque_n_m, reserve, ruled_out: None }
    }

    fn ruled_out(&self, problem: &Problem, found: &Found) -> Option<Change> {
        let (limit, by) = problem.most_exceeded(found)?;
        Some(Change { limit, by: limit.in_document(by, problem) })
    }

    /// What the map says of a place; `None` where it has not been yet. With a step of the tape, or where its errors have to leave an arm that works, the place
    /// is searched for the arm that is then set there, its shaft on the step. Where the map has no arm the place is searched again, longer than a map of
    /// thousands can afford, so that what is in the way and by how much is that of the arm that comes nearest.
    #[must_use]
    pub fn pad(&self, column: usize, row: usize) -> Option<Pad> {
        let found = (*self.places.get(row * self.columns + column)?)?;
        let place = self.place_m(column, row);
        if self.setout.step_m.is_some() || self.setout.errors_m.is_some() {
            return Some(self.set_at(place, &found));
        }
        self.with_problem(|problem| {
            let found = if found.excess > PLACE_TOLERANCE { problem.nearest_alone(place, found) } else { found };
            Some(self.said(problem, &found))
        })
    }

    /// What it says of every place, row by row: as [`PadMap::pad`], with the loads made ready once for all.
    #[must_use]
    pub fn pads(&self) -> Vec<Option<Pad>> {
        self.with_problem(|problem| self.places.iter().map(|place| Some(self.said(problem, place.as_ref()?))).collect())
    }

    fn said(&self, problem: &Problem, found: &Found) -> Pad {
        let kept = found.excess <= PLACE_TOLERANCE;
        let torque = kept.then_some(found.objective * problem.torque_scale_n_m);
        let ruled_out = if kept { None } else { self.ruled_out(problem, found) };
        Pad { ruled_out, ..self.pad_of(problem.arm(&found.point, found.elbow), torque) }
    }

    /// Shaft torque of every place, N·m, row by row; `None` where no arm keeps the limits or the map has not been yet.
    #[must_use]
    pub fn torques_n_m(&self) -> Vec<Option<f64>> {
        let scale = self.with_problem(|problem| problem.torque_scale_n_m);
        let torque = |found: &Found| (found.excess <= PLACE_TOLERANCE).then_some(found.objective * scale);
        self.places.iter().map(|place| place.as_ref().and_then(torque)).collect()
    }
}

#[cfg(test)]
mod tests;
