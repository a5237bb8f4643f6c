//! Adding the members up.

use super::section::{CornerRule, STEEL_KG_M3, hollow_area_m2, round_hollow_area_m2, sheet_mass_kg_m2};
use crate::job::{Bar, Member, MemberPlace, Tube};
use crate::leaf::{bar_solidity, mesh_solidity, stretch_inertia_kg_m2};
use crate::real::root;
use core::f64::consts::PI;
use serde::Serialize;

/// What the listed members come to. Crossings count twice: a rail welded over uprights shades them, which is left out on the careful side.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct MemberTotals {
    /// Mass, kg.
    pub mass_kg: f64,
    /// Hinge axis to mass centre, m.
    pub mass_centroid_m: f64,
    /// Moment of inertia about the hinge axis, kg·m²; the members' own thickness is neglected.
    pub inertia_kg_m2: f64,
    /// Area that stops the wind, m².
    pub wind_area_m2: f64,
    /// Hinge axis to that area's centre, m.
    pub wind_centroid_m: f64,
}

/// Mass and face of a metre of bar, or of a square metre of panel.
enum Stuff {
    Bar { kg_m: f64, face_m: f64 },
    Panel { kg_m2: f64, solidity: f64 },
}

impl Tube {
    pub(crate) fn depth(&self) -> f64 {
        self.depth_m.unwrap_or(self.face_m)
    }
}

impl Bar {
    fn depth(&self) -> f64 {
        self.depth_m.unwrap_or(self.face_m)
    }
}

impl Member {
    fn stuff(&self) -> Stuff {
        let density = |density: Option<f64>| density.unwrap_or(STEEL_KG_M3);
        match self {
            Member::Tube(part) => {
                let rule = part.corners.unwrap_or(CornerRule::En10219);
                let area_m2 = hollow_area_m2(part.face_m, part.depth(), part.wall_m, rule);
                Stuff::Bar { kg_m: density(part.density_kg_m3) * area_m2, face_m: part.face_m }
            }
            Member::RoundTube(part) => {
                let area_m2 = round_hollow_area_m2(part.face_m, part.wall_m);
                Stuff::Bar { kg_m: density(part.density_kg_m3) * area_m2, face_m: part.face_m }
            }
            Member::Bar(part) => {
                Stuff::Bar { kg_m: density(part.density_kg_m3) * part.face_m * part.depth(), face_m: part.face_m }
            }
            Member::RoundBar(part) => {
                let area_m2 = PI / 4.0 * part.face_m * part.face_m;
                Stuff::Bar { kg_m: density(part.density_kg_m3) * area_m2, face_m: part.face_m }
            }
            Member::Sheet(part) => {
                Stuff::Panel { kg_m2: sheet_mass_kg_m2(part.thickness_m, density(part.density_kg_m3)), solidity: 1.0 }
            }
            Member::Boards(part) => {
                let solidity = bar_solidity(part.face_m, part.face_m + part.gap_m.unwrap_or(0.0));
                let kg_m2 = sheet_mass_kg_m2(part.thickness_m, density(part.density_kg_m3)) * solidity;
                Stuff::Panel { kg_m2, solidity }
            }
            Member::Mesh(part) => {
                // Two layers of wires, one each way.
                let metres = 2.0 / part.pitch_m;
                let kg_m2 = density(part.density_kg_m3) * PI / 4.0 * part.wire_m * part.wire_m * metres;
                Stuff::Panel { kg_m2, solidity: mesh_solidity(part.wire_m, part.pitch_m) }
            }
        }
    }
}

/// Mean of the squared distances from the hinge of `count` uprights spread evenly, m²:
/// `x̄² + (b − a)²·(n + 1)/(12·(n − 1))`, the sum of squares of an arithmetic series.
fn upright_mean_square_m2(place: &MemberPlace, count: f64) -> f64 {
    let (middle, spread) = ((place.from_m + place.to_m) / 2.0, place.to_m - place.from_m);
    let scatter = if count > 1.0 { spread * spread * (count + 1.0) / (12.0 * (count - 1.0)) } else { 0.0 };
    middle * middle + scatter
}

impl MemberTotals {
    /// Sums members that passed their checks.
    pub fn of(members: &[Member]) -> MemberTotals {
        let mut sum = MemberTotals::default();
        for member in members {
            let place = member.place();
            let count = f64::from(place.count.unwrap_or(1));
            let middle_m = (place.from_m + place.to_m) / 2.0;
            let width_m = (place.to_m - place.from_m).abs();
            let (mass_kg, area_m2, inertia_kg_m2) = match (member.stuff(), place.height_m) {
                (Stuff::Panel { kg_m2, solidity }, height_m) => {
                    let outline_m2 = count * width_m * height_m.unwrap_or(0.0);
                    let mass_kg = kg_m2 * outline_m2;
                    (mass_kg, solidity * outline_m2, stretch_inertia_kg_m2(mass_kg, place.from_m, place.to_m))
                }
                (Stuff::Bar { kg_m, face_m }, Some(height_m)) => {
                    let mass_kg = kg_m * height_m * count;
                    (mass_kg, face_m * height_m * count, mass_kg * upright_mean_square_m2(place, count))
                }
                (Stuff::Bar { kg_m, face_m }, None) => {
                    let rise_m = place.rise_m.unwrap_or(0.0);
                    let metres = root(width_m * width_m + rise_m * rise_m) * count;
                    let mass_kg = kg_m * metres;
                    (mass_kg, face_m * metres, stretch_inertia_kg_m2(mass_kg, place.from_m, place.to_m))
                }
            };
            sum.mass_kg += mass_kg;
            sum.mass_centroid_m += mass_kg * middle_m;
            sum.inertia_kg_m2 += inertia_kg_m2;
            sum.wind_area_m2 += area_m2;
            sum.wind_centroid_m += area_m2 * middle_m;
        }
        let over = |moment: f64, whole: f64| if whole > 0.0 { moment / whole } else { 0.0 };
        sum.mass_centroid_m = over(sum.mass_centroid_m, sum.mass_kg);
        sum.wind_centroid_m = over(sum.wind_centroid_m, sum.wind_area_m2);
        sum
    }
}
