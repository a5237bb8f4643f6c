//! A length as it is marked with a tape.

use super::feet::feet_inches;
use super::quantity::{INCH_M, System};
use alloc::{format, string::String};

/// The coarser of the two steps a mark is written to, m: a sixteenth of an inch; in metric units it is a millimetre.
pub const TAPE_STEP_M: f64 = INCH_M / 16.0;

/// A length to the step of a tape: whole millimetres, or feet, inches and sixteenths. `value_m` in metres; a value that is not finite shows as a dash.
pub fn mark(value_m: f64, system: System) -> String {
    match system {
        System::Us => feet_inches(value_m, 16),
        System::Metric if !value_m.is_finite() => String::from("–"),
        System::Metric => {
            let millimetres = libm::round(value_m.abs() * 1000.0);
            let sign = if value_m < 0.0 && millimetres > 0.0 { "−" } else { "" };
            format!("{sign}{millimetres}\u{a0}mm")
        }
    }
}

#[cfg(test)]
mod tests {
    use super::mark;
    use crate::units::System;

    /// 15 3/8 in is 390.525 mm (1 in = 25.4 mm).
    #[test]
    fn mark_is_written_as_a_tape_reads() {
        for (value_m, metric, us) in [
            (0.390_525, "391\u{a0}mm", "1'-3 3/8\""),
            (-0.25, "−250\u{a0}mm", "−9 13/16\""),
            (-0.0003, "0\u{a0}mm", "0\""),
            (0.0009, "1\u{a0}mm", "1/16\""),
            (4.572, "4572\u{a0}mm", "15'-0\""),
            (f64::NAN, "–", "–"),
        ] {
            assert_eq!((mark(value_m, System::Metric).as_str(), mark(value_m, System::Us).as_str()), (metric, us));
        }
    }
}
