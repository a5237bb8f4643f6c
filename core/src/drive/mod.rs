//! From loads and arm to what the operator's shaft must do, and how that compares with its rating.
//!
//! ```
//! use pintle_core::drive::{motor_power_w, motor_torque_n_m, trapezoid_time_s};
//!
//! // A straight line of torque over speed: half of the standstill torque at half of the no-load speed, where the power is largest.
//! assert_eq!(motor_torque_n_m(900.0, 2.0, 1.0), 450.0);
//! assert_eq!(motor_power_w(900.0, 2.0, 1.0), 450.0);
//! // Eight metres at 1 m/s, gaining speed and losing it at 1 m/s²: 8 + 1 s.
//! assert_eq!(trapezoid_time_s(8.0, 1.0, 1.0), 9.0);
//! ```

mod breakaway;
mod demand;
mod holding;
mod motion;
mod peak;
mod rating;
mod wind_limit;

pub use breakaway::*;
pub use demand::Demand;
pub(crate) use demand::effort_n_m;
pub use holding::*;
pub use motion::*;
pub(crate) use peak::{Grid, PeakDemand, Swept};
pub use rating::{Rating, Verdict};
pub use wind_limit::{WindLimit, WindLimitState};
