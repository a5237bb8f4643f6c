//! Where the operator's body stands about its shaft.

use super::Linkage;
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

impl OperatorBody {
    /// Corners of the body on the ground about the shaft of an arm, m, counter-clockwise; its base lies along the crank of the closed arm, turned by
    /// `turn_rad` counter-clockwise.
    #[must_use]
    pub fn corners_m(&self, linkage: &Linkage, turn_rad: f64) -> [(f64, f64); 4] {
        self.about(linkage, turn_rad).corners()
    }

    /// The same as a rectangle.
    pub(crate) fn about(&self, linkage: &Linkage, turn_rad: f64) -> PlacedRectangle {
        let crank = (linkage.pose(0.0).elbow - linkage.shaft) / linkage.crank_m;
        placed_body(self, (linkage.shaft.x, linkage.shaft.y), (crank.x, crank.y), turn_rad)
    }
}
