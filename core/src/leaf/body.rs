//! What the leaf is once its members and its ice are added up.

use super::mass::bar_inertia_kg_m2;
use super::members::MemberTotals;
use crate::job::Job;

/// Mass, inertia and wind area about the hinge axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// Mass, kg.
    pub mass_kg: f64,
    /// Hinge axis to mass centre, m.
    pub mass_centroid_m: f64,
    /// Moment of inertia about the hinge axis, kg·m².
    pub inertia_kg_m2: f64,
    /// Area that stops the wind, m².
    pub wind_area_m2: f64,
    /// Hinge axis to that area's centre, m.
    pub wind_centroid_m: f64,
}

impl Body {
    /// The leaf of a job that passed its checks.
    ///
    /// What is said of the leaf as a whole (weighed, measured) goes before what its members come to; a weighed mass scales their inertia.
    /// Ice lies on both faces of the wind area, spread evenly along the leaf, and may widen what the wind sees.
    pub fn of(job: &Job) -> Body {
        let leaf = &job.leaf;
        let totals = leaf.members.as_deref().map(MemberTotals::of);
        let or = |said: Option<f64>, summed: fn(&MemberTotals) -> f64| said.or(totals.as_ref().map(summed));
        let mass_kg = or(leaf.mass_kg, |totals| totals.mass_kg).unwrap_or(0.0);
        let half = leaf.length_m / 2.0;
        let summed_inertia = totals.as_ref().map(|totals| totals.inertia_kg_m2 * (mass_kg / totals.mass_kg));
        let mut body = Body {
            mass_kg,
            mass_centroid_m: or(leaf.mass_centroid_m, |totals| totals.mass_centroid_m).unwrap_or(half),
            inertia_kg_m2: leaf
                .inertia_kg_m2
                .or(summed_inertia)
                .unwrap_or_else(|| bar_inertia_kg_m2(mass_kg, leaf.length_m)),
            wind_area_m2: or(leaf.wind_area_m2, |totals| totals.wind_area_m2).unwrap_or(0.0),
            wind_centroid_m: or(leaf.wind_centroid_m, |totals| totals.wind_centroid_m).unwrap_or(half),
        };
        if let Some(ice) = &job.ice {
            let ice_kg = 2.0 * ice.thickness_m * ice.density() * body.wind_area_m2;
            let whole_kg = body.mass_kg + ice_kg;
            body.mass_centroid_m = (body.mass_kg * body.mass_centroid_m + ice_kg * body.wind_centroid_m) / whole_kg;
            body.mass_kg = whole_kg;
            body.inertia_kg_m2 += bar_inertia_kg_m2(ice_kg, leaf.length_m);
            body.wind_area_m2 *= ice.area_factor();
        }
        body
    }
}
