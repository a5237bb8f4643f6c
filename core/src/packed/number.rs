//! Numbers as somebody typed them: a short decimal in some unit, and the unit's factor.
//!
//! A value typed in inches is a decimal times 0.0254, rounded once to a double; its own shortest decimal may have seventeen digits.
//! So a number is kept as (unit, decimals, digits) wherever that gives back the very same bits, and as its eight bytes where
//! nothing does.

use super::tag;
use alloc::vec::Vec;

/// First tag of a number; the tag holds unit, sign and decimals.
pub const FIRST: u8 = 16;

const DECIMALS: u8 = 8;

/// More digits than this are no shorter than the eight bytes.
const MOST: f64 = (1u64 << 49) as f64;

const FOOT: f64 = 0.3048;
const INCH: f64 = 0.0254;
const POUND: f64 = 0.453_592_37;
const POUND_FORCE: f64 = POUND * crate::STANDARD_GRAVITY_M_S2;

/// Whole feet and then inches, the digits being inches: such a length is the sum of two roundings.
const FEET_AND_INCHES: usize = 5;

/// Factors of the units, by number. Append-only, and never made another way: links depend on every bit of them.
const FACTORS: [f64; 15] = [
    1.0,
    0.001,
    0.01,
    INCH,
    FOOT,
    f64::NAN,
    POUND,
    POUND_FORCE,
    POUND_FORCE * FOOT,
    5280.0 * FOOT / 3600.0,
    FOOT * FOOT,
    POUND_FORCE / (FOOT * FOOT),
    POUND / (FOOT * FOOT * FOOT),
    POUND * FOOT * FOOT,
    1.0 / 3.6,
];

/// Powers of ten by decimals; all exact.
const TENS: [f64; DECIMALS as usize] = [1.0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7];

/// The value of unsigned digits, as a reader of typed text makes it: one rounding for the decimal, one for the unit.
fn value_of(unit: usize, decimals: usize, digits: u64) -> f64 {
    let typed = digits as f64 / TENS[decimals];
    if unit == FEET_AND_INCHES {
        let feet = libm::floor(typed / 12.0);
        feet * FOOT + (typed - feet * 12.0) * INCH
    } else {
        typed * FACTORS[unit]
    }
}

/// Digits that may give the value back; whether they do is for the caller to try.
fn digits_of(magnitude: f64, unit: usize, decimals: usize) -> Option<u64> {
    let factor = if unit == FEET_AND_INCHES { INCH } else { FACTORS[unit] };
    let digits = libm::round(magnitude / factor * TENS[decimals]);
    (digits < MOST).then_some(digits as u64)
}

pub fn write(bytes: &mut Vec<u8>, value: f64) {
    let (magnitude, negative) = (value.abs(), value.is_sign_negative());
    let mut best: Option<(u64, usize, usize)> = None;
    if magnitude.is_finite() {
        for unit in 0..FACTORS.len() {
            for decimals in 0..TENS.len() {
                let Some(digits) = digits_of(magnitude, unit, decimals) else { break };
                if value_of(unit, decimals, digits).to_bits() == magnitude.to_bits() {
                    if best.is_none_or(|(fewest, ..)| length(digits) < length(fewest)) {
                        best = Some((digits, unit, decimals));
                    }
                    break;
                }
            }
        }
    }
    match best {
        Some((digits, unit, decimals)) => {
            bytes.push(FIRST + (unit as u8 * 2 + u8::from(negative)) * DECIMALS + decimals as u8);
            write_varint(bytes, digits);
        }
        None => {
            bytes.push(tag::RAW);
            bytes.extend(value.to_bits().to_be_bytes());
        }
    }
}

/// The number of a tag from [`FIRST`] on and the digits behind it.
pub fn read(tag: u8, digits: u64) -> f64 {
    let place = tag - FIRST;
    let (unit, negative) = (usize::from(place / DECIMALS / 2), place / DECIMALS % 2 == 1);
    let magnitude = value_of(unit, usize::from(place % DECIMALS), digits);
    if negative { -magnitude } else { magnitude }
}

fn length(digits: u64) -> u32 {
    (64 - (digits | 1).leading_zeros()).div_ceil(7)
}

/// Seven bits a byte, lowest first, the eighth set while more follow.
pub fn write_varint(bytes: &mut Vec<u8>, mut value: u64) {
    while value >= 0x80 {
        bytes.push(value as u8 | 0x80);
        value >>= 7;
    }
    bytes.push(value as u8);
}
