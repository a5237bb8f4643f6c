//! What is marked out, and how far a tape errs.

use crate::job::table::*;
use crate::terms::words::words;
use crate::units::Quantity::{Length, ShortLength};
use alloc::vec::Vec;

block! {
    /// What is bought and what is level on site, for marking out. Lengths of tubes: crank and link are two tubes each, one in the other.
    #[derive(Copy, Default)]
    pub struct Marks at "marks." {
        /// Spacing of the anchor holes along the crank of the closed arm, m.
        anchor_along_m: Option<f64> = number(ShortLength, 0.02, 2.0, 0.25),
        /// Spacing of the anchor holes across it, m.
        anchor_across_m: Option<f64> = number(ShortLength, 0.02, 2.0, 0.15),
        /// Middle of the holes from the shaft, along the crank of the closed arm towards the elbow, m; default 0.
        anchor_offset_along_m: Option<f64> = assumed(ShortLength, -2.0, 2.0, 0.0) => anchor_offset_along,
        /// Middle of the holes from the shaft, a quarter turn counter-clockwise from that, m; default 0.
        anchor_offset_across_m: Option<f64> = assumed(ShortLength, -2.0, 2.0, 0.0) => anchor_offset_across,
        /// How far the base is turned from the crank of the closed arm, degrees counter-clockwise; default 0.
        anchor_turn_deg: Option<f64> = assumed_direction() => anchor_turn,
        /// Level of the pad's top over a datum, m.
        pad_level_m: Option<f64> = number(Length, -5.0, 5.0, 0.1),
        /// Level of the leaf's cross member at the bracket over the same datum, m.
        crossbar_level_m: Option<f64> = number(Length, -5.0, 10.0, 0.6),
        /// The arm's plane over the operator's base, m; default 0.
        arm_height_m: Option<f64> = assumed(ShortLength, 0.0, 2.0, 0.0) => arm_height,
        /// How far the two tubes of a part are in one another, m; default 0.
        overlap_m: Option<f64> = assumed(ShortLength, 0.0, 2.0, 0.0) => overlap,
        /// What joints at both ends of the crank take off its tubes, together, m; default 0.
        crank_ends_m: Option<f64> = assumed(ShortLength, 0.0, 2.0, 0.0) => crank_ends,
        /// What joints at both ends of the link take off its tubes, together, m; default 0.
        link_ends_m: Option<f64> = assumed(ShortLength, 0.0, 2.0, 0.0) => link_ends,
    }
}

block! {
    /// How far what is set differs from what was planned.
    #[derive(Copy, Default)]
    pub struct Tape at "tape." {
        /// Error of each dimension of the arm, either way, m; default 0.005 (common practice, no source).
        error_m: Option<f64> = assumed(ShortLength, 0.0001, 0.1, 0.005) => error,
        /// How the link comes to its length; default cut.
        link: Option<TapeLink> = word(TapeLink::WORDS),
        /// Error of a link that is set last, either way, m; needed where it is. A cut link has that of the others.
        link_error_m: Option<f64> = number(ShortLength, 0.0001, 0.1, 0.001),
    }
}

words! {
    /// How the link comes to its length.
    pub enum TapeLink {
        /// Cut to its planned length as everything else.
        Cut = "cut",
        /// Adjusted on the finished pad, when everything else is fixed.
        SetLast = "set_last",
    }
}

impl Tape {
    /// Whether the link is set last.
    #[must_use]
    pub fn sets_link_last(&self) -> bool {
        self.link == Some(TapeLink::SetLast)
    }

    /// Error of each of [`Arm::lengths_m`](super::Arm::lengths_m) either way, m.
    #[must_use]
    pub fn errors_m(&self) -> [f64; 6] {
        let error_m = self.error();
        let link_m = self.link_error_m.filter(|_| self.sets_link_last()).unwrap_or(error_m);
        [error_m, error_m, error_m, error_m, error_m, link_m]
    }

    /// A link that is set last has an error of its own.
    pub(in crate::job) fn relations(&self) -> Vec<Fault> {
        let row = const { Tape::BLOCK.number("link_error_m") };
        let missing = self.sets_link_last() && self.link_error_m.is_none();
        missing.then(|| row.half("tape.link_error_m")).into_iter().collect()
    }
}

impl Marks {
    /// Offset of the holes' middle from the shaft along and across, m.
    #[must_use]
    pub fn anchor_offset(&self) -> (f64, f64) {
        (self.anchor_offset_along(), self.anchor_offset_across())
    }
    /// Turn of the base, rad.
    #[must_use]
    pub fn anchor_turn_rad(&self) -> f64 {
        self.anchor_turn().to_radians()
    }
    /// What the joints take off crank and link, m.
    #[must_use]
    pub fn ends(&self) -> (f64, f64) {
        (self.crank_ends(), self.link_ends())
    }

    /// A rectangle of holes has two spacings, a riser two levels.
    pub(in crate::job) fn relations(&self) -> Vec<Fault> {
        let half =
            |one: Option<f64>, at_one: &str, row_one: Number, other: Option<f64>, at_other: &str, row_other: Number| {
                match (one, other) {
                    (Some(_), None) => Some(row_other.half(at_other)),
                    (None, Some(_)) => Some(row_one.half(at_one)),
                    _ => None,
                }
            };
        let spacings = half(
            self.anchor_along_m,
            "marks.anchor_along_m",
            const { Marks::BLOCK.number("anchor_along_m") },
            self.anchor_across_m,
            "marks.anchor_across_m",
            const { Marks::BLOCK.number("anchor_across_m") },
        );
        let levels = half(
            self.pad_level_m,
            "marks.pad_level_m",
            const { Marks::BLOCK.number("pad_level_m") },
            self.crossbar_level_m,
            "marks.crossbar_level_m",
            const { Marks::BLOCK.number("crossbar_level_m") },
        );
        spacings.into_iter().chain(levels).collect()
    }

    /// Paths of what is assumed of the marks.
    pub(crate) fn assumed(&self) -> Vec<&'static str> {
        let mut paths = Vec::new();
        assumed_paths(self, Marks::BLOCK, false, &mut paths);
        paths
    }
}
