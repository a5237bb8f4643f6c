//! Numbers as people write them: either decimal mark, grouped thousands, fractions.

use super::refusal::{ReadError, ReadErrorCode};

fn refused<T>() -> Result<T, ReadError> {
    Err(ReadError::new(ReadErrorCode::NotANumber))
}

/// What a lone comma that could do either is taken for.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Comma {
    /// Refused as ambiguous.
    Ask,
    /// It groups thousands.
    Groups,
    /// It marks the decimals.
    Decimals,
}

/// The value of a fraction written as one character.
pub(super) fn glyph(character: char) -> Option<f64> {
    Some(match character {
        '½' => 1.0 / 2.0,
        '¼' => 1.0 / 4.0,
        '¾' => 3.0 / 4.0,
        '⅛' => 1.0 / 8.0,
        '⅜' => 3.0 / 8.0,
        '⅝' => 5.0 / 8.0,
        '⅞' => 7.0 / 8.0,
        '⅓' => 1.0 / 3.0,
        '⅔' => 2.0 / 3.0,
        _ => return None,
    })
}

/// An unsigned number: decimal, fraction, or a whole number and a fraction with a space or a hyphen between.
pub(super) fn number(text: &str, comma: Comma) -> Result<f64, ReadError> {
    let text = text.trim();
    if let Some((whole, fraction)) =
        text.chars().next_back().and_then(|last| Some((text.strip_suffix(last)?, glyph(last)?)))
    {
        return Ok(whole_before(whole)? + fraction);
    }
    let Some((left, below)) = text.split_once(['/', '⁄']) else { return decimal(text, comma) };
    let split = left.trim_end().rfind([' ', '-', '\u{a0}', '\u{202f}', '\u{2009}']);
    let (whole, above) = match split {
        Some(at) => (&left[..at], left[at..].trim_start_matches(|character: char| !character.is_ascii_digit())),
        None => ("", left),
    };
    let (above, below) = (digits(above)?, digits(below)?);
    if below == 0.0 { refused() } else { Ok(whole_before(whole)? + above / below) }
}

/// The whole number before a fraction; none is zero.
fn whole_before(text: &str) -> Result<f64, ReadError> {
    match text.trim().trim_end_matches('-').trim_end() {
        "" => Ok(0.0),
        whole => digits(whole),
    }
}

/// Digits and nothing else.
fn digits(text: &str) -> Result<f64, ReadError> {
    let text = text.trim();
    if text.is_empty() || !text.bytes().all(|byte| byte.is_ascii_digit()) {
        refused()
    } else {
        decimal(text, Comma::Ask)
    }
}

/// A decimal number.
///
/// Fifteen significant digits are kept: they and their power of ten are exact in `f64`, so one division rounds the value right
/// (Clinger 1990, "How to read floating point numbers accurately"), without the tables a reader of any length needs. Digits beyond
/// are less than any tape or scale tells.
fn decimal(text: &str, comma: Comma) -> Result<f64, ReadError> {
    let mark = decimal_mark(text, comma)?;
    let (mut mantissa, mut significant, mut scale) = (0u64, 0u32, 0i32);
    let (mut any, mut behind) = (false, false);
    for (at, character) in text.char_indices() {
        match character {
            '0'..='9' => {
                any = true;
                let kept = significant < 15;
                if kept {
                    mantissa = mantissa * 10 + (u64::from(character) - u64::from('0'));
                    significant += u32::from(mantissa > 0);
                }
                match (behind, kept) {
                    (false, false) => scale += 1,
                    (true, true) => scale -= 1,
                    _ => {}
                }
            }
            '.' | ',' => behind |= Some(at) == mark,
            ' ' | '\u{a0}' | '\u{202f}' | '\u{2009}' => {}
            _ => return refused(),
        }
    }
    if !any {
        return refused();
    }
    let power = power_of_ten(scale.unsigned_abs());
    Ok(if scale < 0 { mantissa as f64 / power } else { mantissa as f64 * power })
}

/// Which separator marks the decimals, by its place; the others group thousands.
fn decimal_mark(text: &str, comma: Comma) -> Result<Option<usize>, ReadError> {
    let points = text.matches('.').count();
    let commas = text.matches(',').count();
    let last = text.rfind(['.', ',']);
    // The last one marks the decimals where it stands once.
    let mark = last.filter(|&at| text.matches(&text[at..=at]).count() == 1);
    if points + commas > 1 && !grouped(text, mark) {
        return refused();
    }
    if points == 0 && commas == 1 && grouped(text, None) {
        return match comma {
            Comma::Ask => Err(ReadError::new(ReadErrorCode::Ambiguous)),
            Comma::Groups => Ok(None),
            Comma::Decimals => Ok(mark),
        };
    }
    Ok(mark)
}

/// Whether the separators before the decimal mark group the digits in threes, all by the same character.
fn grouped(text: &str, mark: Option<usize>) -> bool {
    let whole = &text[..mark.unwrap_or(text.len())];
    let mut separators = whole.chars().filter(|character| matches!(character, '.' | ','));
    let first = separators.next();
    let mut groups = whole.split(['.', ',']);
    let leading = groups.next().map_or(0, |group| group.trim().len());
    let plain = |group: &str| group.len() == 3 && group.bytes().all(|byte| byte.is_ascii_digit());
    first.is_some()
        && separators.all(|other| Some(other) == first)
        && (1..=3).contains(&leading)
        && !whole.starts_with('0')
        && groups.all(plain)
}

/// `10^exponent`, exact up to 22; larger ones only ever make a number that is refused by its range.
fn power_of_ten(exponent: u32) -> f64 {
    (0..exponent).fold(1.0, |power, _| power * 10.0)
}
