//! The corners of the box of tape errors: an arm set as wrongly as the tape may.

/// Dimensions that a tape sets: shaft x and y, bracket u and v, crank, link.
pub(crate) const SET_DIMENSIONS: usize = 6;

/// One of the 64 corners: a bit a dimension, in the order of [`Arm::lengths_m`], set where it is long by its error and not short by it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Corner(u8);

impl Corner {
    /// Every one of them.
    pub fn all() -> impl Iterator<Item = Corner> {
        (0..1 << SET_DIMENSIONS).map(Corner)
    }

    /// The corner whose dimensions are long where it is said.
    pub fn of(long: impl Fn(usize) -> bool) -> Corner {
        Corner((0..SET_DIMENSIONS).fold(0, |bits, index| bits | u8::from(long(index)) << index))
    }

    /// +1 where a dimension is long, −1 where it is short.
    pub fn sign(self, index: usize) -> f64 {
        if self.0 >> index & 1 == 1 { 1.0 } else { -1.0 }
    }
}
