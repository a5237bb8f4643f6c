//! Moments about the hinge: friction, wind, lean; and what the drive must supply against them.

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
