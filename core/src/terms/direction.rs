//! How the leaf moves, and how the wind stands to it.

use crate::terms::words::words;

words! {
    /// Which way the leaf moves.
    pub enum Direction {
        /// Leaf angle growing.
        Open = "open",
        /// Leaf angle shrinking.
        Close = "close",
    }
}

impl Direction {
    /// Both, opening first.
    pub const BOTH: [Direction; 2] = [Direction::Open, Direction::Close];

    /// +1 opening, −1 closing.
    #[must_use]
    pub const fn sign(self) -> f64 {
        match self {
            Direction::Open => 1.0,
            Direction::Close => -1.0,
        }
    }
}

/// How the wind stands to the movement.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WindCase {
    /// Against the movement at every angle: what the drive must overcome.
    Against,
    /// With the movement at every angle: what the drive must hold back.
    Following,
    /// From the job's fixed bearing, whichever way the leaf moves.
    Bearing,
}
