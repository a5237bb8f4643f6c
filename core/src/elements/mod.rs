//! Single elements by themselves: a collar, a thread, a section, a sheet with holes. Functions of plain numbers that know nothing of a gate, so
//! that the checks of a job and the loads on a leaf ask the same ones.
//!
//! ```
//! use pintle_core::elements::{Collar, bar_inertia_kg_m2};
//!
//! // A collar of 20 mm about a hole of 12 mm, pressed by 1,000 N at μ = 0.2: worn in, friction acts at the mean radius, 16 mm.
//! assert!((Collar::UniformWear.friction_n_m(0.2, 1000.0, 0.020, 0.012) - 3.2).abs() < 1e-12);
//! // A bar turned about its end: m·L²/3.
//! assert_eq!(bar_inertia_kg_m2(30.0, 2.0), 40.0);
//! ```

mod collar;
mod efficiency;
mod helix;
mod mass;
mod pairing;
mod section;
mod solidity;

pub use collar::{Collar, collar_friction_uniform_pressure_n_m, collar_friction_uniform_wear_n_m};
pub use efficiency::Efficiency;
pub use helix::{helix_lowering_n_m, helix_raising_n_m, helix_steepest_m_per_rad};
pub use mass::{bar_inertia_kg_m2, stretch_inertia_kg_m2};
pub use pairing::{FrictionRange, Pairing};
pub use section::{
    CornerRule, STEEL_KG_M3, hollow_area_m2, hollow_largest_wall_m, round_hollow_area_m2, sheet_mass_kg_m2,
};
pub(crate) use solidity::ASCE7_LEAST_SOLIDITY;
pub use solidity::{EN1991_LEAST_SOLIDITY, bar_solidity, mesh_solidity};
