//! Ways to round.

/// Which way a shown number may differ from the exact one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    /// To the nearest shown digit.
    Nearest,
    /// Never above the exact value: for the upper end of a range.
    Down,
    /// Never below the exact value: for the lower end of a range.
    Up,
}
