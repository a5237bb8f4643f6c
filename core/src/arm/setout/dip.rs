//! How near a part of the arm comes to a rectangle between two leaf angles, asked no longer than it takes to see that it is not near enough.

use crate::numerics::{ARC_OVER_CHORD, GOLDEN_SHARE};
use crate::real::sqrt;

/// Spare room by which nothing is near enough, m: rounding.
const SPARE_M: f64 = 1e-11;

/// A part of the arm at a leaf angle with its gap to a rectangle, m.
#[derive(Clone, Copy, Debug)]
pub(super) struct PartAt {
    pub leaf_rad: f64,
    pub gap_m: f64,
    /// The two ends of the part.
    pub elbow: (f64, f64),
    pub other: (f64, f64),
}

impl PartAt {
    /// The least the gap can be from here to another place, m: no point of the part goes further than the further of its ends, and what comes nearer goes
    /// back as far.
    fn floor_m(&self, behind: &PartAt) -> f64 {
        let moved = arc_m(self.elbow, behind.elbow).max(arc_m(self.other, behind.other));
        0.5 * (self.gap_m + behind.gap_m - moved)
    }
}

/// Length of a joint's way between two places on it, m, no less than it is.
pub(super) fn arc_m(one: (f64, f64), other: (f64, f64)) -> f64 {
    let (dx, dy) = (one.0 - other.0, one.1 - other.1);
    ARC_OVER_CHORD * sqrt(dx * dx + dy * dy)
}

/// Least gap between two places of a part and its leaf angle, as [`golden_section`](crate::numerics::golden_section) has it to the bit; `None` as
/// soon as what is left of the bracket, and so what golden section would find, cannot be below `bar`, where there is one.
pub(super) fn dip(
    [mut low, mut high]: [PartAt; 2],
    rounds: usize,
    bar: Option<f64>,
    at: impl Fn(f64) -> PartAt,
) -> Option<(f64, f64)> {
    let inner = |low: &PartAt, high: &PartAt| {
        let way = GOLDEN_SHARE * (high.leaf_rad - low.leaf_rad);
        [high.leaf_rad - way, low.leaf_rad + way]
    };
    let [mut one, mut other] = inner(&low, &high).map(&at);
    for _ in 0..rounds {
        let floor = low.floor_m(&one).min(one.floor_m(&other)).min(other.floor_m(&high));
        if bar.is_some_and(|bar| floor >= bar + SPARE_M) {
            return None;
        }
        if one.gap_m < other.gap_m {
            (high, other) = (other, one);
            one = at(inner(&low, &high)[0]);
        } else {
            (low, one) = (one, other);
            other = at(inner(&low, &high)[1]);
        }
    }
    let least = if one.gap_m < other.gap_m { one } else { other };
    Some((least.leaf_rad, least.gap_m))
}

#[cfg(test)]
mod tests;
