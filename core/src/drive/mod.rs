//! From loads and arm to what the operator's shaft must do, and how that compares with its rating.

mod demand;
mod peak;
mod rating;
mod wind_limit;

pub(crate) use demand::effort_n_m;
pub use demand::{Demand, Direction, WindCase};
pub use peak::{PeakDemand, Swept};
pub use rating::{Rating, Verdict};
pub use wind_limit::{WindLimit, WindLimitState};
