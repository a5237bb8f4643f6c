//! The curve's lines, back to front; then its labels.

use kurbo::{Point, Rect};

use super::labels;
use super::limit_line::LimitLine;
use super::{Curve, Demand, Frame};
use crate::drawing::pen::{Dash, Ink, Pen};
use crate::drawing::place::{Places, beside};
use crate::drawing::surface::Surface;
use crate::drawing::view::View;
use pintle_core::units::{Quantity, symbol};

/// Held back opening, held back closing, at a stand: each line type is nowhere else on the curve.
const HELD: [Pen; 3] =
    [Pen::thick(Ink::Third, Dash::Dotted), Pen::thick(Ink::Third, Dash::Spaced), Pen::thin(Ink::Fourth, Dash::Spaced)];
/// Radius of the ring where the cursor meets a curve, px.
const RING: f64 = 3.5;

/// Draws the curve on an empty surface.
pub fn draw(surface: &mut Surface<'_>, curve: &Curve, frame: &Frame, view: &View) {
    frame.draw(surface, Some("°"));
    labels::titles(surface, frame, view, symbol(Quantity::Torque, view.system));
    let mut places = Places::new(frame.plot.inset(-1.0));
    let limits = limit_lines(surface, curve, frame);
    let held = held(surface, &mut places, curve, frame);
    for rows in curve.band.iter().flatten() {
        line(surface, frame, rows, |row| row.opening, Pen::thin(Ink::Opening, Dash::Solid));
        line(surface, frame, rows, |row| row.closing, Pen::thin(Ink::Closing, Dash::Dashed));
    }
    let opening = line(surface, frame, &curve.rows, |row| row.opening, Pen::thick(Ink::Opening, Dash::Solid));
    let closing = line(surface, frame, &curve.rows, |row| row.closing, Pen::thick(Ink::Closing, Dash::Dashed));
    for points in [&opening, &closing] {
        // A coarser line is in the way just as well.
        let coarse: Vec<_> = points.iter().copied().step_by(12).collect();
        places.avoid(&coarse, 2.0);
    }

    let (deciding_deg, deciding_torque) = curve.deciding;
    let deciding = frame.at(deciding_deg, deciding_torque);
    surface.line(&[frame.at(deciding_deg, 0.0), deciding], Pen::thin(Ink::Plain, Dash::Chain));
    let cursor_x = frame.at(curve.cursor.leaf_deg, 0.0).x;
    let cursor = [Point::new(cursor_x, frame.plot.y0 - 4.0), Point::new(cursor_x, frame.plot.y1)];
    surface.line(&cursor, Pen::thin(Ink::Cursor, Dash::Solid));
    let rings = [
        (frame.at(curve.cursor.leaf_deg, curve.cursor.opening), Ink::Opening),
        (frame.at(curve.cursor.leaf_deg, curve.cursor.closing), Ink::Closing),
    ];

    labels::limits(surface, &mut places, curve, frame, &limits, view);
    for limit in &limits {
        places.avoid(&[Point::new(frame.plot.x0, limit.y), Point::new(frame.plot.x1, limit.y)], 1.0);
    }
    places.take(around_ring(deciding));
    labels::deciding(surface, &mut places, curve, deciding, view);
    let names = [&view.labels.overrun_opening, &view.labels.overrun_closing, &view.labels.holding];
    for (points, index) in &held {
        beside(surface, &mut places, points, names[*index], HELD[*index].ink);
    }
    labels::series(surface, &mut places, [(&opening, Ink::Opening), (&closing, Ink::Closing)], view);
    // Only now, so that nothing else moves when the cursor does.
    rings.iter().for_each(|(at, _)| places.take(around_ring(*at)));
    labels::cursor(surface, &mut places, curve, frame, rings, view);

    for (at, ink) in rings {
        surface.ring(at, RING, Pen::thin(ink, Dash::Solid));
    }
    surface.dot(deciding, RING, Ink::Plain);
}

fn around_ring(at: Point) -> Rect {
    Rect::from_center_size(at, (2.5 * RING, 2.5 * RING))
}

/// What is held back and what holds at a stand, behind the demand; each line's points with its place in the list.
fn held(surface: &mut Surface<'_>, places: &mut Places, curve: &Curve, frame: &Frame) -> Vec<(Vec<Point>, usize)> {
    let mut lines = Vec::new();
    for (index, rows) in curve.held.iter().flatten().enumerate() {
        // Where nothing is held back there is no line.
        for piece in rows.split(|(_, torque)| *torque == 0.0).filter(|piece| piece.len() > 1) {
            let points: Vec<_> = piece.iter().map(|(leaf_deg, torque)| frame.at(*leaf_deg, *torque)).collect();
            surface.line(&points, HELD[index]);
            places.avoid(&points.iter().copied().step_by(12).collect::<Vec<_>>(), 1.0);
            lines.push((points, index));
        }
    }
    lines
}

/// One demand curve; its points on the surface.
fn line(surface: &mut Surface<'_>, frame: &Frame, rows: &[Demand], torque: fn(&Demand) -> f64, pen: Pen) -> Vec<Point> {
    let points: Vec<_> = rows.iter().map(|row| frame.at(row.leaf_deg, torque(row))).collect();
    surface.line(&points, pen);
    points
}

/// Rated and peak torque on the sides where the axis reaches them.
fn limit_lines(surface: &mut Surface<'_>, curve: &Curve, frame: &Frame) -> Vec<LimitLine> {
    let rated = frame.shows.0.then_some((curve.rated, true));
    let peak = curve.peak.filter(|_| frame.shows.1).map(|torque| (torque, false));
    let mut lines = Vec::new();
    for (torque, rated) in [rated, peak].into_iter().flatten() {
        for sign in [1.0, -1.0] {
            let y = frame.at(0.0, sign * torque).y;
            if (frame.plot.y0..=frame.plot.y1).contains(&y) {
                let pen =
                    if rated { Pen::thick(Ink::Limit, Dash::Chain) } else { Pen::thin(Ink::Limit, Dash::DoubleChain) };
                surface.line(&[Point::new(frame.plot.x0, y), Point::new(frame.plot.x1, y)], pen);
                lines.push(LimitLine { y, torque, rated });
            }
        }
    }
    lines
}
