//! From loads and arm to what the operator's shaft must do, and how that compares with its rating.

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
