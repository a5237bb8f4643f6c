//! Local search: sequential linear programming in a trust region.
//!
//! The objective is the largest of many smooth terms and the limits are many smooth terms too, so at each step every term is replaced by
//! its tangent, and the linear programme `minimise m + ρ·s` subject to `objective terms ≤ m`, `limit terms ≤ s`, `s ≥ 0` is solved in a
//! box around the point. Optima with as many active terms as variables, the usual case, are reached quadratically; fixed lengths and
//! ranges without width are rows or box sides like any other. Source: Fletcher and Sainz de la Maza (1989), on successive linear programming
//! with an exact penalty, from memory.

use super::at_corners::CornerTerms;
use super::found::{EXCESS_TOLERANCE, Found};
use super::journal;
use super::kernel::{ArmKernel, SearchStation};
use super::limit::Limit;
use super::problem::{INTERVALS, Problem};
use super::swept::{CRANK, FEW, LINK, SweptParts};
use super::terms::{Piece, Term};
use super::variables::{DIMENSIONS, Point};
use crate::job::Aim;
use crate::numerics::{Programme, ROWS, VARIABLES, vertex};

/// First weight of an excess against the objective, and the last.
const WEIGHT: f64 = 5.0;
const MOST_WEIGHT: f64 = 1e5;
/// Gap beyond the wanted one up to which a rectangle is looked at, m.
const NEAR_M: f64 = 0.3;
/// Room to a limit where the tape errs up to which it is looked at, m or rad: a step of a descent seldom uses up more.
const CORNER_NEAR_M: f64 = 0.03;
/// Share of an excess that a step may leave before its weight is looked at.
const STEERED: f64 = 0.5;
/// Steps of the difference quotients; the last one steps out of what counts as straight.
const STEP: Point = [1e-7, 1e-7, 1e-7, 1e-7, 1e-5];

/// Room for a descent, allocated once a search.
pub(crate) struct SlpScratch {
    pub(super) pieces: [Piece; ROWS],
    pub(super) count: usize,
    pub(super) programme: Programme,
    /// The term each row of the programme stands for.
    pub(super) rows: [usize; ROWS],
}

/// Elbow and bracket of an arm at the few stations where every rectangle near it has a term.
struct FewJoints([[(f64, f64); 2]; FEW.len()]);

impl FewJoints {
    fn new(problem: &Problem, kernel: &ArmKernel) -> FewJoints {
        if problem.setout.keep_out.is_empty() {
            return FewJoints([[(0.0, 0.0); 2]; FEW.len()]);
        }
        FewJoints(FEW.map(|index| kernel.joints(problem.stations[index].cosine, problem.stations[index].sine)))
    }

    /// The value of a term, as [`Problem::value`] has it.
    #[inline]
    fn value(&self, problem: &Problem, kernel: &ArmKernel, sense: f64, piece: &Piece) -> f64 {
        if let Term::Clear(rectangle, part) = piece.term
            && piece.corner.is_none()
            && let Some(few) = FEW.iter().position(|&index| problem.stations[index].leaf_rad == piece.station.leaf_rad)
        {
            return problem.wanted_gap_m() - problem.gap_between_m(kernel, rectangle, part, &self.0[few]);
        }
        problem.value(kernel, sense, piece)
    }
}

/// How far a descent goes.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Budget {
    pub steps: usize,
    /// First half-width of the trust box.
    pub trust: f64,
    /// Predicted gain at which it ends.
    pub least_gain: f64,
    /// Whether curvature is looked at.
    pub curved: bool,
    /// Whether it ends where no step within the trust box takes half of the excess away.
    pub hopeful: bool,
}

impl SlpScratch {
    pub fn new() -> SlpScratch {
        let station = SearchStation { leaf_rad: 0.0, cosine: 1.0, sine: 0.0, effort_n_m: 0.0, storm_n_m: 0.0 };
        let piece = Piece::new(Term::Far, station);
        SlpScratch { pieces: [piece; ROWS], count: 0, programme: Programme::new(), rows: [0; ROWS] }
    }

    fn push(&mut self, term: Term, station: &SearchStation) {
        if self.count < ROWS {
            self.pieces[self.count] = Piece::new(term, *station);
            self.count += 1;
        }
    }

    /// The terms that may decide near an arm.
    fn gather(&mut self, problem: &Problem, kernel: &ArmKernel, sense: f64) {
        self.count = 0;
        let open = problem.open();
        if problem.wants(Aim::LeastShaftTravel) {
            self.push(Term::Travel, open);
        }
        if problem.wants(Aim::NearestPlace) {
            self.push(Term::Place, open);
        }
        if let Some(variable) = problem.given_up.and_then(Limit::variable) {
            self.push(Term::Beyond(variable, -1.0), open);
            self.push(Term::Beyond(variable, 1.0), open);
        }
        for sign in [1.0, -1.0] {
            self.push(Term::Square(sign), open);
            self.push(Term::Near(sign), problem.closed());
        }
        self.push(Term::LinkShort, open);
        self.push(Term::LinkLong, open);
        self.push(Term::TravelLimit, open);
        for station in problem.turns(kernel).into_iter().flatten() {
            self.push(Term::Far, &station);
            self.push(Term::Near(1.0), &station);
            self.push(Term::Near(-1.0), &station);
        }
        let swept = SweptParts::new(problem, kernel);
        for rectangle in 0..problem.setout.keep_out.len() {
            for part in [CRANK, LINK] {
                if self.count == ROWS {
                    return;
                }
                let near = problem.wanted_gap_m() + NEAR_M;
                let told = |station: &SearchStation| self.push(Term::Clear(rectangle, part), station);
                if swept.least_gap(rectangle, part, [problem.wanted_gap_m(), near], told) < near {
                    for index in FEW {
                        self.push(Term::Clear(rectangle, part), &problem.stations[index]);
                    }
                }
            }
        }
        // What is far away decides nothing here, and the rows are few.
        problem.stand_terms(kernel, |term, station| {
            let piece = Piece::new(term, *station);
            if problem.value(kernel, sense, &piece) > -NEAR_M {
                self.push(term, station);
            }
        });
        if problem.wants(Aim::LeastShaftTorque) {
            self.local_maxima(problem, kernel, sense, Term::Torque, 0, 4);
        }
        if problem.setout.most_shaft_torque_n_m.is_some() {
            self.local_maxima(problem, kernel, sense, Term::TorqueLimit, 0, 4);
        }
        if problem.wants(Aim::LeastLinkForce) {
            self.local_maxima(problem, kernel, sense, Term::Force, 0, 4);
        }
        self.local_maxima(problem, kernel, sense, Term::Lever, Problem::tenth(), 12);
        self.local_maxima(problem, kernel, sense, Term::Sense, 0, 20);
        self.corners(problem, kernel, &swept, sense);
    }

    /// Terms where the tape errs, each at the corner worst for it.
    fn corners(&mut self, problem: &Problem, kernel: &ArmKernel, swept: &SweptParts, sense: f64) {
        let Some(mut asked) = CornerTerms::new(problem, kernel, sense) else { return };
        self.push(Term::Bent, problem.closed());
        self.push(Term::Stretched, problem.closed());
        let levers = problem.levers(kernel, sense);
        let mut push = |piece: Piece| {
            if self.count < ROWS {
                self.pieces[self.count] = piece;
                self.count += 1;
            }
        };
        asked.arm(&levers, CORNER_NEAR_M, &mut push);
        if !problem.setout.keep_out.is_empty() {
            asked.clear(swept, CORNER_NEAR_M, &mut push);
        }
        if problem.setout.is_around() {
            asked.stand(CORNER_NEAR_M, &mut push);
        }
    }

    /// Every `every`-th station, and every local maximum of a term over the swing at its parabola's vertex.
    fn local_maxima(
        &mut self,
        problem: &Problem,
        kernel: &ArmKernel,
        sense: f64,
        term: Term,
        from: usize,
        every: usize,
    ) {
        let mut values = [0.0; INTERVALS + 1];
        for (value, station) in values.iter_mut().zip(&problem.stations).skip(from) {
            *value = problem.value(kernel, sense, &Piece::new(term, *station));
        }
        for index in from..=INTERVALS {
            let end = index == from || index == INTERVALS;
            if end || index % every == 0 {
                self.push(term, &problem.stations[index]);
            }
            if end {
                continue;
            }
            let Some((shift, _)) = vertex(values[index - 1], values[index], values[index + 1]) else { continue };
            let station = problem.refined(kernel, sense, term, index, shift);
            self.push(term, &station);
        }
    }

    /// Descends from a point.
    pub fn descend(&mut self, problem: &Problem, start: Found, bounds: &[Point; 2], budget: Budget) -> Found {
        journal::descent(&problem.journal, start, || self.descend_now(problem, start, bounds, budget))
    }

    fn descend_now(&mut self, problem: &Problem, start: Found, bounds: &[Point; 2], budget: Budget) -> Found {
        let [least, most] = bounds;
        let (mut here, mut weight, mut trust) = (start, WEIGHT, budget.trust);
        let mut stale = true;
        let mut slopes = [[0.0; VARIABLES]; ROWS];
        let mut values = [0.0; ROWS];
        for _ in 0..budget.steps {
            if stale {
                self.tangents(problem, &here, &mut values, &mut slopes, bounds);
                stale = false;
            }
            let (mut lo, mut hi) = ([0.0; VARIABLES], [0.0; VARIABLES]);
            for i in 0..DIMENSIONS {
                lo[i] = (least[i] - here.point[i]).max(-trust).min(0.0);
                hi[i] = (most[i] - here.point[i]).min(trust).max(0.0);
            }
            hi[DIMENSIONS] = 1e6;
            hi[DIMENSIONS + 1] = 1e3;
            let mut step = self.tangent_step(problem, &values, &slopes, [&lo, &hi], weight);
            // Where torque is dear an excess is cheaper than keeping the limits: it has to cost more before a step towards them pays.
            if step[DIMENSIONS + 1] > STEERED * here.excess.max(EXCESS_TOLERANCE) && weight < MOST_WEIGHT {
                let basis = self.programme.basis();
                let kept = self.tangent_step(problem, &values, &slopes, [&lo, &hi], MOST_WEIGHT);
                if kept[DIMENSIONS + 1] < 0.5 * step[DIMENSIONS + 1] {
                    while kept[DIMENSIONS + 1] < 0.5 * step[DIMENSIONS + 1] && weight < MOST_WEIGHT {
                        weight *= 10.0;
                        step = self.tangent_step(problem, &values, &slopes, [&lo, &hi], weight);
                    }
                } else if budget.hopeful {
                    break;
                } else {
                    self.programme.put_back(&basis);
                }
            }
            let predicted = step[DIMENSIONS] + weight * step[DIMENSIONS + 1];
            let gain = here.merit(weight) - predicted;
            if gain < budget.least_gain {
                // Nothing more to gain at this weight; an excess left may yield to a greater one.
                if here.kept() || weight >= MOST_WEIGHT {
                    break;
                }
                weight *= 10.0;
                continue;
            }
            let mut point = here.point;
            for i in 0..DIMENSIONS {
                point[i] = (point[i] + step[i]).clamp(least[i], most[i]);
            }
            let tried = problem.found(&point, here.elbow, here.sense);
            let active_set = self.active_set(problem, &step, bounds, trust, &slopes);
            let mut there = self.corrected(problem, tried, &active_set, bounds, weight);
            if budget.curved
                && step[DIMENSIONS + 1] < EXCESS_TOLERANCE
                && let Some(levelled) = self.curved(problem, &here, &active_set, &values, bounds, trust)
            {
                let levelled = self.corrected(problem, levelled, &active_set, bounds, weight);
                if levelled.merit(weight) < there.merit(weight) {
                    there = levelled;
                }
            }
            let gained = here.merit(weight) - there.merit(weight);
            if gained > 0.0 {
                stale = true;
                here = there;
            }
            if gained > 0.7 * gain {
                trust = (2.0 * trust).min(0.5);
            } else if gained < 0.25 * gain {
                trust *= 0.35;
            }
            if trust < 1e-9 {
                break;
            }
        }
        here
    }

    /// The step of the linear programme within a box.
    fn tangent_step(
        &mut self,
        problem: &Problem,
        values: &[f64; ROWS],
        slopes: &[[f64; VARIABLES]; ROWS],
        [lo, hi]: [&[f64; VARIABLES]; 2],
        weight: f64,
    ) -> [f64; VARIABLES] {
        self.programme.clear();
        // What a term comes to at most and at least anywhere in the box: one that cannot rise to where another is bound to stay is no row.
        let reach = |slope: &[f64; VARIABLES], up: bool| -> f64 {
            let ends =
                (0..DIMENSIONS).map(|i| if (slope[i] > 0.0) == up { slope[i] * hi[i] } else { slope[i] * lo[i] });
            ends.sum()
        };
        let mut floor = 0.0_f64;
        for index in 0..self.count {
            if problem.is_objective(self.pieces[index].limit()) {
                floor = floor.max(values[index] + reach(&slopes[index], false));
            }
        }
        let mut rows = 0;
        for index in 0..self.count {
            let objective = problem.is_objective(self.pieces[index].limit());
            if values[index] + reach(&slopes[index], true) <= if objective { floor } else { 0.0 } {
                continue;
            }
            let mut row = slopes[index];
            row[if objective { DIMENSIONS } else { DIMENSIONS + 1 }] = -1.0;
            self.programme.add(&row, -values[index]);
            self.rows[rows] = index;
            rows += 1;
        }
        // A trace of cost on every variable keeps the programme's corner unique.
        self.programme.solve(&[1.3e-9, 1.1e-9, 1.7e-9, 1.9e-9, 1.4e-9, 1.0, weight], lo, hi)
    }

    pub(super) fn tangents(
        &mut self,
        problem: &Problem,
        here: &Found,
        values: &mut [f64; ROWS],
        slopes: &mut [[f64; VARIABLES]; ROWS],
        [least, most]: &[Point; 2],
    ) {
        let kernel = problem.kernel(&here.point, here.elbow);
        self.gather(problem, &kernel, here.sense);
        let joints = FewJoints::new(problem, &kernel);
        for (value, piece) in values.iter_mut().zip(&self.pieces[..self.count]) {
            *value = joints.value(problem, &kernel, here.sense, piece);
        }
        for i in 0..DIMENSIONS {
            if most[i] - least[i] < 1e-12 {
                slopes[..self.count].iter_mut().for_each(|slope| slope[i] = 0.0);
                continue;
            }
            let mut point = here.point;
            let step = if point[i] + STEP[i] > most[i] { -STEP[i] } else { STEP[i] };
            point[i] += step;
            let moved = problem.kernel(&point, here.elbow);
            let joints = FewJoints::new(problem, &moved);
            for (index, piece) in self.pieces[..self.count].iter().enumerate() {
                slopes[index][i] = (joints.value(problem, &moved, here.sense, piece) - values[index]) / step;
            }
        }
        for slope in slopes[..self.count].iter_mut() {
            slope[DIMENSIONS] = 0.0;
            slope[DIMENSIONS + 1] = 0.0;
        }
    }
}

#[cfg(test)]
mod tests;
