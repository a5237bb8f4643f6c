//! Hatching a closed shape with straight lines.

use kurbo::{Point, Vec2};

/// Pieces of lines `apart` px from each other inside a polygon, at an angle counter-clockwise from level on the surface, degrees. Inside is
/// where a way out crosses the outline an odd number of times; lines stand at multiples of their distance from the surface's corner, so that
/// they stay where they are when a shape moves.
pub fn hatched(polygon: &[Point], angle_deg: f64, apart: f64) -> Vec<[Point; 2]> {
    // Up is a negative y on the surface.
    let along = Vec2::from_angle(-angle_deg.to_radians());
    let across = Vec2::new(-along.y, along.x);
    let corners: Vec<(f64, f64)> =
        polygon.iter().map(|point| (point.to_vec2().dot(along), point.to_vec2().dot(across) / apart)).collect();
    let (low, high) = corners.iter().fold((f64::MAX, f64::MIN), |(low, high), (_, v)| (low.min(*v), high.max(*v)));
    let mut pieces = Vec::new();
    let mut level = low.ceil();
    while level <= high {
        let mut crossings: Vec<f64> = Vec::new();
        for (index, &(u, v)) in corners.iter().enumerate() {
            let (next_u, next_v) = corners[(index + 1) % corners.len()];
            if (v <= level) != (next_v <= level) {
                let at = u + (next_u - u) * (level - v) / (next_v - v);
                let place = crossings.partition_point(|other| *other < at);
                crossings.insert(place, at);
            }
        }
        let foot = (across * (level * apart)).to_point();
        pieces.extend(crossings.chunks_exact(2).map(|pair| [foot + along * pair[0], foot + along * pair[1]]));
        level += 1.0;
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Length of the hatching times its distance is the area, in any direction: of a ring sector here, by πr²·part.
    #[test]
    fn the_lines_fill_the_shape() {
        let arc = |radius: f64| {
            (0..=90).map(move |deg| Point::new(200.0, 150.0) + radius * Vec2::from_angle(f64::from(deg).to_radians()))
        };
        let sector: Vec<Point> = arc(120.0).chain(arc(40.0).collect::<Vec<_>>().into_iter().rev()).collect();
        let area = std::f64::consts::FRAC_PI_4 * (120.0f64.powi(2) - 40.0f64.powi(2));
        for angle in [0.0, 30.0, 45.0, 90.0, 135.0] {
            let pieces = hatched(&sector, angle, 0.5);
            let length: f64 = pieces.iter().map(|[from, to]| (*to - *from).hypot()).sum();
            assert!((length * 0.5 / area - 1.0).abs() < 0.01, "{angle}°: {} of {area}", length * 0.5);
            for [from, to] in pieces {
                let middle = from.midpoint(to) - Point::new(200.0, 150.0);
                assert!((39.0..=120.1).contains(&middle.hypot()), "{angle}°: a piece outside");
            }
        }
    }

    #[test]
    fn nothing_has_no_lines() {
        assert!(hatched(&[], 45.0, 6.0).is_empty());
        assert!(hatched(&[Point::new(3.0, 3.0)], 45.0, 6.0).is_empty());
    }
}
