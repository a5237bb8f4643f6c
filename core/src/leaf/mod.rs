//! Moments about the hinge: friction, wind, lean; and what the drive must supply against them.
//!
//! ```
//! use pintle_core::leaf::{hinge_couple_n, velocity_pressure_pa, wind_moment_n_m};
//!
//! // 160 kg with the centre 1.6 m out, on hinges 1.3 m apart, pull at the upper hinge by W·x/s.
//! assert!((hinge_couple_n(160.0 * 9.80665, 1.6, 1.3) - 1931.16).abs() < 0.01);
//! // ρ·v²/2 at 12 m/s, and its moment on 1.9 m² whose centre is 1.6 m out, at a force coefficient of 1.4.
//! let pressure_pa = velocity_pressure_pa(1.225, 12.0);
//! assert!((pressure_pa - 88.2).abs() < 1e-9);
//! assert!((wind_moment_n_m(1.225, 12.0, 1.4, 1.9, 1.6) - 88.2 * 1.4 * 1.9 * 1.6).abs() < 1e-9);
//! ```

mod body;
mod hinges;
mod loads;
mod snow;
mod station;
mod wind;

pub use body::Body;
pub use hinges::*;
pub use loads::LeafLoads;
pub(crate) use loads::gust_moment_n_m;
pub use snow::{SNOW_DEPTH_M, snow_moment_n_m};
pub(crate) use station::LeafStation;
pub use wind::*;
