//! A set-out that a tape can set.

use crate::job::Arm;

/// A set-out on the lattice.
#[derive(Clone, Copy, Debug)]
pub(crate) struct OnLattice {
    pub arm: Arm,
    pub objective: f64,
    /// Station where its objective is largest: where a rival is asked first.
    pub(super) station: usize,
    pub(super) triple: [i64; 3],
}
