//! Lengths in US units wherever a person reads or types one: by the marks of a tape, in decimals only where a tape has no mark near.

use super::feet::feet_inches;
use super::quantity::{INCH_M, Quantity, System};
use super::rounding::Rounding;
use alloc::string::String;

/// Marks to an inch: sixty-fourths below one, sixteenths from there on.
fn denominator(value_m: f64) -> u32 {
    if value_m.abs() < INCH_M { 64 } else { 16 }
}

fn is_taped(quantity: Quantity, system: System) -> bool {
    system == System::Us && matches!(quantity, Quantity::Length | Quantity::ShortLength)
}

/// The mark next to a finite length, m.
///
/// `None` in metric units, for what is no length, and for what is less than an inch and further than a fiftieth of itself from every
/// sixty-fourth: the wall of a tube or a friction arm is told by a calliper, and one sixty-fourth would be another number.
pub(super) fn on_tape(value_m: f64, quantity: Quantity, system: System) -> Option<String> {
    let steps = value_m / INCH_M * f64::from(denominator(value_m));
    let near = value_m.abs() >= INCH_M || (libm::round(steps) - steps).abs() <= 0.02 * steps.abs();
    (is_taped(quantity, system) && near).then(|| feet_inches(value_m, denominator(value_m)))
}

/// The next mark inside a finite limit, m, so that the number shown is itself allowed; `None` as above, and below a sixteenth of an inch.
pub(super) fn limit_on_tape(value_m: f64, quantity: Quantity, system: System, rounding: Rounding) -> Option<String> {
    let denominator = denominator(value_m);
    let step_m = INCH_M / f64::from(denominator);
    // A limit on a mark must not be pushed off it by the noise of the conversion.
    let (steps, noise) = (value_m / step_m, 1e-9 * (value_m / step_m).abs().max(1.0));
    let steps = match rounding {
        Rounding::Nearest => return on_tape(value_m, quantity, system),
        Rounding::Down => libm::floor(steps + noise),
        Rounding::Up => libm::ceil(steps - noise),
    };
    let is_seen = value_m == 0.0 || value_m.abs() >= INCH_M / 16.0;
    (is_taped(quantity, system) && is_seen).then(|| feet_inches(steps * step_m, denominator))
}
