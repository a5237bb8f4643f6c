//! The plate an operator stands on.

use crate::job::table::*;
use crate::units::Quantity::ShortLength;

block! {
    /// A rectangle of anchor holes about the shaft, along and across the direction the base is laid in, and the plate around it.
    #[derive(Copy)]
    pub struct BasePattern at "operators.base." {
        /// Spacing of the holes along the base, m.
        along_m: f64 = number(ShortLength, 0.02, 2.0, 0.25),
        /// Spacing of the holes across it, m.
        across_m: f64 = number(ShortLength, 0.02, 2.0, 0.15),
        /// Middle of the holes from the shaft, along the base towards the elbow of the closed arm, m; default 0.
        offset_along_m: Option<f64> = number(ShortLength, -2.0, 2.0, 0.05),
        /// Middle of the holes from the shaft, a quarter turn counter-clockwise from that, m; default 0.
        offset_across_m: Option<f64> = number(ShortLength, -2.0, 2.0, 0.0),
        /// From a hole's middle to the edge of the plate, m; default 0.
        edge_m: Option<f64> = number(ShortLength, 0.0, 1.0, 0.03),
        /// Diameter of the anchors, m.
        anchor_m: Option<f64> = number(ShortLength, 0.002, 0.1, 0.012),
    }
}

impl BasePattern {
    /// The plate about the shaft, along and across the base, m.
    pub(super) fn sides_m(&self) -> [[f64; 2]; 2] {
        let edge_m = self.edge_m.unwrap_or(0.0);
        let side = |middle_m: Option<f64>, spacing_m: f64| {
            let (middle_m, half_m) = (middle_m.unwrap_or(0.0), 0.5 * spacing_m + edge_m);
            [middle_m - half_m, middle_m + half_m]
        };
        [side(self.offset_along_m, self.along_m), side(self.offset_across_m, self.across_m)]
    }
}
