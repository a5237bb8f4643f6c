//! Where sensors reach, in plan, and where they leave a gap.

use super::Zone;
use crate::job::{Means, SensedArea, SensorFrame};
use crate::real::{length, sin_cos};
use crate::terms::{Direction, ZoneKind};
use alloc::vec::Vec;
use kurbo::{Point, Vec2};
use serde::Serialize;

/// Intervals of the leaf angle that are looked at.
const INTERVALS: u32 = 720;

/// What one sensor reaches.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct SensorReach {
    /// Number of the means in the job's list.
    pub means: u32,
    /// Zones that count, in their order, and how far each is from what is sensed.
    pub zones: Vec<ZoneGap>,
    /// Leaf angles at which the latch edge is within what is sensed.
    pub edge: Vec<AngleSpan>,
}

/// How far a zone is from what a sensor senses.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct ZoneGap {
    /// Number of the zone in the plan's list.
    pub zone: u32,
    /// Kind of the zone.
    pub kind: ZoneKind,
    /// Distance from its place, at the leaf angle where it is worst, to what is sensed, m; 0 within it.
    pub gap_m: f64,
}

/// A stretch of leaf angles, degrees.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct AngleSpan {
    /// Its first leaf angle.
    pub from_deg: f64,
    /// Its last.
    pub to_deg: f64,
}

impl SensedArea {
    /// Distance of a place in plan from what is sensed while the leaf stands at an angle, m; 0 within it.
    ///
    /// A beam, a mat or a strip is a line widened on both sides and at its ends; heights are left out.
    #[must_use]
    pub fn gap_m(&self, place: Point, leaf_rad: f64) -> f64 {
        self.gap_of_m(place, along(leaf_rad), self.half_width())
    }

    /// The same with the leaf's direction and half the width at hand.
    fn gap_of_m(&self, place: Point, along: Vec2, half_width_m: f64) -> f64 {
        let place = place.to_vec2();
        let place = match self.on {
            SensorFrame::Ground => place,
            SensorFrame::Leaf => Vec2::new(place.dot(along), along.cross(place)),
        };
        let (from, to) = (Vec2::new(self.from_x_m, self.from_y_m), Vec2::new(self.to_x_m, self.to_y_m));
        let (line, way) = (to - from, place - from);
        let share = if line.hypot2() > 0.0 { (way.dot(line) / line.hypot2()).clamp(0.0, 1.0) } else { 0.0 };
        (length(way - line * share) - half_width_m).max(0.0)
    }
}

/// What each sensor whose area is described reaches.
pub(crate) fn sensor_reach(means: &[Means], zones: &[Zone], length_m: f64, open_rad: f64) -> Vec<SensorReach> {
    let areas = means.iter().enumerate().filter_map(|(index, means)| Some((index, means.area.as_ref()?)));
    let turned = directions(open_rad);
    let reach = |(index, area): (usize, &SensedArea)| SensorReach {
        means: index as u32,
        zones: (zones.iter().enumerate().filter(|(_, zone)| zone.present))
            .map(|(number, zone)| ZoneGap {
                zone: number as u32,
                kind: zone.kind,
                gap_m: area.gap_m(Point::new(zone.x_m, zone.y_m), zone.leaf_deg.to_radians()),
            })
            .collect(),
        edge: {
            let half_width_m = area.half_width();
            spans(&turned, |along| area.gap_of_m(edge(length_m, along), along, half_width_m) == 0.0)
        },
    };
    areas.map(reach).collect()
}

/// Leaf angles at which no sensor of a movement whose area is described senses the latch edge: the whole swing where there is none.
pub(crate) fn edge_unseen(means: &[Means], direction: Direction, length_m: f64, open_rad: f64) -> Vec<AngleSpan> {
    let own = |means: &&Means| means.direction.is_none_or(|own| own == direction);
    let areas = means.iter().filter(own).filter_map(|means| means.area.as_ref());
    let areas: Vec<(&SensedArea, f64)> = areas.map(|area| (area, area.half_width())).collect();
    spans(&directions(open_rad), |along| {
        areas.iter().all(|(area, half_width_m)| area.gap_of_m(edge(length_m, along), along, *half_width_m) > 0.0)
    })
}

/// Direction of the leaf at an angle.
fn along(leaf_rad: f64) -> Vec2 {
    let (sine, cosine) = sin_cos(leaf_rad);
    Vec2::new(cosine, sine)
}

fn edge(length_m: f64, along: Vec2) -> Point {
    (length_m * along).to_point()
}

/// Leaf angles of the grid with the leaf's direction at each.
fn directions(open_rad: f64) -> Vec<(f64, Vec2)> {
    let angles = (0..=INTERVALS).map(|index| open_rad * f64::from(index) / f64::from(INTERVALS));
    angles.map(|leaf_rad| (leaf_rad, along(leaf_rad))).collect()
}

/// Stretches of the swing with a property, known to an interval of the grid.
fn spans(turned: &[(f64, Vec2)], holds: impl Fn(Vec2) -> bool) -> Vec<AngleSpan> {
    let mut spans: Vec<AngleSpan> = Vec::new();
    let mut before = false;
    for &(leaf_rad, along) in turned {
        let now = holds(along);
        let angle = leaf_rad.to_degrees();
        match spans.last_mut().filter(|_| before && now) {
            Some(last) => last.to_deg = angle,
            None if now => spans.push(AngleSpan { from_deg: angle, to_deg: angle }),
            None => {}
        }
        before = now;
    }
    spans
}
