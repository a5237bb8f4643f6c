//! Single elements by themselves: a collar, a thread, a section, a sheet with holes. Functions of plain numbers that know nothing of a gate, so
//! that the checks of a job and the loads on a leaf ask the same ones.

mod collar;
mod helix;
mod mass;
mod pairing;
mod section;
mod solidity;

pub use collar::{Collar, collar_friction_uniform_pressure_n_m, collar_friction_uniform_wear_n_m};
pub use helix::{helix_lowering_n_m, helix_raising_n_m, helix_steepest_m_per_rad};
pub use mass::{bar_inertia_kg_m2, stretch_inertia_kg_m2};
pub use pairing::{FrictionRange, Pairing};
pub use section::{
    CornerRule, STEEL_KG_M3, hollow_area_m2, hollow_largest_wall_m, round_hollow_area_m2, sheet_mass_kg_m2,
};
pub(crate) use solidity::ASCE7_LEAST_SOLIDITY;
pub use solidity::{EN1991_LEAST_SOLIDITY, bar_solidity, mesh_solidity};
