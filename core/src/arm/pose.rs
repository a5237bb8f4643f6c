//! The arm at one leaf angle: positions by circle intersection, then exact derivatives.

use super::Linkage;
use super::linkage::ASSEMBLY_M;
use crate::real::{atan2, length, quarter_turn, sin_cos, sqrt};
use kurbo::{Point, Vec2};

/// The arm at one leaf angle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pose {
    /// Leaf angle, rad.
    pub leaf_rad: f64,
    /// Bracket pin, m.
    pub bracket: Point,
    /// Elbow, m.
    pub elbow: Point,
    /// Crank angle counted from closed, rad, signed, unwrapped.
    pub crank_rad: f64,
    /// `n = dφ/dθ`: crank turned per leaf turned; `None` at a dead point, where it has no bound.
    pub ratio: Option<f64>,
    /// `dn/dθ`, 1/rad; `None` at a dead point.
    pub ratio_rate: Option<f64>,
    /// `dψ/dθ` of the link's direction; `None` at a dead point.
    pub link_rate: Option<f64>,
    /// `û·(ẑ×P)`: lever of the link's line about the hinge, m; positive when a pushing link opens the leaf.
    pub signed_lever_m: f64,
    /// Angle between the link and the line hinge→bracket, folded to 0…90°, rad.
    pub transmission_rad: f64,
}

impl Pose {
    /// Lever of the link's line about the hinge, m.
    #[must_use]
    pub fn lever_m(&self) -> f64 {
        self.signed_lever_m.abs()
    }

    /// Link force under a leaf moment, N, positive in compression: `F = T_leaf / (û·(ẑ×P))`. Finite at a dead point.
    #[must_use]
    pub fn link_force_n(&self, leaf_torque_n_m: f64) -> f64 {
        leaf_torque_n_m / self.signed_lever_m
    }
}

/// What of a pose decides moments and their derivatives: all of it but the two angles that take an arctangent. The same numbers to the bit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Leverage {
    pub leaf_rad: f64,
    pub bracket: Point,
    pub elbow: Point,
    pub ratio: Option<f64>,
    pub ratio_rate: Option<f64>,
    pub link_rate: Option<f64>,
    pub signed_lever_m: f64,
    /// Distance of the bracket along the unit vector of the link, `P·û`, m; turns the lever as the link turns.
    pub along_m: f64,
    /// Foot and height of the elbow over the line shaft→bracket.
    foot: Triangle,
}

impl Leverage {
    /// Lever of the link's line about the hinge, m.
    pub fn lever_m(&self) -> f64 {
        self.signed_lever_m.abs()
    }

    /// Derivative of the signed lever by the leaf angle, m/rad: `(ψ' − 1)·(P·û)`.
    pub fn lever_rate_m(&self) -> Option<f64> {
        self.link_rate.map(|rate| (rate - 1.0) * self.along_m)
    }
}

impl Linkage {
    /// The arm at a leaf angle.
    ///
    /// Meant for a linkage without defect. Elsewhere it stays finite (a gap is closed by pretending the arm straight or folded) but
    /// means nothing. With `d` = shaft to bracket, `x = (a² − b² + d²)/2d` along it and `h` across it,
    /// `n = (E−P)·(ẑ×P) / (E−P)·(ẑ×(E−S))`, whose denominator is `±d·h`.
    #[must_use]
    pub fn pose(&self, leaf_rad: f64) -> Pose {
        let Leverage { bracket, elbow, ratio, ratio_rate, link_rate, signed_lever_m, along_m, foot, .. } =
            self.leverage(leaf_rad);
        Pose {
            leaf_rad,
            bracket,
            elbow,
            crank_rad: self.reach_direction_rad(leaf_rad) + self.elbow.side() * atan2(foot.h, foot.x)
                - self.closed_crank_rad,
            ratio,
            ratio_rate,
            link_rate,
            signed_lever_m,
            transmission_rad: atan2(signed_lever_m.abs(), along_m.abs()),
        }
    }

    /// The arm at a leaf angle without its crank and transmission angles: what a search over the swing asks for.
    pub(crate) fn leverage(&self, leaf_rad: f64) -> Leverage {
        let (a, b, side) = (self.crank_m, self.link_m, self.elbow.side());
        let (sine, cosine) = sin_cos(leaf_rad + self.bracket_rad);
        let from_hinge = self.bracket_radius_m * Vec2::new(cosine, sine);
        let bracket = from_hinge.to_point();
        let reach = bracket - self.shaft;
        let d = length(reach);
        let along = if d > 0.0 { reach / d } else { Vec2::new(1.0, 0.0) };
        let across = quarter_turn(along);

        let foot = self.triangle(d);
        let Triangle { x, h, dead } = foot;
        let elbow = self.shaft + x * along + side * h * across;
        let link = (bracket - elbow) / b;
        let crank = (elbow - self.shaft) / a;
        let signed_lever_m = from_hinge.cross(link);
        let along_m = from_hinge.dot(link);

        let (ratio, ratio_rate, link_rate) = if dead {
            (None, None, None)
        } else {
            let ratio = -b * signed_lever_m / (side * d * h);
            let link_rate = from_hinge.cross(crank) / b / (side * d * h / (a * b));
            (
                Some(ratio),
                Some(self.ratio_rate(reach.cross(from_hinge), from_hinge.dot(reach), d, h, x)),
                Some(link_rate),
            )
        };
        Leverage { leaf_rad, bracket, elbow, ratio, ratio_rate, link_rate, signed_lever_m, along_m, foot }
    }

    /// `dn/dθ` from `φ = δ + k·α`, the direction of the reach plus the interior angle at the shaft.
    ///
    /// With `D = d' = r·s·sin γ / d`: `δ' = P·(P−S)/d²`, `α' = −g·D`, `g = (d − x)/(d·h)`, so `n = δ' − k·g·D`, and once more by the
    /// product rule.
    fn ratio_rate(&self, reach_cross_bracket: f64, bracket_dot_reach: f64, d: f64, h: f64, x: f64) -> f64 {
        let side = self.elbow.side();
        // r·s·sin γ = S×P = −(P−S)×P, and r·s·cos γ = S·P = r² − P·(P−S).
        let sine = -reach_cross_bracket;
        let cosine = self.bracket_radius_m * self.bracket_radius_m - bracket_dot_reach;
        let rate = sine / d;
        let rate_rate = (cosine - rate * rate) / d;
        let direction_rate_rate = (sine - 2.0 * bracket_dot_reach * rate / d) / (d * d);
        let dh = d * h;
        let g = (d - x) / dh;
        let g_by_d = x / (d * dh) - (d - x) * (h * h - x * (d - x)) / (h * dh * dh);
        direction_rate_rate - side * (g_by_d * rate * rate + g * rate_rate)
    }

    /// Crank angle in the frame, rad, continuous along the swing.
    pub(super) fn crank_in_frame_rad(&self, leaf_rad: f64) -> f64 {
        let (sine, cosine) = sin_cos(leaf_rad + self.bracket_rad);
        let bracket = self.bracket_radius_m * Vec2::new(cosine, sine);
        let Triangle { x, h, .. } = self.triangle(length(bracket - self.shaft.to_vec2()));
        self.reach_direction_rad(leaf_rad) + self.elbow.side() * atan2(h, x)
    }

    /// Foot and height of the elbow over the line shaft→bracket of length `d`.
    fn triangle(&self, d: f64) -> Triangle {
        let (a, b) = (self.crank_m, self.link_m);
        let spare = a + b - d;
        let fold = d - (a - b).abs();
        let dead = spare <= ASSEMBLY_M || fold <= ASSEMBLY_M;
        let x = ((a * a - b * b + d * d) / (2.0 * d).max(f64::MIN_POSITIVE)).clamp(-a, a);
        // Heron's form: the difference a² − x² would lose half its digits near a dead point.
        let h = if dead { 0.0 } else { sqrt(spare * (a + b + d) * fold * (d + (a - b).abs())) / (2.0 * d) };
        Triangle { x, h, dead }
    }
}

/// The elbow seen from the line shaft→bracket.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Triangle {
    /// Distance along the line from the shaft, m.
    x: f64,
    /// Distance from the line, m, never negative; 0 at a dead point.
    h: f64,
    /// The arm is straight or folded.
    dead: bool,
}
