//! Round numbers along an axis.

/// Where ticks stand and how their numbers are written.
#[derive(Clone, Debug, PartialEq)]
pub struct Ticks {
    /// Values, ascending, inside the range.
    pub values: Vec<f64>,
    decimals: usize,
}

impl Ticks {
    /// A tick's number, with a true minus sign.
    pub fn text(&self, value: f64) -> String {
        let text = format!("{:.*}", self.decimals, value.abs());
        if value < 0.0 { format!("\u{2212}{text}") } else { text }
    }
}

/// Ticks at 1, 2 or 5 times a power of ten, at most `most` of them (at least one step is taken).
pub fn decimal(range: (f64, f64), most: usize) -> Ticks {
    let span = range.1 - range.0;
    let fits = |step: &(f64, i32)| span / step.0 <= most.max(1) as f64;
    // Spans beyond these steps do not come out of a job; they would have two ticks.
    let (step, power) = round_steps().find(fits).unwrap_or((span, 0));
    at_multiples(range, step, (-power).max(0) as usize)
}

/// 1, 2 and 5 times each power of ten, ascending, with the power.
pub fn round_steps() -> impl Iterator<Item = (f64, i32)> {
    (-9..=9).flat_map(|power| [1.0, 2.0, 5.0].map(|factor| (factor * 10f64.powi(power), power)))
}

/// Ticks of an angle in degrees: a whole part of the turn where there is room for whole degrees.
pub fn degrees(range: (f64, f64), most: usize) -> Ticks {
    let span = range.1 - range.0;
    let fits = |step: &f64| span / step <= most.max(1) as f64;
    match [5.0, 10.0, 15.0, 30.0, 45.0, 90.0, 180.0].into_iter().find(fits) {
        Some(step) if span / step >= 2.0 => at_multiples(range, step, 0),
        _ => decimal(range, most),
    }
}

/// Multiples of `step` are counted, not summed, so that zero is zero.
fn at_multiples(range: (f64, f64), step: f64, decimals: usize) -> Ticks {
    let slack = 1e-9;
    let first = (range.0 / step - slack).ceil() as i64;
    let last = (range.1 / step + slack).floor() as i64;
    Ticks { values: (first..=last).map(|count| count as f64 * step).collect(), decimals }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn round_numbers_and_no_more_than_asked() {
        assert_eq!(decimal((-412.0, 412.0), 8).values, [-400.0, -200.0, 0.0, 200.0, 400.0]);
        assert_eq!(degrees((0.0, 90.0), 7).values, [0.0, 15.0, 30.0, 45.0, 60.0, 75.0, 90.0]);
        assert_eq!(degrees((0.0, 1.0), 5).values, [0.0, 0.2, 0.4, 0.6000000000000001, 0.8, 1.0]);
        for most in 1..12 {
            for span in [1e-3, 0.7, 1.0, 12.0, 99.0, 1e5] {
                let ticks = decimal((0.0, span), most);
                assert!((1..=most + 1).contains(&ticks.values.len()), "{span} {most} {ticks:?}");
            }
        }
    }

    #[test]
    fn a_true_minus_and_the_decimals_of_the_step() {
        let ticks = decimal((-1.0, 1.0), 4);
        assert_eq!(
            ticks.values.iter().map(|v| ticks.text(*v)).collect::<Vec<_>>(),
            ["−1.0", "−0.5", "0.0", "0.5", "1.0"]
        );
    }
}
