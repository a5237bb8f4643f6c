//! What plan dimensions are from: the axis line along the closed leaf, the hinge line square to it, and the leaf's face where it is known.

use kurbo::{Point, Rect, Size};

use super::pen::{Dash, Ink, Pen};
use super::place::{Places, centred};
use super::surface::Surface;
use super::view::Labels;

/// Nearer than this to the axis line the face is not told apart from it, px.
const APART: f64 = 3.0;
/// From a line to its name, px.
const BESIDE: f64 = 3.0;
/// Where along a line its name is tried, by parts of the line.
const ALONG: [f64; 8] = [0.03, 0.97, 0.12, 0.88, 0.25, 0.75, 0.4, 0.6];

/// The lines, px.
#[derive(Clone, Copy, Debug)]
pub struct Datum {
    axis: [Point; 2],
    hinge: [Point; 2],
    face: Option<[Point; 2]>,
}

impl Datum {
    /// Both lines through the hinge across a frame. The face is as long as the leaf, from the hinge line on: `tip` the closed leaf's end, `face_y`
    /// the height of its face.
    pub fn new(hinge: Point, frame: Rect, tip: Point, face_y: Option<f64>) -> Datum {
        let seen = face_y.filter(|y| (y - hinge.y).abs() > APART && (frame.y0..frame.y1).contains(y));
        let end = tip.x.clamp(frame.x0, frame.x1);
        Datum {
            axis: [Point::new(frame.x0, hinge.y), Point::new(frame.x1, hinge.y)],
            hinge: [Point::new(hinge.x, frame.y0), Point::new(hinge.x, frame.y1)],
            face: seen.map(|y| [Point::new(hinge.x, y), Point::new(end, y)]),
        }
    }

    /// Draws the lines, long-dash dotted as centre lines are, the face dashed; names keep off them where they can.
    pub fn draw(&self, surface: &mut Surface<'_>, places: &mut Places) {
        for line in [self.axis, self.hinge] {
            surface.line(&line, Pen::thin(Ink::Plain, Dash::Chain));
            places.avoid(&line, 0.5);
        }
        if let Some(face) = self.face {
            surface.line(&face, Pen::thin(Ink::Leaf, Dash::Dashed));
            places.avoid(&face, 0.5);
        }
    }

    /// Names the lines, where there is room along them.
    pub fn name(&self, surface: &mut Surface<'_>, places: &mut Places, labels: &Labels) {
        let face = self.face.map(|line| (line, &labels.face_line, Ink::Leaf));
        let lines = [(self.axis, &labels.axis_line, Ink::Plain), (self.hinge, &labels.hinge_line, Ink::Plain)];
        for (line, text, ink) in lines.into_iter().chain(face) {
            let size = surface.text_box(text);
            if let Some(area) = places.best(&beside(line, size)) {
                surface.text(text, area, ink);
            }
        }
    }
}

/// Boxes beside a level or upright line that lie along it, from its ends inwards.
fn beside([from, to]: [Point; 2], size: Size) -> Vec<Rect> {
    let level = from.y == to.y;
    let length = if level { size.width } else { size.height };
    let inner = (to - from).hypot() - length;
    let off = if level { size.height } else { size.width } / 2.0 + BESIDE;
    let along = (to - from).normalize();
    let places = ALONG.into_iter().flat_map(|part| {
        let at = from + along * (length / 2.0 + part * inner);
        [off, -off].map(|side| centred(if level { at + (0.0, side) } else { at + (side, 0.0) }, size))
    });
    if inner > 0.0 { places.collect() } else { Vec::new() }
}
