//! Hinges: what their friction takes, by kind and by handbook range.

mod friction;
mod helix;
mod pairing;
mod rising;

pub use friction::{
    Collar, collar_friction_uniform_pressure_n_m, collar_friction_uniform_wear_n_m, hinge_couple_n, pin_friction_n_m,
    rolling_friction_n_m,
};
pub use helix::{helix_lowering_n_m, helix_raising_n_m, helix_steepest_m_per_rad};
pub use pairing::{FrictionRange, Pairing};
pub use rising::RisingLeaf;
