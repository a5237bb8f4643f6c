//! What is marked out on the ground: the anchor holes with their numbers.

use kurbo::{Point, Vec2};
use pintle_core::plan::Model;

use super::Fit;
use crate::drawing::pen::{Dash, Ink, Pen};
use crate::drawing::place::{Places, around};
use crate::drawing::surface::Surface;

/// How far the lines of a hole's cross run from its centre, and its ring's radius, px.
const CROSS: f64 = 7.0;
const RING: f64 = 3.5;

/// Places of the holes in the core's frame, m, in the order of their numbers.
pub fn anchors(model: &Model) -> Vec<Point> {
    model.mark_out().anchors.iter().map(|mark| Point::new(mark.from_hinge_line_m, mark.from_axis_line_m)).collect()
}

/// The holes, each with its number.
pub fn draw(surface: &mut Surface<'_>, places: &mut Places, anchors: &[Point], fit: &Fit) {
    let centres: Vec<Point> = anchors.iter().map(|anchor| fit.at(*anchor)).collect();
    for (index, centre) in centres.iter().enumerate() {
        hole(surface, places, *centre);
        let number = (index + 1).to_string();
        let size = surface.text_box(&number);
        if let Some(area) = places.best(&around(*centre, size, CROSS)) {
            surface.text(&number, area, Ink::Cursor);
        }
    }
}

/// A hole: a ring under a cross.
pub fn hole(surface: &mut Surface<'_>, places: &mut Places, centre: Point) {
    surface.ring(centre, RING, Pen::thin(Ink::Cursor, Dash::Solid));
    for arm in [Vec2::new(CROSS, 0.0), Vec2::new(0.0, CROSS)] {
        let line = [centre - arm, centre + arm];
        surface.line(&line, Pen::thin(Ink::Cursor, Dash::Solid));
        places.avoid(&line, 2.0);
    }
}
