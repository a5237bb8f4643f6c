//! The leaf as the shaft turns: the arm seen from the crank, as motion through time needs it.

use super::Linkage;
use crate::real::{atan2, length, quarter_turn, sin_cos, sqrt};
use core::f64::consts::TAU;
use kurbo::{Point, Vec2};

/// The way from closed to open, told by how far the shaft has turned.
///
/// [`Linkage::pose`] tells the shaft from the leaf, and its ratio has no bound at a dead point. Here the crank leads: the leaf's angle and
/// both its derivatives stay finite through a dead point, where the leaf just stands still.
#[derive(Clone, Copy, Debug)]
pub struct ShaftPath<'a> {
    linkage: &'a Linkage,
    /// Side of the line hinge→elbow the bracket is on; it cannot change where the link's line never goes through the hinge.
    side: f64,
    /// Sign of the crank's turn on opening.
    sign: f64,
    /// Shaft angle from closed to open, rad, positive.
    travel_rad: f64,
}

/// The leaf at one shaft angle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PathPoint {
    /// Leaf angle, rad.
    pub leaf_rad: f64,
    /// `θ' = dθ/dq`, leaf turned per shaft turned, never negative; 0 at a dead point. The inverse of `|n|`.
    pub gain: f64,
    /// `θ'' = d²θ/dq²`, 1/rad.
    pub gain_rate: f64,
}

impl<'a> ShaftPath<'a> {
    /// The path of a linkage without defect.
    #[must_use]
    pub fn new(linkage: &'a Linkage) -> ShaftPath<'a> {
        let turned = linkage.pose(linkage.open_rad).crank_rad;
        ShaftPath {
            linkage,
            side: if linkage.pose(0.0).signed_lever_m < 0.0 { -1.0 } else { 1.0 },
            sign: if turned < 0.0 { -1.0 } else { 1.0 },
            travel_rad: turned.abs(),
        }
    }

    /// Shaft angle from closed to open, rad, positive.
    #[must_use]
    pub fn travel_rad(&self) -> f64 {
        self.travel_rad
    }

    /// +1 where the crank turns counter-clockwise on opening, −1 where clockwise.
    #[must_use]
    pub fn sign(&self) -> f64 {
        self.sign
    }

    /// The leaf where the shaft has turned `progress_rad` (`q`) from closed, 0 to [`ShaftPath::travel_rad`].
    ///
    /// The bracket lies on circles about hinge and elbow; its side of the line between them is fixed. With `L = P − E`, `E' = ẑ×(E−S)`,
    /// `P' = ẑ×P`, the link's constant length gives `L·(P'·θ' − E') = 0`, and once more by the product rule
    /// `θ'' = −(|P'·θ' − E'|² − L·P·θ'² + L·(E−S)) / L·P'`. `L·P'` is the lever of the link times its length, never 0 in a valid arm.
    #[must_use]
    pub fn at(&self, progress_rad: f64) -> PathPoint {
        let linkage = self.linkage;
        let crank_rad = linkage.closed_crank_rad + self.sign * progress_rad;
        let crank = linkage.crank_m * directed(crank_rad);
        let elbow = linkage.shaft.to_vec2() + crank;
        let (r, b, e) = (linkage.bracket_radius_m, linkage.link_m, length(elbow));
        // Four times the triangle's area by Heron; the angle at the hinge from its sine and cosine, both times 2·r·e.
        let area = sqrt((r + e + b) * (r + e - b) * (b + r - e) * (b - r + e));
        let bracket_rad = atan2(elbow.y, elbow.x) + self.side * atan2(area, r * r + e * e - b * b);
        let bracket = r * directed(bracket_rad);
        let leaf_rad = bracket_rad - linkage.bracket_rad;
        let turns = libm::round((leaf_rad - linkage.open_rad / 2.0) / TAU);
        let link = bracket - elbow;
        let (elbow_rate, bracket_rate) = (self.sign * quarter_turn(crank), quarter_turn(bracket));
        let lever = link.dot(bracket_rate);
        let gain = link.dot(elbow_rate) / lever;
        let slip = bracket_rate * gain - elbow_rate;
        let gain_rate = -(slip.hypot2() - link.dot(bracket) * gain * gain + link.dot(crank)) / lever;
        // At a dead point rounding may leave a hair of the wrong sign.
        PathPoint { leaf_rad: leaf_rad - turns * TAU, gain: gain.max(0.0), gain_rate }
    }

    /// The elbow at a shaft angle, m.
    #[must_use]
    pub fn elbow(&self, progress_rad: f64) -> Point {
        let crank_rad = self.linkage.closed_crank_rad + self.sign * progress_rad;
        self.linkage.shaft + self.linkage.crank_m * directed(crank_rad)
    }
}

/// The unit vector of a direction.
fn directed(rad: f64) -> Vec2 {
    let (sine, cosine) = sin_cos(rad);
    Vec2::new(cosine, sine)
}
