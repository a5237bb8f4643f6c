//! Where a person can be caught, what stands around, and the ground the elbow sweeps.

use kurbo::{Point, Rect, Size, Vec2};
use pintle_core::units::{Quantity, show};
use pintle_core::{Direction, KeepOut, Model, Plan, Zone};

use super::Fit;
use crate::drawing::hatching::hatched;
use crate::drawing::pen::{Dash, Ink, Pen};
use crate::drawing::place::{Places, around};
use crate::drawing::sheet::{Sheet, arc, corners};
use crate::drawing::view::View;

/// Least and greatest radius on the sheet of a zone's mark, px; in plan it is as wide as the gap that would have to stay free.
const RADII: (f64, f64) = (11.0, 30.0);
/// A leaf this near to a zone's worst angle stands there, degrees.
const THERE_DEG: f64 = 0.05;
/// Distances of hatching lines: of a zone, of what stands around, of the swept ground, px.
const APART: [f64; 3] = [5.0, 7.0, 14.0];

/// What surrounds the leaf, in the core's frame.
#[derive(Clone, Debug)]
pub struct Around {
    zones: Vec<Zone>,
    /// Outline of what the elbow sweeps, m.
    sweep: Vec<Point>,
}

/// Post and obstacles, m: everything that checks look at stands on the sheet.
pub fn standing(model: &Model) -> Vec<Rect> {
    let job = model.job();
    let places = job.obstacles().into_iter().map(|obstacle| obstacle.place);
    let rectangle = |KeepOut { x_m: [x0, x1], y_m: [y0, y1] }| Rect::new(x0, y0, x1, y1);
    job.hinge_post().copied().into_iter().chain(places).map(rectangle).collect()
}

impl Around {
    /// Reads it off a solved job.
    pub fn new(model: &Model, plan: &Plan) -> Around {
        Around {
            zones: plan.entrapment.as_ref().map_or_else(Vec::new, |entrapment| entrapment.zones.clone()),
            sweep: model.swept().outline.into_iter().map(|[x, y]| Point::new(x, y)).collect(),
        }
    }

    /// The ground that is swept, m.
    pub fn bounds(&self) -> Rect {
        self.sweep.iter().fold(Rect::ZERO, |bounds, point| bounds.union_pt(*point))
    }
}

/// What of things that stand around is to be on the sheet beside what moves: all within a reach of the hinge, m.
pub fn near(standing: &[Rect], reach_m: f64) -> Rect {
    let near = Rect::from_center_size(Point::ZERO, Size::new(2.0 * reach_m, 2.0 * reach_m));
    let seen = standing.iter().map(|rectangle| rectangle.intersect(near)).filter(|seen| seen.area() > 0.0);
    seen.fold(Rect::ZERO, |bounds, rectangle| bounds.union(rectangle))
}

/// Swept ground: behind everything else.
pub fn ground(sheet: &mut Sheet<'_>, around: &Around, fit: &Fit) {
    let swept: Vec<Point> = around.sweep.iter().map(|point| fit.at(*point)).collect();
    shape(sheet, &swept, &[45.0], APART[2], Pen::thin(Ink::Faint, Dash::Dashed));
}

/// What stands around, as far as it is on the sheet.
pub fn solid(sheet: &mut Sheet<'_>, standing: &[Rect], fit: &Fit) {
    let frame = sheet.frame();
    for rectangle in standing {
        let (from, to) = (Point::new(rectangle.x0, rectangle.y0), Point::new(rectangle.x1, rectangle.y1));
        let seen = Rect::from_points(fit.at(from), fit.at(to)).intersect(frame);
        if seen.area() > 0.0 {
            shape(sheet, &corners(seen), &[45.0], APART[1], Pen::thin(Ink::Plain, Dash::Solid));
        }
    }
}

/// Zones at their worst angles: hatched where they catch, each with its number in the list and that angle; that of the leaf's own angle
/// ringed with a thick line.
pub fn marks(sheet: &mut Sheet<'_>, places: &mut Places, surroundings: &Around, fit: &Fit, leaf_deg: f64, view: &View) {
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
                    sheet.line(&piece, Pen::thin(ink, Dash::Solid));
                }
            }
        }
        sheet.line(&outline, pen);
        let text = [&(index + 1).to_string(), ": ", &show(zone.leaf_deg, Quantity::Angle, view.system)].concat();
        named.push((text, at, radius, ink));
    }
    // After all of the marks, or one would cover another's number.
    for (text, at, radius, ink) in &named {
        let size = sheet.text_box(text);
        let beside = Vec2::new(radius / 2.0, 0.0);
        let mut boxes = around(*at, size, radius + 3.0);
        boxes.extend(around(*at + beside, size, 3.0));
        if let Some(area) = places.best(&boxes) {
            sheet.text(text, area, *ink);
        }
    }
    // Names keep off the marks.
    named.iter().for_each(|(_, at, radius, _)| places.take(Rect::from_center_size(*at, (1.5 * radius, 1.5 * radius))));
}

/// A closed shape, outlined and hatched in one pen's ink.
fn shape(sheet: &mut Sheet<'_>, outline: &[Point], angles: &[f64], apart: f64, pen: Pen) {
    for angle in angles {
        for piece in hatched(outline, *angle, apart) {
            sheet.line(&piece, Pen::thin(pen.ink, Dash::Solid));
        }
    }
    let closed: Vec<Point> = outline.iter().chain(outline.first()).copied().collect();
    sheet.line(&closed, pen);
}
