//! Axes of a plot: grid, ticks and their numbers, and the way between values and px.
//!
//! Nothing here depends on a font that only the backend knows, so that a px on the page finds its value without a canvas.

use kurbo::{Affine, Point, Rect};

use super::backend::width_em;
use super::pen::{Dash, Ink, Pen};
use super::place::Places;
use super::surface::Surface;
use super::ticks::{self, Ticks};

/// Axes with 0 at the left.
#[derive(Clone, Debug)]
pub struct Axes {
    /// Inside the axes, px.
    pub plot: Rect,
    /// The level axis' last value, in the document's unit; its first is 0.
    most: f64,
    /// From the document's values to px.
    pub to_surface: Affine,
    /// Ticks along the level axis, in the document's unit.
    pub across: Ticks,
    /// Ticks along the upright axis, in the unit shown.
    pub up: Ticks,
    /// Upright values of the document per unit shown.
    pub unit: f64,
}

/// Ticks along an upright axis from a lowest to a highest value of the document, over some px.
pub fn ticks_up((low, high): (f64, f64), unit: f64, px: f64, text_size: f64) -> Ticks {
    let most = (px / (2.3 * text_size)) as usize;
    let ticks = ticks::decimal((low / unit, high / unit), most);
    // One number alone tells no scale.
    if ticks.values.len() > 1 { ticks } else { ticks::decimal((low / unit, high / unit), 2 * most + 1) }
}

/// Room the numbers of an upright axis take beside it, px.
pub fn margin(up: &Ticks, text_size: f64) -> f64 {
    up.values.iter().map(|value| width_em(&up.text(*value))).fold(0.0, f64::max) * text_size + 12.0
}

impl Axes {
    /// Lays `across` from 0 to a most value and `low` to `high` upwards into a plot.
    pub fn new(plot: Rect, most: f64, (low, high): (f64, f64), across: Ticks, up: Ticks, unit: f64) -> Axes {
        let scale = (plot.width() / most, plot.height() / (high - low));
        let to_surface = Affine::new([scale.0, 0.0, 0.0, -scale.1, plot.x0, plot.y1 + low * scale.1]);
        Axes { plot, most, to_surface, across, up, unit }
    }

    /// Where a value lies on the surface.
    pub fn at(&self, across: f64, up: f64) -> Point {
        self.to_surface * Point::new(across, up)
    }

    /// The level axis' value under a px, held inside the axis.
    pub fn across_at(&self, x: f64) -> f64 {
        ((x - self.plot.x0) / self.plot.width()).clamp(0.0, 1.0) * self.most
    }

    /// Grid, axes, ticks and a line at 0; numbers along the level axis with a sign behind each, where one is given.
    pub fn draw(&self, surface: &mut Surface<'_>, sign: Option<&str>) {
        let plot = self.plot;
        let faint = Pen::thin(Ink::Faint, Dash::Solid);
        let axis = Pen::thin(Ink::Plain, Dash::Solid);
        let mut unmarked = Places::new(surface.frame());
        for value in &self.up.values {
            let y = self.at(0.0, value * self.unit).y;
            surface.line(&[Point::new(plot.x0, y), Point::new(plot.x1, y)], faint);
            surface.line(&[Point::new(plot.x0 - 4.0, y), Point::new(plot.x0, y)], axis);
            let text = self.up.text(*value);
            let size = surface.text_box(&text);
            mark(surface, &mut unmarked, &text, Point::new(plot.x0 - 7.0 - size.width, y - size.height / 2.0));
        }
        for value in &self.across.values {
            let x = self.at(*value, 0.0).x;
            surface.line(&[Point::new(x, plot.y0), Point::new(x, plot.y1)], faint);
            surface.line(&[Point::new(x, plot.y1), Point::new(x, plot.y1 + 4.0)], axis);
            let Some(sign) = sign else { continue };
            let text = [&self.across.text(*value), sign].concat();
            let width = surface.text_box(&text).width;
            let left = (x - width / 2.0).min(surface.size.width - width);
            mark(surface, &mut unmarked, &text, Point::new(left, plot.y1 + 6.0));
        }
        // Two lines, not one bent one: each lies sharply on the screen's dots.
        surface.line(&[Point::new(plot.x0, plot.y0), Point::new(plot.x0, plot.y1)], axis);
        surface.line(&[Point::new(plot.x0, plot.y1), Point::new(plot.x1, plot.y1)], axis);
        let zero = self.at(0.0, 0.0).y;
        surface.line(&[Point::new(plot.x0, zero), Point::new(plot.x1, zero)], axis);
    }
}

/// A tick's number, left out where it would cover another.
fn mark(surface: &mut Surface<'_>, unmarked: &mut Places, text: &str, origin: Point) {
    let area = Rect::from_origin_size(origin, surface.text_box(text));
    if unmarked.best(&[area]).is_some() {
        surface.text(text, area, Ink::Plain);
    }
}
