//! A length as it is marked with a tape.

use super::feet::feet_inches;
use super::quantity::{INCH_M, System};
use alloc::{format, string::String};
use serde::Serialize;

/// The coarser of the two steps a mark is written to, m: a sixteenth of an inch; in metric units it is a millimetre.
pub const TAPE_STEP_M: f64 = INCH_M / 16.0;

/// A length to the step of a tape: whole millimetres, or feet, inches and sixteenths. `value_m` in metres; a value that is not finite shows as a dash.
#[must_use]
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

/// A mark as it is told: how far from its line, and on which side. A tape has no minus.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "describe", derive(ts_rs::TS))]
pub struct MarkApart {
    /// The distance, without a sign.
    pub text: String,
    /// Where it lies.
    pub side: MarkSide,
}

/// The side of its line a mark lies on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(ts_rs::TS))]
pub enum MarkSide {
    /// Where the number of the document is negative.
    Minus,
    /// On the line, to the step of the tape: there is no side to tell.
    On,
    /// Where the number of the document is positive.
    Plus,
}

/// A mark and its side apart; both are of the rounded length. `value_m` in metres; one that is not finite shows as a dash and lies on no side.
#[must_use]
pub fn mark_apart(value_m: f64, system: System) -> MarkApart {
    let (text, none) = (mark(value_m.abs(), system), mark(0.0, system));
    let side = match value_m {
        _ if text == none || !value_m.is_finite() => MarkSide::On,
        value if value < 0.0 => MarkSide::Minus,
        _ => MarkSide::Plus,
    };
    MarkApart { text, side }
}

#[cfg(test)]
mod tests {
    use super::{MarkSide, mark, mark_apart};
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

    /// 9 13/16 in is 249.2375 mm, 0.3 mm is less than half of either step, 0.9 mm more.
    #[test]
    fn has_a_side_and_no_minus() {
        for (value_m, metric, us, side) in [
            (-0.25, "250\u{a0}mm", "9 13/16\"", MarkSide::Minus),
            (0.25, "250\u{a0}mm", "9 13/16\"", MarkSide::Plus),
            (-0.0003, "0\u{a0}mm", "0\"", MarkSide::On),
            (0.0, "0\u{a0}mm", "0\"", MarkSide::On),
            (-0.0009, "1\u{a0}mm", "1/16\"", MarkSide::Minus),
            (f64::NEG_INFINITY, "–", "–", MarkSide::On),
        ] {
            for (system, text) in [(System::Metric, metric), (System::Us, us)] {
                let apart = mark_apart(value_m, system);
                assert_eq!((apart.text.as_str(), apart.side), (text, side), "{value_m}");
            }
        }
    }
}
