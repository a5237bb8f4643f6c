//! The curve's lines, back to front; then its labels.

use kurbo::{Point, Rect};

use super::labels;
use super::{Curve, Demand, Frame};
use crate::drawing::pen::{Dash, Ink, Pen};
use crate::drawing::place::{Places, beside};
use crate::drawing::sheet::Sheet;
use crate::drawing::view::View;
use pintle_core::units::{Quantity, symbol};

/// Held back opening, held back closing, at a stand: each line type is nowhere else on the curve.
const HELD: [Pen; 3] =
    [Pen::thick(Ink::Third, Dash::Dotted), Pen::thick(Ink::Third, Dash::Spaced), Pen::thin(Ink::Fourth, Dash::Spaced)];
/// Radius of the ring where the cursor meets a curve, px.
const RING: f64 = 3.5;

/// Draws the curve on an empty sheet.
pub fn draw(sheet: &mut Sheet<'_>, curve: &Curve, frame: &Frame, view: &View) {
    frame.draw(sheet, Some("°"));
    labels::titles(sheet, frame, view, symbol(Quantity::Torque, view.system));
    let mut places = Places::new(frame.plot.inset(-1.0));
    let limits = limit_lines(sheet, curve, frame);
    let held = held(sheet, &mut places, curve, frame);
    for rows in curve.band.iter().flatten() {
        line(sheet, frame, rows, |row| row.opening, Pen::thin(Ink::Opening, Dash::Solid));
        line(sheet, frame, rows, |row| row.closing, Pen::thin(Ink::Closing, Dash::Dashed));
    }
    let opening = line(sheet, frame, &curve.rows, |row| row.opening, Pen::thick(Ink::Opening, Dash::Solid));
    let closing = line(sheet, frame, &curve.rows, |row| row.closing, Pen::thick(Ink::Closing, Dash::Dashed));
    for points in [&opening, &closing] {
        // A coarser line is in the way just as well.
        let coarse: Vec<_> = points.iter().copied().step_by(12).collect();
        places.avoid(&coarse, 2.0);
    }

    let (deciding_deg, deciding_torque) = curve.deciding;
    let deciding = frame.at(deciding_deg, deciding_torque);
    sheet.line(&[frame.at(deciding_deg, 0.0), deciding], Pen::thin(Ink::Plain, Dash::Chain));
    let cursor_x = frame.at(curve.cursor.leaf_deg, 0.0).x;
    let cursor = [Point::new(cursor_x, frame.plot.y0 - 4.0), Point::new(cursor_x, frame.plot.y1)];
    sheet.line(&cursor, Pen::thin(Ink::Cursor, Dash::Solid));
    let rings = [
        (frame.at(curve.cursor.leaf_deg, curve.cursor.opening), Ink::Opening),
        (frame.at(curve.cursor.leaf_deg, curve.cursor.closing), Ink::Closing),
    ];

    labels::limits(sheet, &mut places, curve, frame, &limits, view);
    for limit in &limits {
        places.avoid(&[Point::new(frame.plot.x0, limit.y), Point::new(frame.plot.x1, limit.y)], 1.0);
    }
    places.take(around_ring(deciding));
    labels::deciding(sheet, &mut places, curve, deciding, view);
    let names = [&view.labels.overrun_opening, &view.labels.overrun_closing, &view.labels.holding];
    for (points, index) in &held {
        beside(sheet, &mut places, points, names[*index], HELD[*index].ink);
    }
    labels::series(sheet, &mut places, [(&opening, Ink::Opening), (&closing, Ink::Closing)], view);
    // Only now, so that nothing else moves when the cursor does.
    rings.iter().for_each(|(at, _)| places.take(around_ring(*at)));
    labels::cursor(sheet, &mut places, curve, frame, rings, view);

    for (at, ink) in rings {
        sheet.ring(at, RING, Pen::thin(ink, Dash::Solid));
    }
    sheet.dot(deciding, RING, Ink::Plain);
}

fn around_ring(at: Point) -> Rect {
    Rect::from_center_size(at, (2.5 * RING, 2.5 * RING))
}

/// What is held back and what holds at a stand, behind the demand; each line's points with its place in the list.
fn held(sheet: &mut Sheet<'_>, places: &mut Places, curve: &Curve, frame: &Frame) -> Vec<(Vec<Point>, usize)> {
    let mut lines = Vec::new();
    for (index, rows) in curve.held.iter().flatten().enumerate() {
        // Where nothing is held back there is no line.
        for piece in rows.split(|(_, torque)| *torque == 0.0).filter(|piece| piece.len() > 1) {
            let points: Vec<_> = piece.iter().map(|(leaf_deg, torque)| frame.at(*leaf_deg, *torque)).collect();
            sheet.line(&points, HELD[index]);
            places.avoid(&points.iter().copied().step_by(12).collect::<Vec<_>>(), 1.0);
            lines.push((points, index));
        }
    }
    lines
}

/// One demand curve; its points on the sheet.
fn line(sheet: &mut Sheet<'_>, frame: &Frame, rows: &[Demand], torque: fn(&Demand) -> f64, pen: Pen) -> Vec<Point> {
    let points: Vec<_> = rows.iter().map(|row| frame.at(row.leaf_deg, torque(row))).collect();
    sheet.line(&points, pen);
    points
}

/// One line of a limit, on the side of a sign.
pub(super) struct LimitLine {
    /// Height on the sheet.
    pub y: f64,
    /// The torque, N·m, without sign.
    pub torque: f64,
    /// Whether it is the rated torque; else the peak.
    pub rated: bool,
}

/// Rated and peak torque on the sides where the axis reaches them.
fn limit_lines(sheet: &mut Sheet<'_>, curve: &Curve, frame: &Frame) -> Vec<LimitLine> {
    let rated = frame.shows.0.then_some((curve.rated, true));
    let peak = curve.peak.filter(|_| frame.shows.1).map(|torque| (torque, false));
    let mut lines = Vec::new();
    for (torque, rated) in [rated, peak].into_iter().flatten() {
        for sign in [1.0, -1.0] {
            let y = frame.at(0.0, sign * torque).y;
            if (frame.plot.y0..=frame.plot.y1).contains(&y) {
                let pen =
                    if rated { Pen::thick(Ink::Limit, Dash::Chain) } else { Pen::thin(Ink::Limit, Dash::DoubleChain) };
                sheet.line(&[Point::new(frame.plot.x0, y), Point::new(frame.plot.x1, y)], pen);
                lines.push(LimitLine { y, torque, rated });
            }
        }
    }
    lines
}
