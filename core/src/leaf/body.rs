//! What the leaf is once its members and its ice are added up.

use crate::elements::bar_inertia_kg_m2;
use crate::job::{Ice, Job, Leaf, MemberTotals};

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
    /// The leaf of a job that passed its checks, with its ice.
    #[must_use]
    pub fn of(job: &Job) -> Body {
        let bare = Body::without_ice(&job.leaf);
        match (&job.ice, &job.leaf.members) {
            (None, _) => bare,
            (Some(ice), None) => bare.iced_on_faces(ice, job.leaf.length_m),
            (Some(ice), Some(members)) => bare.iced_all_round(
                ice,
                &MemberTotals::of(members),
                &MemberTotals::iced(members, ice.thickness_m, ice.density()),
            ),
        }
    }

    /// The leaf by itself.
    ///
    /// What is said of the leaf as a whole (weighed, measured) goes before what its members come to; a weighed mass scales their inertia.
    pub fn without_ice(leaf: &Leaf) -> Body {
        let totals = leaf.members.as_deref().map(MemberTotals::of);
        let or = |said: Option<f64>, summed: fn(&MemberTotals) -> f64| said.or(totals.as_ref().map(summed));
        let mass_kg = or(leaf.mass_kg, |totals| totals.mass_kg).unwrap_or(0.0);
        let half = leaf.length_m / 2.0;
        let summed_inertia = totals.as_ref().map(|totals| totals.inertia_kg_m2 * (mass_kg / totals.mass_kg));
        Body {
            mass_kg,
            mass_centroid_m: or(leaf.mass_centroid_m, |totals| totals.mass_centroid_m).unwrap_or(half),
            inertia_kg_m2: leaf
                .inertia_kg_m2
                .or(summed_inertia)
                .unwrap_or_else(|| bar_inertia_kg_m2(mass_kg, leaf.length_m)),
            wind_area_m2: or(leaf.wind_area_m2, |totals| totals.wind_area_m2).unwrap_or(0.0),
            wind_centroid_m: or(leaf.wind_centroid_m, |totals| totals.wind_centroid_m).unwrap_or(half),
        }
    }

    /// Ice on both faces of the wind area, spread evenly along the leaf: all that can be said of a leaf whose parts are not known. Right for a sheet;
    /// bars carry more, because it lies all round them and widens them.
    fn iced_on_faces(self, ice: &Ice, length_m: f64) -> Body {
        let ice_kg = 2.0 * ice.thickness_m * ice.density() * self.wind_area_m2;
        let whole_kg = self.mass_kg + ice_kg;
        Body {
            mass_kg: whole_kg,
            mass_centroid_m: (self.mass_kg * self.mass_centroid_m + ice_kg * self.wind_centroid_m) / whole_kg,
            inertia_kg_m2: self.inertia_kg_m2 + bar_inertia_kg_m2(ice_kg, length_m),
            wind_area_m2: self.wind_area_m2 * ice.area_factor(),
            wind_centroid_m: self.wind_centroid_m,
        }
    }

    /// Ice all round the members, where each of them is; the area grows by it, or by the job's factor where that is more.
    fn iced_all_round(self, ice: &Ice, bare: &MemberTotals, iced: &MemberTotals) -> Body {
        let ice_kg = iced.mass_kg - bare.mass_kg;
        let ice_kg_m = iced.mass_kg * iced.mass_centroid_m - bare.mass_kg * bare.mass_centroid_m;
        let ice_m2 = iced.wind_area_m2 - bare.wind_area_m2;
        let ice_m3 = iced.wind_area_m2 * iced.wind_centroid_m - bare.wind_area_m2 * bare.wind_centroid_m;
        let (whole_kg, whole_m2) = (self.mass_kg + ice_kg, self.wind_area_m2 + ice_m2);
        let grown_m = if whole_m2 > 0.0 {
            (self.wind_area_m2 * self.wind_centroid_m + ice_m3) / whole_m2
        } else {
            self.wind_centroid_m
        };
        let said_m2 = self.wind_area_m2 * ice.area_factor();
        let (wind_area_m2, wind_centroid_m) =
            if said_m2 > whole_m2 { (said_m2, self.wind_centroid_m) } else { (whole_m2, grown_m) };
        Body {
            mass_kg: whole_kg,
            mass_centroid_m: (self.mass_kg * self.mass_centroid_m + ice_kg_m) / whole_kg,
            inertia_kg_m2: self.inertia_kg_m2 + iced.inertia_kg_m2 - bare.inertia_kg_m2,
            wind_area_m2,
            wind_centroid_m,
        }
    }
}
