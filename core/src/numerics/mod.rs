//! Plain numerics: knows numbers and nothing of a gate.

mod arc;
mod extreme;
#[cfg(test)]
pub mod fixtures;
mod integrator;
mod linear_programme;
mod placed;
mod separation;
mod stiff;
mod trial;

pub use arc::ARC_OVER_CHORD;
pub use extreme::{GOLDEN_SHARE, golden_section, vertex};
pub use integrator::Integrator;
pub use linear_programme::{Active, Programme, ROWS, VARIABLES};
pub use placed::{PlacedRectangle, corners, ends_of, furthest_corner};
pub use separation::{Sides, separation_m};
pub use trial::StepTrial;
