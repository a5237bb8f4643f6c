//! The base pattern at its true size: the shaft, its holes and the directions of the two lines, with a line that proves the print.
//!
//! A CSS px is 1/96 inch on paper (CSS Values and Units 4, 5.2), so a print at 100 % has every millimetre of it.

use kurbo::{Point, Rect, Size, Vec2};
use pintle_core::{
    job::Hand,
    plan::{MarkOut, Model},
    units::{System, mark},
};

use super::pen::{Dash, Ink, Pen};
use super::place::{Places, around, centred};
use super::plan_view::marks::hole;
use super::surface::Surface;
use super::svg::svg;
use super::view::View;

/// px per metre at true size: 96 to an inch of 0.0254 m.
const PER_M: f64 = 96.0 / 0.0254;
/// Around the pattern, for the ends of its lines and their names, px.
const MARGIN: f64 = 32.0;
/// The line that proves the print, m, by system: a length that every rule has a mark at.
const CHECK_M: [f64; 2] = [0.1, 0.1016];
/// Height below the pattern for that line, px, and its ticks.
const CHECK_ROOM: f64 = 44.0;
const TICK: f64 = 6.0;

/// The base pattern as SVG documents as large as the view, one a sheet, from top to bottom, to be joined at their dashed lines.
///
/// None where the job says no holes or their narrow side is wider than a sheet.
pub fn template_svgs(model: &Model, view: &View) -> Vec<String> {
    let room = Size::new(view.width, view.height - CHECK_ROOM).to_rect().inset(-MARGIN);
    let marks = model.mark_out();
    let Some(pattern) = Pattern::new(&marks, model.job().hand == Some(Hand::Left), room.width()) else {
        return Vec::new();
    };
    let sheets = (pattern.bounds.height() / room.height()).ceil().max(1.0) as usize;
    (0..sheets)
        .map(|index| {
            let sheet = Sheet::new(index, sheets, room, pattern.bounds);
            svg(view, &mut |measure| {
                let mut surface = view.surface(measure);
                pattern.draw(&mut surface, &sheet, view);
                prove(&mut surface, view);
                surface
            })
        })
        .collect()
}

/// What of the pattern is on one sheet.
struct Sheet {
    /// From the pattern's frame to the sheet's, px.
    moved: Vec2,
    /// From top to bottom, px: to the joint where there is one.
    top: f64,
    bottom: f64,
    joints: Vec<f64>,
}

impl Sheet {
    fn new(index: usize, sheets: usize, room: Rect, bounds: Rect) -> Sheet {
        let mut moved = room.center() - bounds.center();
        if sheets > 1 {
            moved.y = room.y0 - bounds.y0 - index as f64 * room.height();
        }
        let (first, last) = (index == 0, index + 1 == sheets);
        let top = if first { room.y0 - MARGIN } else { room.y0 };
        let bottom = if last { room.y1 + MARGIN } else { room.y1 };
        let joints = [(!first).then_some(top), (!last).then_some(bottom)];
        Sheet { moved, top, bottom, joints: joints.into_iter().flatten().collect() }
    }

    fn has(&self, place: Point) -> bool {
        (self.top..=self.bottom).contains(&place.y)
    }
}

/// Places about the shaft at true size, px, turned so that the sides of the rectangle run along and up the sheet.
struct Pattern {
    holes: Vec<Vec2>,
    bounds: Rect,
    /// Towards the latch, along the axis line.
    to_latch: Vec2,
}

impl Pattern {
    /// The base along the sheet or, where that is wider than it may be, up it.
    fn new(marks: &MarkOut, mirrored: bool, widest: f64) -> Option<Pattern> {
        let across = if mirrored { -1.0 } else { 1.0 };
        let level: Vec<Vec2> = marks
            .anchors
            .iter()
            .map(|anchor| {
                let x_m = anchor.from_hinge_line_m - marks.shaft.from_hinge_line_m;
                let y_m = anchor.from_axis_line_m - marks.shaft.from_axis_line_m;
                Vec2::new(across * x_m, -y_m) * PER_M
            })
            .collect();
        let [_, one, other, _] = level[..] else { return None };
        let along = (one - other).normalize();
        let turned = [along, along.turn_90()].map(|along| {
            let turn = |place: Vec2| Vec2::new(place.dot(along), along.cross(place));
            let holes: Vec<Vec2> = level.iter().copied().map(turn).collect();
            let bounds = holes.iter().fold(Rect::ZERO, |bounds, hole| bounds.union_pt(hole.to_point()));
            Pattern { holes, bounds, to_latch: turn(Vec2::new(across, 0.0)) }
        });
        turned.into_iter().find(|pattern| pattern.bounds.width() <= widest)
    }

    fn draw(&self, surface: &mut Surface<'_>, sheet: &Sheet, view: &View) {
        let mut places = Places::new(surface.frame());
        let shaft = sheet.moved.to_point();
        let area = (self.bounds + sheet.moved).inflate(MARGIN, MARGIN);
        let area = Rect { y0: area.y0.max(sheet.top), y1: area.y1.min(sheet.bottom), ..area };
        let axis = within(area, shaft, self.to_latch);
        for line in [axis, within(area, shaft, self.to_latch.turn_90())].into_iter().flatten() {
            surface.line(&line, Pen::thin(Ink::Plain, Dash::Chain));
            places.avoid(&line, 1.0);
        }
        for joint in &sheet.joints {
            surface
                .line(&[Point::new(0.0, *joint), Point::new(view.width, *joint)], Pen::thin(Ink::Plain, Dash::Dashed));
        }
        // Where the line goes on over another sheet, its arrow is there.
        if let Some([_, tip]) = axis.filter(|[_, tip]| !sheet.joints.iter().any(|joint| (joint - tip.y).abs() < 0.5)) {
            surface.arrow(tip, self.to_latch, Ink::Plain);
            name(surface, &mut places, tip, &view.labels.to_latch);
        }
        for (index, place) in self.holes.iter().enumerate() {
            let centre = (*place + sheet.moved).to_point();
            if sheet.has(centre) {
                hole(surface, &mut places, centre);
                name(surface, &mut places, centre, &(index + 1).to_string());
            }
        }
        if sheet.has(shaft) {
            surface.dot(shaft, 2.0, Ink::Plain);
            name(surface, &mut places, shaft, &view.labels.shaft);
        }
    }
}

/// The part inside an area of the line through a point, in its direction.
fn within(area: Rect, through: Point, direction: Vec2) -> Option<[Point; 2]> {
    let sides = [
        (area.x0 - through.x, area.x1 - through.x, direction.x),
        (area.y0 - through.y, area.y1 - through.y, direction.y),
    ];
    let (mut from, mut to) = (f64::NEG_INFINITY, f64::INFINITY);
    for (least, most, rate) in sides {
        if rate == 0.0 {
            if least > 0.0 || most < 0.0 {
                return None;
            }
            continue;
        }
        let (one, other) = (least / rate, most / rate);
        (from, to) = (from.max(one.min(other)), to.min(one.max(other)));
    }
    (from < to).then(|| [through + from * direction, through + to * direction])
}

fn name(surface: &mut Surface<'_>, places: &mut Places, at: Point, text: &str) {
    let size = surface.text_box(text);
    if let Some(area) = places.best(&around(at, size, 9.0)) {
        surface.text(text, area, Ink::Plain);
    }
}

/// A line of a known length along the foot: what it measures on paper tells whether all the rest is true.
fn prove(surface: &mut Surface<'_>, view: &View) {
    let length_m = CHECK_M[usize::from(view.system == System::Us)];
    let y = view.height - CHECK_ROOM / 2.0;
    let half = length_m * PER_M / 2.0;
    let ends = [-half, half].map(|x| Point::new(view.width / 2.0 + x, y));
    let pen = Pen::thin(Ink::Plain, Dash::Solid);
    surface.line(&ends, pen);
    for end in ends {
        surface.line(&[end - (0.0, TICK), end + (0.0, TICK)], pen);
    }
    let text = mark(length_m, view.system);
    let size = surface.text_box(&text);
    surface.text(&text, centred(Point::new(view.width / 2.0, y), size), Ink::Plain);
}
