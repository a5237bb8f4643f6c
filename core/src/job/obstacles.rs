//! What stands around the gate: one list that every check asks for.
//!
//! A wall is entered once: what the leaf meets, what the arm meets, what is left behind the open leaf, where a person can be caught, where an
//! operator can be stood and what is drawn all come from here.

use super::{Job, KeepOut, Obstacle, OperatorBody, SetOut, Stopped};
use crate::numerics::Sides;
use alloc::vec::Vec;
use core::ops::Deref;

impl Job {
    /// Everything that stands around, each with its place in the list.
    pub fn standing(&self) -> impl Iterator<Item = (usize, &Obstacle)> {
        self.obstacles.iter().flatten().enumerate()
    }

    /// What stops something, each with its place in the list.
    pub fn stopping(&self, what: Stopped) -> impl Iterator<Item = (usize, &Obstacle)> {
        self.standing().filter(move |(_, obstacle)| obstacle.stops(what))
    }

    /// What the leaf is hung on, where the job says where that is.
    pub fn hinge_posts(&self) -> impl Iterator<Item = (usize, &Obstacle)> {
        self.standing().filter(|(_, obstacle)| obstacle.is_hinge_post())
    }

    /// Rectangles that shaft, crank and link of a set-out stay out of.
    #[must_use]
    pub fn arm_keeps_out_of(&self) -> Vec<KeepOut> {
        self.stopping(Stopped::Arm).map(|(_, obstacle)| obstacle.place()).collect()
    }

    /// Rectangles in which no operator can stand.
    #[must_use]
    pub fn pad_keeps_out_of(&self) -> Vec<KeepOut> {
        self.stopping(Stopped::Pad).map(|(_, obstacle)| obstacle.place()).collect()
    }

    /// The set-out block among all that stands around.
    pub(crate) fn setout_around(&self) -> Option<SetOutSite> {
        let setout = self.setout.clone()?;
        let stand = self.operator.body.map(|body| Stand {
            body,
            turn_rad: self.marks.unwrap_or_default().anchor_turn_rad(),
            leaf: self.leaf.sides_m(),
        });
        // The crank begins at the shaft, so that what stops the arm stops the shaft: only a body, or what lets the arm pass, asks for more.
        let pads = self.stopping(Stopped::Pad).filter(|(_, one)| stand.is_some() || !one.stops(Stopped::Arm));
        let pads = pads.map(|(_, one)| one.place()).collect();
        let errors_m = (setout.tape_proof == Some(true)).then(|| self.tape.unwrap_or_default().errors_m());
        let keep_out = self.arm_keeps_out_of();
        Some(SetOutSite { setout, keep_out, half_width_m: self.arm_half_width(), pads, stand, errors_m })
    }
}

/// What a search may choose from, and what stands around.
#[derive(Clone, Debug)]
pub(crate) struct SetOutSite {
    /// The block.
    pub setout: SetOut,
    /// Rectangles that crank and link stay out of.
    pub keep_out: Vec<KeepOut>,
    /// Half the width of crank and link, m.
    pub half_width_m: f64,
    /// Rectangles that the shaft, or the operator's body about it, stays out of.
    pub pads: Vec<KeepOut>,
    /// The body, where one is known.
    pub stand: Option<Stand>,
    /// Error of each of [`Arm::lengths_m`](super::Arm::lengths_m) either way that has to leave an arm that works, m; where the block asks for it.
    pub errors_m: Option<[f64; 6]>,
}

/// The operator's body, to be stood.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Stand {
    /// Its outline about the shaft.
    pub body: OperatorBody,
    /// How far its base is turned from the crank of the closed arm, rad.
    pub turn_rad: f64,
    /// The leaf, which it stays clear of.
    pub leaf: Sides,
}

impl Deref for SetOutSite {
    type Target = SetOut;
    fn deref(&self) -> &SetOut {
        &self.setout
    }
}

impl From<SetOut> for SetOutSite {
    /// Nothing around, an arm of no width.
    fn from(setout: SetOut) -> SetOutSite {
        SetOutSite { setout, keep_out: Vec::new(), half_width_m: 0.0, pads: Vec::new(), stand: None, errors_m: None }
    }
}

impl SetOutSite {
    /// Whether anything stands in the way.
    pub fn is_around(&self) -> bool {
        !self.keep_out.is_empty() || !self.pads.is_empty() || self.stand.is_some()
    }

    /// Half the width of crank and link, m.
    pub fn half_width(&self) -> f64 {
        self.half_width_m
    }
}
