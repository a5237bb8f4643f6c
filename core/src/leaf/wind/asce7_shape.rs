//! Force coefficients of freestanding walls and open lattices by ASCE 7.

use super::moment::openings_factor;
use crate::real::sqrt;
use crate::terms::BarShape;
use crate::units::{Quantity, System};

/// Case B: the resultant stands this part of the length off the middle.
pub const ASCE7_ECCENTRICITY: f64 = 0.2;

const ASPECT: [f64; 12] = [0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 4.0, 5.0, 10.0, 20.0, 30.0, 45.0];

/// Clearance ratio s/h (height of the leaf over height of its top) and the coefficients along [`ASPECT`].
const WALL: [(f64, [f64; 12]); 3] = [
    (0.7, [1.90, 1.85, 1.75, 1.70, 1.65, 1.60, 1.60, 1.55, 1.55, 1.55, 1.55, 1.55]),
    (0.9, [1.85, 1.75, 1.70, 1.60, 1.55, 1.50, 1.45, 1.45, 1.40, 1.40, 1.40, 1.40]),
    (1.0, [1.80, 1.70, 1.65, 1.55, 1.45, 1.40, 1.35, 1.35, 1.30, 1.30, 1.30, 1.30]),
];

/// Straight line between table points; the ends hold beyond them.
fn between(at: f64, table: impl Iterator<Item = (f64, f64)>) -> f64 {
    let mut before: Option<(f64, f64)> = None;
    for (x, y) in table {
        match before {
            None if at <= x => return y,
            Some((x0, y0)) if at <= x => return y0 + (y - y0) * (at - x0) / (x - x0),
            _ => before = Some((x, y)),
        }
    }
    before.map_or(0.0, |(_, y)| y)
}

/// Coefficient of a solid freestanding wall, cases A and B, on its gross area.
///
/// `aspect` = length over height `B/s`; `clearance` = height of the leaf over height of its top `s/h`, 0.7…1 (a leaf with a larger gap below
/// it is not covered here). Straight lines between the printed points, as the figure's note says. Case C (B/s ≥ 2, strips from the
/// windward edge) is excluded. Source: ASCE 7-16 Fig 29.3-1 (7-05 Fig 6-20), from memory; the end 1.30 seen in a worked example.
#[must_use]
pub fn asce7_wall_coefficient(aspect: f64, clearance: f64) -> f64 {
    let row = |values: &[f64; 12]| between(aspect, ASPECT.into_iter().zip(*values));
    between(clearance, WALL.iter().map(|(ratio, values)| (*ratio, row(values))))
}

/// Coefficient that gives the wall's moment about the hinge on the leaf's *solid* area at its middle.
///
/// Openings of less than 30 % reduce the gross coefficient by `1 − (1 − ε)^1.5`; dividing by `ε` puts it on the solid area. With `eccentric`
/// (case B) the resultant stands 0.2·B towards the latch edge, which raises the moment by 0.7/0.5.
#[must_use]
pub fn asce7_wall_moment_coefficient(aspect: f64, clearance: f64, solidity: f64, eccentric: bool) -> f64 {
    let gross = asce7_wall_coefficient(aspect, clearance) * openings_factor(solidity);
    let arm = if eccentric { (0.5 + ASCE7_ECCENTRICITY) / 0.5 } else { 1.0 };
    gross / solidity * arm
}

/// Coefficient of an open lattice on its solid area.
///
/// `solidity` solid over gross area, below 0.7; `diameter_m` and `pressure_pa` matter for round bars only, by `D·√q` ≤ 2.5 (ft, psf) or
/// above. Source: ASCE 7-16 Fig 29.4-2 (7-05 Fig 6-22), from memory.
#[must_use]
pub fn asce7_open_coefficient(solidity: f64, shape: BarShape, diameter_m: f64, pressure_pa: f64) -> f64 {
    let feet = diameter_m / Quantity::Length.unit(System::Us).factor;
    let psf_pa = Quantity::Force.unit(System::Us).factor / Quantity::Area.unit(System::Us).factor;
    let slow = feet * sqrt(pressure_pa / psf_pa) <= 2.5;
    let (flat, round_slow, round_fast) = match solidity {
        s if s < 0.1 => (2.0, 1.2, 0.8),
        s if s < 0.3 => (1.8, 1.3, 0.9),
        _ => (1.6, 1.5, 1.1),
    };
    match shape {
        BarShape::Flat => flat,
        BarShape::Round if slow => round_slow,
        BarShape::Round => round_fast,
    }
}
