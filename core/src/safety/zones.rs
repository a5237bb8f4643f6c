//! Zones in which a person can be caught, from the geometry of this leaf and arm.

use super::Source;
use super::stance::Stance;
use crate::arm::Linkage;
use crate::job::Site;
use crate::numerics::{PlacedRectangle, Sides, furthest_corner};
use crate::real::{cos, length, sin};
use crate::terms::{Direction, ZoneKind};
use alloc::vec::Vec;
use kurbo::Point;
use serde::Serialize;

/// Gaps that do not crush a body, an arm, a foot, m. ISO 13854.
const BODY_M: f64 = 0.5;
const ARM_M: f64 = 0.12;
const FOOT_M: f64 = 0.12;

/// Gap that has to stay free between the open leaf and what stands behind it, m. 16 in, ASTM F2200, doubtful wording.
const BEHIND_M: f64 = 0.4064;

/// A leaf hung higher than this above the ground, m, lets somebody get under it. 6 in, UL 325, from memory, doubtful wording.
const UNDER_M: f64 = 0.1524;

/// A gap whose nearest place on the leaf is within this of the hinge axis counts as the hinge side, m. A word of our own; no source.
const HINGE_SIDE_M: f64 = 0.5;

/// Where between two bars that close like scissors the gap is told, from their joint, m. A word of our own; no source.
const SCISSORS_M: f64 = 0.1;

impl ZoneKind {
    /// Gap at which nobody is caught, m, and where the figure comes from.
    ///
    /// Where a person can stand it is a body's; between crank and link, told [`SCISSORS_M`] from their joint, an arm's; under the leaf a foot's,
    /// or a body's where it hangs so high that somebody gets under it.
    const fn free_gap(self) -> (f64, Source) {
        match self {
            ZoneKind::BehindLeaf => (BEHIND_M, Source::F2200_GAPS),
            ZoneKind::ArmScissors => (ARM_M, Source::ISO_13854),
            ZoneKind::Bottom => (FOOT_M, Source::ISO_13854),
            _ => (BODY_M, Source::ISO_13854),
        }
    }
}

/// One zone, at the leaf angle where it is worst.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Zone {
    /// What closes on what.
    pub kind: ZoneKind,
    /// Movements in which the gap shrinks.
    pub directions: Vec<Direction>,
    /// Least gap, m, 0 where the parts would touch; `null` where the job does not say enough.
    pub gap_m: Option<f64>,
    /// Leaf angle there, degrees.
    pub leaf_deg: f64,
    /// Place in plan, m.
    pub x_m: f64,
    /// Place in plan, m.
    pub y_m: f64,
    /// Whether it counts as a zone of entrapment: the gap is not known, or closes to less than the free gap.
    pub present: bool,
    /// Gap at which it would not count, m: that of the part of the body that can be there.
    pub free_gap_m: f64,
    /// The obstacle's place in `obstacles`, from 0.
    pub obstacle: Option<u32>,
    /// Whether it is the operator's body that the leaf closes on.
    pub at_operator: bool,
    /// Where the free gap comes from.
    pub source: Source,
}

/// A gap at one leaf angle and the place of its nearest points.
struct NearestGap {
    gap_m: f64,
    place: Point,
}

/// What the job says of the gaps elsewhere that close as the leaf turns.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct KnownGaps {
    /// The gap under the leaf.
    pub ground: Option<GroundGap>,
    /// The gap at the hinge post.
    pub hinge: Option<PostGap>,
}

/// The gap under the leaf over the swing, m and rad.
#[derive(Clone, Copy, Debug)]
pub(crate) struct GroundGap {
    /// Widest anywhere along the leaf.
    pub widest_m: f64,
    /// Least anywhere along it.
    pub least_m: f64,
    /// Leaf angle there.
    pub leaf_rad: f64,
}

/// The gap at the hinge post, m and rad.
#[derive(Clone, Copy, Debug)]
pub(crate) struct PostGap {
    /// Leaf closed.
    pub closed_m: f64,
    /// Leaf open.
    pub open_m: f64,
    /// Least over the swing.
    pub least_m: f64,
    /// Leaf angle there.
    pub leaf_rad: f64,
}

/// Angles of the grid from one that is asked in any case to the next: a divisor of [`INTERVALS`](super::stance::INTERVALS).
const ASKED_EVERY: usize = 12;

/// The widest gap that anything asks to stay free, m.
const FREE_MOST_M: f64 = if BODY_M > BEHIND_M { BODY_M } else { BEHIND_M };

/// A gap that stays as it is crushes nobody: a millimetre is the hinge's own play.
const PLAY_M: f64 = 0.001;

/// What moves, and what stands in its way.
pub(crate) struct Bodies<'a> {
    /// The leaf in its own axes.
    pub leaf: Sides,
    /// Half the width of crank and link, m.
    pub arm_half_width_m: f64,
    /// What stands around beside the hinge post, each with its place in the list.
    pub obstacles: &'a [(usize, Sides)],
    /// The operator's body.
    pub operator: Option<PlacedRectangle>,
}

/// All zones, the leaf's edge first. The hinge side is a zone of unknown gap where nothing near the hinge is described.
pub(crate) fn zones(linkage: &Linkage, bodies: &Bodies, site: &Site, known: &KnownGaps) -> Vec<Zone> {
    let length_m = bodies.leaf[0][1];
    let edge = |leaf_rad: f64| Point::new(length_m * cos(leaf_rad), length_m * sin(leaf_rad));
    let (free_gap_m, source) = ZoneKind::LeadingEdgeClosing.free_gap();
    let closed = Zone {
        kind: ZoneKind::LeadingEdgeClosing,
        directions: alloc::vec![Direction::Close],
        gap_m: Some(site.latch_gap()),
        leaf_deg: 0.0,
        x_m: length_m,
        y_m: 0.0,
        present: site.latch_gap() < free_gap_m,
        free_gap_m,
        obstacle: None,
        at_operator: false,
        source,
    };
    let bottom = bottom(known.ground, edge(known.ground.map_or(0.0, |gap| gap.leaf_rad)));
    let elsewhere = |kind: ZoneKind| move |_: Point, _: f64| kind;
    let stances = &Stance::over_swing(linkage, length_m);
    let elbow = least(stances, elsewhere(ZoneKind::Elbow), |stance| {
        let elbow = PlacedRectangle { sides: [[0.0; 2]; 2], origin: stance.lever.elbow.into(), turn: (1.0, 0.0) };
        let away = elbow.seen_from(&stance.leaf(&bodies.leaf)).separation_m(&bodies.leaf);
        NearestGap { gap_m: away - bodies.arm_half_width_m, place: stance.lever.elbow }
    });
    let scissors = least(stances, elsewhere(ZoneKind::ArmScissors), |Stance { lever: pose, .. }| {
        let (crank, link) =
            ((linkage.shaft - pose.elbow) / linkage.crank_m, (pose.bracket - pose.elbow) / linkage.link_m);
        NearestGap { gap_m: SCISSORS_M * length(link - crank), place: pose.elbow }
    });
    let mut zones = alloc::vec![closed, bottom, elbow, scissors];
    let beside = |place: Point, leaf_rad: f64| {
        if length(place.to_vec2()) <= HINGE_SIDE_M {
            ZoneKind::HingeSide
        } else if length(place - edge(leaf_rad)) <= HINGE_SIDE_M {
            ZoneKind::LeadingEdgeOpening
        } else {
            ZoneKind::BehindLeaf
        }
    };
    let reach_m = furthest_corner(&bodies.leaf);
    for (index, obstacle) in bodies.obstacles {
        let zone = beside_leaf(stances, reach_m, beside, |stance| NearestGap {
            // Met is met: the angle told is that of the first touch.
            gap_m: stance.leaf(&bodies.leaf).separation_m(obstacle).max(0.0),
            place: stance.nearest_to_rectangle(obstacle),
        });
        zones.push(Zone { obstacle: Some(*index as u32), ..zone });
    }
    if let Some(operator) = &bodies.operator {
        let zone = beside_leaf(stances, reach_m, beside, |stance| {
            let away = |corner: &(f64, f64)| {
                let nearest = stance.nearest_on_leaf((*corner).into());
                (length(Point::from(*corner) - nearest), nearest)
            };
            let nearer = |one: (f64, Point), other: (f64, Point)| if other.0 < one.0 { other } else { one };
            NearestGap {
                gap_m: operator.seen_from(&stance.leaf(&bodies.leaf)).separation_m(&bodies.leaf).max(0.0),
                place: operator.corners().iter().map(away).fold((f64::MAX, Point::ORIGIN), nearer).1,
            }
        });
        zones.push(Zone { at_operator: true, ..zone });
    }
    if known.hinge.is_some() || zones.iter().all(|zone| zone.kind != ZoneKind::HingeSide) {
        zones.push(hinge_side(known.hinge));
    }
    zones
}

/// Leaf and ground, both ways: a foot is met by a low leaf however even its gap is, and whoever gets under a high one is by a lower place of it.
/// None where the gap keeps between a foot's and what nobody gets under, or is a body's everywhere.
fn bottom(gap: Option<GroundGap>, place: Point) -> Zone {
    let (foot_m, source) = ZoneKind::Bottom.free_gap();
    let high = gap.is_some_and(|gap| gap.least_m >= foot_m && gap.widest_m > UNDER_M);
    let free_gap_m = if high { BODY_M } else { foot_m };
    let present = gap.is_none_or(|gap| gap.least_m < free_gap_m);
    Zone {
        kind: ZoneKind::Bottom,
        directions: if present { Direction::BOTH.into() } else { Vec::new() },
        gap_m: gap.map(|gap| gap.least_m.max(0.0)),
        leaf_deg: gap.map_or(0.0, |gap| gap.leaf_rad).to_degrees(),
        x_m: place.x,
        y_m: place.y,
        present,
        free_gap_m,
        obstacle: None,
        at_operator: false,
        source,
    }
}

/// Leaf and post: closing or opening catches, whichever ends nearer than where it began.
fn hinge_side(gap: Option<PostGap>) -> Zone {
    let (free_gap_m, source) = ZoneKind::HingeSide.free_gap();
    let catches = |gap: &PostGap, direction| {
        let before = if direction == Direction::Open { gap.closed_m } else { gap.open_m };
        gap.least_m < free_gap_m && before - gap.least_m > PLAY_M
    };
    let shrinks = |direction: &Direction| gap.as_ref().is_none_or(|gap| catches(gap, *direction));
    let directions: Vec<Direction> = Direction::BOTH.into_iter().filter(shrinks).collect();
    Zone {
        kind: ZoneKind::HingeSide,
        present: !directions.is_empty(),
        directions,
        gap_m: gap.map(|gap| gap.least_m.max(0.0)),
        leaf_deg: gap.map_or(0.0, |gap| gap.leaf_rad).to_degrees(),
        x_m: 0.0,
        y_m: 0.0,
        free_gap_m,
        obstacle: None,
        at_operator: false,
        source,
    }
}

/// The zone of a gap that changes with the leaf angle: its least value on a fixed grid, and the movements in which it shrinks.
///
/// The grid's step is at most half a degree, so an edge four metres away is placed to some 35 mm and the gap known better than that wherever it
/// has a turning point.
/// Where it is worst decides its kind, and that the gap that has to stay free.
fn least(stances: &[Stance], kind: impl Fn(Point, f64) -> ZoneKind, gap: impl Fn(&Stance) -> NearestGap) -> Zone {
    worst(stances, stances.iter().map(gap).collect(), kind)
}

/// The zone of what stands around. Between two angles the leaf, whose furthest corner is `reach_m` from the hinge, comes no nearer to it than it
/// turns, so where it is further away than what anybody asks to stay free, and than where it is worst, it is not asked.
fn beside_leaf(
    stances: &[Stance],
    reach_m: f64,
    kind: impl Fn(Point, f64) -> ZoneKind,
    gap: impl Fn(&Stance) -> NearestGap,
) -> Zone {
    let far = |stance: &Stance| NearestGap { gap_m: f64::MAX, place: stance.end };
    let mut gaps: Vec<NearestGap> = stances.iter().map(far).collect();
    let ask = |gaps: &mut [NearestGap], index: usize| {
        gaps[index] = gap(&stances[index]);
        gaps[index].gap_m
    };
    let mut least_m = f64::MAX;
    for index in (0..stances.len()).step_by(ASKED_EVERY) {
        least_m = least_m.min(ask(&mut gaps, index));
    }
    for from in (0..stances.len() - 1).step_by(ASKED_EVERY) {
        let to = (from + ASKED_EVERY).min(stances.len() - 1);
        let turned_m = reach_m * (stances[to].lever.leaf_rad - stances[from].lever.leaf_rad);
        let floor_m = 0.5 * (gaps[from].gap_m + gaps[to].gap_m - turned_m);
        // What narrows by no more than play catches nobody: the gap before has to be known that far.
        if floor_m <= (FREE_MOST_M + PLAY_M).max(least_m) {
            for index in from + 1..to {
                least_m = least_m.min(ask(&mut gaps, index));
            }
        }
    }
    worst(stances, gaps, kind)
}

/// The zone of gaps at all the angles.
fn worst(stances: &[Stance], gaps: Vec<NearestGap>, kind: impl Fn(Point, f64) -> ZoneKind) -> Zone {
    let worst =
        (0..gaps.len()).fold(0, |worst, index| if gaps[index].gap_m < gaps[worst].gap_m { index } else { worst });
    let (leaf_rad, narrowest) = (stances[worst].lever.leaf_rad, &gaps[worst]);
    let kind = kind(narrowest.place, leaf_rad);
    let (free_gap_m, source) = kind.free_gap();
    // A gap narrower than what has to stay free, and narrower than it was by more than play: that is the movement that catches.
    let narrows = |widest_m: &mut f64, gap_m: f64| {
        *widest_m = widest_m.max(gap_m);
        Some(gap_m < free_gap_m && *widest_m - gap_m > PLAY_M)
    };
    let there = gaps.iter().map(|gap| gap.gap_m);
    let shrinks = |direction: Direction| match direction {
        Direction::Open => there.clone().scan(f64::MIN, narrows).any(|caught| caught),
        Direction::Close => there.clone().rev().scan(f64::MIN, narrows).any(|caught| caught),
    };
    Zone {
        kind,
        directions: Direction::BOTH.into_iter().filter(|direction| shrinks(*direction)).collect(),
        gap_m: Some(narrowest.gap_m.max(0.0)),
        leaf_deg: leaf_rad.to_degrees(),
        x_m: narrowest.place.x,
        y_m: narrowest.place.y,
        present: narrowest.gap_m < free_gap_m,
        free_gap_m,
        obstacle: None,
        at_operator: false,
        source,
    }
}

#[cfg(test)]
mod tests;
