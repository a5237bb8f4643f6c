//! What of a part of the arm at one leaf angle decides how near it is to a rectangle, worked out once for all rectangles.

use crate::numerics::Sides;
use crate::real::sqrt;

/// A part of the arm at a station as rectangles see it: its box, its unit normal, and where along that it lies.
///
/// Every arm is asked about every rectangle at many stations, so what does not depend on the rectangle is worked out once, root and division with it.
#[derive(Clone, Copy)]
pub(super) struct PartBox {
    x_m: [f64; 2],
    y_m: [f64; 2],
    normal: (f64, f64),
    off_m: f64,
}

impl PartBox {
    pub const NONE: PartBox =
        PartBox { x_m: [f64::MAX, f64::MIN], y_m: [f64::MAX, f64::MIN], normal: (1.0, 0.0), off_m: 0.0 };

    pub fn new(from: (f64, f64), to: (f64, f64)) -> PartBox {
        let (dx, dy) = (to.0 - from.0, to.1 - from.1);
        let length = sqrt(dx * dx + dy * dy);
        // To a point every axis is a normal.
        let normal = if length > 0.0 { (-dy / length, dx / length) } else { (1.0, 0.0) };
        PartBox {
            x_m: [from.0.min(to.0), from.0.max(to.0)],
            y_m: [from.1.min(to.1), from.1.max(to.1)],
            normal,
            off_m: normal.0 * from.0 + normal.1 * from.1,
        }
    }

    /// The box around both.
    pub fn with(&self, other: &PartBox) -> PartBox {
        let around = |[a, b]: [f64; 2], [c, d]: [f64; 2]| [a.min(c), b.max(d)];
        PartBox { x_m: around(self.x_m, other.x_m), y_m: around(self.y_m, other.y_m), ..*self }
    }

    /// The gap between its box and a rectangle, m: no more than that between the part and the rectangle.
    pub fn box_gap_m(&self, rectangle: &Sides) -> f64 {
        let along = |[least, most]: [f64; 2], [from, to]: [f64; 2]| (from - most).max(least - to);
        let [x_m, y_m] = *rectangle;
        along(self.x_m, x_m).max(along(self.y_m, y_m))
    }

    /// The widest gap along the separating axes, m, as [`separation_m`] has it.
    pub fn parting_m(&self, rectangle: &Sides) -> f64 {
        let [[x0, x1], [y0, y1]] = *rectangle;
        let (nx, ny) = self.normal;
        let across = (0.5 * (nx * (x0 + x1) + ny * (y0 + y1)) - self.off_m).abs();
        self.box_gap_m(rectangle).max(across - 0.5 * (nx.abs() * (x1 - x0) + ny.abs() * (y1 - y0)))
    }
}
