//! The arm: crank and link between the operator's shaft and the bracket on the leaf.
//!
//! ```
//! use pintle_core::{arm::Linkage, job::{Arm, Elbow}};
//!
//! // A parallelogram: crank and link stand like bracket and shaft, so that shaft and leaf turn as one.
//! let arm = Arm::builder()
//!     .shaft_x_m(-1.0).shaft_y_m(0.0).bracket_u_m(0.0).bracket_v_m(0.5)
//!     .crank_m(0.5).link_m(1.0).elbow(Elbow::Left)
//!     .build();
//! let linkage = Linkage::new(&arm, 1.0);
//! assert!(linkage.defect().is_none());
//! assert!((linkage.pose(0.4).ratio.expect("no dead point") - 1.0).abs() < 1e-12);
//! ```

mod body;
mod defect;
mod linkage;
mod path;
mod pose;
pub(crate) mod setout;

pub(crate) use body::placed_body;
pub use defect::{Defect, DefectKind};
pub use linkage::Linkage;
pub use path::{PathPoint, ShaftPath};
pub(crate) use pose::Leverage;
pub use pose::Pose;
pub use setout::{Limit, RuleOfThumb, ShortLength, rule_of_thumb};
