//! Freestanding walls by EN 1991-1-4: zones from the free end, taken as a moment about the hinge.

use crate::elements::EN1991_LEAST_SOLIDITY;

/// Net pressure coefficients of the zones A, B, C, D, counted from the free end.
pub type Zones = [f64; 4];

/// Stretches of the wall from the free end: where each ends, in heights, its zone, and whether what stands upwind shelters it. A wall upwind
/// does not shelter the stretch within `h` of the free end.
const STRETCHES: [(f64, usize, bool); 5] =
    [(0.3, 0, false), (1.0, 1, false), (2.0, 1, true), (4.0, 2, true), (f64::INFINITY, 3, true)];

const WITH_RETURNS: Zones = [2.1, 1.8, 1.4, 1.2];
const PERFORATED: Zones = [1.2; 4];

/// Zone coefficients of a solid wall without returns, by length over height.
const SOLID: [(f64, Zones); 3] =
    [(3.0, [2.3, 1.4, 1.2, 1.2]), (5.0, [2.9, 1.8, 1.4, 1.2]), (10.0, [3.4, 2.1, 1.7, 1.2])];

fn blend(low: Zones, high: Zones, share: f64) -> Zones {
    core::array::from_fn(|zone| low[zone] + (high[zone] - low[zone]) * share)
}

/// Zone coefficients of a freestanding wall on its gross area.
///
/// `aspect` = length over height, with straight lines between 3, 5 and 10; `solidity` from 0.8 (1.2 everywhere) to 1, with a straight line
/// between; `returns` = the wall goes round a corner at its free end for at least its height. Recommended values of EN 1991-1-4:2005 +
/// A1:2010 Table 7.9, from memory; the row of length/height 5 seen at eurocodeapplied.com. A national annex goes first.
#[must_use]
pub fn en1991_zone_coefficients(aspect: f64, solidity: f64, returns: bool) -> Zones {
    let [(three, short), (five, middle), (ten, long)] = SOLID;
    let solid = match aspect {
        _ if returns => WITH_RETURNS,
        a if a <= five => blend(short, middle, ((a - three) / (five - three)).clamp(0.0, 1.0)),
        a => blend(middle, long, ((a - five) / (ten - five)).clamp(0.0, 1.0)),
    };
    let share = (solidity - EN1991_LEAST_SOLIDITY) / (1.0 - EN1991_LEAST_SOLIDITY);
    blend(PERFORATED, solid, share.clamp(0.0, 1.0))
}

/// The one coefficient that gives the zones' moment about the hinge on the gross area at the leaf's middle:
/// `c = ∫ ψ(x)·c(x)·x dx / (L²/2)`, `x` from the hinge, zones counted from the latch edge.
///
/// Integrated, not averaged: the strongest zone has the longest lever. `length_m` and `height_m` in m; `shelter_factor` `ψ_s`, 1 without a
/// wall upwind, holds from the hinge to `h` before the latch edge and not beyond (7.4.2(2)). The hinge side is taken as the continuing wall
/// (gate post, fence), so it has no free end of its own. Source: EN 1991-1-4:2005 + A1:2010, 7.4.1 and 7.4.2, from memory; where shelter
/// stops is told by two public notes besides.
#[must_use]
pub fn en1991_wall_moment_coefficient(length_m: f64, height_m: f64, zones: Zones, shelter_factor: f64) -> f64 {
    let whole = length_m * length_m;
    over_stretches(length_m, height_m, zones, shelter_factor, |outer, inner| (outer * outer - inner * inner) / whole)
}

/// The coefficient that gives the zones' force on the gross area: `c = ∫ ψ(x)·c(x) dx / L`. Arguments and source as of
/// [`en1991_wall_moment_coefficient`].
#[must_use]
pub fn en1991_wall_force_coefficient(length_m: f64, height_m: f64, zones: Zones, shelter_factor: f64) -> f64 {
    over_stretches(length_m, height_m, zones, shelter_factor, |outer, inner| (outer - inner) / length_m)
}

/// Sum over the stretches of their coefficient times their part of the whole, from their far and near end, m.
fn over_stretches(
    length_m: f64,
    height_m: f64,
    zones: Zones,
    shelter_factor: f64,
    part: impl Fn(f64, f64) -> f64,
) -> f64 {
    let mut outer = length_m;
    let mut sum = 0.0;
    for (end, zone, sheltered) in STRETCHES {
        let inner = (length_m - end * height_m).max(0.0);
        sum += zones[zone] * if sheltered { shelter_factor } else { 1.0 } * part(outer, inner);
        outer = inner;
    }
    sum
}
