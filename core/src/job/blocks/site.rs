//! The place the gate stands at, and the means of protection that are fitted.

use super::MOST;
use crate::job::table::*;
use crate::terms::words::words;
use crate::terms::{Direction, MeansKind, ZoneKind};
use crate::units::Quantity::{Count, ShortLength};
use alloc::vec::Vec;

block! {
    /// The place the gate stands at.
    pub struct Site at "site." {
        /// Whether the public, guests or customers use the gate; unknown unless said.
        public: Option<bool> = flag(),
        /// Whether security staff watch it and keep others away; unknown unless said.
        guarded: Option<bool> = flag(),
        /// How many families live behind it, 0 where it serves no home; unknown unless said.
        homes: Option<u32> = number(Count, 0.0, 10_000.0, 1.0),
        /// Whether people on foot have a way of their own; unknown unless said.
        pedestrian_way: Option<bool> = flag(),
        /// Whether there is a warning sign on both faces; unknown unless said.
        signs_both_faces: Option<bool> = flag(),
        /// Gap between the closed leaf's edge and what it closes on, m; default 0.
        latch_gap_m: Option<f64> = assumed(ShortLength, 0.0, 1.0, 0.0) => latch_gap,
        /// Means of protection that are fitted.
        means: Option<Vec<Means>> = list(&Kind::Block(Means::BLOCK), MOST),
    }
}

block! {
    /// One means of protection, ticked off.
    pub struct Means at "site.means." {
        /// How it works.
        kind: MeansKind = word(MeansKind::WORDS),
        /// The movement it protects in; both unless said.
        direction: Option<Direction> = word(Direction::WORDS),
        /// Whether its fault stops the drive; unknown, and then not counted, unless said.
        monitored: Option<bool> = flag(),
        /// Zones it reaches; none unless said.
        reaches: Option<Vec<ZoneKind>> = list(&Kind::Word(ZoneKind::WORDS), MOST),
        /// What it senses, in plan: where it reaches and leaves a gap is not looked at without.
        area: Option<SensedArea> = block(SensedArea::BLOCK),
    }
}

block! {
    /// What a sensor senses, seen from above: a beam, a mat or a strip is a line widened to both sides; a point is a line of no length.
    #[derive(Copy)]
    pub struct SensedArea at "site.means.area." {
        /// What it is fixed to.
        on: SensorFrame = word(SensorFrame::WORDS),
        /// One end, m: along the closed leaf from the hinge axis, or along the leaf.
        from_x_m: f64 = number(ShortLength, -20.0, 20.0, 3.3),
        /// The same end, m: square to the closed leaf from the hinge axis, towards the opening side, or square to the leaf as it turns.
        from_y_m: f64 = number(ShortLength, -20.0, 20.0, 0.0),
        /// The other end, m.
        to_x_m: f64 = number(ShortLength, -20.0, 20.0, 0.0),
        /// The other end, m.
        to_y_m: f64 = number(ShortLength, -20.0, 20.0, 3.3),
        /// Half of what it is wide, m; default 0.05.
        half_width_m: Option<f64> = assumed(ShortLength, 0.0, 5.0, 0.05) => half_width,
    }
}

words! {
    /// What a sensor is fixed to.
    pub enum SensorFrame {
        /// The ground: beams between posts, mats.
        Ground = "ground",
        /// The leaf: strips and scanners that turn with it.
        Leaf = "leaf",
    }
}
