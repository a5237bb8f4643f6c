//! The leaf from its members: mass, mass centre, inertia and wind area, all at once.

mod section;
mod totals;

pub use section::{
    CornerRule, STEEL_KG_M3, hollow_area_m2, hollow_largest_wall_m, round_hollow_area_m2, sheet_mass_kg_m2,
};
pub use totals::MemberTotals;
