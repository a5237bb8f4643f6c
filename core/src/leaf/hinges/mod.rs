//! Hinges: what their friction takes, by kind.

mod friction;
mod rising;

pub use friction::{hinge_couple_n, pin_friction_n_m, rolling_friction_n_m};
pub use rising::RisingLeaf;
