//! How far a segment is from a rectangle.

use crate::real::sqrt;

/// A rectangle along the axes: its least and greatest x, and y.
pub type Sides = [[f64; 2]; 2];

/// Separation of a segment and a rectangle, m: the distance where they are apart, minus the least shift that would part them where
/// they overlap.
///
/// Apart, the distance is reached at an end of the segment or a corner of the rectangle.
pub fn separation_m(rectangle: &Sides, from: (f64, f64), to: (f64, f64)) -> f64 {
    let gap = parting_m(rectangle, from, to);
    if gap <= 0.0 {
        return gap;
    }
    let [[x0, x1], [y0, y1]] = *rectangle;
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let length2 = dx * dx + dy * dy;
    let outside = |(x, y): (f64, f64)| {
        let (ox, oy) = ((x0 - x).max(x - x1).max(0.0), (y0 - y).max(y - y1).max(0.0));
        ox * ox + oy * oy
    };
    let corner = |x: f64, y: f64| {
        let share =
            if length2 > 0.0 { (((x - from.0) * dx + (y - from.1) * dy) / length2).clamp(0.0, 1.0) } else { 0.0 };
        let (ox, oy) = (x - from.0 - share * dx, y - from.1 - share * dy);
        ox * ox + oy * oy
    };
    let ends = outside(from).min(outside(to));
    sqrt(ends.min(corner(x0, y0)).min(corner(x0, y1)).min(corner(x1, y0)).min(corner(x1, y1)))
}

/// The widest gap along the separating axes, the rectangle's two and the segment's normal, m: the separation where they overlap, and no more
/// than it where they are apart.
fn parting_m(rectangle: &Sides, from: (f64, f64), to: (f64, f64)) -> f64 {
    let [[x0, x1], [y0, y1]] = *rectangle;
    let gap_x = (x0 - from.0.max(to.0)).max(from.0.min(to.0) - x1);
    let gap_y = (y0 - from.1.max(to.1)).max(from.1.min(to.1) - y1);
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let length2 = dx * dx + dy * dy;
    let mut gap = gap_x.max(gap_y);
    if length2 > 0.0 {
        let (cx, cy) = (0.5 * (x0 + x1) - from.0, 0.5 * (y0 + y1) - from.1);
        let (hx, hy) = (0.5 * (x1 - x0), 0.5 * (y1 - y0));
        let across = (dx * cy - dy * cx).abs() - (dy.abs() * hx + dx.abs() * hy);
        gap = gap.max(across / sqrt(length2));
    }
    gap
}

#[cfg(test)]
mod tests;
