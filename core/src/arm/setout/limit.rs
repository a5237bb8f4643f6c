//! The limits of a set-out, one of which may be given up to find out by how much it is in the way.

use super::variables::DIMENSIONS;
use serde::Serialize;

/// A limit of the set-out, by the name of its field.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum Limit {
    /// Range of the shaft along the closed leaf, m.
    ShaftXM,
    /// Range of the shaft across it, m.
    ShaftYM,
    /// Range of the bracket along the leaf, m.
    BracketUM,
    /// Range of the crank, m.
    CrankM,
    /// Range of the link, m.
    LinkM,
    /// Range of the straightness, plain.
    Straightness,
    /// Square to the open leaf, degrees.
    SquareDeg,
    /// Least lever, m.
    LeastLeverM,
    /// Shaft travel, degrees.
    ShaftTravelDeg,
    /// Torque beside the aim, N·m.
    MostShaftTorqueNM,
    /// Rectangles to stay out of, m of overlap.
    KeepOut,
    /// Whole multiples of the step; no amount of anything else would do.
    StepM,
    /// An arm that assembles, and whose shaft does not turn back, m. Not for anyone to give up.
    Arm,
    /// The same where the tape errs within its error.
    TapeArm,
    /// Least lever where the tape errs, m.
    TapeLeastLeverM,
    /// Shaft travel where the tape errs, degrees.
    TapeShaftTravelDeg,
    /// Rectangles to stay out of where the tape errs, m of overlap.
    TapeKeepOut,
}

impl Limit {
    /// The limits of the search's variables, in their order.
    pub(crate) const VARIABLES: [Limit; DIMENSIONS] =
        [Limit::ShaftXM, Limit::ShaftYM, Limit::BracketUM, Limit::CrankM, Limit::Straightness];

    /// What can be given up, in the order it is tried.
    pub(crate) const ALL: [Limit; 11] = [
        Limit::SquareDeg,
        Limit::ShaftTravelDeg,
        Limit::LeastLeverM,
        Limit::Straightness,
        Limit::CrankM,
        Limit::LinkM,
        Limit::BracketUM,
        Limit::ShaftXM,
        Limit::ShaftYM,
        Limit::KeepOut,
        Limit::MostShaftTorqueNM,
    ];

    /// The limit as it is kept where the tape errs; those that bind the planned arm alone are told of [`Limit::TapeArm`].
    pub(crate) fn at_corners(self) -> Limit {
        match self {
            Limit::LeastLeverM => Limit::TapeLeastLeverM,
            Limit::ShaftTravelDeg => Limit::TapeShaftTravelDeg,
            Limit::KeepOut => Limit::TapeKeepOut,
            _ => Limit::TapeArm,
        }
    }

    /// The limit that a planned arm has in its place.
    pub(crate) fn planned(self) -> Limit {
        match self {
            Limit::TapeLeastLeverM => Limit::LeastLeverM,
            Limit::TapeShaftTravelDeg => Limit::ShaftTravelDeg,
            Limit::TapeKeepOut => Limit::KeepOut,
            Limit::TapeArm => Limit::Arm,
            _ => self,
        }
    }

    /// Whether it is one of those that are kept where the tape errs.
    pub(crate) fn is_at_corners(self) -> bool {
        self != self.planned()
    }

    /// The variable whose range it is.
    pub(crate) fn variable(self) -> Option<usize> {
        Limit::VARIABLES.iter().position(|&limit| limit == self)
    }
}
