//! What the listed members come to: mass, mass centre, inertia and wind area, all at once.

use super::blocks::{Bar, Member, MemberPlace, Tube};
use crate::elements::*;
use crate::real::sqrt;
use core::f64::consts::PI;
use serde::Serialize;

/// What the listed members come to. Crossings count twice: a rail welded over uprights shades them, which is left out on the careful side.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
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

/// Ice that lies on everything, or none.
#[derive(Clone, Copy)]
struct Coat {
    thickness_m: f64,
    density_kg_m3: f64,
}

impl Coat {
    /// Ice round a rectangular section, kg/m, its corners square: `ρ·((f + 2t)·(d + 2t) − f·d)`.
    fn round_rectangle_kg_m(self, face_m: f64, depth_m: f64) -> f64 {
        let more_m = 2.0 * self.thickness_m;
        self.density_kg_m3 * ((face_m + more_m) * (depth_m + more_m) - face_m * depth_m)
    }

    /// Ice round a round section, kg/m: `ρ·π·t·(d + t)`. Source: radial ice on a bar, geometry.
    fn round_circle_kg_m(self, diameter_m: f64) -> f64 {
        self.density_kg_m3 * PI * self.thickness_m * (diameter_m + self.thickness_m)
    }
}

impl Member {
    /// What it is made of, its coat included: a bar carries ice all round and meets the wind wider by it on either side, a sheet carries it on both
    /// faces; boards and wires are bars, as many as a square metre holds.
    fn stuff(&self, coat: Coat) -> Stuff {
        let density = |density: Option<f64>| density.unwrap_or(STEEL_KG_M3);
        let more_m = 2.0 * coat.thickness_m;
        let square = |kg_m: f64, face_m: f64, depth_m: f64| Stuff::Bar {
            kg_m: kg_m + coat.round_rectangle_kg_m(face_m, depth_m),
            face_m: face_m + more_m,
        };
        let round = |kg_m: f64, face_m: f64| Stuff::Bar {
            kg_m: kg_m + coat.round_circle_kg_m(face_m),
            face_m: face_m + more_m,
        };
        match self {
            Member::Tube(part) => {
                let rule = part.corners.unwrap_or(CornerRule::En10219);
                let area_m2 = hollow_area_m2(part.face_m, part.depth(), part.wall_m, rule);
                square(density(part.density_kg_m3) * area_m2, part.face_m, part.depth())
            }
            Member::RoundTube(part) => {
                let area_m2 = round_hollow_area_m2(part.face_m, part.wall_m);
                round(density(part.density_kg_m3) * area_m2, part.face_m)
            }
            Member::Bar(part) => {
                square(density(part.density_kg_m3) * part.face_m * part.depth(), part.face_m, part.depth())
            }
            Member::RoundBar(part) => {
                let area_m2 = PI / 4.0 * part.face_m * part.face_m;
                round(density(part.density_kg_m3) * area_m2, part.face_m)
            }
            Member::Sheet(part) => {
                let kg_m2 = sheet_mass_kg_m2(part.thickness_m, density(part.density_kg_m3));
                Stuff::Panel { kg_m2: kg_m2 + more_m * coat.density_kg_m3, solidity: 1.0 }
            }
            Member::Boards(part) => {
                let pitch_m = part.face_m + part.gap_m.unwrap_or(0.0);
                let bare = bar_solidity(part.face_m, pitch_m);
                let kg_m2 = sheet_mass_kg_m2(part.thickness_m, density(part.density_kg_m3)) * bare;
                // Boards that touch carry it on their faces only.
                let ice_kg_m2 = if bare < 1.0 {
                    coat.round_rectangle_kg_m(part.face_m, part.thickness_m) / pitch_m
                } else {
                    more_m * coat.density_kg_m3
                };
                Stuff::Panel { kg_m2: kg_m2 + ice_kg_m2, solidity: bar_solidity(part.face_m + more_m, pitch_m) }
            }
            Member::Mesh(part) => {
                // Two layers of wires, one each way.
                let metres = 2.0 / part.pitch_m;
                let kg_m = density(part.density_kg_m3) * PI / 4.0 * part.wire_m * part.wire_m
                    + coat.round_circle_kg_m(part.wire_m);
                Stuff::Panel { kg_m2: kg_m * metres, solidity: mesh_solidity(part.wire_m + more_m, part.pitch_m) }
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
    #[must_use]
    pub fn of(members: &[Member]) -> MemberTotals {
        MemberTotals::coated(members, Coat { thickness_m: 0.0, density_kg_m3: 0.0 })
    }

    /// The same members under ice of a thickness, m, and density, kg/m³, with it: all round bars, boards and wires, on both faces of sheets.
    #[must_use]
    pub fn iced(members: &[Member], thickness_m: f64, density_kg_m3: f64) -> MemberTotals {
        MemberTotals::coated(members, Coat { thickness_m, density_kg_m3 })
    }

    fn coated(members: &[Member], coat: Coat) -> MemberTotals {
        let mut sum = MemberTotals::default();
        for member in members {
            let place = member.place();
            let count = f64::from(place.count.unwrap_or(1));
            let middle_m = (place.from_m + place.to_m) / 2.0;
            let width_m = (place.to_m - place.from_m).abs();
            let (mass_kg, area_m2, inertia_kg_m2) = match (member.stuff(coat), place.height_m) {
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
                    let metres = sqrt(width_m * width_m + rise_m * rise_m) * count;
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
