//! The few real functions the mechanics needs.
//!
//! Sine, cosine and arctangent come from `libm` on every platform, so that a plan computed in the browser equals the native one
//! to the last bit. The square root is correctly rounded everywhere (IEEE 754), so the hardware's may be used where `std` offers it.

pub(crate) use libm::{atan2, cos, sin};

/// Sine and cosine of one angle, to the bit what [`sin`] and [`cos`] give, the angle reduced once.
pub(crate) use libm::sincos as sin_cos;

/// Square root of a non-negative number; negative rounding noise counts as zero.
#[inline]
pub(crate) fn sqrt(value: f64) -> f64 {
    let value = value.max(0.0);
    #[cfg(feature = "std")]
    return value.sqrt();
    #[cfg(not(feature = "std"))]
    return libm::sqrt(value);
}

/// Length of a vector. Coordinates are metres, so neither overflow nor underflow can occur and `hypot`'s care is not needed.
#[inline]
pub(crate) fn length(vector: kurbo::Vec2) -> f64 {
    sqrt(vector.hypot2())
}

/// A quarter turn counter-clockwise: `ẑ × vector`.
#[inline]
pub(crate) fn quarter_turn(vector: kurbo::Vec2) -> kurbo::Vec2 {
    kurbo::Vec2::new(-vector.y, vector.x)
}

/// Natural logarithm and power, from `libm` like the rest.
pub(crate) use libm::{log, pow};
