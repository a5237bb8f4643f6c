//! The check of an answer at all 64 corners of the tape's errors over the whole swing, and the way to one that passes.
//!
//! What an arm breaks at a corner is a term of its own from then on, at the corner and leaf angle where it is broken; the descent goes on
//! with it among its limits, and the arm it ends at is checked again. Each round leaves the angle by the square of what the one before left it
//! by, so few are needed; this is the exchange of Blankenship and Falk (1976) for programmes with infinitely many limits, from memory.

use super::corner::Corner;
use super::descent::{Budget, SlpScratch};
use super::found::{EXCESS_TOLERANCE, Found};
use super::journal;
use super::kernel::{ArmKernel, SearchStation};
use super::limit::Limit;
use super::problem::{INTERVALS, Margin, Problem};
use super::swept::{CRANK, LINK, SweptParts};
use super::terms::{Piece, Term};
use super::variables::Point;
use crate::arm::Linkage;
use crate::job::Arm;
use crate::numerics::vertex;
use crate::order::insertion_sort;
use alloc::vec::Vec;

/// Rounds after which an arm that still breaks something is none.
const ROUNDS: usize = 10;
/// Terms that a round adds at most, the most broken first.
const ADDED: usize = 6;
/// Gap beyond the wanted one up to which a rectangle's leaf angles are told, m.
const LEVEL_M: f64 = 1e-4;
const AGAIN: Budget = Budget { steps: 24, trust: 0.01, least_gain: 1e-8, curved: true, hopeful: false };

impl Problem<'_> {
    /// What an arm breaks anywhere in the box's corners, with how much; the most broken first.
    pub fn broken_at_corners(&self, arm: &Arm, sense: f64) -> Vec<(Piece, f64)> {
        journal::broken(&self.journal, || {
            let mut broken = Vec::new();
            Corner::all().for_each(|corner| self.broken_at(arm, sense, corner, &mut broken));
            insertion_sort(&mut broken, |one, other| one.1 > other.1);
            broken
        })
    }

    /// Whether an arm works and keeps everything at all corners.
    pub fn is_proven(&self, arm: &Arm, sense: f64) -> bool {
        let mut broken = Vec::new();
        Corner::all().all(|corner| {
            self.broken_at(arm, sense, corner, &mut broken);
            broken.is_empty() && self.works_at(arm, corner)
        })
    }

    /// The same of an answer, at every leaf angle to the last digit and without a margin.
    pub fn keeps_at_corners(&self, arm: &Arm) -> bool {
        journal::keeps(&self.journal, || {
            let exact = Problem { exact: true, margin: Margin::NONE, ..self.clone() };
            exact.is_proven(arm, exact.sense(&ArmKernel::new(arm)))
        })
    }

    /// Whether an arm has no defect at a corner.
    fn works_at(&self, arm: &Arm, corner: Corner) -> bool {
        let Some(moved) = self.proof.as_ref().map(|proof| proof.moved(arm, corner)) else { return true };
        moved.crank_m > 0.0 && moved.link_m > 0.0 && Linkage::new(&moved, self.open_rad).defect().is_none()
    }

    /// What an arm breaks at one corner.
    fn broken_at(&self, arm: &Arm, sense: f64, corner: Corner, broken: &mut Vec<(Piece, f64)>) {
        let Some(proof) = &self.proof else { return };
        let moved = ArmKernel::new(&proof.moved(arm, corner));
        self.at_corner(&moved, sense, &mut |term, station| {
            let piece = Piece { term, station: *station, corner: Some(corner) };
            let by = self.value_at_corner(&moved, sense, &piece);
            // The margin is there to be used up by what is left of a round.
            let angle = piece.limit() == Some(Limit::TapeShaftTravelDeg);
            let margin = if angle { self.margin.plain } else { self.margin.length_m };
            if by > EXCESS_TOLERANCE + 0.9 * margin {
                broken.push((piece, by));
            }
        });
    }

    /// Tells every term of an arm at a corner with the leaf angle it is worst at.
    fn at_corner(&self, moved: &ArmKernel, sense: f64, told: &mut dyn FnMut(Term, &SearchStation)) {
        let closed = self.closed();
        let turns = self.turns(moved);
        for station in core::iter::once(closed).chain(turns.iter().flatten()) {
            for term in [Term::Far, Term::Near(1.0), Term::Near(-1.0)] {
                told(term, station);
            }
        }
        let mut levers = [0.0; INTERVALS + 1];
        for (lever, station) in levers.iter_mut().zip(&self.stations) {
            *lever = -sense * moved.lever_m(&moved.at(station.cosine, station.sine));
        }
        for (term, from) in [(Term::Sense, 0), (Term::Lever, Problem::tenth())] {
            let mut worst = if levers[from] > levers[INTERVALS] { from } else { INTERVALS };
            let mut refined = self.stations[worst];
            for index in from + 1..INTERVALS {
                let Some((shift, value)) = vertex(levers[index - 1], levers[index], levers[index + 1]) else {
                    continue;
                };
                if value >= levers[worst] {
                    (worst, refined) = (index, self.refined(moved, sense, term, index, shift));
                }
            }
            told(term, &refined);
        }
        told(Term::TravelLimit, self.open());
        if !self.setout.keep_out.is_empty() {
            let swept = SweptParts::new(self, moved);
            for rectangle in 0..self.setout.keep_out.len() {
                for part in [CRANK, LINK] {
                    let bar = self.wanted_gap_m() + LEVEL_M;
                    swept.least_gap(rectangle, part, [bar, bar], |station| told(Term::Clear(rectangle, part), station));
                }
            }
        }
        self.stand_terms(moved, told);
    }

    /// An optimum brought to where it passes the check; where it does not, it has an excess.
    pub(super) fn proven(&mut self, scratch: &mut SlpScratch, start: Found, bounds: &[Point; 2]) -> Found {
        if self.proof.is_none() || self.gives_up() || !start.kept() {
            return start;
        }
        let mut here = start;
        let mut left = 0.0;
        for _ in 0..ROUNDS {
            let broken = self.broken_at_corners(&self.arm(&here.point, here.elbow), here.sense);
            let Some((_, by)) = broken.first() else {
                let arm = self.arm(&here.point, here.elbow);
                let works = Corner::all().all(|corner| self.works_at(&arm, corner));
                return if works { here } else { Found { excess: 2.0 * EXCESS_TOLERANCE, ..here } };
            };
            left = *by;
            if let Some(proof) = &mut self.proof {
                let mut added: Vec<Piece> = Vec::new();
                for (piece, _) in &broken {
                    // Terms alike at neighbouring corners lead the same way; two of a kind are enough for a round.
                    if added.len() < ADDED && added.iter().filter(|other| other.term == piece.term).count() < 2 {
                        added.push(*piece);
                    }
                }
                proof.known.extend(added);
            }
            let evaluated = self.found(&here.point, here.elbow, here.sense);
            let descended = scratch.descend(self, evaluated, bounds, AGAIN);
            here = scratch.restore(self, descended, bounds);
            if !here.kept() {
                return here;
            }
        }
        Found { excess: left.max(2.0 * EXCESS_TOLERANCE), ..here }
    }
}
