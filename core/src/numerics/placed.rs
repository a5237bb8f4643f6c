//! Rectangles that are turned, seen from rectangles that are not.

use super::Sides;
use crate::real::sqrt;

/// A rectangle with its own axes somewhere in the plane.
#[derive(Clone, Copy, Debug)]
pub struct PlacedRectangle {
    /// Its sides along its own axes.
    pub sides: Sides,
    /// Where the origin of those lies.
    pub origin: (f64, f64),
    /// Cosine and sine of the angle they are turned by.
    pub turn: (f64, f64),
}

impl PlacedRectangle {
    /// A rectangle that has turned about the plane's origin; of the angle, cosine and sine.
    pub const fn about_origin(sides: Sides, turn: (f64, f64)) -> PlacedRectangle {
        PlacedRectangle { sides, origin: (0.0, 0.0), turn }
    }

    /// Its corners, counter-clockwise.
    pub fn corners(&self) -> [(f64, f64); 4] {
        let ((cosine, sine), (x, y)) = (self.turn, self.origin);
        corners(&self.sides).map(|(u, v)| (x + u * cosine - v * sine, y + u * sine + v * cosine))
    }

    /// A point of the plane in its axes.
    fn inward(&self, (x, y): (f64, f64)) -> (f64, f64) {
        let ((cosine, sine), (dx, dy)) = (self.turn, (x - self.origin.0, y - self.origin.1));
        (dx * cosine + dy * sine, dy * cosine - dx * sine)
    }

    /// The same as another placed rectangle sees it in its axes.
    pub fn seen_from(&self, other: &PlacedRectangle) -> PlacedRectangle {
        let ((c, s), (oc, os)) = (self.turn, other.turn);
        PlacedRectangle { origin: other.inward(self.origin), turn: (c * oc + s * os, s * oc - c * os), ..*self }
    }

    /// Separation from a rectangle along the plane's axes, negative by the least shift that would part them.
    ///
    /// Four axes decide whether they overlap and by how much; apart, the distance is reached between a corner of one and a side of the other.
    pub fn separation_m(&self, rectangle: &Sides) -> f64 {
        let theirs = corners(rectangle).map(|corner| self.inward(corner));
        let ours = self.corners();
        let apart = beyond(&theirs, &self.sides).max(beyond(&ours, rectangle));
        if apart <= 0.0 {
            return apart;
        }
        let to_sides = |corners: &[(f64, f64); 4], [along, across]: &Sides| {
            let outside = |&(x, y): &(f64, f64)| {
                let over = |[least, most]: &[f64; 2], value: f64| (least - value).max(value - most).max(0.0);
                let (x, y) = (over(along, x), over(across, y));
                sqrt(x * x + y * y)
            };
            corners.iter().map(outside).fold(f64::MAX, f64::min)
        };
        to_sides(&theirs, &self.sides).min(to_sides(&ours, rectangle))
    }
}

/// Distance of a rectangle's furthest corner from the origin: what it sweeps as it turns about it.
pub fn furthest_corner(sides: &Sides) -> f64 {
    corners(sides).iter().fold(0.0, |most: f64, (x, y)| most.max(sqrt(x * x + y * y)))
}

/// Corners of a rectangle along the axes, counter-clockwise.
pub fn corners([[x0, x1], [y0, y1]]: &Sides) -> [(f64, f64); 4] {
    [(*x0, *y0), (*x1, *y0), (*x1, *y1), (*x0, *y1)]
}

/// Least and greatest of four values.
pub fn ends_of(values: [f64; 4]) -> (f64, f64) {
    values.iter().fold((f64::MAX, f64::MIN), |(least, most), &value| (least.min(value), most.max(value)))
}

/// How far four corners lie beyond a rectangle along its own axes, m; negative by the overlap.
fn beyond(places: &[(f64, f64); 4], [along, across]: &Sides) -> f64 {
    let over = |[least, most]: &[f64; 2], values: [f64; 4]| {
        let (from, to) = ends_of(values);
        (from - most).max(least - to)
    };
    over(along, places.map(|place| place.0)).max(over(across, places.map(|place| place.1)))
}
