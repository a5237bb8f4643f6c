//! Set-outs a tape can set: shaft offsets, bracket and lengths whole multiples of a step, chosen on that lattice and not rounded to it.
//!
//! For shaft and bracket on the lattice, straightness and the angle to the open leaf leave few pairs of lengths: `a + b` lies between
//! `d/most` and `d/least`, and for each sum the link lies between the lengths that put it at either end of the allowed angle. So a shaft and
//! bracket cost a few dozen pairs, and nearly all of these are dismissed at one leaf angle, where the best so far is already beaten.
//! A lattice with few shafts and brackets is walked whole; a finer one in boxes around the continuous optima, which move with what they find
//! until nothing better is near; where no arm at all keeps the limits, none on the lattice does. All of it together ends after a bounded amount of work, with the best found by then; a walk that was cut short
//! may have missed a better arm, and whoever has such a lattice does well to narrow its ranges.

use super::found::{EXCESS_TOLERANCE, Found};
use super::journal;
use super::kernel::{ArmKernel, STRAIGHT_M2};
use super::on_lattice::OnLattice;
use super::problem::{INTERVALS, Margin, Problem};
use super::terms::{Piece, Term};
use crate::job::{Aim, Arm};
use crate::real::{cos, sqrt};
use alloc::vec::Vec;

/// Shafts and brackets up to which the whole lattice is walked at once, and up to which it is walked where nothing was found otherwise.
const WHOLE: i64 = 40_000;
const EXHAUSTIVE: i64 = 4_000_000;
/// Half-widths of the boxes that move, in steps; continuous optima half of it apart share one.
const REACHES: [i64; 4] = [1, 3, 7, 12];
/// How many of them are small.
const SMALL: usize = 2;
/// Stations an arm is asked at first; the extremes of torque and lever are seldom far from one of them.
const FIRST_ASKED: [usize; 6] = [Problem::tenth(), 12, 20, 28, 36, INTERVALS];
/// Work after which a walk ends with the best it has: an arm asked at its first stations is one, an arm evaluated over the swing [`EVALUATION_WORK`].
/// About a fifth of a second natively; only a fine step under loose limits comes near it.
const MOST_WORK: u64 = 4_000_000;
const EVALUATION_WORK: u64 = 60;
/// The same of an arm evaluated among the rectangles, for each of them.
const RECTANGLE: u64 = 10;
/// Terms learnt from an arm that breaks something at the corners of the tape's errors, and from how many on nothing is learnt any more: every arm
/// is asked about all of them.
const LEARNT: usize = 6;
const MOST_LEARNT: usize = 48;
/// Work of an arm checked at all corners of the tape's errors.
const PROOF_WORK: u64 = 4000;
/// Excess of the nearest of the continuum's arms from which on the lattice is left alone: its arms are some of the continuum's, and where so many
/// scattered and descended from come no nearer than a millimetre, there is none to be found between them.
const HOPELESS: f64 = 1e-3;
/// Excess between the stations that a parabola may still miss.
const ROUGH: f64 = 1e-4;
/// Rounding of a sum of steps, m.
const ROUNDING_M: f64 = 1e-11;

/// Ranges in steps.
struct Lattice {
    step_m: f64,
    /// Shaft x, shaft y, bracket u, crank, link: first and last multiple.
    ranges: [[i64; 2]; 5],
    /// Sine and cosine of the allowed angle off square.
    square: (f64, f64),
}

impl Problem<'_> {
    /// The best set-out on the lattice, `None` where there is none; `optima` are continuous ones, the best first.
    pub fn best_on_lattice(&self, step_m: f64, optima: &[Found]) -> Option<OnLattice> {
        if optima.first().is_some_and(|nearest| nearest.excess > HOPELESS) {
            return None;
        }
        let setout = self.setout;
        let range = |[least, most]: [f64; 2]| {
            [libm::ceil((least - 1e-10) / step_m) as i64, libm::floor((most + 1e-10) / step_m) as i64]
        };
        let square = self.limits.square_rad;
        let lattice = Lattice {
            step_m,
            ranges: [setout.shaft_x_m, setout.shaft_y_m, setout.bracket_u_m, setout.crank_m, setout.link_m].map(range),
            square: (self.limits.square_sine, cos(square)),
        };
        if lattice.ranges.iter().any(|[first, last]| first > last) {
            return None;
        }
        // Touching a limit is keeping it: on a lattice there is no staying inside by a margin.
        let rough = Problem { margin: Margin::NONE, exact: false, ..self.clone() };
        let exact = Problem { exact: true, ..rough.clone() };
        let mut walk = LatticeWalk { rough, exact, lattice, best: None, work: 0 };
        journal::lattice(&self.journal, || {
            walk.go(optima);
            walk.best
        })
    }
}

/// A station as a shaft and bracket see it: what every pair of lengths shares in the products of [`ArmKernel`].
struct Asked {
    cross: f64,
    reach2: f64,
    /// `r² − S·P`, m².
    off: f64,
    effort_n_m: f64,
}

impl Asked {
    /// Whether a pair of lengths asks `most_n_m` or more of the shaft here; see the module of [`ArmKernel`] for the products.
    fn asks(&self, arm: &Arm, most_n_m: f64) -> bool {
        let (a, b) = (arm.crank_m, arm.link_m);
        let spare = (a + b) * (a + b) - self.reach2;
        let spare = if spare > STRAIGHT_M2 { spare } else { 0.0 };
        let height = sqrt(spare * (self.reach2 - (a - b) * (a - b)));
        let numerator = (self.reach2 + (b - a) * (b + a)) * self.cross - arm.elbow.side() * height * self.off;
        self.effort_n_m * height * self.reach2 >= most_n_m * numerator.abs()
    }
}

/// A walk over the lattice with the best found so far.
struct LatticeWalk<'a> {
    rough: Problem<'a>,
    exact: Problem<'a>,
    lattice: Lattice,
    best: Option<OnLattice>,
    /// Work done so far.
    work: u64,
}

impl LatticeWalk<'_> {
    fn go(&mut self, optima: &[Found]) {
        let whole: [[i64; 2]; 3] = core::array::from_fn(|i| self.lattice.ranges[i]);
        let count = whole.iter().map(|[first, last]| last - first + 1).fold(1_i64, i64::saturating_mul);
        // Where the whole is walked, an arm known to be proof spares nearly all others their check at the corners.
        let reaches = match &self.exact.proof {
            _ if count > WHOLE => &REACHES[..],
            Some(_) => &REACHES[..SMALL],
            None => &[],
        };
        if !reaches.is_empty() {
            let mut walked: Vec<[i64; 3]> = Vec::new();
            // Small boxes around all of them first: whatever they find dismisses most of the larger ones at one leaf angle.
            for &reach in reaches {
                walked.clear();
                let found = self.best.map(|best| best.triple);
                let nearest =
                    |optimum: &Found| optimum.point.map(|value| libm::round(value / self.lattice.step_m) as i64);
                // The widest box is for the best alone.
                let optima = if reach == REACHES[REACHES.len() - 1] && found.is_some() { &[] } else { optima };
                let centres: Vec<[i64; 3]> =
                    found.into_iter().chain(optima.iter().map(nearest).map(|[x, y, u, ..]| [x, y, u])).collect();
                for mut centre in centres {
                    // The box follows the best found in it; every move makes the objective smaller, so it comes to rest.
                    while !walked.iter().any(|other| (0..3).all(|i| (centre[i] - other[i]).abs() <= reach / 2)) {
                        walked.push(centre);
                        let part = core::array::from_fn(|i| {
                            [(centre[i] - reach).max(whole[i][0]), (centre[i] + reach).min(whole[i][1])]
                        });
                        self.walk_box(&part);
                        if let Some(found) = &self.best {
                            let inside = (0..3).all(|i| part[i][0] <= found.triple[i] && found.triple[i] <= part[i][1]);
                            centre = if inside { found.triple } else { centre };
                        }
                    }
                }
            }
        }
        if count <= WHOLE || (self.best.is_none() && count <= EXHAUSTIVE) {
            self.walk_box(&whole);
        }
    }

    /// Lets both problems know what an arm breaks at the corners, so that others are dismissed for it sooner.
    fn learn(&mut self, arm: &Arm, sense: f64) {
        if self.exact.proof.as_ref().is_none_or(|proof| proof.known.len() >= MOST_LEARNT) {
            return;
        }
        let broken = self.exact.broken_at_corners(arm, sense);
        for problem in [&mut self.rough, &mut self.exact] {
            if let Some(proof) = &mut problem.proof {
                proof.known.extend(broken.iter().take(LEARNT).map(|(piece, _)| *piece));
            }
        }
    }

    fn walk_box(&mut self, part: &[[i64; 2]; 3]) {
        for i in part[0][0]..=part[0][1] {
            for j in part[1][0]..=part[1][1] {
                for k in part[2][0]..=part[2][1] {
                    self.walk_lengths([i, j, k]);
                }
            }
        }
    }

    /// Every pair of lengths that straightness and angle allow at one shaft and bracket.
    fn walk_lengths(&mut self, triple: [i64; 3]) {
        if self.work >= MOST_WORK {
            return;
        }
        self.work += 1;
        let (lattice, setout) = (&self.lattice, self.rough.setout);
        let step = lattice.step_m;
        let [x, y, u] = triple.map(|index| index as f64 * step);
        let v = setout.bracket_v_m;
        let [loose, straight] = setout.straightness();
        let closed = sqrt((u - x) * (u - x) + (v - y) * (v - y));
        let [crank_range, link_range] = [lattice.ranges[3], lattice.ranges[4]];
        let square = lattice.square;
        let first = libm::ceil((closed / straight.max(1e-3) - ROUNDING_M) / step) as i64;
        let first = match &self.rough.proof {
            Some(_) => first.max(libm::ceil((self.rough.both_m(u - x, v - y, 0.0) - ROUNDING_M) / step) as i64),
            None => first,
        };
        let last = libm::floor((closed / loose.max(1e-3) + ROUNDING_M) / step) as i64;
        let (first, last) = (first.max(crank_range[0] + link_range[0]), last.min(crank_range[1] + link_range[1]));
        if first > last {
            return;
        }
        let (cosine, sine) = (self.rough.open().cosine, self.rough.open().sine);
        // Shaft→bracket open, along the leaf's own axes.
        let (along, across) = (u - x * cosine - y * sine, v + x * sine - y * cosine);
        let asked = self.asked(x, y, u);
        for sum in first..=last {
            let both = sum as f64 * step;
            for sense in [1.0, -1.0] {
                let Some((shortest, longest)) = link_range_at(both, along, sense * across, square) else {
                    continue;
                };
                let from = libm::ceil((shortest - ROUNDING_M) / step) as i64;
                let to = libm::floor((longest + ROUNDING_M) / step) as i64;
                let from = from.max(link_range[0]).max(sum - crank_range[1]);
                let to = to.min(link_range[1]).min(sum - crank_range[0]);
                for link in from..=to {
                    for &elbow in setout.elbows() {
                        let arm = Arm {
                            shaft_x_m: x,
                            shaft_y_m: y,
                            bracket_u_m: u,
                            bracket_v_m: v,
                            crank_m: (sum - link) as f64 * step,
                            link_m: link as f64 * step,
                            elbow,
                        };
                        self.evaluate(arm, triple, &asked);
                    }
                }
            }
        }
    }

    /// The stations where arms are dismissed by their torque, the one where the best so far is at its worst first.
    fn asked(&self, x: f64, y: f64, u: f64) -> [Asked; FIRST_ASKED.len() + 1] {
        let problem = &self.rough;
        let v = problem.setout.bracket_v_m;
        let (dot, cross, bracket2) = (x * u + y * v, x * v - y * u, u * u + v * v);
        let worst = self.best.as_ref().map_or(FIRST_ASKED[0], |best| best.station);
        core::array::from_fn(|place| {
            let station = &problem.stations[if place == 0 { worst } else { FIRST_ASKED[place - 1] }];
            let turned = dot * station.cosine - cross * station.sine;
            Asked {
                cross: cross * station.cosine + dot * station.sine,
                reach2: bracket2 + x * x + y * y - 2.0 * turned,
                off: bracket2 - turned,
                effort_n_m: station.effort_n_m,
            }
        })
    }

    /// Takes an arm for the best if it is; most are dismissed where the best so far is at its worst.
    fn evaluate(&mut self, arm: Arm, triple: [i64; 3], asked: &[Asked]) {
        self.work += 1;
        let problem = &self.rough;
        if problem.setout.aim() == Aim::LeastShaftTorque
            && let Some(best) = &self.best
        {
            let most = best.objective * problem.torque_scale_n_m;
            // Nearly all are dismissed by the first: asked alone, since asked in pairs each would cost as much as all.
            if asked[0].asks(&arm, most) {
                return;
            }
            if asked[1..].iter().any(|station| station.asks(&arm, most)) {
                return;
            }
        }
        let kernel = ArmKernel::new(&arm);
        let sense = problem.sense(&kernel);
        let fails = |term: Term, index: usize| {
            problem.value(&kernel, sense, &Piece::new(term, problem.stations[index])) > EXCESS_TOLERANCE
        };
        if FIRST_ASKED.into_iter().any(|index| fails(Term::Lever, index))
            || fails(Term::Far, INTERVALS)
            || fails(Term::Square(1.0), INTERVALS)
            || fails(Term::Square(-1.0), INTERVALS)
            || fails(Term::TravelLimit, INTERVALS)
        {
            return;
        }
        self.work += EVALUATION_WORK;
        let (_, excess) = problem.roughly(&kernel, sense, ROUGH);
        if excess > ROUGH {
            return;
        }
        self.work += problem.setout.keep_out.len() as u64 * RECTANGLE;
        let (objective, excess) = self.exact.evaluate(&kernel, sense);
        let better = self.best.as_ref().is_none_or(|best| objective < best.objective);
        if excess <= EXCESS_TOLERANCE && better {
            if self.exact.proof.is_some() {
                self.work += PROOF_WORK;
                if !self.exact.is_proven(&arm, sense) {
                    self.learn(&arm, sense);
                    return;
                }
            }
            let at = |index: usize| {
                let station = &problem.stations[index];
                station.effort_n_m * kernel.at(station.cosine, station.sine).inverse_ratio()
            };
            let station = (0..=INTERVALS).fold(0, |most, index| if at(index) > at(most) { index } else { most });
            self.best = Some(OnLattice { arm, objective, station, triple });
        }
    }
}

/// Lengths of the link for which it is square to the open leaf within an angle, on the side of the leaf that `across` is positive on.
///
/// With `D` from shaft to bracket and `w` the link's unit vector, `b = (L² − D²)/(2(L − D·w))` grows with `D·w`, which over the allowed
/// angles is extreme at their ends or where `w` is along `D`.
fn link_range_at(both: f64, along: f64, across: f64, (sine, cosine): (f64, f64)) -> Option<(f64, f64)> {
    let reach2 = along * along + across * across;
    let free = both * both - reach2;
    if free < -1e-9 {
        return None;
    }
    let (one, other) = (across * cosine + along * sine, across * cosine - along * sine);
    let in_line = (along * cosine).abs() <= across.abs() * sine;
    let reach = sqrt(reach2);
    let least = if in_line && across < 0.0 { -reach } else { one.min(other) };
    let most = if in_line && across > 0.0 { reach } else { one.max(other) };
    let link = |projected: f64| free / (2.0 * (both - projected).max(1e-12));
    Some((link(least), link(most)))
}

#[cfg(test)]
mod tests;
