//! What a found arm comes to, in numbers a person reads.

use super::bare::Bare;
use super::found::KEPT;
use super::limit::Limit;
use super::site::{INTERVALS, Site};
use super::swept::{CRANK, LINK, Swept};
use super::terms::{Piece, Term};
use crate::job::Arm;
use crate::numerics::vertex;
use crate::order::arrange;
use crate::real::root;
use alloc::vec::Vec;

/// Numbers of one arm under the site's limits.
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

impl Site<'_> {
    pub fn figures(&self, arm: &Arm) -> Figures {
        let bare = Bare::new(arm);
        let sense = self.sense(&bare);
        let force =
            |index: usize| self.value(&bare, sense, &Piece { term: Term::Force, station: self.stations[index] });
        let mut link_force = (0..=INTERVALS).map(force).fold(0.0, f64::max);
        for index in 1..INTERVALS {
            if let Some((shift, _)) = vertex(force(index - 1), force(index), force(index + 1)) {
                let station = self.refined(&bare, sense, Term::Force, index, shift);
                link_force = link_force.max(self.value(&bare, sense, &Piece { term: Term::Force, station }));
            }
        }
        let rectangles = 0..self.setout.keep_out.len();
        let swept = Swept::new(self, &bare);
        let gaps = rectangles
            .flat_map(|rectangle| [CRANK, LINK].map(|part| swept.least_gap(rectangle, part, [f64::MAX; 2], |_| ())));
        Figures {
            link_force_n: link_force * self.force_scale_n,
            straightness: root(bare.reach2(1.0, 0.0)) / (arm.crank_m + arm.link_m),
            off_square_rad: libm::asin(bare.link_along_leaf(self.open().cosine, self.open().sine).clamp(-1.0, 1.0)),
            gap_m: gaps.fold(None, |least: Option<f64>, gap| Some(least.map_or(gap, |least| least.min(gap)))),
        }
    }

    /// Every limit an arm exceeds, in the search's unit, the most exceeded first.
    pub fn exceeded(&mut self, bare: &Bare, sense: f64) -> Vec<(Limit, f64)> {
        let before = self.given_up;
        let mut exceeded: Vec<(Limit, f64)> = Vec::new();
        for limit in Limit::ALL.into_iter().chain([Limit::Arm]) {
            // With a limit given up, its own excess is what the appraisal calls the objective.
            self.given_up = Some(limit);
            let (by, _) = self.appraise(bare, sense);
            if by > KEPT {
                exceeded.push((limit, by));
            }
        }
        self.given_up = before;
        arrange(&mut exceeded, |one, other| one.1 > other.1);
        exceeded
    }
}

#[cfg(test)]
mod tests;
