//! What the tape may do to an arm, and what is known of where that breaks one.

use super::corner::{Corner, SET_DIMENSIONS};
use super::kernel::ArmKernel;
use super::piece::Piece;
use crate::job::Arm;
use alloc::vec::Vec;

/// What the tape may do, with what is known of where it does most.
#[derive(Clone, Debug)]
pub(crate) struct Proof {
    /// Error of each dimension either way, m.
    pub errors_m: [f64; SET_DIMENSIONS],
    /// Terms at corners and leaf angles that an arm was found to break which was thought to keep them: looked at in every arm from then on.
    pub known: Vec<Piece>,
}

impl Proof {
    pub fn new(errors_m: [f64; SET_DIMENSIONS]) -> Proof {
        Proof { errors_m, known: Vec::new() }
    }

    /// An arm at a corner.
    pub fn moved(&self, arm: &Arm, corner: Corner) -> Arm {
        let own_m = arm.lengths_m();
        Arm::of_lengths_m(core::array::from_fn(|i| own_m[i] + corner.sign(i) * self.errors_m[i]), arm.elbow)
    }

    /// The same of a kernel.
    pub fn moved_kernel(&self, kernel: &ArmKernel, corner: Corner) -> ArmKernel {
        ArmKernel::new(&self.moved(&kernel.arm(), corner))
    }

    /// The arm with each of its dimensions long by its error, one at a time.
    pub fn one_by_one(&self, kernel: &ArmKernel) -> [ArmKernel; SET_DIMENSIONS] {
        let arm = kernel.arm();
        let own_m = arm.lengths_m();
        core::array::from_fn(|index| {
            let mut lengths_m = own_m;
            lengths_m[index] += self.errors_m[index];
            ArmKernel::new(&Arm::of_lengths_m(lengths_m, arm.elbow))
        })
    }

    /// Most that crank and link together may be short, m.
    pub fn lengths_m(&self) -> f64 {
        self.errors_m[4] + self.errors_m[5]
    }

    /// Most that shaft and bracket may move, each, m.
    pub fn pins_m(&self) -> [f64; 2] {
        let [x, y, u, v, ..] = self.errors_m;
        [crate::real::sqrt(x * x + y * y), crate::real::sqrt(u * u + v * v)]
    }

    /// Longest way from shaft to bracket at any corner where the planned one is `(dx, dy)` with the leaf closed, m.
    pub fn closed_reach_m(&self, dx: f64, dy: f64) -> f64 {
        let (along, across) =
            (dx.abs() + self.errors_m[0] + self.errors_m[2], dy.abs() + self.errors_m[1] + self.errors_m[3]);
        crate::real::sqrt(along * along + across * across)
    }
}
