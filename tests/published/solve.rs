//! For sources that ask the other way round: which input gives this result.

/// Where a function of the crate that rises or falls between two inputs takes a value, by halving the interval until it no longer gets shorter.
///
/// # Panics
/// If the value does not lie between those at the ends.
pub fn solve(value: f64, low: f64, high: f64, function: impl Fn(f64) -> f64) -> f64 {
    let excess = |input: f64| function(input) - value;
    let (mut from, mut to) = (low, high);
    let rising = excess(to) > 0.0;
    assert!(excess(from) * excess(to) < 0.0, "{value} is not between the ends");
    loop {
        let middle = (from + to) / 2.0;
        if middle <= from || middle >= to {
            return middle;
        }
        if (excess(middle) > 0.0) == rising { to = middle } else { from = middle }
    }
}

/// Slope of a function of the crate, by a central difference: whose error is of the step's second order: 1e-6 of it and less with the steps used here.
pub fn slope(at: f64, step: f64, function: impl Fn(f64) -> f64) -> f64 {
    (function(at + step) - function(at - step)) / (2.0 * step)
}
