//! What a found arm comes to, in numbers a person reads.

use super::corner::Corner;
use super::found::{EXCESS_TOLERANCE, Found};
use super::kernel::ArmKernel;
use super::limit::Limit;
use super::problem::{INTERVALS, Margin, Problem};
use super::swept::{CRANK, LINK, SweptParts};
use super::terms::{Piece, Term};
use crate::job::Arm;
use crate::numerics::vertex;
use crate::order::insertion_sort;
use crate::real::sqrt;
use alloc::vec::Vec;

/// Numbers of one arm under the problem's limits.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Figures {
    /// Largest link force over the swing against the storm gust, N.
    pub link_force_n: f64,
    /// Distance shaft to bracket closed over crank + link.
    pub straightness: f64,
    /// Link off square to the open leaf, rad, positive where its bracket end leans towards the latch.
    pub off_square_rad: f64,
    /// Least distance of the centre-lines from a rectangle, m.
    pub gap_m: Option<f64>,
}

/// The worst of an arm's figures.
#[derive(Clone, Copy, Debug)]
pub(crate) struct WorstFigures {
    pub travel_rad: f64,
    /// Least lever from a tenth of the swing on, m.
    pub lever_m: f64,
    /// Least and most.
    pub straightness: [f64; 2],
    pub off_square_rad: [f64; 2],
    /// Least distance of the centre-lines from a rectangle, m.
    pub gap_m: Option<f64>,
}

impl Problem<'_> {
    pub fn figures(&self, arm: &Arm) -> Figures {
        let kernel = ArmKernel::new(arm);
        let sense = self.sense(&kernel);
        let force = |index: usize| self.value(&kernel, sense, &Piece::new(Term::Force, self.stations[index]));
        let mut link_force = (0..=INTERVALS).map(force).fold(0.0, f64::max);
        for index in 1..INTERVALS {
            if let Some((shift, _)) = vertex(force(index - 1), force(index), force(index + 1)) {
                let station = self.refined(&kernel, sense, Term::Force, index, shift);
                link_force = link_force.max(self.value(&kernel, sense, &Piece::new(Term::Force, station)));
            }
        }
        let rectangles = 0..self.setout.keep_out.len();
        let swept = SweptParts::new(self, &kernel);
        let gaps = rectangles
            .flat_map(|rectangle| [CRANK, LINK].map(|part| swept.least_gap(rectangle, part, [f64::MAX; 2], |_| ())));
        Figures {
            link_force_n: link_force * self.force_scale_n,
            straightness: sqrt(kernel.reach2(1.0, 0.0)) / (arm.crank_m + arm.link_m),
            off_square_rad: libm::asin(kernel.link_along_leaf(self.open().cosine, self.open().sine).clamp(-1.0, 1.0)),
            gap_m: gaps.fold(None, |least: Option<f64>, gap| Some(least.map_or(gap, |least| least.min(gap)))),
        }
    }

    /// The worst of an arm's figures at the corners of the tape's errors.
    pub fn worst_at_corners(&self, arm: &Arm) -> WorstFigures {
        let exact = Problem { exact: true, given_up: None, corners_given_up: false, ..self.clone() };
        let mut worst = WorstFigures {
            travel_rad: 0.0,
            lever_m: f64::MAX,
            straightness: [f64::MAX, f64::MIN],
            off_square_rad: [f64::MAX, f64::MIN],
            gap_m: None,
        };
        let Some(proof) = &self.proof else { return worst };
        let widen = |ends: &mut [f64; 2], value: f64| *ends = [ends[0].min(value), ends[1].max(value)];
        for corner in Corner::all() {
            let moved = proof.moved(arm, corner);
            let kernel = ArmKernel::new(&moved);
            let sense = exact.sense(&kernel);
            worst.lever_m = worst.lever_m.min(exact.least_lever_m(&kernel, sense));
            worst.travel_rad = worst.travel_rad.max(kernel.travel_rad(sense, self.closed(), self.open()));
            widen(&mut worst.straightness, kernel.variable(4));
            let along = kernel.link_along_leaf(self.open().cosine, self.open().sine);
            widen(&mut worst.off_square_rad, libm::asin(along.clamp(-1.0, 1.0)));
            if !self.setout.keep_out.is_empty() {
                let swept = SweptParts::new(&exact, &kernel);
                for (rectangle, part) in (0..self.setout.keep_out.len()).flat_map(|one| [(one, CRANK), (one, LINK)]) {
                    // What is wider than the least so far is not asked how wide.
                    let bar = worst.gap_m.unwrap_or(f64::MAX);
                    worst.gap_m = Some(bar.min(swept.least_gap(rectangle, part, [bar; 2], |_| ())));
                }
            }
        }
        worst
    }

    /// The arm of a point that was found while everything at the corners was given up.
    pub fn planned_arm(&self, found: &Found) -> Arm {
        Problem { proof: None, ..self.clone() }.arm(&found.point, found.elbow)
    }

    /// What an arm exceeds at the corners, each limit once, in the search's unit, the most exceeded first. Of a corner where crank and link do not
    /// meet that alone is told: an arm that is none has no lever.
    pub fn exceeded_at_corners(&self, arm: &Arm, sense: f64) -> Vec<(Limit, f64)> {
        let exact = Problem { exact: true, margin: Margin::NONE, ..self.clone() };
        let broken = exact.broken_at_corners(arm, sense);
        let torn =
            |piece: &Piece| broken.iter().any(|(other, _)| other.corner == piece.corner && other.term.is_assembly());
        let mut exceeded: Vec<(Limit, f64)> = Vec::new();
        for &(piece, by) in broken.iter().filter(|(piece, _)| piece.term.is_assembly() || !torn(piece)) {
            if let Some(limit) = piece.limit().filter(|limit| exceeded.iter().all(|(other, _)| other != limit)) {
                exceeded.push((limit, by));
            }
        }
        exceeded
    }

    /// Every limit an arm exceeds, in the search's unit, the most exceeded first.
    pub fn exceeded(&mut self, kernel: &ArmKernel, sense: f64) -> Vec<(Limit, f64)> {
        let before = self.given_up;
        let mut exceeded: Vec<(Limit, f64)> = Vec::new();
        for limit in Limit::ALL.into_iter().chain([Limit::Arm]) {
            // With a limit given up, its own excess is what the evaluation calls the objective.
            self.given_up = Some(limit);
            let (by, _) = self.evaluate(kernel, sense);
            if by > EXCESS_TOLERANCE {
                exceeded.push((limit, by));
            }
        }
        self.given_up = before;
        insertion_sort(&mut exceeded, |one, other| one.1 > other.1);
        exceeded
    }
}

#[cfg(test)]
mod tests;
