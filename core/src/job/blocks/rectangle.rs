//! Rectangles in plan.

use crate::job::table::*;
use crate::units::Quantity::ShortLength;
use alloc::{format, vec::Vec};

block! {
    /// A rectangle in plan, sides along the closed leaf and across it.
    #[derive(Copy)]
    pub struct KeepOut at "obstacles." {
        /// Along the closed leaf from the hinge line, m.
        x_m: [f64; 2] = range(ShortLength, -20.0, 20.0, 0.1),
        /// Square to the closed leaf from the axis line, towards the side it opens to, m.
        y_m: [f64; 2] = range(ShortLength, -20.0, 20.0, 0.2),
    }
}

/// The most obstacles or means of a job, more than a site has; beyond it a hostile document is refused before anything pays for it.
pub(super) const MOST: u32 = 64;

impl KeepOut {
    /// Its least and greatest x, and y, m.
    pub(crate) fn sides(&self) -> [[f64; 2]; 2] {
        [self.x_m, self.y_m]
    }

    /// Ends that are the wrong way round.
    pub(in crate::job) fn relations(&self, path: core::fmt::Arguments) -> Vec<Fault> {
        // A hundred rectangles are looked at for every change of a number; their paths are written where there is something to tell.
        if [self.x_m, self.y_m].iter().all(|[least, most]| least <= most) {
            return Vec::new();
        }
        let x = const { KeepOut::BLOCK.number("x_m") }.crossed(&format!("{path}.x_m"), self.x_m);
        let y = const { KeepOut::BLOCK.number("y_m") }.crossed(&format!("{path}.y_m"), self.y_m);
        x.into_iter().chain(y).collect()
    }
}
