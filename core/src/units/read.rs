//! What a person types, read into the document's unit.

use super::names::{factor_of, unit_named};
use super::number::{Comma, number};
use super::quantity::{FOOT_M, INCH_M, Quantity, System};
use super::refusal::{ReadError, ReadErrorCode};

/// Reads a typed number, with or without a unit of either system, into the document's unit.
///
/// Decimal point and decimal comma, grouped thousands, fractions (`75 1/2`, `3-1/2`, `½`), feet and inches (`6' 3-1/2"`,
/// `6ft 3.5in`, `6′3½″`), and the usual spellings of units (`1905 mm` while inches are shown). A lone comma that could group
/// thousands as well as mark decimals is refused as ambiguous, with both readings, unless only one of them makes a number
/// (feet before inches are whole: `1,234' 6"`). Never returns a value that is not finite.
///
/// # Errors
/// [`ReadErrorCode`] says why the text is not understood.
pub fn read(text: &str, quantity: Quantity, system: System) -> Result<f64, ReadError> {
    let taken = |comma| read_taking(text, quantity, system, comma);
    match taken(Comma::Ask) {
        Err(error) if error.code == ReadErrorCode::Ambiguous => match (taken(Comma::Groups), taken(Comma::Decimals)) {
            (Ok(groups), Ok(decimals)) => Err(ReadError { readings: Some([groups, decimals]), ..error }),
            (groups, decimals) => groups.or(decimals),
        },
        other => other,
    }
}

fn read_taking(text: &str, quantity: Quantity, system: System, comma: Comma) -> Result<f64, ReadError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(ReadError::new(ReadErrorCode::Empty));
    }
    let (sign, text) = match text.strip_prefix(['-', '−', '–']) {
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, text.strip_prefix('+').unwrap_or(text).trim_start()),
    };
    let length = matches!(quantity, Quantity::Length | Quantity::ShortLength);
    let term = if length { length_m } else { one_term };
    let value = term(text, quantity, system, comma, sign)?;
    if value.is_finite() { Ok(value) } else { refused() }
}

fn refused<T>() -> Result<T, ReadError> {
    Err(ReadError::new(ReadErrorCode::NotANumber))
}

/// Where the unit begins: behind the last character that can belong to a number. A fraction's glyph does, a unit's `²` does not.
fn unit_start(text: &str) -> usize {
    let numeric = |character: char| {
        character.is_ascii_digit()
            || matches!(character, '.' | ',' | '/' | '⁄' | '-' | ' ' | '\u{a0}' | '\u{202f}' | '\u{2009}')
            || super::number::glyph(character).is_some()
    };
    text.find(|character| !numeric(character)).unwrap_or(text.len())
}

/// A number and at most one unit. The sign belongs to the number: the zero of a temperature is somewhere else.
fn one_term(text: &str, quantity: Quantity, system: System, comma: Comma, sign: f64) -> Result<f64, ReadError> {
    let (digits, unit) = text.split_at(unit_start(text));
    let unit = match unit.trim() {
        "" => Some(quantity.unit(system)),
        name => unit_named(name, quantity),
    };
    // A hyphen before a unit belongs to neither ("75-lb").
    let value = sign * number(digits.trim_end().trim_end_matches('-'), comma)?;
    unit.map_or_else(refused, |unit| Ok(unit.to_document(value)))
}

/// A length: one term, or feet and then inches.
fn length_m(text: &str, quantity: Quantity, system: System, comma: Comma, sign: f64) -> Result<f64, ReadError> {
    let (digits, rest) = text.split_at(unit_start(text));
    let Some(next) =
        rest.find(|character: char| character.is_ascii_digit() || super::number::glyph(character).is_some())
    else {
        return one_term(text, quantity, system, comma, sign);
    };
    let (unit, inches) = rest.split_at(next);
    let unit = unit.trim_end().trim_end_matches(['-', '–']).trim();
    let feet = number(digits, comma)?;
    // Half a foot is never followed by inches: only whole feet are.
    if factor_of(unit, quantity) != Some(FOOT_M) || feet != libm::trunc(feet) {
        return refused();
    }
    let (digits, unit) = inches.split_at(unit_start(inches));
    match unit.trim() {
        "" => {}
        name if factor_of(name, quantity) == Some(INCH_M) => {}
        _ => return refused(),
    }
    Ok(sign * (feet * FOOT_M + number(digits, comma)? * INCH_M))
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::string::ToString;

    #[track_caller]
    fn reads(text: &str, quantity: Quantity, system: System, expected: f64) {
        let value = read(text, quantity, system).unwrap_or_else(|error| panic!("{text}: {error:?}"));
        assert!((value - expected).abs() <= 1e-12 * expected.abs(), "{text}: {value}, not {expected}");
    }

    #[test]
    fn reads_what_people_type() {
        use System::{Metric, Us};
        // Factors: NIST SP 811, Appendix B.8: 1 in = 0.0254 m, 1 lb = 0.453 592 37 kg, 1 lbf = 4.448 221 615 260 5 N.
        for (text, quantity, system, expected) in [
            ("160", Quantity::Mass, Metric, 160.0),
            (" 3,2 ", Quantity::Length, Metric, 3.2),
            ("1905 mm", Quantity::ShortLength, Us, 1.905),
            ("75 in", Quantity::Length, Metric, 1.905),
            ("-0.5", Quantity::Angle, Metric, -0.5),
            ("−0,5°", Quantity::Angle, Metric, -0.5),
            ("1 200", Quantity::Torque, Metric, 1200.0),
            ("100 lb", Quantity::Mass, Metric, 45.359237),
            ("0,125", Quantity::Length, Metric, 0.125),
            ("50 %", Quantity::Percent, Metric, 0.5),
            ("20 ft²", Quantity::Area, Metric, 1.8580608),
            ("20 sq ft", Quantity::Area, Metric, 1.8580608),
            ("10 lb", Quantity::Force, Metric, 44.482216152605),
            ("300 ft-lb", Quantity::Torque, Metric, 300.0 * 0.3048 * 4.4482216152605),
            ("300 Nm", Quantity::Torque, Us, 300.0),
            ("50 km/h", Quantity::Speed, Metric, 50.0 / 3.6),
            ("2 rpm", Quantity::AngularSpeed, Metric, 12.0),
            ("1,234.5 lb", Quantity::Mass, Us, 1234.5 * 0.45359237),
            ("1.234,5", Quantity::Mass, Metric, 1234.5),
            ("1,234,567", Quantity::Ratio, Metric, 1_234_567.0),
            // Fixed points of the scales: water freezes at 32 °F and boils at 212 °F, both scales meet at -40.
            ("212 °F", Quantity::Temperature, Metric, 100.0),
            ("-40", Quantity::Temperature, Us, -40.0),
            ("−4 °F", Quantity::Temperature, Metric, -20.0),
            ("-12,5 °C", Quantity::Temperature, Us, -12.5),
            ("0 K", Quantity::Temperature, Metric, -273.15),
            ("30 psi", Quantity::Pressure, Metric, 30.0 * 4.4482216152605 / 0.0254 / 0.0254),
        ] {
            reads(text, quantity, system, expected);
        }
    }

    #[test]
    fn reads_feet_inches_and_fractions() {
        // 75 1/2 in = 1.9177 m.
        for text in [
            "6' 3-1/2\"",
            "6'-3 1/2\"",
            "6ft 3.5in",
            "6 ft 3 1/2 in",
            "6′3½″",
            "6' 3½",
            "6' 3.5",
            "75 1/2",
            "75-1/2\"",
            "75½",
            "75.5 inches",
            "6 feet 3,5 inches",
            "75 1⁄2",
        ] {
            reads(text, Quantity::ShortLength, System::Us, 1.9177);
        }
        reads("1/2", Quantity::ShortLength, System::Us, 0.0127);
        reads("6'", Quantity::ShortLength, System::Us, 1.8288);
        reads("-6' 3-1/2\"", Quantity::ShortLength, System::Us, -1.9177);
        reads("10' 6\"", Quantity::Length, System::Metric, 3.2004);
    }

    /// `str::parse` of the standard library rounds correctly for any length; up to fifteen digits this reader must equal it to the bit.
    #[test]
    fn rounds_as_the_standard_library_does() {
        for text in [
            "0.1",
            "0.8728",
            "3.3333",
            "123456.789012345",
            "0.000000000000001",
            "999999999999999",
            "-0.3",
            "12.70",
            "007.5",
            ".5",
            "5.",
        ] {
            let value = read(text, Quantity::Length, System::Metric).unwrap();
            assert_eq!(value.to_bits(), text.parse::<f64>().unwrap().to_bits(), "{text}");
        }
        let long = read("3.14159265358979323846264338327950288", Quantity::Length, System::Metric).unwrap();
        assert!((long - core::f64::consts::PI).abs() < 1e-14);
    }

    #[test]
    fn refuses_what_it_would_have_to_guess() {
        let code = |text: &str| read(text, Quantity::Length, System::Metric).unwrap_err().code;
        assert_eq!(code(""), ReadErrorCode::Empty);
        assert_eq!(code("1,234"), ReadErrorCode::Ambiguous);
        assert_eq!(code("123,456 mm"), ReadErrorCode::Ambiguous);
        let readings = |text: &str| read(text, Quantity::ShortLength, System::Us).unwrap_err().readings;
        // 1,234 in = 31.3436 m, 1.234 in = 0.031 343 6 m, by the inch of 0.0254 m.
        for (found, expected) in readings("1,234").unwrap().into_iter().zip([31.3436, 0.031_343_6]) {
            assert!((found - expected).abs() < 1e-12, "{found}");
        }
        assert_eq!(readings("-1,234 mm"), Some([-1.234, -0.001_234]));
        assert_eq!(readings("abc"), None);
        // Only whole feet have inches behind them.
        reads("1,234' 6\"", Quantity::Length, System::Us, 1234.5 * 0.3048);
        for text in [
            "abc",
            "1.2.3",
            "3 kg",
            "-",
            "NaN",
            "inf",
            "1e5",
            "6.5' 3\"",
            "3\" 6'",
            "6' 3 mm",
            "1/0",
            "1/2/3",
            "½½",
            "1,23,456",
            "--3",
            "mm",
            &"9".repeat(400).to_string(),
        ] {
            assert_eq!(code(text), ReadErrorCode::NotANumber, "{text}");
        }
    }
}
