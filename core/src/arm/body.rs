//! Where the operator's body stands about its shaft.

use crate::job::OperatorBody;
use crate::numerics::PlacedRectangle;
use crate::real::{cos, sin};

/// The body on the ground: `crank` is the direction of the closed arm's crank, a unit vector, and `turn_rad` how far the base is turned from it,
/// counter-clockwise.
pub fn placed_body(body: &OperatorBody, shaft: (f64, f64), crank: (f64, f64), turn_rad: f64) -> PlacedRectangle {
    let (cosine, sine) = (cos(turn_rad), sin(turn_rad));
    let turn = (crank.0 * cosine - crank.1 * sine, crank.0 * sine + crank.1 * cosine);
    PlacedRectangle { sides: body.sides_m(), origin: shaft, turn }
}
