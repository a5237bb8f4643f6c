//! Wind: from a standard, a Beaufort number or a plain gust to a pressure; from proportions to a force coefficient; from both to a
//! moment about the hinge.
//!
//! Two winds are kept apart everywhere: the *working wind* the drive must open against, and the *storm* that the closed leaf, its arm and
//! its anchors must hold.

mod asce7;
mod asce7_shape;
mod beaufort;
mod en1991;
mod en1991_lattice;
mod en1991_wall;
mod gust;
mod moment;

pub use asce7::{asce7_exposure_coefficient, asce7_velocity_pressure_pa};
pub use asce7_shape::{
    ASCE7_ECCENTRICITY, asce7_open_coefficient, asce7_wall_coefficient, asce7_wall_moment_coefficient,
};
pub use beaufort::{beaufort_number, beaufort_range_m_s};
pub use en1991::{
    en1991_peak_pressure_pa, en1991_probability_factor, en1991_roughness_factor, en1991_turbulence_intensity,
};
pub use en1991_lattice::en1991_lattice_coefficient;
pub use en1991_wall::{Zones, en1991_wall_force_coefficient, en1991_wall_moment_coefficient, en1991_zone_coefficients};
pub use gust::Gust;
pub(crate) use moment::normal_component_and_slope;
pub use moment::{normal_component, openings_factor, velocity_pressure_pa, wind_moment_n_m};
