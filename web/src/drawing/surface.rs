//! The surface: what is drawn and where, before any backend.
//!
//! Layout writes marks in CSS px (x to the right, y down) and names inks and line types, never colours. So one layout serves the
//! canvas, SVG and the tests that look for labels on top of each other, and only [`super::paint`] is generic over a backend.

use std::f64::consts::TAU;

use kurbo::{Point, Rect, Size, Vec2};

use super::pen::{Ink, Pen};

/// One thing on the surface.
#[derive(Clone, Debug)]
pub enum Mark {
    /// A line through points.
    Stroke {
        /// Its points, px.
        points: Vec<Point>,
        /// How it is drawn.
        pen: Pen,
    },
    /// A filled polygon.
    Fill {
        /// Its corners, px.
        points: Vec<Point>,
        /// What it is filled with.
        ink: Ink,
    },
    /// A line of text, never turned or mirrored.
    Text {
        /// What it says.
        text: String,
        /// The box it takes, px, from the top of its capitals' line to below its descenders.
        area: Rect,
        /// Its ink.
        ink: Ink,
    },
}

/// Measures a text: width in px at the surface's text size.
pub type Measure<'a> = &'a dyn Fn(&str) -> f64;

/// Lays a drawing out with a way to measure: called once. Behind a reference, or each drawing would bring its own copy of the backends.
pub type Lay<'a> = &'a mut dyn for<'m> FnMut(Measure<'m>) -> Surface<'m>;

/// Marks in the order they are drawn.
pub struct Surface<'a> {
    /// Width and height, px.
    pub size: Size,
    /// Text height (font size), px.
    pub text_size: f64,
    /// What stands for the point in numbers.
    pub decimal: String,
    marks: Vec<Mark>,
    measure: Measure<'a>,
}

impl<'a> Surface<'a> {
    /// An empty surface.
    pub fn new(size: Size, text_size: f64, measure: Measure<'a>) -> Surface<'a> {
        Surface { size, text_size, decimal: ".".into(), marks: Vec::new(), measure }
    }

    /// The marks so far.
    pub fn marks(&self) -> &[Mark] {
        &self.marks
    }

    /// The frame nothing may leave.
    pub fn frame(&self) -> Rect {
        self.size.to_rect()
    }

    /// Width and line height a text takes.
    pub fn text_box(&self, text: &str) -> Size {
        Size::new((self.measure)(text), 1.2 * self.text_size)
    }

    /// A line through points.
    pub fn line(&mut self, points: &[Point], pen: Pen) {
        self.marks.push(Mark::Stroke { points: points.to_vec(), pen });
    }

    /// A filled polygon.
    pub fn fill(&mut self, points: &[Point], ink: Ink) {
        self.marks.push(Mark::Fill { points: points.to_vec(), ink });
    }

    /// A pin or a mark on a curve: a circle with the paper inside.
    pub fn ring(&mut self, centre: Point, radius: f64, pen: Pen) {
        let points = arc(centre, radius, 0.0, TAU);
        self.fill(&points, Ink::Paper);
        self.line(&points, pen);
    }

    /// A filled dot.
    pub fn dot(&mut self, centre: Point, radius: f64, ink: Ink) {
        self.fill(&arc(centre, radius, 0.0, TAU), ink);
    }

    /// Text in its box, on paper, so that lines behind it are interrupted.
    pub fn text(&mut self, text: &str, area: Rect, ink: Ink) {
        self.fill(&corners(area.inflate(2.0, 0.0)), Ink::Paper);
        self.marks.push(Mark::Text { text: self.numbers_in(text), area, ink });
    }

    /// The text with its numbers as the language writes them. A mark is as wide as another.
    fn numbers_in(&self, text: &str) -> String {
        let mut parts = text.split('.');
        let mut written = String::from(parts.next().unwrap_or_default());
        for part in parts {
            let digits = |end: Option<char>| end.is_some_and(|character| character.is_ascii_digit());
            let inside = digits(written.chars().next_back()) && digits(part.chars().next());
            written.push_str(if inside { &self.decimal } else { "." });
            written.push_str(part);
        }
        written
    }

    /// A solid arrowhead with its tip at `tip`, flying along `direction` (a unit vector): ISO 129-1, filled, 15°.
    pub fn arrow(&mut self, tip: Point, direction: Vec2, ink: Ink) {
        let back = tip - direction * ARROW_LENGTH;
        let side = Vec2::new(-direction.y, direction.x) * (ARROW_LENGTH * 0.17);
        self.fill(&[tip, back + side, back - side], ink);
    }
}

/// Length of a dimension arrow, px.
pub const ARROW_LENGTH: f64 = 9.0;

/// An arc about `centre` as points, at most a tenth of a px off; angles in the surface's sense (y down).
pub fn arc(centre: Point, radius: f64, start: f64, sweep: f64) -> Vec<Point> {
    // The height of an arc over its chord is r·(1 − cos(step/2)), about r·step²/8.
    let step = (0.8 / radius.max(1.0)).sqrt();
    let steps = (sweep.abs() / step).ceil().max(1.0) as u32;
    (0..=steps)
        .map(|count| centre + radius * Vec2::from_angle(start + sweep * f64::from(count) / f64::from(steps)))
        .collect()
}

/// A rectangle's corners.
pub fn corners(area: Rect) -> [Point; 4] {
    [
        Point::new(area.x0, area.y0),
        Point::new(area.x1, area.y0),
        Point::new(area.x1, area.y1),
        Point::new(area.x0, area.y1),
    ]
}
