//! The operator's body against what it cannot stand in, and against the leaf that swings past it.
//!
//! The body does not move with the swing. Its base is laid along the crank of the closed arm, so that it turns with the arm that is tried.

use super::kernel::{ArmKernel, SearchStation};
use super::problem::{INTERVALS, Problem};
use super::terms::{Piece, Term};
use crate::arm::placed_body;
use crate::numerics::{PlacedRectangle, golden_section, separation_m};
use crate::real::sqrt;

/// Separation from the leaf above which the angles between two stations are not looked at, m.
const NEAR_M: f64 = 0.3;
/// Rounds between two stations.
const ROUNDS: usize = 30;

impl Problem<'_> {
    /// The body where the arm has its shaft.
    fn body(&self, kernel: &ArmKernel) -> Option<PlacedRectangle> {
        let stand = self.setout.stand.as_ref()?;
        let closed = self.closed();
        let ([_, elbow], shaft) = (kernel.joints(closed.cosine, closed.sine), kernel.shaft());
        let (dx, dy) = (elbow.0 - shaft.0, elbow.1 - shaft.1);
        let crank = sqrt(dx * dx + dy * dy).max(f64::MIN_POSITIVE);
        Some(placed_body(&stand.body, shaft, (dx / crank, dy / crank), stand.turn_rad))
    }

    /// Separation of the body, or of the shaft alone where none is known, from a rectangle it cannot stand in, m.
    pub fn stand_gap_m(&self, kernel: &ArmKernel, rectangle: usize) -> f64 {
        let sides = self.setout.pads[rectangle].sides();
        match self.body(kernel) {
            Some(body) => body.separation_m(&sides),
            None => separation_m(&sides, kernel.shaft(), kernel.shaft()),
        }
    }

    /// Separation of the body from the leaf at a leaf angle, m; as far as anything where there is none.
    pub fn leaf_gap_m(&self, kernel: &ArmKernel, station: &SearchStation) -> f64 {
        let (Some(body), Some(stand)) = (self.body(kernel), &self.setout.stand) else { return f64::MAX };
        let leaf = PlacedRectangle::about_origin(stand.leaf, (station.cosine, station.sine));
        body.seen_from(&leaf).separation_m(&stand.leaf)
    }

    /// The leaf angle at which the leaf comes nearest to the body.
    fn nearest_leaf(&self, kernel: &ArmKernel) -> SearchStation {
        let gap_m = |station: &SearchStation| self.leaf_gap_m(kernel, station);
        let gaps = self.stations.iter().map(gap_m).enumerate();
        let (index, least_m) = gaps.fold((0, f64::MAX), |least, gap| if gap.1 < least.1 { gap } else { least });
        if least_m > NEAR_M {
            return self.stations[index];
        }
        let [from, to] =
            [index.saturating_sub(1), (index + 1).min(INTERVALS)].map(|index| self.stations[index].leaf_rad);
        let (leaf_rad, refined_m) = golden_section(from, to, ROUNDS, |leaf_rad| gap_m(&self.station(leaf_rad)));
        if refined_m < least_m { self.station(leaf_rad) } else { self.stations[index] }
    }

    /// Every term of the body, with the leaf angle it is worst at.
    pub fn stand_terms(&self, kernel: &ArmKernel, mut told: impl FnMut(Term, &SearchStation)) {
        for rectangle in 0..self.setout.pads.len() {
            told(Term::Stand(rectangle), self.closed());
        }
        if self.setout.stand.is_some() {
            told(Term::StandLeaf, &self.nearest_leaf(kernel));
        }
    }

    /// The excess of each of them.
    pub fn stand(&self, kernel: &ArmKernel, mut told: impl FnMut(f64)) {
        self.stand_terms(kernel, |term, station| {
            told(self.value(kernel, 1.0, &Piece::new(term, *station)));
        });
    }
}
