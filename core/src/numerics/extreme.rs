//! Extremes of a function of one variable.

/// The vertex of the parabola through three even values whose middle one is the largest: its place in steps from the middle, its value.
pub fn vertex(left: f64, middle: f64, right: f64) -> Option<(f64, f64)> {
    if middle < left || middle < right {
        return None;
    }
    let (slope, bend) = (0.5 * (right - left), left - 2.0 * middle + right);
    Some(if bend < 0.0 { (-slope / bend, middle - 0.5 * slope * slope / bend) } else { (0.0, middle) })
}

/// Golden section: what a round leaves of a bracket.
pub const GOLDEN_SHARE: f64 = 0.618_033_988_749_894_8;

/// Golden-section search of a least value in a bracket; each round leaves 0.62 of it.
pub fn golden_section(mut low: f64, mut high: f64, rounds: usize, value: impl Fn(f64) -> f64) -> (f64, f64) {
    let (mut one, mut other) = (high - GOLDEN_SHARE * (high - low), low + GOLDEN_SHARE * (high - low));
    let (mut at_one, mut at_other) = (value(one), value(other));
    for _ in 0..rounds {
        if at_one < at_other {
            (high, other, at_other) = (other, one, at_one);
            one = high - GOLDEN_SHARE * (high - low);
            at_one = value(one);
        } else {
            (low, one, at_one) = (one, other, at_other);
            other = low + GOLDEN_SHARE * (high - low);
            at_other = value(other);
        }
    }
    if at_one < at_other { (one, at_one) } else { (other, at_other) }
}

#[cfg(test)]
mod tests;
