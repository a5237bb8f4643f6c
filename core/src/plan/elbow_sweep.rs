//! The ground the crank and its elbow sweep: a sector, widened all round by half the arm's width.

use super::Model;
use crate::real::{cos, sin};
use alloc::vec::Vec;
use core::f64::consts::{FRAC_PI_2, PI, TAU};
use kurbo::{Point, Vec2};
use serde::Serialize;

/// Points of an arc per quarter turn in the outline.
const ARC_POINTS: f64 = 18.0;

/// The area to keep clear of people and things while the leaf moves.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct ElbowSweep {
    /// Area, m².
    pub area_m2: f64,
    /// Its outline in the frame, m, counter-clockwise, not closed; arcs are drawn round by chords of five degrees at most.
    pub outline: Vec<[f64; 2]>,
}

impl Model {
    /// What crank and elbow sweep, as wide as the job's arm; the line of its middle where the job says nothing of that.
    #[must_use]
    pub fn swept(&self) -> ElbowSweep {
        self.elbow_sweep(self.job().arm_half_width())
    }

    /// What the crank sweeps from closed to open.
    ///
    /// A sector of radius `a` and angle `φ` widened by `w` has the area `½a²φ + w·a·(2 + φ) + π·w²` while it is convex (Steiner). Beyond half a
    /// turn the widened sides overlap in the gap `γ = 2π − φ` that is left, by `w²/tan(γ/2)`; where they close it, it is a disc.
    pub(super) fn elbow_sweep(&self, half_width_m: f64) -> ElbowSweep {
        let linkage = self.linkage();
        let [closed, open] = [0.0, linkage.open_rad].map(|leaf_rad| linkage.pose(leaf_rad));
        let turned = open.crank_rad;
        let crank = closed.elbow - linkage.shaft;
        let from = crate::real::atan2(crank.y, crank.x).min(crate::real::atan2(crank.y, crank.x) + turned);
        sector(linkage.shaft, linkage.crank_m, (from, turned.abs()), half_width_m)
    }
}

/// A sector from a direction on, counter-clockwise through an angle, widened all round.
fn sector(centre: Point, radius: f64, (from, angle): (f64, f64), wide: f64) -> ElbowSweep {
    let gap = TAU - angle;
    let meet = wide / libm::tan(0.5 * gap.clamp(0.0, PI));
    if angle >= TAU || (angle > PI && meet >= radius) {
        let outer = radius + wide;
        return ElbowSweep { area_m2: PI * outer * outer, outline: arc(centre, outer, 0.0, TAU) };
    }
    let to = from + angle;
    let mut outline = arc(centre, radius + wide, from, to);
    let ends = |direction: f64| centre + radius * Vec2::new(cos(direction), sin(direction));
    outline.extend(arc(ends(to), wide, to, to + FRAC_PI_2));
    // ½(a+w)²φ, a strip and a quarter disc along either side, and at the shaft a wedge, or less what the strips share.
    let strips = 2.0 * radius * wide + 0.5 * PI * wide * wide;
    let corner = if angle <= PI {
        outline.extend(arc(centre, wide, to + FRAC_PI_2, from + 1.5 * PI));
        0.5 * wide * wide * (PI - angle)
    } else {
        let middle = to + 0.5 * gap;
        let reach = wide / sin(0.5 * gap);
        let notch = centre + reach * Vec2::new(cos(middle), sin(middle));
        outline.push([notch.x, notch.y]);
        -wide * meet
    };
    outline.extend(arc(ends(from), wide, from - FRAC_PI_2, from));
    let outer = radius + wide;
    ElbowSweep { area_m2: 0.5 * outer * outer * angle + strips + corner, outline }
}

fn arc(centre: Point, radius: f64, from: f64, to: f64) -> Vec<[f64; 2]> {
    let count = libm::ceil((to - from) / FRAC_PI_2 * ARC_POINTS).max(1.0) as u32;
    let point = |index: u32| {
        let direction = from + (to - from) * f64::from(index) / f64::from(count);
        let place = centre + radius * Vec2::new(cos(direction), sin(direction));
        [place.x, place.y]
    };
    (0..=count).map(point).collect()
}
