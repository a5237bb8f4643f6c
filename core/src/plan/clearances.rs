//! Leaf and arm in the room around them: every least distance over the continuous swing, with its leaf angle.
//!
//! The leaf is a rectangle that turns with the leaf angle, crank and link are segments widened to both sides, everything else is a rectangle
//! along the closed leaf. A distance is negative by the least shift that would part what overlaps. Distances are asked at leaf angles that
//! crowd towards both ends of the swing, where an elbow near its dead point runs like a square root, and every local least is refined
//! between its neighbours; what two of them could hide between them is far below a millimetre for parts of a gate's size.

use super::Model;
use super::elbow_sweep::ElbowSweep;
use crate::arm::Linkage;
use crate::job::{KeepOut, Obstacle, Room};
use crate::numerics::{golden_section, separation_m};
use crate::order::insertion_sort;
use crate::real::{cos, sin_cos, sqrt};
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
        let reach_m = leaf_reach_m(&leaf).max(swing.furthest_m);
        let mut note = |part, against, index, value: &dyn Fn(&Joints) -> f64| {
            let (leaf_rad, least_m) = swing.least(reach_m, value);
            gaps.push(Gap { part, against, index, least_m, leaf_deg: leaf_rad.to_degrees() });
        };
        for part in [MovingPart::Crank, MovingPart::Link, MovingPart::Elbow] {
            let to_leaf = |joints: &Joints| {
                let [from, to] = joints.ends(part, shaft).map(|place| turned(place, joints.back));
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
                    let [from, to] = joints.ends(part, shaft);
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

fn hinge_gap(leaf: &KeepOut, swing: &SwingJoints, post: &KeepOut) -> HingeGap {
    let gap_m = |joints: &Joints| leaf_gap_m(leaf, joints, post);
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

fn turned(place: Point, (sine, cosine): (f64, f64)) -> Point {
    Point::new(place.x * cosine - place.y * sine, place.x * sine + place.y * cosine)
}
