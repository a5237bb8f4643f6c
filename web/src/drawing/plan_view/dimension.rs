//! Dimensions after ISO 129-1 (from memory): extension lines, filled arrows, level text on an interrupted line; where there is no
//! room between the arrows they point inwards from outside.

use kurbo::{Point, Rect, Size, Vec2};

use crate::drawing::pen::{Dash, Ink, Pen};
use crate::drawing::place::{Places, around, centred};
use crate::drawing::surface::{ARROW_LENGTH, Surface, arc};

/// Gap between a feature and its extension line, and how far that runs past the dimension line, px.
const GAP: f64 = 3.0;
const PAST: f64 = 4.0;
const PEN: Pen = Pen::thin(Ink::Plain, Dash::Solid);

/// A straight dimension: measured points and the ends of its dimension line, px.
#[derive(Clone, Copy, Debug)]
pub struct Linear {
    /// What is measured.
    pub measured: [Point; 2],
    /// The dimension line.
    pub line: [Point; 2],
}

impl Linear {
    /// A dimension along its measured line, moved sideways by `offset` px (positive to the right of it, seen on the surface).
    pub fn aligned(measured: [Point; 2], offset: f64) -> Linear {
        let along = (measured[1] - measured[0]).normalize();
        let side = Vec2::new(-along.y, along.x) * offset;
        Linear { measured, line: measured.map(|point| point + side) }
    }

    /// A level dimension at a height.
    pub fn level(measured: [Point; 2], y: f64) -> Linear {
        Linear { measured, line: measured.map(|point| Point::new(point.x, y)) }
    }

    /// An upright dimension at a distance.
    pub fn upright(measured: [Point; 2], x: f64) -> Linear {
        Linear { measured, line: measured.map(|point| Point::new(x, point.y)) }
    }

    fn along(&self) -> Vec2 {
        (self.line[1] - self.line[0]).normalize()
    }

    fn length(&self) -> f64 {
        (self.line[1] - self.line[0]).hypot()
    }

    /// Boxes for the text: on the line, then beyond its ends, then around its middle.
    fn boxes(&self, size: Size) -> Vec<Rect> {
        let along = self.along();
        let half = extent(size, along);
        let middle = self.line[0].midpoint(self.line[1]);
        let mut boxes = Vec::new();
        let room = self.length() / 2.0 - half - ARROW_LENGTH - 2.0;
        if room > 0.0 {
            boxes.extend([0.0, 0.5, -0.5, 1.0, -1.0].map(|part| centred(middle + along * (room * part), size)));
        }
        let beyond = half + 2.0 * ARROW_LENGTH;
        boxes.extend([centred(self.line[1] + along * beyond, size), centred(self.line[0] - along * beyond, size)]);
        boxes.extend(around(middle, size, 8.0));
        boxes
    }

    /// Draws it; nothing of it where its text finds no place, as lines without a number only confuse.
    pub fn draw(&self, surface: &mut Surface<'_>, places: &mut Places, text: &str) {
        // A dimension of nothing has no direction.
        if self.length() < 0.5 {
            return;
        }
        let size = surface.text_box(text);
        let Some(area) = places.best(&self.boxes(size)) else { return };
        for (feature, end) in self.measured.into_iter().zip(self.line) {
            extension(surface, places, feature, end);
        }
        let (along, [start, end]) = (self.along(), self.line);
        let on_line = distance(area.center(), start, end) < 1.0;
        let between = (area.center() - start).dot(along) > 0.0 && (end - area.center()).dot(along) > 0.0;
        let taken = if on_line && between { 2.0 * extent(size, along) } else { 0.0 };
        if self.length() >= taken + 2.0 * ARROW_LENGTH + 2.0 {
            surface.line(&[start, end], PEN);
            surface.arrow(start, -along, Ink::Plain);
            surface.arrow(end, along, Ink::Plain);
        } else {
            let out = along * (2.0 * ARROW_LENGTH);
            surface.line(&[start - out, end + out], PEN);
            surface.arrow(start, along, Ink::Plain);
            surface.arrow(end, -along, Ink::Plain);
        }
        // Beyond the end, or beside, a leader joins text and line.
        if !(on_line && between) {
            surface.line(&[start.midpoint(end), area.center()], PEN);
        }
        places.avoid(&[start, end], 2.0);
        surface.text(text, area, Ink::Plain);
    }

    /// Whether a text on the middle of the line would be clear of others: for choosing a side.
    pub fn is_free(&self, places: &Places, size: Size) -> bool {
        places.is_free(centred(self.line[0].midpoint(self.line[1]), size))
    }
}

/// The angle between two leaf positions about the hinge, on an arc; `angles` as they run on the surface, rad. As with a straight
/// dimension, nothing where its text finds no place.
pub fn angular(
    surface: &mut Surface<'_>,
    places: &mut Places,
    centre: Point,
    radius: f64,
    angles: [f64; 2],
    text: &str,
) {
    let size = surface.text_box(text);
    let sweep = angles[1] - angles[0];
    let at = |angle: f64| centre + radius * Vec2::from_angle(angle);
    let length = sweep.abs() * radius;
    let wide = length >= 3.0 * ARROW_LENGTH;
    let fits = length >= size.width.max(size.height) + 2.5 * ARROW_LENGTH;
    let mut boxes = if fits {
        [0.5, 0.42, 0.58, 0.34, 0.66, 0.25, 0.75].map(|part| centred(at(angles[0] + part * sweep), size)).to_vec()
    } else {
        around(at(angles[1] + sweep.signum() * 24.0 / radius), size, 4.0)
    };
    boxes.append(&mut around(at(angles[0] + 0.5 * sweep), size, 8.0));
    let Some(area) = places.best(&boxes) else { return };
    // An arrow lies on the chord of the arc under it.
    let chord = sweep.signum() * (ARROW_LENGTH / (2.0 * radius)).min(0.5);
    let along = |angle: f64| Vec2::from_angle(angle + sweep.signum() * std::f64::consts::FRAC_PI_2);
    let line = if wide {
        surface.arrow(at(angles[0]), -along(angles[0] + chord), Ink::Plain);
        surface.arrow(at(angles[1]), along(angles[1] - chord), Ink::Plain);
        arc(centre, radius, angles[0], sweep)
    } else {
        let out = sweep.signum() * 2.0 * ARROW_LENGTH / radius;
        surface.arrow(at(angles[0]), along(angles[0] - chord), Ink::Plain);
        surface.arrow(at(angles[1]), -along(angles[1] + chord), Ink::Plain);
        arc(centre, radius, angles[0] - out, sweep + 2.0 * out)
    };
    surface.line(&line, PEN);
    places.avoid(&line, 2.0);
    surface.text(text, area, Ink::Plain);
}

/// From a feature, with a gap, to a little past the dimension line.
fn extension(surface: &mut Surface<'_>, places: &mut Places, feature: Point, end: Point) {
    let reach = end - feature;
    if reach.hypot() > GAP {
        let along = reach.normalize();
        let line = [feature + along * GAP, end + along * PAST];
        surface.line(&line, PEN);
        places.avoid(&line, 1.5);
    }
}

/// Half of what a box takes along a direction.
fn extent(size: Size, along: Vec2) -> f64 {
    // Where a line crosses a box's edge, from its centre.
    let by_width = size.width / 2.0 / along.x.abs().max(1e-9);
    let by_height = size.height / 2.0 / along.y.abs().max(1e-9);
    by_width.min(by_height) + 2.0
}

/// Distance of a point from the straight line through two others.
fn distance(point: Point, start: Point, end: Point) -> f64 {
    ((end - start).normalize()).cross(point - start).abs()
}
