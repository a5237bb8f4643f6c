//! Ways that are known by their ends.

/// An arc over its chord, no less than it is, where the direction turns by less than 50° on the way; of a circle the ratio is
/// `(θ/2)/sin(θ/2)`, 1.033 at 50°.
pub const ARC_OVER_CHORD: f64 = 1.04;
