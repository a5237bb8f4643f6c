//! What a term of the search is, and where: at a leaf angle, of the planned arm or of one that the tape has moved.

use super::corner::Corner;
use super::kernel::SearchStation;
use super::limit::Limit;

/// What a term is about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Term {
    Torque,
    Force,
    Travel,
    Place,
    /// Torque against the limit beside the aim.
    TorqueLimit,
    TravelLimit,
    /// Lever from a tenth of the swing on.
    Lever,
    /// Lever at all, in the sense the arm works in: the shaft would turn back.
    Sense,
    /// Link leaning towards the hinge (+1) or the latch (−1) of the open leaf.
    Square(f64),
    LinkShort,
    LinkLong,
    /// Closed arm bent more than the range of the straightness has it, or less; a range of a variable where no tape has to be proof.
    Bent,
    Stretched,
    /// Crank and link together short.
    Far,
    /// Crank (+1) or link (−1) too long to fold.
    Near(f64),
    /// Crank (0) or link (1) against a rectangle.
    Clear(usize, usize),
    /// The operator's body, or the shaft alone, against a rectangle it cannot stand in.
    Stand(usize),
    /// The operator's body against the leaf.
    StandLeaf,
    /// A variable below its least (−1) or above its most (+1), where its range is given up.
    Beyond(usize, f64),
}

impl Term {
    /// Whether it is about crank and link meeting at all, without which an arm comes to nothing else.
    pub fn is_assembly(self) -> bool {
        matches!(self, Term::Far | Term::Near(_))
    }

    /// The limit a term belongs to; `None` for what the aim is about.
    pub fn limit(self) -> Option<Limit> {
        Some(match self {
            Term::Torque | Term::Force | Term::Travel | Term::Place => return None,
            Term::TorqueLimit => Limit::MostShaftTorqueNM,
            Term::TravelLimit => Limit::ShaftTravelDeg,
            Term::Lever => Limit::LeastLeverM,
            Term::Square(_) => Limit::SquareDeg,
            Term::LinkShort | Term::LinkLong => Limit::LinkM,
            Term::Bent | Term::Stretched => Limit::Straightness,
            Term::Sense | Term::Far | Term::Near(_) => Limit::Arm,
            Term::Clear(..) | Term::Stand(_) | Term::StandLeaf => Limit::KeepOut,
            Term::Beyond(variable, _) => Limit::VARIABLES[variable],
        })
    }
}

/// A term at a leaf angle.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Piece {
    pub term: Term,
    pub station: SearchStation,
    /// Where in the box of tape errors the arm is; `None` where it is as planned.
    pub corner: Option<Corner>,
}

impl Piece {
    /// A term of the planned arm.
    pub const fn new(term: Term, station: SearchStation) -> Piece {
        Piece { term, station, corner: None }
    }

    /// The limit it belongs to; `None` for what the aim is about.
    pub fn limit(&self) -> Option<Limit> {
        let limit = self.term.limit();
        if self.corner.is_some() { limit.map(Limit::at_corners) } else { limit }
    }
}
