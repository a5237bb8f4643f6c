//! Lengths as a US tape shows them.

use super::quantity::INCH_M;
use alloc::{format, string::String};

/// A length in feet, inches and a fraction of an inch: `2'-10 3/8"`, below a foot `10 3/8"`.
///
/// `value_m` in metres, rounded to `1/denominator` inch *before* it is split, so that 35.99 in is `3'-0"` and never `2'-12"`.
/// `denominator` is a power of two from 1 to 64; others take what a tape has: sixty-fourths below an inch, sixteenths above. A value that is not finite shows as a dash.
#[must_use]
pub fn feet_inches(value_m: f64, denominator: u32) -> String {
    if !value_m.is_finite() {
        return String::from("–");
    }
    let usual = if value_m.abs() < INCH_M { 64 } else { 16 };
    let denominator = u64::from(if denominator.is_power_of_two() && denominator <= 64 { denominator } else { usual });
    let parts = libm::round(value_m.abs() / INCH_M * denominator as f64) as u64;
    let sign = if value_m < 0.0 && parts > 0 { "−" } else { "" };
    let (feet, parts) = (parts / (12 * denominator), parts % (12 * denominator));
    let (inches, above) = (parts / denominator, parts % denominator);
    // Halves, quarters, eighths: the fraction is shown in lowest terms.
    let common = if above == 0 { denominator } else { (1 << above.trailing_zeros()).min(denominator) };
    let fraction = if above == 0 { String::new() } else { format!("{}/{}", above / common, denominator / common) };
    let inches = match (inches, fraction.is_empty()) {
        (0, false) if feet == 0 => fraction,
        (_, false) => format!("{inches} {fraction}"),
        (_, true) => format!("{inches}"),
    };
    if feet == 0 { format!("{sign}{inches}\"") } else { format!("{sign}{feet}'-{inches}\"") }
}

#[cfg(test)]
mod tests {
    use super::feet_inches;

    #[test]
    fn rounds_to_the_grid_and_then_splits() {
        for (inches, denominator, expected) in [
            (35.99, 16, "3'-0\""),
            (34.375, 16, "2'-10 3/8\""),
            (10.375, 8, "10 3/8\""),
            (0.5, 16, "1/2\""),
            (0.0, 16, "0\""),
            (12.25, 4, "1'-0 1/4\""),
            (11.9999, 64, "1'-0\""),
            (-75.5, 16, "−6'-3 1/2\""),
            (-0.001, 16, "0\""),
            (0.109_375, 0, "7/64\""),
            (12.109_375, 0, "1'-0 1/8\""),
            (0.999, 0, "1\""),
        ] {
            assert_eq!(feet_inches(inches * 0.0254, denominator), expected, "{inches}");
        }
        assert_eq!(feet_inches(f64::NAN, 16), "–");
    }

    /// What it writes, the reader reads, to within half a step of the grid.
    #[test]
    fn feet_and_inches_shown_are_read_back() {
        use crate::units::{Quantity, System, read};
        for thousandths in 0..4000 {
            let value_m = f64::from(thousandths) * 0.000_7;
            let read = read(&feet_inches(value_m, 16), Quantity::ShortLength, System::Us).unwrap();
            assert!((read - value_m).abs() <= 0.0254 / 32.0 + 1e-12, "{value_m}");
        }
    }
}
