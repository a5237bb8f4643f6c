//! The arm an operator is bought with.

use crate::job::table::*;
use crate::units::Quantity::ShortLength;

block! {
    /// Crank and link as they are bought: how far each can be set, in which steps, what their joints allow.
    #[derive(Copy, Default)]
    pub struct ArmKit at "operators.kit." {
        /// Crank, least and most, m; as the site asks where it is not said.
        crank_m: Option<[f64; 2]> = range(ShortLength, 0.02, 10.0, 0.8),
        /// Link, least and most, m; as the site asks where it is not said.
        link_m: Option<[f64; 2]> = range(ShortLength, 0.02, 10.0, 0.7),
        /// Lengths are whole multiples of it, m; any length where it is not said.
        step_m: Option<f64> = number(ShortLength, 0.0005, 0.5, 0.01),
        /// Rise and fall of the bracket pin that its joints allow, in all, m.
        joint_allowance_m: Option<f64> = number(ShortLength, 0.0, 1.0, 0.02),
        /// What joints at both ends of the crank take off its tubes, together, m.
        crank_ends_m: Option<f64> = number(ShortLength, 0.0, 2.0, 0.08),
        /// What joints at both ends of the link take off its tubes, together, m.
        link_ends_m: Option<f64> = number(ShortLength, 0.0, 2.0, 0.08),
        /// Half the width of crank and link in plan, m.
        half_width_m: Option<f64> = number(ShortLength, 0.0, 0.5, 0.03),
    }
}
