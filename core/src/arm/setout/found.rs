//! A point of the search with what it is worth.

use super::variables::Point;
use crate::job::Elbow;

/// Excess that counts as none, in metres, radians or plain; the margin of the problem is larger.
pub(crate) const EXCESS_TOLERANCE: f64 = 1e-9;

/// A point with what it is worth.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Found {
    pub point: Point,
    pub elbow: Elbow,
    pub sense: f64,
    pub objective: f64,
    pub excess: f64,
}

impl Found {
    pub fn merit(&self, weight: f64) -> f64 {
        self.objective + weight * self.excess.max(0.0)
    }
    pub fn kept(&self) -> bool {
        self.excess <= EXCESS_TOLERANCE
    }
    /// Better: kept before not kept, then the smaller objective or excess.
    pub fn beats(&self, other: &Found) -> bool {
        match (self.kept(), other.kept()) {
            (true, true) => self.objective < other.objective,
            (false, false) => self.excess < other.excess,
            (kept, _) => kept,
        }
    }
}
