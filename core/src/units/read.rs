//! A number as a person types it.

use super::{Quantity, System};
use serde::Serialize;

/// Why a typed text is not a number of the wanted quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(ts_rs::TS))]
pub enum ReadErrorCode {
    /// Nothing was typed.
    Empty,
    /// Not a number, or a unit that does not fit the quantity.
    NotANumber,
    /// `1,234` may be a thousand or a bit over one: ask, do not guess.
    Ambiguous,
}

/// A typed text that could not be understood.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "describe", derive(ts_rs::TS))]
pub struct ReadError {
    /// Why.
    pub code: ReadErrorCode,
}

/// Reads a typed number, with or without a unit of either system, into the document's unit.
///
/// A decimal point and a decimal comma are both taken; a single comma with three digits behind it and at most three before is
/// refused as ambiguous. Spaces between digits are ignored. Never returns a value that is not finite.
///
/// # Errors
/// [`ReadErrorCode`] says why the text is not understood.
pub fn read(text: &str, quantity: Quantity, system: System) -> Result<f64, ReadError> {
    let text = text.trim();
    if text.is_empty() {
        return Err(ReadError { code: ReadErrorCode::Empty });
    }
    let (number, factor) = split_unit(text, quantity, system);
    let value = plain_number(number)? * factor;
    if value.is_finite() { Ok(value) } else { Err(ReadError { code: ReadErrorCode::NotANumber }) }
}

/// The part before the unit, and the unit's factor; without a unit, the system's own.
fn split_unit(text: &str, quantity: Quantity, system: System) -> (&str, f64) {
    let lengths = [Quantity::Length, Quantity::ShortLength];
    let family: &[Quantity] = if lengths.contains(&quantity) { &lengths } else { core::slice::from_ref(&quantity) };
    // The longest symbol that ends the text wins: "mm" before "m".
    let mut best: Option<(&str, f64, usize)> = None;
    for unit in family.iter().flat_map(|q| [q.unit(System::Metric), q.unit(System::Us)]) {
        if let Some(rest) = text.strip_suffix(unit.symbol).filter(|_| !unit.symbol.is_empty())
            && best.is_none_or(|(_, _, length)| unit.symbol.len() > length)
        {
            best = Some((rest.trim_end(), unit.factor, unit.symbol.len()));
        }
    }
    best.map_or((text, quantity.unit(system).factor), |(rest, factor, _)| (rest, factor))
}

/// A decimal number without unit.
///
/// Fifteen significant digits are kept: they and their power of ten are exact in `f64`, so one division rounds the value right
/// (Clinger 1990, "How to read floating point numbers accurately"), without the tables a reader of any length needs. Digits beyond
/// are less than any tape or scale tells.
fn plain_number(text: &str) -> Result<f64, ReadError> {
    let refused = Err(ReadError { code: ReadErrorCode::NotANumber });
    let (mut mantissa, mut significant, mut scale) = (0u64, 0u32, 0i32);
    let (mut before, mut behind) = (0u32, 0u32);
    let (mut separator, mut sign) = (None, None);
    for character in text.chars() {
        match character {
            '0'..='9' => {
                let digit = u64::from(character) - u64::from('0');
                let kept = significant < 15;
                if kept {
                    mantissa = mantissa * 10 + digit;
                    significant += u32::from(mantissa > 0);
                }
                match (separator.is_some(), kept) {
                    (false, false) => scale += 1,
                    (true, true) => scale -= 1,
                    _ => {}
                }
                if separator.is_some() { behind += 1 } else { before += 1 }
            }
            '.' | ',' if separator.is_none() => separator = Some(character),
            '-' | '−' | '+' if sign.is_none() && before + behind == 0 && separator.is_none() => {
                sign = Some(character)
            }
            ' ' | '\u{a0}' | '\u{202f}' | '\u{2009}' => {}
            _ => return refused,
        }
    }
    if before + behind == 0 {
        return refused;
    }
    if separator == Some(',') && behind == 3 && (1..=3).contains(&before) && significant > 3 {
        return Err(ReadError { code: ReadErrorCode::Ambiguous });
    }
    let value = match scale {
        0.. => mantissa as f64 * power_of_ten(scale.unsigned_abs()),
        _ => mantissa as f64 / power_of_ten(scale.unsigned_abs()),
    };
    Ok(if matches!(sign, Some('-' | '−')) { -value } else { value })
}

/// `10^exponent`, exact up to 22; larger ones only ever make a number that is refused by its range.
fn power_of_ten(exponent: u32) -> f64 {
    (0..exponent).fold(1.0, |power, _| power * 10.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_what_people_type() {
        for (text, quantity, system, expected) in [
            ("160", Quantity::Mass, System::Metric, 160.0),
            (" 3,2 ", Quantity::Length, System::Metric, 3.2),
            ("1905 mm", Quantity::ShortLength, System::Us, 1.905),
            ("75 in", Quantity::Length, System::Metric, 1.905),
            ("-0.5", Quantity::Angle, System::Metric, -0.5),
            ("−0,5°", Quantity::Angle, System::Metric, -0.5),
            ("1 200", Quantity::Torque, System::Metric, 1200.0),
            ("100 lb", Quantity::Mass, System::Metric, 45.359237),
            ("0,125", Quantity::Length, System::Metric, 0.125),
        ] {
            let value = read(text, quantity, system).unwrap();
            assert!((value - expected).abs() <= 1e-12 * expected.abs(), "{text}: {value}");
        }
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
        let code = |text| read(text, Quantity::Length, System::Metric).unwrap_err().code;
        assert_eq!(code(""), ReadErrorCode::Empty);
        assert_eq!(code("1,234"), ReadErrorCode::Ambiguous);
        assert_eq!(code("123,456"), ReadErrorCode::Ambiguous);
        assert_eq!(code("abc"), ReadErrorCode::NotANumber);
        assert_eq!(code("1.2.3"), ReadErrorCode::NotANumber);
        assert_eq!(code("3 kg"), ReadErrorCode::NotANumber);
        assert_eq!(code("-"), ReadErrorCode::NotANumber);
        assert_eq!(code("NaN"), ReadErrorCode::NotANumber);
        assert_eq!(code(&"9".repeat(400)), ReadErrorCode::NotANumber);
    }
}
