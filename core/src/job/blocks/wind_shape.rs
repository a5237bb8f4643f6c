//! What the leaf looks like to the wind.

use crate::job::table::*;
use crate::terms::BarShape;
use crate::units::Quantity::{Ratio, ShortLength};

choice! {
    /// What the leaf looks like to the wind. Needs the leaf's height.
    #[derive(Copy)]
    pub enum WindShape by "kind" {
        /// ASCE 7 Fig 29.3-1: less than 30 % openings.
        Asce7Wall(Asce7Wall) = "asce7_wall",
        /// ASCE 7 Fig 29.4-2: an open lattice.
        Asce7Open(Asce7Open) = "asce7_open",
        /// EN 1991-1-4 §7.4.1: at most 20 % openings.
        En1991Wall(En1991Wall) = "en1991_wall",
        /// EN 1991-1-4 §7.11: more than 20 % openings.
        En1991Lattice(En1991Lattice) = "en1991_lattice",
    }
}

block! {
    /// A wall by ASCE 7, cases A and B; case C is excluded.
    #[derive(Copy)]
    pub struct Asce7Wall at "wind.shape." also at "storm.shape." {
        /// Solid over gross area, at least 0.7.
        solidity: f64 = number(Ratio, 0.0, 1.0, 1.0),
        /// Height of the leaf over height of its top; default 1.
        clearance: Option<f64> = assumed(Ratio, 0.7, 1.0, 1.0) => clearance,
        /// Case B: the resultant 0.2 of the length off the middle, towards the latch edge; default yes.
        eccentric: Option<bool> = flag().listed(),
    }
}

block! {
    /// An open lattice by ASCE 7.
    #[derive(Copy)]
    pub struct Asce7Open at "wind.shape." also at "storm.shape." {
        /// Flat-sided or round.
        bars: BarShape = word(BarShape::WORDS),
        /// Width or diameter of a bar, m.
        bar_m: f64 = number(ShortLength, 0.001, 1.0, 0.04),
        /// Distance of the bars, centre to centre, m.
        pitch_m: f64 = number(ShortLength, 0.002, 5.0, 0.12),
    }
}

block! {
    /// A wall by EN 1991-1-4:2005 + A1:2010, its zones taken as a moment about the hinge; recommended values, which a national annex replaces.
    #[derive(Copy)]
    pub struct En1991Wall at "wind.shape." also at "storm.shape." {
        /// Solid over gross area, at least 0.8.
        solidity: f64 = number(Ratio, 0.0, 1.0, 1.0),
        /// Shelter factor of a wall upwind; default 1 (none). It does not hold within the leaf's height of the latch edge, which is the wall's free
        /// end.
        shelter_factor: Option<f64> = assumed(Ratio, 0.3, 1.0, 1.0) => shelter_factor,
        /// Whether the wall goes round a corner at the latch edge; default no.
        returns: Option<bool> = flag().listed(),
    }
}

block! {
    /// A plane lattice by EN 1991-1-4:2005 + A1:2010; recommended values, which a national annex replaces.
    #[derive(Copy)]
    pub struct En1991Lattice at "wind.shape." also at "storm.shape." {
        /// Solid over gross area, at most 0.8.
        solidity: f64 = number(Ratio, 0.0, 1.0, 0.4),
        /// End-effect factor by the slenderness of the leaf; default 1 (no wind round the ends).
        end_effect: Option<f64> = assumed(Ratio, 0.5, 1.0, 1.0) => end_effect,
    }
}

impl Asce7Wall {
    pub(crate) fn eccentric(&self) -> bool {
        self.eccentric.unwrap_or(true)
    }
}

impl En1991Wall {
    pub(crate) fn returns(&self) -> bool {
        self.returns.unwrap_or(false)
    }
}
