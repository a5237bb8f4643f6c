//! Scale and place of the map on the surface: one scale for both axes, the shaft's area as large as it goes, the hinge in sight.

use kurbo::{Affine, Insets, Point, Rect, Size};

/// Side of an area that is a line or a point, m: enough to be seen.
const LEAST_M: f64 = 0.02;

/// Scale and place.
#[derive(Clone, Copy, Debug)]
pub(super) struct Fit {
    /// From metres in the core's frame to px.
    pub to_surface: Affine,
    /// The shaft's area on the surface.
    pub area: Rect,
    /// What is left for the plan.
    pub frame: Rect,
    /// Where the legend starts.
    pub legend_top: f64,
}

impl Fit {
    /// Of the shaft's area, m, in the core's frame.
    pub fn new(shaft: Rect, mirrored: bool, size: Size, text_size: f64, legend_rows: usize) -> Fit {
        let legend = super::legend::height(legend_rows, text_size).min(0.5 * size.height);
        let frame = Rect::new(0.0, 0.0, size.width, size.height - legend);
        let inner = frame - Insets::new(1.2 * text_size, 2.0 * text_size, 1.2 * text_size, 2.6 * text_size);
        let wide = |least: f64, most: f64| (LEAST_M - (most - least)).max(0.0) / 2.0;
        let seen = shaft.inflate(wide(shaft.x0, shaft.x1), wide(shaft.y0, shaft.y1));
        let bounds = seen.union_pt(Point::ZERO);
        let scale = (inner.width() / bounds.width()).min(inner.height() / bounds.height()).max(1e-6);
        let across = if mirrored { -scale } else { scale };
        let to_surface = Affine::translate(inner.center().to_vec2())
            * Affine::new([across, 0.0, 0.0, -scale, 0.0, 0.0])
            * Affine::translate(-bounds.center().to_vec2());
        let area =
            Rect::from_points(to_surface * Point::new(seen.x0, seen.y0), to_surface * Point::new(seen.x1, seen.y1));
        Fit { to_surface, area, frame, legend_top: frame.y1 }
    }

    /// A point of the core's frame on the surface.
    pub fn at(&self, point: Point) -> Point {
        self.to_surface * point
    }
}
