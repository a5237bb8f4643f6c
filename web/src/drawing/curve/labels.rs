//! What is written on the curve, in the order of its importance: what comes later makes room.

use kurbo::{Point, Rect, Size};
use pintle_core::units::{Quantity, show};

use super::limit_line::LimitLine;
use super::{Curve, Frame};
use crate::drawing::pen::Ink;
use crate::drawing::place::{Places, around, beside, centred};
use crate::drawing::surface::Surface;
use crate::drawing::view::View;

/// Titles of both axes, with the torque's unit. Degrees stand beside every tick.
pub fn titles(surface: &mut Surface<'_>, frame: &Frame, view: &View, torque_unit: &str) {
    let torque = format!("{}, {torque_unit}", view.labels.shaft_torque);
    let size = surface.text_box(&torque);
    surface.text(&torque, Rect::from_origin_size((2.0, 1.0), size), Ink::Plain);
    let angle = &view.labels.leaf_angle;
    let size = surface.text_box(angle);
    let area = Rect::from_origin_size((frame.plot.x1 - size.width, surface.size.height - size.height - 1.0), size);
    surface.text(angle, area, Ink::Plain);
}

/// Name and value of each limit, on its line; a limit beyond the axis is named at the upper edge with an arrow.
pub fn limits(
    surface: &mut Surface<'_>,
    places: &mut Places,
    curve: &Curve,
    frame: &Frame,
    lines: &[LimitLine],
    view: &View,
) {
    let text_of = |rated: bool, torque: f64| {
        let name = if rated { &view.labels.rated } else { &view.labels.peak };
        format!("{name} {}", show(torque, Quantity::Torque, view.system))
    };
    let zero = frame.at(0.0, 0.0).y;
    for line in lines {
        // Lines of both signs too close for two names share the upper one's.
        let lower = line.y > zero;
        if lower && 2.0 * (line.y - zero) < 1.3 * surface.text_size && frame.at(0.0, line.torque).y >= frame.plot.y0 {
            continue;
        }
        let text = text_of(line.rated, line.torque);
        let size = surface.text_box(&text);
        // On the line, else just above or below it.
        let mut boxes = Vec::new();
        for off in [0.0, -0.9, 0.9] {
            along(&mut boxes, frame.plot, size, line.y + off * size.height);
        }
        if let Some(area) = places.best(&boxes) {
            surface.text(&text, area, Ink::Limit);
        }
    }
    let beyond =
        [(!frame.shows.0).then_some((true, curve.rated)), curve.peak.filter(|_| !frame.shows.1).map(|t| (false, t))];
    for (rated, torque) in beyond.into_iter().flatten() {
        let text = format!("{} \u{2191}", text_of(rated, torque));
        let size = surface.text_box(&text);
        let mut boxes = Vec::new();
        for row in [0.6, 1.6, 2.6, 3.6] {
            along(&mut boxes, frame.plot, size, frame.plot.y0 + row * size.height);
        }
        if let Some(area) = places.best(&boxes) {
            surface.text(&text, area, Ink::Limit);
        }
    }
}

/// Boxes on a level line, from the right to the left.
fn along(boxes: &mut Vec<Rect>, plot: Rect, size: Size, y: f64) {
    let room = (plot.width() - size.width - 16.0).max(0.0);
    let right = plot.x1 - 8.0 - size.width / 2.0;
    boxes.extend((0..=8).map(|step| centred(Point::new(right - room * f64::from(step) / 8.0, y), size)));
}

/// The deciding angle and the torque there.
pub fn deciding(surface: &mut Surface<'_>, places: &mut Places, curve: &Curve, at: Point, view: &View) {
    let (leaf_deg, torque) = curve.deciding;
    let angle = show(leaf_deg, Quantity::Angle, view.system);
    let text = format!("{}, {angle}", show(torque, Quantity::Torque, view.system));
    let size = surface.text_box(&text);
    if let Some(area) = places.best(&around(at, size, 9.0)) {
        surface.text(&text, area, Ink::Plain);
    }
}

/// The name of each curve beside it.
pub fn series(surface: &mut Surface<'_>, places: &mut Places, curves: [(&[Point], Ink); 2], view: &View) {
    for (points, ink) in curves {
        let text = if ink == Ink::Opening { &view.labels.opening } else { &view.labels.closing };
        beside(surface, places, points, text, ink);
    }
}

/// The cursor's angle above the plot, and the torques beside the rings.
pub fn cursor(
    surface: &mut Surface<'_>,
    places: &mut Places,
    curve: &Curve,
    frame: &Frame,
    rings: [(Point, Ink); 2],
    view: &View,
) {
    let text = show(curve.cursor.leaf_deg, Quantity::Angle, view.system);
    let size = surface.text_box(&text);
    let centre = rings[0].0.x.min(frame.plot.x1 - size.width / 2.0).max(frame.plot.x0 + size.width / 2.0);
    surface.text(&text, centred(Point::new(centre, frame.plot.y0 - 4.0 - size.height / 2.0), size), Ink::Cursor);
    for ((at, ink), torque) in rings.into_iter().zip([curve.cursor.opening, curve.cursor.closing]) {
        let text = show(torque, Quantity::Torque, view.system);
        let size = surface.text_box(&text);
        if let Some(area) = places.best(&around(at, size, 10.0)) {
            surface.text(&text, area, ink);
        }
    }
}
