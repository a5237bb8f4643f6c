//! The terms of the search: what is to be small and what has to be kept, each a smooth number at one leaf angle.
//!
//! Objective terms are in the problem's scale (about 1); limit terms are excesses in metres, radians or plain numbers, at most zero where
//! the limit is kept. The objective of an arm is the largest of its objective terms, its excess the largest of its limit terms. Where no
//! set-out exists, one limit is given up and its own excess becomes the objective: see [`Limit`].

use super::kernel::{ArmKernel, SearchStation};
use super::limit::Limit;
pub(crate) use super::piece::{Piece, Term};
use super::problem::Problem;
use crate::job::Aim;
use crate::numerics::separation_m;
use crate::real::sqrt;

/// Lever below which a shaft would turn back, m; an arm is refused at a nanometre.
pub(super) const LEAST_SENSE_M: f64 = 1e-6;

impl Limit {
    /// The limit's excess in the document's unit, from the search's.
    pub(crate) fn in_document(self, excess: f64, problem: &Problem) -> f64 {
        match self {
            Limit::ShaftTravelDeg | Limit::TapeShaftTravelDeg => excess.to_degrees(),
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
    /// Whether something counts towards what is to be small: of the aim (`None`), or of the limits that are given up instead. A limit
    /// given up is given up where the tape errs too.
    pub fn is_objective(&self, limit: Option<Limit>) -> bool {
        match (self.given_up, limit) {
            _ if self.corners_given_up => limit.is_some_and(Limit::is_at_corners),
            (Some(given_up), Some(limit)) => given_up == limit.planned(),
            (given_up, limit) => given_up == limit,
        }
    }

    /// Whether some limit is given up to find out by how much.
    pub fn gives_up(&self) -> bool {
        self.given_up.is_some() || self.corners_given_up
    }

    /// The value of a term; `sense` is the sign of the lever the arm works in.
    #[inline]
    pub fn value(&self, kernel: &ArmKernel, sense: f64, piece: &Piece) -> f64 {
        match (piece.corner, &self.proof) {
            (Some(corner), Some(proof)) => self.value_at_corner(&proof.moved_kernel(kernel, corner), sense, piece),
            _ => self.value_of(kernel, sense, piece),
        }
    }

    /// The same where the arm stands at the piece's corner already.
    pub fn value_at_corner(&self, moved: &ArmKernel, sense: f64, piece: &Piece) -> f64 {
        let value = self.value_of(moved, sense, piece);
        if piece.term.is_assembly() {
            // A planned arm may be straight when closed; what a tape has made straight is to be told from what it has torn.
            value + self.margin.length_m
        } else if self.corners_given_up {
            // What is to be small is what is broken: of a corner that is torn, that it is.
            let torn_m = self.torn_m(moved);
            if torn_m > 0.0 { value.min(torn_m) } else { value }
        } else {
            value
        }
    }

    /// By how much crank and link fail to meet, closed or where the pins are furthest apart or nearest, m; at most 0 where they meet.
    fn torn_m(&self, moved: &ArmKernel) -> f64 {
        let turns = self.turns(moved);
        let stations = core::iter::once(self.closed()).chain(turns.iter().flatten());
        let apart = |station: &SearchStation| {
            let terms = [Term::Far, Term::Near(1.0), Term::Near(-1.0)];
            terms
                .map(|term| self.value_of(moved, 1.0, &Piece::new(term, *station)))
                .into_iter()
                .fold(f64::MIN, f64::max)
        };
        stations.map(apart).fold(f64::MIN, f64::max)
    }

    #[inline]
    fn value_of(&self, kernel: &ArmKernel, sense: f64, piece: &Piece) -> f64 {
        let Piece { term, station, .. } = piece;
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
            Term::Bent => setout.straightness()[0] + self.margin.plain - kernel.variable(4),
            Term::Stretched => kernel.variable(4) - setout.straightness()[1] + self.margin.plain,
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
        !self.gives_up() && self.setout.aim() == aim
    }
}

#[cfg(test)]
mod tests;
