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
const MARGIN: f64 = 40.0;
/// The line that proves the print, m, by system: a length that every rule has a mark at.
const CHECK_M: [f64; 2] = [0.1, 0.1016];
/// Height below the pattern for that line, px, and its ticks.
const CHECK_ROOM: f64 = 44.0;
const TICK: f64 = 6.0;

/// The base pattern as an SVG document as large as the view; none where the job says no holes or they do not fit.
pub fn template_svg(model: &Model, view: &View) -> Option<String> {
    let marks = model.mark_out();
    let pattern = Pattern::new(&marks, model.job().hand == Some(Hand::Left))?;
    let room = Size::new(view.width, view.height - CHECK_ROOM).to_rect().inset(-MARGIN);
    if pattern.bounds.width() > room.width() || pattern.bounds.height() > room.height() {
        return None;
    }
    let moved = room.center() - pattern.bounds.center();
    Some(svg(view, &mut |measure| {
        let mut surface = view.surface(measure);
        pattern.draw(&mut surface, moved, view);
        prove(&mut surface, view);
        surface
    }))
}

/// Places about the shaft at true size, px: x along the axis line towards the latch edge or, mirrored, away from it.
struct Pattern {
    holes: Vec<Point>,
    bounds: Rect,
    /// Towards the latch along the axis line.
    to_latch: Vec2,
}

impl Pattern {
    fn new(marks: &MarkOut, mirrored: bool) -> Option<Pattern> {
        let across = if mirrored { -1.0 } else { 1.0 };
        let holes: Vec<Point> = marks
            .anchors
            .iter()
            .map(|anchor| {
                let x_m = anchor.from_hinge_line_m - marks.shaft.from_hinge_line_m;
                let y_m = anchor.from_axis_line_m - marks.shaft.from_axis_line_m;
                Point::new(across * x_m * PER_M, -y_m * PER_M)
            })
            .collect();
        let bounds = holes.iter().fold(Rect::ZERO, |bounds, hole| bounds.union_pt(*hole));
        (!holes.is_empty()).then_some(Pattern { holes, bounds, to_latch: Vec2::new(across, 0.0) })
    }

    fn draw(&self, surface: &mut Surface<'_>, moved: Vec2, view: &View) {
        let mut places = Places::new(surface.frame());
        let shaft = moved.to_point();
        let area = (self.bounds + moved).inflate(MARGIN, MARGIN);
        let lines = [
            [Point::new(area.x0, shaft.y), Point::new(area.x1, shaft.y)],
            [Point::new(shaft.x, area.y0), Point::new(shaft.x, area.y1)],
        ];
        for line in lines {
            surface.line(&line, Pen::thin(Ink::Plain, Dash::Chain));
            places.avoid(&line, 1.0);
        }
        let tip = if self.to_latch.x > 0.0 { lines[0][1] } else { lines[0][0] };
        surface.arrow(tip, self.to_latch, Ink::Plain);
        for (index, place) in self.holes.iter().enumerate() {
            let centre = *place + moved;
            hole(surface, &mut places, centre);
            name(surface, &mut places, centre, &(index + 1).to_string());
        }
        surface.dot(shaft, 2.0, Ink::Plain);
        name(surface, &mut places, shaft, &view.labels.shaft);
        name(surface, &mut places, tip, &view.labels.to_latch);
    }
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
