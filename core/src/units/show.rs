//! A value as a person reads it.

use super::quantity::{Quantity, System};
use super::rounding::Rounding;
use super::tape::{limit_on_tape, on_tape};
use alloc::{format, string::String};

/// The unit's symbol alone, as it stands beside an input; empty for plain numbers.
#[must_use]
pub fn symbol(quantity: Quantity, system: System) -> &'static str {
    quantity.unit(system).symbol
}

/// The value with its unit: `"308 N·m"`; a length in US units by the marks of a tape, `2'-10 3/8"`. `value` in the document's unit. A value that is not finite shows as a dash.
#[must_use]
pub fn show(value: f64, quantity: Quantity, system: System) -> String {
    with_unit(value, quantity, system, Rounding::Nearest)
}

/// One end of an allowed range, rounded so that the shown number is itself allowed.
#[must_use]
pub fn show_limit(value: f64, quantity: Quantity, system: System, rounding: Rounding) -> String {
    with_unit(value, quantity, system, rounding)
}

/// What stands in an input that nobody typed in: the number alone, or a length by the marks of a tape with its own. What is shown
/// may differ from the value by half a step of the tape; the value is not changed by being shown. Empty where it is not finite.
#[must_use]
pub fn entered(value: f64, quantity: Quantity, system: System) -> String {
    let marks = if value.is_finite() { on_tape(value, quantity, system) } else { None };
    marks.unwrap_or_else(|| plain_number(value, quantity, system))
}

/// The number alone, in decimals: six significant digits, so that what is shown is what is meant.
#[must_use]
pub fn plain_number(value: f64, quantity: Quantity, system: System) -> String {
    let value = quantity.unit(system).of_document(value);
    if !value.is_finite() {
        return String::new();
    }
    let places = match value.abs() {
        size if size >= 99_999.95 => 0,
        size if size >= 9_999.995 => 1,
        size if size >= 999.999_5 => 2,
        size if size >= 99.999_95 => 3,
        size if size >= 9.999_995 => 4,
        _ => 5,
    };
    trim(&format!("{value:.places$}"))
}

fn with_unit(value: f64, quantity: Quantity, system: System, rounding: Rounding) -> String {
    if !value.is_finite() {
        return String::from("–");
    }
    if let Some(marks) = limit_on_tape(value, quantity, system, rounding) {
        return marks;
    }
    let unit = quantity.unit(system);
    let number = trimmed(unit.of_document(value), quantity, rounding);
    match unit.symbol {
        "" => number,
        // Degrees stand close to their number, every other unit after a no-break space (SI brochure, 5.4.3).
        "°" => format!("{number}°"),
        symbol => format!("{number}\u{a0}{symbol}"),
    }
}

/// Three significant digits and whole units above, no more decimals than the quantity is ever known to.
fn decimals(size: f64, quantity: Quantity) -> usize {
    let most = match quantity {
        Quantity::Count => 0,
        // A wind is never known to a hundredth, the edge of a leaf is told by millimetres a second.
        Quantity::Speed if size < 1.0 => 3,
        Quantity::Angle | Quantity::Percent | Quantity::Mass | Quantity::Speed | Quantity::Force | Quantity::Power => 1,
        Quantity::Stiffness | Quantity::Voltage | Quantity::Pressure | Quantity::Temperature | Quantity::Resistance => {
            1
        }
        Quantity::ShortLength | Quantity::Torque | Quantity::AngularSpeed | Quantity::AngularAcceleration => 2,
        Quantity::Time | Quantity::Energy | Quantity::Current | Quantity::Charge => 2,
        Quantity::Length | Quantity::Area | Quantity::Inertia => 3,
        Quantity::Density | Quantity::Ratio => 4,
    };
    let significant = match size {
        s if s >= 100.0 => 0,
        s if s >= 10.0 => 1,
        s if s >= 1.0 => 2,
        s if s >= 0.1 => 3,
        _ => 4,
    };
    if significant < most { significant } else { most }
}

fn trimmed(value: f64, quantity: Quantity, rounding: Rounding) -> String {
    let places = decimals(value.abs(), quantity);
    let step = [1.0, 10.0, 100.0, 1000.0, 10_000.0][places];
    // A limit that is a shown number already must not be pushed off it by the noise of the conversion.
    let noise = 1e-9 * (value * step).abs().max(1.0);
    let value = match rounding {
        Rounding::Nearest => value,
        Rounding::Down => libm::floor(value * step + noise) / step,
        Rounding::Up => libm::ceil(value * step - noise) / step,
    };
    trim(&format!("{value:.places$}"))
}

/// Without trailing zeros behind the point, with a typographic minus, and without a sign on a value that shows as zero.
fn trim(text: &str) -> String {
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { text };
    match text.strip_prefix('-') {
        Some("0") => String::from("0"),
        Some(rest) => format!("−{rest}"),
        None => String::from(text),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shows_what_a_person_would_write() {
        // Factors: NIST SP 811 Appendix B.8 (1 lbf·ft = 1.355 818 N·m, 1 lb = 0.453 592 37 kg, 1 ft = 0.3048 m).
        for (value, quantity, system, expected) in [
            (308.27, Quantity::Torque, System::Metric, "308\u{a0}N·m"),
            (1.355818, Quantity::Torque, System::Us, "1\u{a0}lbf·ft"),
            (47.88026, Quantity::Pressure, System::Us, "1\u{a0}psf"),
            (45.359237, Quantity::Mass, System::Us, "100\u{a0}lb"),
            (0.8728, Quantity::ShortLength, System::Metric, "873\u{a0}mm"),
            (0.0254, Quantity::ShortLength, System::Us, "1\""),
            (37.768, Quantity::Angle, System::Us, "37.8°"),
            (-0.00001, Quantity::Torque, System::Metric, "0\u{a0}N·m"),
            (-25.04, Quantity::Torque, System::Metric, "−25\u{a0}N·m"),
            (100.0, Quantity::Temperature, System::Us, "212\u{a0}°F"),
            (-20.0, Quantity::Temperature, System::Us, "−4\u{a0}°F"),
            (21.5, Quantity::Temperature, System::Metric, "21.5\u{a0}°C"),
            (0.77067, Quantity::Percent, System::Metric, "77.1\u{a0}%"),
            (1.29757, Quantity::Ratio, System::Metric, "1.3"),
            (f64::NAN, Quantity::Mass, System::Metric, "–"),
        ] {
            assert_eq!(show(value, quantity, system), expected);
        }
    }

    #[test]
    fn inputs_show_what_is_meant() {
        assert_eq!(plain_number(0.8728, Quantity::ShortLength, System::Metric), "872.8");
        assert_eq!(plain_number(1.6, Quantity::Length, System::Metric), "1.6");
        assert_eq!(plain_number(-0.25, Quantity::ShortLength, System::Metric), "−250");
        // 0.8728 m / 0.0254 = 34.362 204… in.
        assert_eq!(plain_number(0.8728, Quantity::ShortLength, System::Us), "34.3622");
    }

    #[test]
    fn limits_round_into_the_allowed_range() {
        // 5000 kg = 11 023.11 lb, 1 kg = 2.2046 lb.
        assert_eq!(show_limit(5000.0, Quantity::Mass, System::Us, Rounding::Down), "11023\u{a0}lb");
        assert_eq!(show_limit(1.0, Quantity::Mass, System::Us, Rounding::Up), "2.3\u{a0}lb");
        assert_eq!(show_limit(0.3, Quantity::Length, System::Metric, Rounding::Up), "0.3\u{a0}m");
    }
}
