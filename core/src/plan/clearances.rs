//! Leaf and arm in the room around them: every least distance over the continuous swing, with its leaf angle.
//!
//! The leaf is a rectangle that turns with the leaf angle, crank and link are segments widened to both sides, everything else is a rectangle
//! along the closed leaf. A distance is negative by the least shift that would part what overlaps. Distances are asked at leaf angles that
//! crowd towards both ends of the swing, where an elbow near its dead point runs like a square root, and every local least is refined
//! between its neighbours; what two of them could hide between them is far below a millimetre for parts of a gate's size.

use super::Model;
use super::elbow_sweep::ElbowSweep;
use crate::arm::{Linkage, placed_body};
use crate::job::Stopped;
use crate::numerics::{PlacedRectangle, Sides, corners, ends_of, golden_section, separation_m};
use crate::order::insertion_sort;
use crate::real::{cos, sin_cos};
use alloc::vec::Vec;
use core::f64::consts::PI;
use kurbo::Point;
use serde::Serialize;

/// Intervals of the swing that are looked at, and rounds of refinement between two of them.
const INTERVALS: u32 = 240;
const ROUNDS: usize = 40;

/// Difference from both its neighbours within which a least distance is level, m: rounding.
const LEVEL_M: f64 = 1e-12;

/// An arc over its chord, for a joint that turns less than 50° between two angles.
const ARC: f64 = 1.04;

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

/// Leaf and arm at one leaf angle.
struct Joints {
    leaf_rad: f64,
    /// Sine and cosine of the leaf angle, and of its opposite.
    there: (f64, f64),
    back: (f64, f64),
    elbow: Point,
    bracket: Point,
}

impl Joints {
    fn at(linkage: &Linkage, leaf_rad: f64) -> Joints {
        let lever = linkage.leverage(leaf_rad);
        let (sine, cosine) = sin_cos(leaf_rad);
        Joints { leaf_rad, there: (sine, cosine), back: (-sine, cosine), elbow: lever.elbow, bracket: lever.bracket }
    }

    /// The leaf as it stands here.
    fn leaf(&self, sides: &Sides) -> PlacedRectangle {
        let (sine, cosine) = self.there;
        PlacedRectangle { sides: *sides, origin: (0.0, 0.0), turn: (cosine, sine) }
    }

    /// Both ends of a part in the frame.
    fn ends(&self, part: MovingPart, shaft: Point) -> [Point; 2] {
        match part {
            MovingPart::Crank => [shaft, self.elbow],
            MovingPart::Link => [self.elbow, self.bracket],
            _ => [self.elbow, self.elbow],
        }
    }
}

/// The swing at the leaf angles that are looked at: leaf and arm are worked out once for everything they could meet.
struct SwingJoints<'a> {
    linkage: &'a Linkage,
    looked_at: Vec<Joints>,
    /// Most a point of crank or link moves on the way to an angle from the one before, m.
    moved_m: Vec<f64>,
    /// Furthest a joint is from the hinge, m.
    furthest_m: f64,
}

impl SwingJoints<'_> {
    fn new(linkage: &Linkage) -> SwingJoints<'_> {
        let angle = |index: u32| match index {
            INTERVALS => linkage.open_rad,
            index => 0.5 * linkage.open_rad * (1.0 - cos(PI * f64::from(index) / f64::from(INTERVALS))),
        };
        let looked_at: Vec<Joints> = (0..=INTERVALS).map(|index| Joints::at(linkage, angle(index))).collect();
        let way = |pair: &[Joints]| {
            ARC * (pair[0].elbow - pair[1].elbow).hypot().max((pair[0].bracket - pair[1].bracket).hypot())
        };
        let moved_m = core::iter::once(0.0).chain(looked_at.windows(2).map(way)).collect();
        let joints = looked_at.iter().flat_map(|joints| [joints.elbow, joints.bracket]);
        let furthest_m = joints.chain([linkage.shaft]).fold(0.0, |most: f64, joint| most.max(joint.to_vec2().hypot()));
        SwingJoints { linkage, looked_at, moved_m, furthest_m }
    }

    fn at(&self, leaf_rad: f64) -> Joints {
        Joints::at(self.linkage, leaf_rad)
    }

    /// Least value over the swing with its angle; what it tells of is nowhere further than `reach_m` from the hinge.
    ///
    /// Between two angles no value falls further below their mean than half of what anything moves, so that most local leasts cannot be the
    /// least of all. Where a distance stays level, to a shaft that does not move, there is nothing to refine.
    fn least(&self, reach_m: f64, value: &dyn Fn(&Joints) -> f64) -> (f64, f64) {
        let values: Vec<f64> = self.looked_at.iter().map(value).collect();
        let last = values.len() - 1;
        let angle = |index: usize| self.looked_at[index].leaf_rad;
        // Of a level stretch the first angle counts.
        let first = (0..=last).fold(0, |least, index| if values[index] < values[least] { index } else { least });
        let mut best = (angle(first), values[first]);
        let floor = |index: usize| {
            let moved_m = self.moved_m[index] + reach_m * (angle(index) - angle(index - 1));
            0.5 * (values[index - 1] + values[index] - moved_m)
        };
        for (index, &here) in values.iter().enumerate() {
            let (before, behind) = (index.saturating_sub(1), (index + 1).min(last));
            if here > values[before] || here > values[behind] {
                continue;
            }
            let level = values[before].max(values[behind]) - here <= LEVEL_M;
            if level || (before + 1..=behind).all(|index| floor(index) >= best.1) {
                continue;
            }
            let refined = golden_section(angle(before), angle(behind), ROUNDS, |leaf_rad| value(&self.at(leaf_rad)));
            if refined.1 < best.1 {
                best = refined;
            }
        }
        best
    }
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
        let reach_m = leaf_reach_m(&leaf).max(swing.furthest_m);
        let mut note = |part, against, index, value: &dyn Fn(&Joints) -> f64| {
            let (leaf_rad, least_m) = swing.least(reach_m, value);
            gaps.push(Gap { part, against, index, least_m, leaf_deg: leaf_rad.to_degrees() });
        };
        for part in [MovingPart::Crank, MovingPart::Link, MovingPart::Elbow] {
            let to_leaf = |joints: &Joints| {
                let [from, to] = joints.ends(part, shaft).map(|place| turned(place, joints.back));
                let wide = if part == MovingPart::Link { 0.0 } else { wide };
                separation_m(&leaf, (from.x, from.y), (to.x, to.y)) - wide
            };
            note(part, Against::Leaf, 0, &to_leaf);
        }
        let body = self.operator_body();
        if let Some(body) = &body {
            note(MovingPart::Operator, Against::Leaf, 0, &|joints| {
                body.seen_from(&joints.leaf(&leaf)).separation_m(&leaf)
            });
        }
        for (index, obstacle) in job.standing() {
            let against = if obstacle.is_hinge_post() { Against::HingePost } else { Against::Obstacle };
            let rectangle = obstacle.place().sides();
            if obstacle.stops(Stopped::Arm) {
                for part in [MovingPart::Crank, MovingPart::Link, MovingPart::Elbow] {
                    let to_rectangle = |joints: &Joints| {
                        let [from, to] = joints.ends(part, shaft);
                        separation_m(&rectangle, (from.x, from.y), (to.x, to.y)) - wide
                    };
                    note(part, against, index, &to_rectangle);
                }
            }
            if obstacle.stops(Stopped::Leaf) {
                note(MovingPart::Leaf, against, index, &|joints| joints.leaf(&leaf).separation_m(&rectangle));
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
            beside.then(|| OpenGap { obstacle: index, gap_m: opened.leaf(&leaf).separation_m(&rectangle), reach_m })
        });
        Clearances { hinge_gap, open: open.collect(), sweep: self.elbow_sweep(wide), gaps }
    }

    /// The operator's body on the ground, its base laid along the crank of the closed arm and turned as the marks say; `None` where the job
    /// does not say how large it is.
    #[must_use]
    pub(crate) fn operator_body(&self) -> Option<PlacedRectangle> {
        let job = self.job();
        let (shaft, closed) = (self.linkage().shaft, self.linkage().pose(0.0));
        let crank = (closed.elbow - shaft) / self.linkage().crank_m;
        let turn_rad = job.marks.unwrap_or_default().anchor_turn_rad();
        Some(placed_body(&job.operator.body?, (shaft.x, shaft.y), (crank.x, crank.y), turn_rad))
    }

    /// Corners of the operator's body on the ground, m, counter-clockwise; `None` as where its size is not known.
    #[must_use]
    pub fn operator_corners_m(&self) -> Option<[(f64, f64); 4]> {
        Some(self.operator_body()?.corners())
    }
}

fn hinge_gap(leaf: &Sides, swing: &SwingJoints, post: &Sides) -> HingeGap {
    let gap_m = |joints: &Joints| joints.leaf(leaf).separation_m(post);
    let reach_m = leaf_reach_m(leaf);
    let (least_rad, least_m) = swing.least(reach_m, &gap_m);
    let (widest_rad, widest_m) = swing.least(reach_m, &|joints| -gap_m(joints));
    HingeGap {
        closed_m: gap_m(&swing.at(0.0)),
        open_m: gap_m(&swing.at(swing.linkage.open_rad)),
        widest_m: -widest_m,
        widest_leaf_deg: widest_rad.to_degrees(),
        least_m,
        least_leaf_deg: least_rad.to_degrees(),
    }
}

/// Furthest corner of the leaf from the hinge, m.
fn leaf_reach_m(leaf: &Sides) -> f64 {
    corners(leaf).iter().fold(0.0, |most: f64, &corner| most.max(Point::from(corner).to_vec2().hypot()))
}

fn turned(place: Point, (sine, cosine): (f64, f64)) -> Point {
    Point::new(place.x * cosine - place.y * sine, place.x * sine + place.y * cosine)
}
