//! Leaf and arm at the leaf angles where zones are looked for, and where the leaf is nearest there to what stands around.

use crate::arm::{Leverage, Linkage};
use crate::numerics::{PlacedRectangle, Sides};
use crate::real::{cos, length, sin};
use alloc::vec::Vec;
use kurbo::{Point, Vec2};

/// Leaf angles looked at.
pub(super) const INTERVALS: u32 = 360;

/// Leaf and arm at one leaf angle, worked out once for everything that is near them.
pub(super) struct Stance {
    pub lever: Leverage,
    /// Unit vector along the leaf.
    pub along: Vec2,
    pub length_m: f64,
    /// The latch edge.
    pub end: Point,
}

impl Stance {
    /// The whole swing on the grid's angles.
    pub fn over_swing(linkage: &Linkage, length_m: f64) -> Vec<Stance> {
        let step = linkage.open_rad / f64::from(INTERVALS);
        let angles =
            (0..=INTERVALS).map(|index| if index == INTERVALS { linkage.open_rad } else { step * f64::from(index) });
        let stance = |leaf_rad| {
            let along = Vec2::new(cos(leaf_rad), sin(leaf_rad));
            let end = Point::new(length_m * along.x, length_m * along.y);
            Stance { lever: linkage.leverage(leaf_rad), along, length_m, end }
        };
        angles.map(stance).collect()
    }

    /// The point of the leaf's line nearest to a point.
    pub fn nearest_on_leaf(&self, point: Point) -> Point {
        (self.along * point.to_vec2().dot(self.along).clamp(0.0, self.length_m)).to_point()
    }

    /// The leaf's body as it stands, from its sides in its own axes.
    pub fn leaf(&self, sides: &Sides) -> PlacedRectangle {
        PlacedRectangle::about_origin(*sides, (self.along.x, self.along.y))
    }

    /// The place on the leaf's line nearest to a rectangle; where they meet, where the line enters it.
    ///
    /// Two convex shapes that do not meet are nearest at a corner of one of them: four corners against the line, two ends against the rectangle.
    pub fn nearest_to_rectangle(&self, rectangle: &Sides) -> Point {
        let [[x0, x1], [y0, y1]] = *rectangle;
        let end = self.end;
        // Liang and Barsky's clipping: the part of the line inside all four sides.
        let (mut enters, mut leaves) = (0.0f64, 1.0f64);
        for (direction, least, most) in [(end.x, x0, x1), (end.y, y0, y1)] {
            // The line begins at the hinge, in the origin.
            if direction == 0.0 {
                if least > 0.0 || most < 0.0 {
                    leaves = -1.0;
                }
            } else {
                let (first, second) = (least / direction, most / direction);
                enters = enters.max(first.min(second));
                leaves = leaves.min(first.max(second));
            }
        }
        if enters <= leaves {
            return (end.to_vec2() * enters).to_point();
        }
        let corners = [(x0, y0), (x0, y1), (x1, y0), (x1, y1)].map(|(x, y)| {
            let (corner, nearest) = (Point::new(x, y), self.nearest_on_leaf(Point::new(x, y)));
            (length(corner - nearest), nearest)
        });
        let ends = [Point::ORIGIN, end].map(|point| {
            let within = Point::new(point.x.clamp(x0, x1), point.y.clamp(y0, y1));
            (length(point - within), point)
        });
        corners.into_iter().chain(ends).fold((f64::MAX, end), |least, gap| if gap.0 < least.0 { gap } else { least }).1
    }
}
