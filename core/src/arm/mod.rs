//! The arm: crank and link between the operator's shaft and the bracket on the leaf.

mod defect;
mod linkage;
mod path;
mod pose;
pub(crate) mod setout;

pub use defect::{Defect, DefectKind};
pub use linkage::Linkage;
pub use path::{PathPoint, ShaftPath};
pub(crate) use pose::Leverage;
pub use pose::Pose;
pub use setout::{Limit, RuleOfThumb, ShortLength, rule_of_thumb};
