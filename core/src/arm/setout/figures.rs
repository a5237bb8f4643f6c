//! What a found arm comes to, in numbers a person reads.

use super::found::EXCESS_TOLERANCE;
use super::kernel::ArmKernel;
use super::limit::Limit;
use super::problem::{INTERVALS, Problem};
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

impl Problem<'_> {
    pub fn figures(&self, arm: &Arm) -> Figures {
        let kernel = ArmKernel::new(arm);
        let sense = self.sense(&kernel);
        let force =
            |index: usize| self.value(&kernel, sense, &Piece { term: Term::Force, station: self.stations[index] });
        let mut link_force = (0..=INTERVALS).map(force).fold(0.0, f64::max);
        for index in 1..INTERVALS {
            if let Some((shift, _)) = vertex(force(index - 1), force(index), force(index + 1)) {
                let station = self.refined(&kernel, sense, Term::Force, index, shift);
                link_force = link_force.max(self.value(&kernel, sense, &Piece { term: Term::Force, station }));
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
