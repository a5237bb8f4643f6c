//! What a force on a person is estimated with.

use crate::job::table::*;
use crate::units::Quantity::{Force, Length, ShortLength, Stiffness, Time};

block! {
    /// What a force on a person is estimated with. An estimate never stands in for a measurement.
    #[derive(Copy, Default)]
    pub struct Contact at "contact." {
        /// Stiffness of what the leaf meets, N/m; default 500 000, that of the measuring device (EN 12445, superseded; from memory).
        stiffness_n_per_m: Option<f64> = assumed(Stiffness, 1e3, 1e8, 5e5) => stiffness,
        /// Dynamic force that is not to be exceeded at gaps of 50 to 500 mm, for at most 0.75 s, N; default 400 (EN 12453:2001 Annex A, superseded; from
        /// memory). Wider gaps are held to 1,400 N of the same.
        dynamic_limit_n: Option<f64> = assumed(Force, 10.0, 5000.0, 400.0) => dynamic_limit,
        /// Static force that is not to be exceeded after those 0.75 s, at any gap, N; default 150 (the same).
        static_limit_n: Option<f64> = assumed(Force, 10.0, 5000.0, 150.0) => static_limit,
        /// Time from contact until the drive has let go, s; default 0.3 (common practice, no source).
        response_s: Option<f64> = assumed(Time, 0.0, 5.0, 0.3) => response,
        /// Compression the safety edge offers, m; unknown unless given.
        edge_travel_m: Option<f64> = number(ShortLength, 0.0, 0.5, 0.05),
        /// Distance from the hinge axis at which a hand may be caught, m; default 0.3 (common practice, no source).
        near_m: Option<f64> = assumed(Length, 0.05, 15.0, 0.3) => near,
    }
}
