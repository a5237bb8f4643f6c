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

fn plain_number(text: &str) -> Result<f64, ReadError> {
    let refused = Err(ReadError { code: ReadErrorCode::NotANumber });
    // Long enough for any number a person types, short enough to need no allocation.
    let mut buffer = [0u8; 40];
    let mut length = 0;
    let mut commas = 0;
    let mut points = 0;
    for character in text.chars() {
        let byte = match character {
            '0'..='9' => character as u8,
            '.' => {
                points += 1;
                b'.'
            }
            ',' => {
                commas += 1;
                b'.'
            }
            '-' | '−' | '+' if length == 0 => {
                if character == '+' {
                    b'+'
                } else {
                    b'-'
                }
            }
            ' ' | '\u{a0}' | '\u{202f}' | '\u{2009}' => continue,
            _ => return refused,
        };
        let Some(slot) = buffer.get_mut(length) else { return refused };
        *slot = byte;
        length += 1;
    }
    if points + commas > 1 {
        return refused;
    }
    let Ok(digits) = core::str::from_utf8(&buffer[..length]) else { return refused };
    if commas == 1 {
        let unsigned = digits.trim_start_matches(['+', '-']);
        let (before, behind) = unsigned.split_once('.').unwrap_or((unsigned, ""));
        if behind.len() == 3 && (1..=3).contains(&before.len()) && before != "0" {
            return Err(ReadError { code: ReadErrorCode::Ambiguous });
        }
    }
    digits.parse().or(refused)
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

    #[test]
    fn refuses_what_it_would_have_to_guess() {
        let code = |text| read(text, Quantity::Length, System::Metric).unwrap_err().code;
        assert_eq!(code(""), ReadErrorCode::Empty);
        assert_eq!(code("1,234"), ReadErrorCode::Ambiguous);
        assert_eq!(code("abc"), ReadErrorCode::NotANumber);
        assert_eq!(code("1.2.3"), ReadErrorCode::NotANumber);
        assert_eq!(code("3 kg"), ReadErrorCode::NotANumber);
        assert_eq!(code("-"), ReadErrorCode::NotANumber);
        assert_eq!(code("NaN"), ReadErrorCode::NotANumber);
        assert_eq!(code(&"9".repeat(400)), ReadErrorCode::NotANumber);
    }
}
