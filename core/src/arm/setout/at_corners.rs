//! What an arm has to keep where the tape errs: for each limit the corner of the box of errors that is worst for it.
//!
//! How far apart the pins are at worst is told exactly: the distance of two points is convex in both, so its most is at a corner that each
//! axis tells by itself. For everything else the corner is that of the signs of what each dimension does alone; an arm that keeps its
//! limit by more than all errors together can change is not asked. That the signs may mislead, and that an extreme moves along the swing
//! as the arm is moved, costs nothing but time: every answer is checked at all 64 corners, and what it breaks is from then on looked at
//! where it was broken. See [`proven`](super::proven).

use super::corner::{Corner, SET_DIMENSIONS};
use super::kernel::{ArmKernel, SearchStation};
use super::play::Play;
use super::problem::{INTERVALS, Problem};
use super::proof::Proof;
use super::swept::{CRANK, LINK, SweptParts};
use super::terms::{Piece, Term};
use crate::numerics::vertex;
use crate::real::sqrt;
use core::f64::consts::TAU;

/// An arm with each of its dimensions moved alone, worked out when it is first asked for.
pub(super) struct CornerTerms<'a> {
    problem: &'a Problem<'a>,
    proof: &'a Proof,
    kernel: &'a ArmKernel,
    sense: f64,
    moved: Option<[ArmKernel; SET_DIMENSIONS]>,
}

impl<'a> CornerTerms<'a> {
    /// `None` where no tape has to be proof.
    pub fn new(problem: &'a Problem<'a>, kernel: &'a ArmKernel, sense: f64) -> Option<CornerTerms<'a>> {
        let proof = problem.proof.as_ref()?;
        Some(CornerTerms { problem, proof, kernel, sense, moved: None })
    }

    fn play(&self, station: &SearchStation) -> Play {
        Play::of(self.proof, self.kernel, station.cosine, station.sine)
    }

    /// A term at the corner that is worst for it.
    fn worst(&mut self, term: Term, station: &SearchStation) -> Piece {
        let (problem, sense) = (self.problem, self.sense);
        let piece = Piece::new(term, *station);
        let moved = self.moved.get_or_insert_with(|| self.proof.one_by_one(self.kernel));
        let planned = problem.value(self.kernel, sense, &piece);
        let corner = Corner::of(|index| problem.value(&moved[index], sense, &piece) > planned);
        Piece { corner: Some(corner), ..piece }
    }

    /// The longest and the shortest way between the pins at a leaf angle, each with its corner.
    fn reaches(&self, station: &SearchStation) -> [(f64, Corner); 2] {
        let (shaft, (u, v)) = (self.kernel.shaft(), self.kernel.bracket());
        let [ex, ey, eu, ev, ..] = self.proof.errors_m;
        let mut ends = [(f64::MIN, Corner::of(|_| false)), (f64::MAX, Corner::of(|_| false))];
        for bits in 0..4 {
            let [along, across] = [bits & 1 == 1, bits & 2 == 2];
            let (u, v) = (u + if along { eu } else { -eu }, v + if across { ev } else { -ev });
            let (dx, dy) =
                (u * station.cosine - v * station.sine - shaft.0, u * station.sine + v * station.cosine - shaft.1);
            for (end, sign) in [1.0, -1.0].into_iter().enumerate() {
                let (x, y) = (dx.abs() + sign * ex, dy.abs() + sign * ey);
                let reach = sqrt(x * x + y * y);
                if sign * (reach - ends[end].0) > 0.0 {
                    // A shaft that is short by its error is further from a bracket beyond it.
                    let corner = Corner::of(|index| match index {
                        0 => (dx > 0.0) != (sign > 0.0),
                        1 => (dy > 0.0) != (sign > 0.0),
                        2 => along,
                        _ => across,
                    });
                    ends[end] = (reach, corner);
                }
            }
        }
        ends
    }

    /// Whether crank and link meet at every corner, closed and where the pins are furthest apart or nearest.
    fn assembly(&self, told: &mut dyn FnMut(Piece)) {
        let problem = self.problem;
        let turns = problem.turns(self.kernel);
        for station in core::iter::once(problem.closed()).chain(turns.iter().flatten()) {
            let [longest, shortest] = self.reaches(station);
            let at = |(_, corner): (f64, Corner), crank: bool, link: bool| {
                Corner::of(|index| match index {
                    4 => crank,
                    5 => link,
                    _ => corner.sign(index) > 0.0,
                })
            };
            told(Piece { term: Term::Far, station: *station, corner: Some(at(longest, false, false)) });
            for sign in [1.0, -1.0] {
                let corner = at(shortest, sign > 0.0, sign < 0.0);
                told(Piece { term: Term::Near(sign), station: *station, corner: Some(corner) });
            }
        }
    }

    /// Everything but what stands around; `levers` are levers at the stations, turned over. `near`: how far what is kept may be from its limit and
    /// still be told, m or rad.
    pub fn arm(&mut self, levers: &[f64; INTERVALS + 1], near: f64, told: &mut dyn FnMut(Piece)) {
        let problem = self.problem;
        self.assembly(told);
        let tenth = Problem::tenth();
        for index in 0..=INTERVALS {
            let end = index == 0 || index == tenth || index == INTERVALS;
            if !end && vertex(levers[index - 1], levers[index], levers[index + 1]).is_none() {
                continue;
            }
            let station = &problem.stations[index];
            let least = if index < tenth { 0.0 } else { problem.limits.lever_m };
            if least + levers[index] + self.play(station).lever_m + near > 0.0 {
                told(self.worst(if index < tenth { Term::Sense } else { Term::Lever }, station));
            }
        }
        if problem.limits.travel_rad < TAU {
            let play = self.play(problem.closed()).crank_rad + self.play(problem.open()).crank_rad;
            let travel = self.kernel.travel_rad(self.sense, problem.closed(), problem.open());
            if travel - problem.limits.travel_rad + play + near > 0.0 {
                told(self.worst(Term::TravelLimit, problem.open()));
            }
        }
        self.proof.known.iter().for_each(|piece| told(*piece));
    }

    /// Crank and link against what stands around.
    pub fn clear(&mut self, swept: &SweptParts, near: f64, told: &mut dyn FnMut(Piece)) {
        let problem = self.problem;
        let ends = [problem.closed(), problem.open()];
        let plays = ends.map(|station| self.play(station).elbow_m);
        let wanted = problem.wanted_gap_m() + near;
        for rectangle in 0..problem.setout.keep_out.len() {
            for part in [CRANK, LINK] {
                let mut nearest = None;
                // Beside the ends, which play most, the play is about that of the open arm.
                let bar = wanted + 2.0 * plays[1];
                swept.least_gap(rectangle, part, [f64::MIN, bar], |station| {
                    if nearest.is_none_or(|(_, least)| problem.gap_m(self.kernel, rectangle, part, station) < least) {
                        nearest = Some((*station, problem.gap_m(self.kernel, rectangle, part, station)));
                    }
                });
                let term = Term::Clear(rectangle, part);
                if let Some((station, gap)) = nearest
                    && gap - self.play(&station).elbow_m < wanted
                {
                    told(self.worst(term, &station));
                }
                for (station, play) in ends.into_iter().zip(plays) {
                    if problem.gap_m(self.kernel, rectangle, part, station) - play < wanted {
                        told(self.worst(term, station));
                    }
                }
            }
        }
    }

    /// The operator's body.
    pub fn stand(&mut self, near: f64, told: &mut dyn FnMut(Piece)) {
        let problem = self.problem;
        let body_m = problem.setout.stand.as_ref().map_or(0.0, |stand| stand.body.reach_m());
        let play = self.play(problem.closed());
        let moved_m = self.proof.pins_m()[0] + body_m * play.crank_rad.min(2.0);
        let mut pieces: [Option<Piece>; 24] = [None; 24];
        let mut count = 0;
        problem.stand_terms(self.kernel, |term, station| {
            let piece = Piece::new(term, *station);
            if count < pieces.len() && problem.value(self.kernel, self.sense, &piece) + moved_m + near > 0.0 {
                pieces[count] = Some(piece);
                count += 1;
            }
        });
        for piece in pieces.into_iter().flatten() {
            told(self.worst(piece.term, &piece.station));
        }
    }
}

#[cfg(test)]
mod tests;
