//! Speed of the latch edge and torque at the shaft against time: two plots over one axis, every run in both.

mod draw;
mod frame;

pub use draw::draw;
pub use frame::Frame;

use super::view::View;
use pintle_core::plan::{Run, RunPoint};

/// The run that is followed, where it is at the cursor's leaf angle; `None` where it does not come to it.
pub fn followed(runs: &[Run], view: &View) -> Option<RunPoint> {
    runs.get(view.run)?.of_leaf(view.leaf_deg)
}
