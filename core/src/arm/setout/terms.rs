//! The terms of the search: what is to be small and what has to be kept, each a smooth number at one leaf angle.
//!
//! Objective terms are in the problem's scale (about 1); limit terms are excesses in metres, radians or plain numbers, at most zero where
//! the limit is kept. The objective of an arm is the largest of its objective terms, its excess the largest of its limit terms. Where no
//! set-out exists, one limit is given up and its own excess becomes the objective: see [`Limit`].

use super::kernel::{ArmKernel, SearchStation};
use super::limit::Limit;
use super::problem::Problem;
use crate::job::Aim;
use crate::numerics::separation_m;
use crate::real::sqrt;

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

/// A term at a leaf angle.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Piece {
    pub term: Term,
    pub station: SearchStation,
}

/// Lever below which a shaft would turn back, m; an arm is refused at a nanometre.
pub(super) const LEAST_SENSE_M: f64 = 1e-6;

impl Term {
    /// The limit a term belongs to; `None` for what the aim is about.
    pub fn limit(self) -> Option<Limit> {
        Some(match self {
            Term::Torque | Term::Force | Term::Travel | Term::Place => return None,
            Term::TorqueLimit => Limit::MostShaftTorqueNM,
            Term::TravelLimit => Limit::ShaftTravelDeg,
            Term::Lever => Limit::LeastLeverM,
            Term::Square(_) => Limit::SquareDeg,
            Term::LinkShort | Term::LinkLong => Limit::LinkM,
            Term::Sense | Term::Far | Term::Near(_) => Limit::Arm,
            Term::Clear(..) | Term::Stand(_) | Term::StandLeaf => Limit::KeepOut,
            Term::Beyond(variable, _) => Limit::VARIABLES[variable],
        })
    }
}

impl Limit {
    /// The limit's excess in the document's unit, from the search's.
    pub(crate) fn in_document(self, excess: f64, problem: &Problem) -> f64 {
        match self {
            Limit::ShaftTravelDeg => excess.to_degrees(),
            // The search compares the cosine of the angle itself.
            Limit::SquareDeg => {
                let limit = problem.limits.square_rad;
                (libm::asin((problem.limits.square_sine + excess).clamp(0.0, 1.0)) - limit).to_degrees()
            }
            Limit::MostShaftTorqueNM => excess * problem.torque_scale_n_m,
            _ => excess,
        }
    }
}

impl Problem<'_> {
    /// Whether a term counts towards what is to be small: of the aim, or of the limit that is given up instead.
    pub fn is_objective(&self, term: Term) -> bool {
        match (self.given_up, term.limit()) {
            (None, limit) => limit.is_none(),
            (given_up, limit) => given_up == limit,
        }
    }

    /// The value of a term; `sense` is the sign of the lever the arm works in.
    #[inline]
    pub fn value(&self, kernel: &ArmKernel, sense: f64, piece: &Piece) -> f64 {
        let Piece { term, station } = piece;
        let (cosine, sine) = (station.cosine, station.sine);
        let setout = self.setout;
        let torque = || station.effort_n_m * kernel.at(cosine, sine).inverse_ratio() / self.torque_scale_n_m;
        let lever = || sense * kernel.lever_m(&kernel.at(cosine, sine));
        match *term {
            Term::Torque => torque(),
            Term::TorqueLimit => {
                let most = setout.most_shaft_torque_n_m.unwrap_or(f64::MAX);
                torque() - most / self.torque_scale_n_m * (1.0 - self.margin.plain)
            }
            // A lever at nothing has a force without bound; a micrometre keeps the slope finite.
            Term::Force => station.storm_n_m / (lever().max(LEAST_SENSE_M) * self.force_scale_n),
            Term::Travel => kernel.travel_rad(sense, self.closed(), self.open()),
            Term::TravelLimit => {
                kernel.travel_rad(sense, self.closed(), self.open()) - self.limits.travel_rad + self.margin.plain
            }
            Term::Place => {
                let place = setout.place.map_or((0.0, 0.0), |place| (place.x_m, place.y_m));
                let (dx, dy) = (kernel.shaft().0 - place.0, kernel.shaft().1 - place.1);
                sqrt(dx * dx + dy * dy)
            }
            Term::Lever => self.limits.lever_m + self.margin.length_m - lever(),
            Term::Sense => LEAST_SENSE_M - lever(),
            Term::Square(sign) => {
                let limit = self.limits.square_sine;
                sign * kernel.link_along_leaf(cosine, sine) - (limit - self.margin.plain.min(0.25 * limit))
            }
            Term::LinkShort => setout.link_m[0] - kernel.link_m,
            Term::LinkLong => kernel.link_m - setout.link_m[1],
            Term::Far => sqrt(kernel.reach2(cosine, sine)) - (kernel.crank_m + kernel.link_m),
            Term::Near(sign) => sign * (kernel.crank_m - kernel.link_m) - sqrt(kernel.reach2(cosine, sine)),
            Term::Clear(rectangle, part) => self.wanted_gap_m() - self.gap_m(kernel, rectangle, part, station),
            Term::Stand(rectangle) => self.margin.length_m - self.stand_gap_m(kernel, rectangle),
            Term::StandLeaf => self.margin.length_m - self.leaf_gap_m(kernel, station),
            Term::Beyond(variable, sign) => {
                let value = kernel.variable(variable);
                let [least, most] = self.range_of(variable);
                if sign < 0.0 { least - value } else { value - most }
            }
        }
    }

    /// Range of a variable as the job gives it; that of the last one in straightness, which falls as the variable grows.
    fn range_of(&self, variable: usize) -> [f64; 2] {
        let setout = self.setout;
        [setout.shaft_x_m, setout.shaft_y_m, setout.bracket_u_m, setout.crank_m, setout.straightness()][variable]
    }

    /// Gap the arm's centre-lines keep from every rectangle, m.
    pub fn wanted_gap_m(&self) -> f64 {
        self.limits.half_width_m + self.margin.length_m
    }

    /// Separation of a part of the arm from a rectangle, m.
    pub fn gap_m(&self, kernel: &ArmKernel, rectangle: usize, part: usize, station: &SearchStation) -> f64 {
        self.gap_between_m(kernel, rectangle, part, &kernel.joints(station.cosine, station.sine))
    }

    /// The same where its bracket and elbow are known.
    pub fn gap_between_m(
        &self,
        kernel: &ArmKernel,
        rectangle: usize,
        part: usize,
        &[bracket, elbow]: &[(f64, f64); 2],
    ) -> f64 {
        let other = if part == 0 { kernel.shaft() } else { bracket };
        separation_m(&self.setout.keep_out[rectangle].sides(), elbow, other)
    }

    /// Whether the aim or a limit looks at torque, force.
    pub fn wants(&self, aim: Aim) -> bool {
        self.given_up.is_none() && self.setout.aim() == aim
    }
}

#[cfg(test)]
mod tests;
