//! What stands around the gate, said once for everything that looks at it.

use super::KeepOut;
use crate::job::table::*;
use crate::terms::words::words;
use crate::units::Quantity::{Length, ShortLength};
use alloc::vec::Vec;

/// The most that may stand around: as much as the lists of schema 1 held together; beyond it a hostile document is refused.
pub(super) const MOST_OBSTACLES: u32 = 200;

block! {
    /// Something that stands around: a rectangle in plan, its sides along the closed leaf and across it.
    pub struct Obstacle at "obstacles." {
        /// What it is; default something else.
        kind: Option<ObstacleKind> = word(ObstacleKind::WORDS),
        /// Whether the leaf is hung on it, so that a gap closes beside it; no unless said.
        hinge_post: Option<bool> = flag(),
        /// Along the closed leaf from the hinge line, m.
        x_m: [f64; 2] = range(ShortLength, -20.0, 20.0, 0.1),
        /// Square to the closed leaf from the axis line, towards the side it opens to, m.
        y_m: [f64; 2] = range(ShortLength, -20.0, 20.0, 0.2),
        /// How high it is, m; for the person who reads it: whether it stops arm or leaf is said by `stops`.
        height_m: Option<f64> = number(Length, 0.0, 20.0, 1.8),
        /// What cannot pass or stand there; all three where it is not said.
        stops: Option<Vec<Stopped>> = list(&Kind::Word(Stopped::WORDS), 3),
    }
}

words! {
    /// What an obstacle is.
    pub enum ObstacleKind {
        /// A post or pillar.
        Post = "post",
        /// A wall, a fence, a hedge.
        Wall = "wall",
        /// A kerb or step.
        Kerb = "kerb",
        /// Something else: the drive, a drop, a bed.
        Other = "other",
    }
}

words! {
    /// What an obstacle stops.
    pub enum Stopped {
        /// The shaft, the body of the operator and its pad: they cannot stand there.
        Pad = "pad",
        /// Crank and link: they cannot pass.
        Arm = "arm",
        /// The leaf: it cannot pass.
        Leaf = "leaf",
    }
}

impl Obstacle {
    /// Where it stands.
    #[must_use]
    pub fn place(&self) -> KeepOut {
        KeepOut { x_m: self.x_m, y_m: self.y_m }
    }

    /// Whether the leaf is hung on it.
    #[must_use]
    pub fn is_hinge_post(&self) -> bool {
        self.hinge_post == Some(true)
    }

    /// Whether it stops something.
    #[must_use]
    pub fn stops(&self, what: Stopped) -> bool {
        self.stops.as_ref().is_none_or(|stopped| stopped.contains(&what))
    }
}
