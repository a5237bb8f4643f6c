//! The map, back to front: tints, hatching, lines of equal reserve, what stands there, marks, legend.

use kurbo::{Point, Rect, Size};
use pintle_core::units::{Quantity, show};

use super::field::{LIMITS, NOT_YET};
use super::fit::Fit;
use super::hatch::hatch_of;
use super::look::Look;
use super::{PadPicture, contour, legend};
use crate::drawing::datum::Datum;
use crate::drawing::pen::{Dash, Ink, Pen};
use crate::drawing::place::{Places, around, centred};
use crate::drawing::surface::{Surface, corners};
use crate::drawing::ticks;
use crate::drawing::view::View;

/// Side of what is tinted alike, px.
const GRAIN: f64 = 2.0;
/// Most steps of the reserve's tint and lines.
const MOST_STEPS: usize = 7;
/// Part of the ground's tint in the lowest and the highest step, of 255.
const TINTS: (f64, f64) = (16.0, 120.0);

/// The area in grains: what is shown at each.
struct Raster {
    area: Rect,
    columns: usize,
    codes: Vec<u8>,
    reserves: Vec<f64>,
}

impl Raster {
    fn new(map: &PadPicture, fit: &Fit) -> Raster {
        let count = |length: f64| (length / GRAIN).ceil().max(1.0) as usize;
        let (columns, rows) = (count(fit.area.width()), count(fit.area.height()));
        let to_map = fit.to_surface.inverse();
        let origin = fit.area.origin().to_vec2();
        let shown = (0..columns * rows).map(|index| {
            let middle = Point::new((index % columns) as f64 + 0.5, (index / columns) as f64 + 0.5);
            map.field.at(map.area, to_map * ((middle.to_vec2() * GRAIN + origin).to_point()))
        });
        let (codes, reserves) = shown.unzip();
        Raster { area: fit.area, columns, codes, reserves }
    }

    fn code_at(&self, at: Point) -> u8 {
        let grain = |value: f64| (value / GRAIN).floor().max(0.0) as usize;
        let column = grain(at.x - self.area.x0).min(self.columns - 1);
        self.codes.get(grain(at.y - self.area.y0) * self.columns + column).copied().unwrap_or(NOT_YET)
    }

    /// Runs of grains of one tint, as rectangles. `step_of` is the step of a reserve.
    fn runs(&self, step_of: impl Fn(f64) -> usize) -> Vec<(usize, Rect)> {
        let mut runs: Vec<(usize, Rect)> = Vec::new();
        for (index, (&code, &reserve)) in self.codes.iter().zip(&self.reserves).enumerate() {
            if code != 0 {
                continue;
            }
            let (column, row) = (index % self.columns, index / self.columns);
            let left = self.area.x0 + column as f64 * GRAIN;
            let top = self.area.y0 + row as f64 * GRAIN;
            // Half a px over, or the ground would show between two runs.
            let grain = Rect::new(left, top, left + GRAIN + 0.5, top + GRAIN + 0.5);
            match runs.last_mut() {
                Some((step, run)) if *step == step_of(reserve) && run.y0 == top && run.x1 >= left => run.x1 = grain.x1,
                _ => runs.push((step_of(reserve), grain)),
            }
        }
        runs
    }
}

/// Draws the map on an empty surface.
pub(super) fn draw(surface: &mut Surface<'_>, map: &PadPicture, fit: &Fit, view: &View, look: &Look) {
    let raster = Raster::new(map, fit);
    let levels = levels(map);
    tints(surface, &raster, &levels);
    for code in map.field.present() {
        let hatch = hatch_of(code);
        for piece in hatch.pieces(raster.area, GRAIN, |at| raster.code_at(at) == code) {
            surface.line(&piece, hatch.pen);
        }
    }
    let outline = |area: Rect| corners(area).into_iter().chain([area.origin()]).collect::<Vec<_>>();
    surface.line(&outline(raster.area), Pen::thin(Ink::Plain, Dash::Solid));

    let mut places = Places::new(fit.frame);
    let lines = if map.field.complete() { contours(surface, map, fit, &levels) } else { Vec::new() };
    let datum = Datum::new(
        fit.at(Point::ZERO),
        fit.frame.inset(-4.0),
        fit.at(Point::new(map.leaf_m, 0.0)),
        map.face_m.map(|face_m| fit.at(Point::new(0.0, face_m)).y),
    );
    datum.draw(surface, &mut places);
    surroundings(surface, &mut places, map, fit, view);
    super::arm::draw(surface, map, fit);
    marks(surface, &mut places, map, fit, look);
    datum.name(surface, &mut places, &view.labels);
    for (level, middles) in lines {
        let text = show(level, Quantity::Ratio, view.system);
        let size = surface.text_box(&text);
        if let Some(area) = places.best(&middles.iter().map(|at| centred(*at, size)).collect::<Vec<_>>()) {
            surface.text(&text, area, Ink::Plain);
        }
    }
    legend::draw(surface, &map.field.present(), fit.legend_top, look);
}

/// Round reserves from the least to the greatest on the map.
fn levels(map: &PadPicture) -> Vec<f64> {
    map.field.range().map_or_else(Vec::new, |range| ticks::decimal(range, MOST_STEPS).values)
}

fn tints(surface: &mut Surface<'_>, raster: &Raster, levels: &[f64]) {
    let step_of = |reserve: f64| levels.partition_point(|level| *level <= reserve);
    for (step, run) in raster.runs(step_of) {
        let part = step as f64 / levels.len().max(1) as f64;
        let share = (TINTS.0 + part * (TINTS.1 - TINTS.0)).round() as u8;
        surface.fill(&corners(run), Ink::Tint(share));
    }
}

/// Lines of equal reserve, that of the reserve asked for thick; with each the places its number may stand.
fn contours(surface: &mut Surface<'_>, map: &PadPicture, fit: &Fit, levels: &[f64]) -> Vec<(f64, Vec<Point>)> {
    let asked = map.required_reserve;
    let others = levels.iter().copied().filter(|level| (level - asked).abs() > 1e-9);
    let mut numbers = Vec::new();
    for level in [asked].into_iter().chain(others) {
        let weight = if level == asked { Pen::thick } else { Pen::thin };
        let pieces = contour::pieces(&map.field, map.area, level);
        let mut middles = Vec::new();
        for piece in pieces {
            let [from, to] = piece.map(|end| fit.at(end));
            surface.line(&[from, to], weight(Ink::Plain, Dash::Solid));
            middles.push(from.midpoint(to));
        }
        // From the middle of the line outwards, a few of them.
        let apart = (middles.len() / 12).max(1);
        let half = middles.len() / 2;
        let order = middles.iter().skip(half).step_by(apart).chain(middles.iter().take(half).step_by(apart));
        numbers.push((level, order.copied().collect()));
    }
    numbers
}

/// The closed leaf with its hinge, and what is to be kept out of.
fn surroundings(surface: &mut Surface<'_>, places: &mut Places, map: &PadPicture, fit: &Fit, view: &View) {
    for rectangle in &map.keep_out {
        let ([x0, x1], [y0, y1]) = (rectangle.x_m, rectangle.y_m);
        let all = Rect::from_points(fit.at(Point::new(x0, y0)), fit.at(Point::new(x1, y1)));
        let seen = all.intersect(fit.frame);
        if seen.area() > 0.0 {
            let [a, b, c, d] = corners(seen);
            surface.line(&[a, b, c, d, a], Pen::thin(Ink::Plain, Dash::DoubleChain));
        }
    }
    let hinge = fit.at(Point::ZERO);
    let edge = Point::new(if map.mirrored { fit.frame.x0 } else { fit.frame.x1 }, hinge.y);
    surface.line(&[hinge, edge], Pen::thick(Ink::Leaf, Dash::Solid));
    // The bracket's line, parallel to the leaf, where it is apart from it on the surface.
    let bracket_y = fit.at(Point::new(0.0, map.bracket_v_m)).y;
    if (bracket_y - hinge.y).abs() > 3.0 && (fit.frame.y0..fit.frame.y1).contains(&bracket_y) {
        let ends = [Point::new(hinge.x, bracket_y), Point::new(edge.x, bracket_y)];
        surface.line(&ends, Pen::thin(Ink::Faint, Dash::Chain));
    }
    places.avoid(&[hinge, edge], 4.0);
    surface.ring(hinge, 3.5, Pen::thick(Ink::Leaf, Dash::Solid));
    places.take(Rect::from_center_size(hinge, (8.0, 8.0)));
    name(surface, places, hinge, &view.labels.hinge, Ink::Plain);
}

/// The best set-out's shaft, and the place looked at with a cross over the whole area.
fn marks(surface: &mut Surface<'_>, places: &mut Places, map: &PadPicture, fit: &Fit, look: &Look) {
    if let Some(best) = map.best {
        let at = fit.at(best);
        surface.ring(at, 5.0, Pen::thick(Ink::Plain, Dash::Solid));
        surface.dot(at, 1.5, Ink::Plain);
        places.take(Rect::from_center_size(at, Size::new(12.0, 12.0)));
        name(surface, places, at, &look.best, Ink::Plain);
    }
    if let Some(here) = map.here {
        let at = fit.at(here);
        let pen = Pen::thin(Ink::Cursor, Dash::Solid);
        surface.line(&[Point::new(fit.area.x0, at.y), Point::new(fit.area.x1, at.y)], pen);
        surface.line(&[Point::new(at.x, fit.area.y0), Point::new(at.x, fit.area.y1)], pen);
        surface.ring(at, 6.0, Pen::thick(Ink::Cursor, Dash::Solid));
        places.take(Rect::from_center_size(at, Size::new(14.0, 14.0)));
    }
}

fn name(surface: &mut Surface<'_>, places: &mut Places, at: Point, text: &str, ink: Ink) {
    let size = surface.text_box(text);
    if let Some(area) = places.best(&around(at, size, 9.0)) {
        surface.text(text, area, ink);
    }
}

const _: () = assert!(LIMITS.len() < NOT_YET as usize - 1);
