//! What the search varies.

/// Variables of the search, in the order of [`Point`].
pub(crate) const DIMENSIONS: usize = 5;

/// Shaft x, shaft y, bracket u, crank, and `z = √(1 − straightness)`, in which everything is smooth up to the straight arm: elbow
/// height and crank angle grow like `z` from the dead point, like the root of anything else.
pub(crate) type Point = [f64; DIMENSIONS];
