//! Marking out: where the tape is put, for shaft, anchors, riser, tubes and limits.
//!
//! There is one datum, that of the job itself: the *axis line*, along the closed leaf through the hinge axis, and the *hinge line*, square to it
//! through the hinge axis. They cross in the axis. No tape can touch an axis inside a pin; how it is found and the line stretched is said on the
//! first card. Common practice, no source.
//!
//! What is square to the leaf may also be measured from the leaf's face, which differs by `face_m` and is told apart.

use super::Model;
use crate::fault::Invalid;
use crate::job::{Job, Marks, ToChecked};
use crate::real::{atan2, cos, sin, sqrt};
use alloc::vec::Vec;
use kurbo::{Point, Vec2};
use serde::Serialize;

/// Everything to mark, cut and set.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct MarkOut {
    /// The shaft.
    pub shaft: Mark,
    /// Elbow with the leaf closed.
    pub elbow_closed: Mark,
    /// Elbow with the leaf open.
    pub elbow_open: Mark,
    /// Leaf's face on its opening side from the axis line, m: what is measured from the face is less by it.
    pub face_m: f64,
    /// Direction of the base: that of the closed arm's crank, turned as the job says; degrees from the closed leaf, counter-clockwise,
    /// above −180 to 180.
    ///
    /// The closed crank is what the base is laid by because the arm stands there while the anchors are marked, the leaf on its stop.
    pub base_direction_deg: f64,
    /// Anchor holes, counter-clockwise from the one at the far end along the base and clockwise of it; empty where their spacing is not said.
    pub anchors: Vec<Mark>,
    /// Diagonal of the rectangle of holes, m.
    pub anchor_diagonal_m: Option<f64>,
    /// Bracket pin along the leaf from the hinge line of the closed leaf, m.
    pub bracket_along_m: f64,
    /// Bracket pin square to the leaf, from the axis line of the closed leaf, m.
    pub bracket_across_m: f64,
    /// The same from the leaf's face, m.
    pub bracket_proud_m: f64,
    /// Height of the base over the pad that puts the arm level with the cross member, m; negative where the pad is too high.
    pub riser_m: Option<f64>,
    /// The crank's tubes.
    pub crank: Tubes,
    /// The link's tubes.
    pub link: Tubes,
    /// Shaft limits, closed then open.
    pub limits: [ShaftLimit; 2],
    /// What of the job was not said and is assumed here.
    pub assumed: Vec<&'static str>,
}

/// A place on the ground.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Mark {
    /// Along the closed leaf from the hinge line, m, positive towards the latch edge.
    pub from_hinge_line_m: f64,
    /// Square to the closed leaf from the axis line, m, positive on the side the leaf opens to.
    pub from_axis_line_m: f64,
    /// The same from the leaf's face on its opening side, m.
    pub from_face_m: f64,
    /// From the hinge axis, m: both diagonals of the rectangle of the two offsets have this length where it is square, as 3-4-5 has it.
    pub diagonal_m: f64,
    /// From the latch end of the axis line, m, which is as far from the hinge axis as the leaf's latch edge: with the diagonal it fixes the place
    /// without a square.
    pub from_latch_m: f64,
}

/// A part of two tubes of one length, one in the other, joints at the ends.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Tubes {
    /// Pivot to pivot, m.
    pub pivots_m: f64,
    /// Length to cut each of the two to, `(pivots − ends + overlap)/2`, m; `null` where the overlap leaves no length to set.
    pub cut_m: Option<f64>,
}

/// Where a limit is set.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct ShaftLimit {
    /// Leaf angle, degrees.
    pub leaf_deg: f64,
    /// Shaft angle from closed, degrees, signed: counter-clockwise positive.
    pub shaft_deg: f64,
    /// Direction of the crank from the closed leaf, degrees, above −180 to 180.
    pub crank_direction_deg: f64,
}

/// Marks out a job. Where the job says nothing of the marks or the leaf's face, they are taken at their defaults, listed as assumed.
///
/// # Errors
/// [`Invalid`] with every fault of the values, or with the reason why the arm cannot work.
pub fn mark_out(job: &impl ToChecked) -> Result<MarkOut, Invalid> {
    Ok(Model::new(job)?.mark_out())
}

impl Model {
    /// Everything to mark, cut and set for this arm.
    #[must_use]
    pub fn mark_out(&self) -> MarkOut {
        let job = self.job();
        let marks = job.marks.unwrap_or_default();
        let front_m = job.leaf.face();
        let (arm, linkage) = (self.arm(), self.linkage());
        let latch = Point::new(job.leaf.length_m, 0.0);
        let mark = |place: Point| Mark {
            from_hinge_line_m: place.x,
            from_axis_line_m: place.y,
            from_face_m: place.y - front_m,
            diagonal_m: crate::real::length(place.to_vec2()),
            from_latch_m: crate::real::length(place - latch),
        };
        let poses = [0.0, linkage.open_rad].map(|leaf_rad| linkage.pose(leaf_rad));
        let crank = |elbow: Point| elbow - linkage.shaft;
        let limit = |index: usize| ShaftLimit {
            leaf_deg: [0.0, job.swing.open_deg][index],
            shaft_deg: poses[index].crank_rad.to_degrees(),
            crank_direction_deg: direction_deg(crank(poses[index].elbow)),
        };
        let closed = crank(poses[0].elbow) / linkage.crank_m;
        let base = turned(closed, marks.anchor_turn_rad());
        let (crank_ends_m, link_ends_m) = marks.ends();
        let tubes = |pivots_m: f64, ends_m: f64| {
            let (tube_m, overlap_m) = (pivots_m - ends_m, marks.overlap());
            Tubes { pivots_m, cut_m: (tube_m > overlap_m).then_some(0.5 * (tube_m + overlap_m)) }
        };
        let spacings = marks.anchor_along_m.zip(marks.anchor_across_m);
        MarkOut {
            shaft: mark(linkage.shaft),
            elbow_closed: mark(poses[0].elbow),
            elbow_open: mark(poses[1].elbow),
            face_m: front_m,
            base_direction_deg: direction_deg(base),
            anchors: anchors(linkage.shaft, base, &marks).into_iter().map(mark).collect(),
            anchor_diagonal_m: spacings.map(|(along, across)| sqrt(along * along + across * across)),
            bracket_along_m: arm.bracket_u_m,
            bracket_across_m: arm.bracket_v_m,
            bracket_proud_m: arm.bracket_v_m - front_m,
            riser_m: marks
                .pad_level_m
                .zip(marks.crossbar_level_m)
                .map(|(pad_m, crossbar_m)| crossbar_m - pad_m - marks.arm_height()),
            crank: tubes(arm.crank_m, crank_ends_m),
            link: tubes(arm.link_m, link_ends_m),
            limits: [limit(0), limit(1)],
            assumed: assumed(job, &marks),
        }
    }
}

/// Defaults that stand in the marks.
fn assumed(job: &Job, marks: &Marks) -> Vec<&'static str> {
    let front = job.leaf.face_m.is_none().then_some("leaf.face_m");
    front.into_iter().chain(marks.assumed()).collect()
}

/// The holes' places.
fn anchors(shaft: Point, base: Vec2, marks: &Marks) -> Vec<Point> {
    let Some((along_m, across_m)) = marks.anchor_along_m.zip(marks.anchor_across_m) else { return Vec::new() };
    let (offset_along_m, offset_across_m) = marks.anchor_offset();
    let across = crate::real::quarter_turn(base);
    let corners = [(1.0, -1.0), (1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0)];
    let place = |(one, other): (f64, f64)| {
        shaft + (offset_along_m + 0.5 * one * along_m) * base + (offset_across_m + 0.5 * other * across_m) * across
    };
    corners.map(place).into()
}

fn turned(vector: Vec2, rad: f64) -> Vec2 {
    cos(rad) * vector + sin(rad) * crate::real::quarter_turn(vector)
}

fn direction_deg(vector: Vec2) -> f64 {
    atan2(vector.y, vector.x).to_degrees()
}
