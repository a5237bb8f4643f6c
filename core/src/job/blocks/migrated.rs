//! What an older document said twice.

use crate::job::table::*;
use crate::units::Quantity::ShortLength;

block! {
    /// Widths that a document of schema 1 gave in two places and not alike; the larger is kept, the other stands here until somebody looks.
    #[derive(Copy, Default)]
    pub struct Migrated at "migrated." {
        /// Half the width of crank and link that was not kept, m.
        arm_half_width_other_m: Option<f64> = number(ShortLength, 0.0, 0.5, 0.02),
        /// Thickness of the leaf that was not kept, m.
        leaf_thickness_other_m: Option<f64> = number(ShortLength, 0.0, 1.0, 0.06),
    }
}
