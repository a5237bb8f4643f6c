//! Where a person can be caught, what stands around, and the ground the elbow sweeps.

use kurbo::{Point, Rect, Vec2};
use pintle_core::terms::Direction;
use pintle_core::units::{Quantity, show};

use super::Fit;
use super::around::Around;
use crate::drawing::hatching::hatched;
use crate::drawing::pen::{Dash, Ink, Pen};
use crate::drawing::place::{Places, around};
use crate::drawing::surface::{Surface, arc, corners};
use crate::drawing::view::View;

/// Least and greatest radius on the surface of a zone's mark, px; in plan it is as wide as the gap that would have to stay free.
const RADII: (f64, f64) = (11.0, 30.0);
/// A leaf this near to a zone's worst angle stands there, degrees.
const THERE_DEG: f64 = 0.05;
/// Distances of hatching lines: of a zone, of what stands around, of the swept ground, px.
const APART: [f64; 3] = [5.0, 7.0, 14.0];

/// Swept ground: behind everything else.
pub fn ground(surface: &mut Surface<'_>, around: &Around, fit: &Fit) {
    let swept: Vec<Point> = around.sweep.iter().map(|point| fit.at(*point)).collect();
    shape(surface, &swept, &[45.0], APART[2], Pen::thin(Ink::Faint, Dash::Dashed));
}

/// What stands around, as far as it is on the surface.
pub fn solid(surface: &mut Surface<'_>, standing: &[Rect], fit: &Fit) {
    let frame = surface.frame();
    for rectangle in standing {
        let (from, to) = (Point::new(rectangle.x0, rectangle.y0), Point::new(rectangle.x1, rectangle.y1));
        let seen = Rect::from_points(fit.at(from), fit.at(to)).intersect(frame);
        if seen.area() > 0.0 {
            shape(surface, &corners(seen), &[45.0], APART[1], Pen::thin(Ink::Plain, Dash::Solid));
        }
    }
}

/// The operator's body, which crank and link pass over.
pub fn body(surface: &mut Surface<'_>, corners: &[Point], fit: &Fit) {
    let [first, .., _] = corners else { return };
    let outline: Vec<Point> = corners.iter().chain([first]).map(|corner| fit.at(*corner)).collect();
    surface.line(&outline, Pen::thin(Ink::Plain, Dash::Solid));
}

/// Zones at their worst angles: hatched where they catch, each with its number in the list and that angle; that of the leaf's own angle
/// ringed with a thick line.
pub fn marks(
    surface: &mut Surface<'_>,
    places: &mut Places,
    surroundings: &Around,
    fit: &Fit,
    leaf_deg: f64,
    view: &View,
) {
    let mut named = Vec::new();
    for (index, zone) in surroundings.zones.iter().enumerate() {
        let at = fit.at(Point::new(zone.x_m, zone.y_m));
        let radius = (0.5 * zone.free_gap_m * fit.scale).clamp(RADII.0, RADII.1);
        let catches = |direction| zone.directions.contains(&direction);
        // The way of the hatching tells the movement without colour as well.
        let (ink, angles): (Ink, &[f64]) = match (catches(Direction::Open), catches(Direction::Close)) {
            (true, false) => (Ink::Opening, &[45.0]),
            (false, true) => (Ink::Closing, &[135.0]),
            _ => (Ink::Plain, &[45.0, 135.0]),
        };
        let there = (zone.leaf_deg - leaf_deg).abs() < THERE_DEG;
        let outline = arc(at, radius, 0.0, std::f64::consts::TAU);
        let pen = match (zone.present, there) {
            (false, _) => Pen::thin(Ink::Faint, Dash::Dashed),
            (true, true) => Pen::thick(ink, Dash::Solid),
            (true, false) => Pen::thin(ink, Dash::Solid),
        };
        if zone.present {
            for angle in angles {
                for piece in hatched(&outline, *angle, APART[0]) {
                    surface.line(&piece, Pen::thin(ink, Dash::Solid));
                }
            }
        }
        surface.line(&outline, pen);
        let text = [&(index + 1).to_string(), ": ", &show(zone.leaf_deg, Quantity::Angle, view.system)].concat();
        named.push((text, at, radius, ink));
    }
    // After all of the marks, or one would cover another's number.
    for (text, at, radius, ink) in &named {
        let size = surface.text_box(text);
        let beside = Vec2::new(radius / 2.0, 0.0);
        let mut boxes = around(*at, size, radius + 3.0);
        boxes.extend(around(*at + beside, size, 3.0));
        if let Some(area) = places.best(&boxes) {
            surface.text(text, area, *ink);
        }
    }
    // Names keep off the marks.
    named.iter().for_each(|(_, at, radius, _)| places.take(Rect::from_center_size(*at, (1.5 * radius, 1.5 * radius))));
}

/// A closed shape, outlined and hatched in one pen's ink.
fn shape(surface: &mut Surface<'_>, outline: &[Point], angles: &[f64], apart: f64, pen: Pen) {
    for angle in angles {
        for piece in hatched(outline, *angle, apart) {
            surface.line(&piece, Pen::thin(pen.ink, Dash::Solid));
        }
    }
    let closed: Vec<Point> = outline.iter().chain(outline.first()).copied().collect();
    surface.line(&closed, pen);
}
