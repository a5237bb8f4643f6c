//! Leaf and arm in the room around them: every least distance over the continuous swing, with its leaf angle.
//!
//! The leaf is a rectangle that turns with the leaf angle, crank and link are segments widened to both sides, everything else is a rectangle
//! along the closed leaf. A distance is negative by the least shift that would part what overlaps. How the least of one over the swing is found
//! is told in [`swing`](super::swing).

use super::Model;
use super::elbow_sweep::ElbowSweep;
use super::swing::{Joint, Joints, Movers, SwingJoints, turned};
use crate::job::Stopped;
use crate::numerics::{PlacedRectangle, Sides, corners, ends_of, furthest_corner, separation_m};
use crate::order::insertion_sort;
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
    /// Which part.
    pub part: MovingPart,
    /// What it could meet.
    pub against: Against,
    /// Its place in `obstacles`, from 0; 0 for the leaf.
    pub index: usize,
    /// Least distance over the swing, m; negative where they overlap.
    pub least_m: f64,
    /// Leaf angle there, degrees.
    pub leaf_deg: f64,
}

/// A part of the gate.
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
    /// The operator's body, which stands while the leaf moves.
    Operator,
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
    /// Something else that stands around.
    Obstacle,
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
    /// Its place in `obstacles`, from 0.
    pub obstacle: usize,
    /// Distance of the open leaf from it, m.
    pub gap_m: f64,
    /// How far from the hinge axis along the open leaf the obstacle reaches, m.
    pub reach_m: f64,
}

impl Model {
    /// Distances through the swing, `None` where the job says nothing of what stands around and of the operator's body.
    #[must_use]
    pub fn clearances(&self) -> Option<Clearances> {
        let job = self.job();
        (job.obstacles.is_some() || job.operator.body.is_some()).then(|| self.clearances_of_search())
    }

    /// The same whether or not the job asks for it, as a search does.
    #[must_use]
    pub fn clearances_of_search(&self) -> Clearances {
        let job = self.job();
        let (leaf, wide) = (job.leaf.sides_m(), job.arm_half_width());
        let (shaft, swing) = (self.linkage().shaft, SwingJoints::new(self.linkage()));
        let mut gaps = Vec::new();
        let reach_m = furthest_corner(&leaf);
        let mut note = |part, against, index, value: &dyn Fn(&Joints) -> f64| {
            // The leaf turns about the hinge; what it is seen from turns back as far as it is out.
            let moves = match (part, against) {
                (MovingPart::Leaf, _) | (MovingPart::Operator, Against::Leaf) => {
                    Movers { joints: &[], turning_m: reach_m }
                }
                (MovingPart::Operator, _) => Movers { joints: &[], turning_m: 0.0 },
                (MovingPart::Link, Against::Leaf) => {
                    Movers { joints: &[Joint::Elbow, Joint::Bracket], turning_m: swing.furthest_m }
                }
                (_, Against::Leaf) => Movers { joints: &[Joint::Elbow], turning_m: swing.furthest_m },
                (MovingPart::Link, _) => Movers { joints: &[Joint::Elbow, Joint::Bracket], turning_m: 0.0 },
                _ => Movers { joints: &[Joint::Elbow], turning_m: 0.0 },
            };
            let (leaf_rad, least_m) = swing.least(&moves, value);
            gaps.push(Gap { part, against, index, least_m, leaf_deg: leaf_rad.to_degrees() });
        };
        for part in [MovingPart::Crank, MovingPart::Link, MovingPart::Elbow] {
            let to_leaf = |joints: &Joints| {
                let [from, to] = ends(part, joints, shaft).map(|place| turned(place, joints.back));
                let wide = if part == MovingPart::Link { 0.0 } else { wide };
                separation_m(&leaf, (from.x, from.y), (to.x, to.y)) - wide
            };
            note(part, Against::Leaf, 0, &to_leaf);
        }
        let body = self.operator_body();
        if let Some(body) = &body {
            note(MovingPart::Operator, Against::Leaf, 0, &|joints| {
                body.seen_from(&placed_leaf(joints, &leaf)).separation_m(&leaf)
            });
        }
        for (index, obstacle) in job.standing() {
            let against = if obstacle.is_hinge_post() { Against::HingePost } else { Against::Obstacle };
            let rectangle = obstacle.place().sides();
            if obstacle.stops(Stopped::Arm) {
                for part in [MovingPart::Crank, MovingPart::Link, MovingPart::Elbow] {
                    let to_rectangle = |joints: &Joints| {
                        let [from, to] = ends(part, joints, shaft);
                        separation_m(&rectangle, (from.x, from.y), (to.x, to.y)) - wide
                    };
                    note(part, against, index, &to_rectangle);
                }
            }
            if obstacle.stops(Stopped::Leaf) {
                note(MovingPart::Leaf, against, index, &|joints| placed_leaf(joints, &leaf).separation_m(&rectangle));
            }
            if obstacle.stops(Stopped::Pad) {
                // The shaft needs its place where nothing is known of the body around it.
                let gap_m = match &body {
                    Some(body) => body.separation_m(&rectangle),
                    None => separation_m(&rectangle, (shaft.x, shaft.y), (shaft.x, shaft.y)),
                };
                if body.is_some() || !obstacle.stops(Stopped::Arm) {
                    note(MovingPart::Operator, against, index, &|_| gap_m);
                }
            }
        }
        insertion_sort(&mut gaps, |one, other| one.least_m < other.least_m);
        let post = job.hinge_posts().find(|(_, post)| post.stops(Stopped::Leaf));
        let hinge_gap = post.map(|(_, post)| hinge_gap(&leaf, &swing, &post.place().sides()));
        let opened = swing.at(self.linkage().open_rad);
        let others = job.stopping(Stopped::Leaf).filter(|(_, obstacle)| !obstacle.is_hinge_post());
        let open = others.filter_map(|(index, obstacle)| {
            let rectangle = obstacle.place().sides();
            let along = corners(&rectangle).map(|corner| turned(corner.into(), opened.back).x);
            let (nearest, reach_m) = ends_of(along);
            // Only what stands beside the leaf is covered by it.
            let beside = nearest < leaf[0][1] && reach_m > leaf[0][0];
            beside.then(|| OpenGap {
                obstacle: index,
                gap_m: placed_leaf(&opened, &leaf).separation_m(&rectangle),
                reach_m,
            })
        });
        Clearances { hinge_gap, open: open.collect(), sweep: self.elbow_sweep(wide), gaps }
    }

    /// The operator's body on the ground, its base laid along the crank of the closed arm and turned as the marks say; `None` where the job
    /// does not say how large it is.
    #[must_use]
    pub(crate) fn operator_body(&self) -> Option<PlacedRectangle> {
        let job = self.job();
        let turn_rad = job.marks.unwrap_or_default().anchor_turn_rad();
        Some(job.operator.body?.about(self.linkage(), turn_rad))
    }

    /// Corners of the operator's body on the ground, m, counter-clockwise; `None` as where its size is not known.
    #[must_use]
    pub fn operator_corners_m(&self) -> Option<[(f64, f64); 4]> {
        Some(self.operator_body()?.corners())
    }
}

/// The leaf as it stands.
fn placed_leaf(joints: &Joints, sides: &Sides) -> PlacedRectangle {
    let (sine, cosine) = joints.there;
    PlacedRectangle::about_origin(*sides, (cosine, sine))
}

/// Both ends of a part of the arm in the frame.
fn ends(part: MovingPart, joints: &Joints, shaft: Point) -> [Point; 2] {
    match part {
        MovingPart::Crank => [shaft, joints.elbow],
        MovingPart::Link => [joints.elbow, joints.bracket],
        _ => [joints.elbow, joints.elbow],
    }
}

fn hinge_gap(leaf: &Sides, swing: &SwingJoints, post: &Sides) -> HingeGap {
    let gap_m = |joints: &Joints| placed_leaf(joints, leaf).separation_m(post);
    let moves = Movers { joints: &[], turning_m: furthest_corner(leaf) };
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
