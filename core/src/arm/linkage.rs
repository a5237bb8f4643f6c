//! Geometry of the arm, and where along the swing its distances are extreme.

use crate::job::{Arm, Elbow};
use crate::real::{atan2, length};
use core::f64::consts::{PI, TAU};
use kurbo::{Point, Vec2};

/// Tolerance of assembly, m: beyond it the arm does not close, within it the arm is straight or folded.
pub(crate) const ASSEMBLY_M: f64 = 1e-9;

/// A planar four-bar: hinge (origin), shaft, elbow, bracket.
///
/// The shaft and the bracket pin are kept in polar form too, because everything that can go wrong along the swing depends on the
/// one angle `γ = θ + β − σ` between hinge→bracket and hinge→shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Linkage {
    /// The operator's shaft, m.
    pub shaft: Point,
    /// Crank, shaft to elbow, m.
    pub crank_m: f64,
    /// Link, elbow to bracket, m.
    pub link_m: f64,
    /// Side of the line shaft→bracket the elbow is on.
    pub elbow: Elbow,
    /// Leaf angle fully open, rad.
    pub open_rad: f64,
    /// Hinge to bracket pin, m.
    pub(crate) bracket_radius_m: f64,
    /// Direction of the bracket pin on the closed leaf, β, rad.
    pub(crate) bracket_rad: f64,
    /// Hinge to shaft, m.
    pub(crate) shaft_radius_m: f64,
    /// Direction of the shaft from the hinge, σ, rad.
    pub(crate) shaft_rad: f64,
    /// Crank angle in the frame with the leaf closed, rad; where the shaft angle counts from.
    pub(crate) closed_crank_rad: f64,
}

impl Linkage {
    /// The linkage of an arm; not yet known to work. See [`Linkage::defect`].
    #[must_use]
    pub fn new(arm: &Arm, open_rad: f64) -> Linkage {
        let shaft = Vec2::new(arm.shaft_x_m, arm.shaft_y_m);
        let bracket = Vec2::new(arm.bracket_u_m, arm.bracket_v_m);
        let mut linkage = Linkage {
            shaft: shaft.to_point(),
            crank_m: arm.crank_m,
            link_m: arm.link_m,
            elbow: arm.elbow,
            open_rad,
            bracket_radius_m: length(bracket),
            bracket_rad: atan2(bracket.y, bracket.x),
            shaft_radius_m: length(shaft),
            shaft_rad: atan2(shaft.y, shaft.x),
            closed_crank_rad: 0.0,
        };
        linkage.closed_crank_rad = linkage.crank_in_frame_rad(0.0);
        linkage
    }

    /// Hinge to bracket pin, m.
    #[must_use]
    pub fn bracket_radius_m(&self) -> f64 {
        self.bracket_radius_m
    }

    /// `γ`: angle from hinge→shaft to hinge→bracket, rad.
    pub(super) fn offset_rad(&self, leaf_rad: f64) -> f64 {
        leaf_rad + self.bracket_rad - self.shaft_rad
    }

    /// Leaf angles strictly inside the swing at which `γ` equals `offset_rad` up to whole turns.
    pub(super) fn leaf_angles_at_offset(&self, offset_rad: f64) -> impl Iterator<Item = f64> + use<> {
        let open_rad = self.open_rad;
        let first = (offset_rad - self.bracket_rad + self.shaft_rad) % TAU;
        // Within a turn of nothing either way, so it or a turn more is the one inside the swing, which is at most half a turn.
        [first, first + TAU].into_iter().filter(move |&leaf| leaf > 0.0 && leaf < open_rad)
    }

    /// Direction of shaft→bracket, rad, continuous along the swing: no counting of turns, so it cannot miscount between samples.
    ///
    /// `P − S = r·e^{i(θ+β)} − s·e^{iσ}`; the longer of the two vectors is taken out, and what remains, `1 − ρ·e^{±iγ}` with `ρ ≤ 1`, has
    /// its direction within a quarter turn of zero.
    pub(super) fn reach_direction_rad(&self, leaf_rad: f64) -> f64 {
        let gamma = self.offset_rad(leaf_rad);
        let (r, s) = (self.bracket_radius_m, self.shaft_radius_m);
        let (sine, cosine) = crate::real::sin_cos(gamma);
        if r >= s {
            let share = if r > 0.0 { s / r } else { 0.0 };
            leaf_rad + self.bracket_rad + atan2(share * sine, 1.0 - share * cosine)
        } else {
            let share = r / s;
            self.shaft_rad + PI + atan2(-share * sine, 1.0 - share * cosine)
        }
    }
}
