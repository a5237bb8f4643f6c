//! Hatching: each limit's ink, directions and line type.

use kurbo::{Point, Rect, Vec2};

use crate::drawing::pen::{Dash, Ink, Pen};

/// How a limit's places are hatched.
pub(super) struct Hatch {
    pub pen: Pen,
    /// Directions, degrees counter-clockwise from level on the surface.
    angles: &'static [f64],
    /// Distance of the lines, px.
    apart: f64,
}

const fn hatch(ink: Ink, dash: Dash, angles: &'static [f64], apart: f64) -> Hatch {
    Hatch { pen: Pen::thin(ink, dash), angles, apart }
}

/// By code, from 1; those of one ink differ in direction and line type.
const HATCHES: [Hatch; 14] = [
    hatch(Ink::Closing, Dash::Solid, &[135.0], 6.0),
    hatch(Ink::Opening, Dash::Solid, &[45.0], 6.0),
    hatch(Ink::Third, Dash::Solid, &[90.0], 6.0),
    hatch(Ink::Fourth, Dash::Solid, &[0.0], 6.0),
    hatch(Ink::Opening, Dash::Dashed, &[135.0], 7.0),
    hatch(Ink::Closing, Dash::Dashed, &[45.0], 7.0),
    hatch(Ink::Third, Dash::Dashed, &[0.0], 7.0),
    hatch(Ink::Plain, Dash::Solid, &[45.0, 135.0], 8.0),
    hatch(Ink::Faint, Dash::Dashed, &[90.0], 5.0),
    hatch(Ink::Fourth, Dash::Dashed, &[90.0], 7.0),
    hatch(Ink::Plain, Dash::Dashed, &[90.0], 9.0),
    hatch(Ink::Third, Dash::Dashed, &[45.0, 135.0], 9.0),
    hatch(Ink::Fourth, Dash::Dashed, &[45.0, 135.0], 9.0),
    hatch(Ink::Plain, Dash::Dashed, &[0.0, 90.0], 9.0),
];

/// The hatching of a limit's code; what no other has serves those that a map of places does not give.
pub(super) fn hatch_of(code: u8) -> &'static Hatch {
    const OTHER: Hatch = hatch(Ink::Faint, Dash::Solid, &[0.0, 90.0], 8.0);
    HATCHES.get(usize::from(code).wrapping_sub(1)).unwrap_or(&OTHER)
}

impl Hatch {
    /// The pieces of the hatching inside an area where `within` holds; looked at every `step` px.
    pub fn pieces(&self, area: Rect, step: f64, within: impl Fn(Point) -> bool) -> Vec<[Point; 2]> {
        let mut pieces = Vec::new();
        let (middle, reach) = (area.center(), 0.5 * area.size().to_vec2().hypot());
        for &angle in self.angles {
            // Up is a negative y on the surface.
            let along = Vec2::from_angle(-f64::to_radians(angle));
            let across = Vec2::new(-along.y, along.x);
            let lines = (reach / self.apart).floor() as i32;
            for line in -lines..=lines {
                let foot = middle + across * (f64::from(line) * self.apart);
                let steps = (reach / step).ceil() as i32;
                let mut start: Option<Point> = None;
                let mut last = foot;
                for place in -steps..=steps {
                    let at = foot + along * (f64::from(place) * step);
                    if area.contains(at) && within(at) {
                        start = start.or(Some(at));
                        last = at;
                    } else if let Some(from) = start.take() {
                        pieces.push([from, last]);
                    }
                }
                pieces.extend(start.map(|from| [from, last]));
            }
        }
        pieces
    }
}
