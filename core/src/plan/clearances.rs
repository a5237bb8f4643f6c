//! Leaf and arm in the room around them: every least distance over the continuous swing, with its leaf angle.
//!
//! The leaf is a rectangle that turns with the leaf angle, crank and link are segments widened to both sides, everything else is a rectangle
//! along the closed leaf. A distance is negative by the least shift that would part what overlaps. How the least of one over the swing is found
//! is told in [`swing`](super::swing).

use super::Model;
use super::elbow_sweep::ElbowSweep;
use super::swing::{Joint, Joints, Moves, SwingJoints, turned};
use crate::job::{KeepOut, Obstacle, Room};
use crate::numerics::separation_m;
use crate::order::insertion_sort;
use crate::real::sqrt;
use alloc::vec::Vec;
use kurbo::Point;
use serde::Serialize;

/// Distances through the swing.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Clearances {
    /// Least distance of every moving part from everything it could meet, the least first. The link's distance from the leaf is that of
    /// its centre-line, since it ends on the leaf at the bracket.
    pub gaps: Vec<Gap>,
    /// The gap between the leaf and the post it is hung on, where the job says where that is.
    pub hinge_gap: Option<HingeGap>,
    /// What is left between the open leaf and each obstacle beside it.
    pub open: Vec<OpenGap>,
    /// The ground crank and elbow sweep.
    pub sweep: ElbowSweep,
}

/// A least distance.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Gap {
    /// What moves.
    pub part: MovingPart,
    /// What it could meet.
    pub against: Against,
    /// Which of the list, from 0: an obstacle's place in `site.obstacles`, those of `room.obstacles` counted on behind them; an area's in
    /// `setout.keep_out`; 0 for the leaf and the hinge post.
    pub index: usize,
    /// Least distance over the swing, m; negative where they overlap.
    pub least_m: f64,
    /// Leaf angle there, degrees.
    pub leaf_deg: f64,
}

/// A part that moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS), ts(rename = "Part"))]
#[non_exhaustive]
pub enum MovingPart {
    /// Crank, from shaft to elbow.
    Crank,
    /// Link, from elbow to bracket.
    Link,
    /// The elbow itself, as wide as the arm.
    Elbow,
    /// The leaf.
    Leaf,
}

/// What a part could meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum Against {
    /// The leaf.
    Leaf,
    /// The post the leaf is hung on.
    HingePost,
    /// Something that stands around: an obstacle of the site or of the room.
    Obstacle,
    /// A rectangle the set-out keeps out of; the leaf may swing over it.
    KeepOut,
}

/// The gap at the hinge through the swing.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct HingeGap {
    /// Leaf closed, m.
    pub closed_m: f64,
    /// Leaf open, m.
    pub open_m: f64,
    /// Widest over the swing, m.
    pub widest_m: f64,
    /// Leaf angle there, degrees.
    pub widest_leaf_deg: f64,
    /// Least over the swing, m.
    pub least_m: f64,
    /// Leaf angle there, degrees.
    pub least_leaf_deg: f64,
}

/// What is left behind the open leaf.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct OpenGap {
    /// Which obstacle, from 0, counted as for [`Gap::index`].
    pub obstacle: usize,
    /// Distance of the open leaf from it, m.
    pub gap_m: f64,
    /// How far from the hinge axis along the open leaf the obstacle reaches, m.
    pub reach_m: f64,
}

/// The leaf's rectangle in its own axes.
fn leaf_rectangle(room: &Room, length_m: f64) -> KeepOut {
    KeepOut { x_m: [-room.heel(), length_m], y_m: [-room.back(), room.front()] }
}

impl Model {
    /// Distances through the swing, `None` where the job says nothing of the room and of what stands around.
    #[must_use]
    pub fn clearances(&self) -> Option<Clearances> {
        let job = self.job();
        let obstacles = job.obstacles();
        // What stands around is looked at where nothing is said of leaf and arm as bodies, too.
        let silent = Room::default();
        let room = job.room.as_ref().or((!obstacles.is_empty()).then_some(&silent))?;
        let (leaf, wide) = (leaf_rectangle(room, job.leaf.length_m), job.arm_half_width_m());
        let (shaft, swing) = (self.linkage().shaft, SwingJoints::new(self.linkage()));
        let mut gaps = Vec::new();
        let reach_m = leaf_reach_m(&leaf);
        let mut note = |part, against, index, value: &dyn Fn(&Joints) -> f64| {
            // The leaf turns about the hinge; what it is seen from turns back as far as it is out.
            let moves = match (part, against) {
                (MovingPart::Leaf, _) => Moves { joints: &[], turning_m: reach_m },
                (MovingPart::Link, Against::Leaf) => {
                    Moves { joints: &[Joint::Elbow, Joint::Bracket], turning_m: swing.furthest_m }
                }
                (_, Against::Leaf) => Moves { joints: &[Joint::Elbow], turning_m: swing.furthest_m },
                (MovingPart::Link, _) => Moves { joints: &[Joint::Elbow, Joint::Bracket], turning_m: 0.0 },
                _ => Moves { joints: &[Joint::Elbow], turning_m: 0.0 },
            };
            let (leaf_rad, least_m) = swing.least(&moves, value);
            gaps.push(Gap { part, against, index, least_m, leaf_deg: leaf_rad.to_degrees() });
        };
        for part in [MovingPart::Crank, MovingPart::Link, MovingPart::Elbow] {
            let to_leaf = |joints: &Joints| {
                let [from, to] = ends(part, joints, shaft).map(|place| turned(place, joints.back));
                let wide = if part == MovingPart::Link { 0.0 } else { wide };
                separation_m(&leaf.sides(), (from.x, from.y), (to.x, to.y)) - wide
            };
            note(part, Against::Leaf, 0, &to_leaf);
        }
        let post = job.hinge_post();
        let standing = obstacles.iter().map(|Obstacle { index, place }| (Against::Obstacle, *index, place));
        let solid: Vec<_> = post.into_iter().map(|post| (Against::HingePost, 0, post)).chain(standing).collect();
        let keep_out = job.setout.iter().flat_map(|setout| setout.keep_out.iter().enumerate());
        let keep_out = keep_out.filter(|(_, area)| solid.iter().all(|(_, _, place)| place != area));
        let keep_out: Vec<_> = keep_out.map(|(index, area)| (Against::KeepOut, index, area)).collect();
        for (against, index, rectangle) in solid.into_iter().chain(keep_out) {
            for part in [MovingPart::Crank, MovingPart::Link, MovingPart::Elbow] {
                let to_rectangle = |joints: &Joints| {
                    let [from, to] = ends(part, joints, shaft);
                    separation_m(&rectangle.sides(), (from.x, from.y), (to.x, to.y)) - wide
                };
                note(part, against, index, &to_rectangle);
            }
            if against != Against::KeepOut {
                note(MovingPart::Leaf, against, index, &|joints| leaf_gap_m(&leaf, joints, rectangle));
            }
        }
        insertion_sort(&mut gaps, |one, other| one.least_m < other.least_m);
        let hinge_gap = post.map(|post| hinge_gap(&leaf, &swing, post));
        let opened = swing.at(self.linkage().open_rad);
        let open = obstacles.iter().filter_map(|Obstacle { index, place }| {
            let along = corners(place).map(|corner| turned(corner, opened.back).x);
            let (nearest, reach_m) = ends_of(&along);
            // Only what stands beside the leaf is covered by it.
            let beside = nearest < leaf.x_m[1] && reach_m > leaf.x_m[0];
            beside.then(|| OpenGap { obstacle: *index, gap_m: leaf_gap_m(&leaf, &opened, place), reach_m })
        });
        Some(Clearances { hinge_gap, open: open.collect(), sweep: self.elbow_sweep(wide), gaps })
    }

    /// The clearances beside what a search is to keep out of. Before the job says anything of the room the leaf is a line.
    #[must_use]
    pub fn clearances_of_search(&self) -> Option<Clearances> {
        if self.job().room.is_some() {
            return self.clearances();
        }
        self.in_room(Room::default()).clearances()
    }
}

/// Both ends of a part of the arm in the frame.
fn ends(part: MovingPart, joints: &Joints, shaft: Point) -> [Point; 2] {
    match part {
        MovingPart::Crank => [shaft, joints.elbow],
        MovingPart::Link => [joints.elbow, joints.bracket],
        _ => [joints.elbow, joints.elbow],
    }
}

fn hinge_gap(leaf: &KeepOut, swing: &SwingJoints, post: &KeepOut) -> HingeGap {
    let gap_m = |joints: &Joints| leaf_gap_m(leaf, joints, post);
    let moves = Moves { joints: &[], turning_m: leaf_reach_m(leaf) };
    let (least_rad, least_m) = swing.least(&moves, &gap_m);
    let (widest_rad, widest_m) = swing.least(&moves, &|joints| -gap_m(joints));
    HingeGap {
        closed_m: gap_m(&swing.at(0.0)),
        open_m: gap_m(&swing.at(swing.open_rad())),
        widest_m: -widest_m,
        widest_leaf_deg: widest_rad.to_degrees(),
        least_m,
        least_leaf_deg: least_rad.to_degrees(),
    }
}

/// Furthest corner of the leaf from the hinge, m.
fn leaf_reach_m(leaf: &KeepOut) -> f64 {
    corners(leaf).iter().fold(0.0, |most: f64, corner| most.max(corner.to_vec2().hypot()))
}

/// Separation of the turned leaf from a rectangle, m. Four axes decide whether they overlap and by how much; apart, the distance is
/// reached between a corner of one and a side of the other.
fn leaf_gap_m(leaf: &KeepOut, joints: &Joints, rectangle: &KeepOut) -> f64 {
    let theirs = corners(rectangle).map(|corner| turned(corner, joints.back));
    let ours = corners(leaf).map(|corner| turned(corner, joints.there));
    let apart = beyond(&theirs, leaf).max(beyond(&ours, rectangle));
    if apart <= 0.0 {
        return apart;
    }
    let to_sides = |corners: &[Point; 4], rectangle: &KeepOut| {
        let outside = |place: &Point| {
            let over = |[least, most]: [f64; 2], value: f64| (least - value).max(value - most).max(0.0);
            let (x, y) = (over(rectangle.x_m, place.x), over(rectangle.y_m, place.y));
            sqrt(x * x + y * y)
        };
        corners.iter().map(outside).fold(f64::MAX, f64::min)
    };
    to_sides(&theirs, leaf).min(to_sides(&ours, rectangle))
}

/// How far four corners lie beyond a rectangle along its own axes, m; negative by the overlap.
fn beyond(places: &[Point; 4], rectangle: &KeepOut) -> f64 {
    let along = |[least, most]: [f64; 2], values: [f64; 4]| {
        let (from, to) = ends_of(&values);
        (from - most).max(least - to)
    };
    along(rectangle.x_m, places.map(|place| place.x)).max(along(rectangle.y_m, places.map(|place| place.y)))
}

fn ends_of(values: &[f64; 4]) -> (f64, f64) {
    values.iter().fold((f64::MAX, f64::MIN), |(least, most), &value| (least.min(value), most.max(value)))
}

fn corners(KeepOut { x_m: [x0, x1], y_m: [y0, y1] }: &KeepOut) -> [Point; 4] {
    [(*x0, *y0), (*x1, *y0), (*x1, *y1), (*x0, *y1)].map(Point::from)
}
