//! From the surface to any plotters backend.

use kurbo::Point;
use plotters::coord::Shift;
use plotters::element::{PathElement, Polygon, Text};
use plotters::prelude::{DrawingArea, DrawingBackend};
use plotters::style::text_anchor::{HPos, Pos, VPos};
use plotters::style::{BLACK, Color, FontDesc, FontFamily, FontStyle, RGBColor, ShapeStyle, TextStyle};

use super::pen::{Ink, Weight, dashes};
use super::surface::{Mark, Surface};
use super::view::Palette;

/// The page's own system font; SVG viewers without one fall back.
const FONT: &str = "system-ui, sans-serif";
/// From the middle of the capitals to the anchor of a vertically centred text, in parts of the font size: the backends put the
/// baseline 0.26 below the anchor (half an x-height), capitals are about 0.72 high.
const CAPITALS: f64 = 0.10;

/// What is painted wrong is the backend's own error.
pub type Painted<DB> = Result<(), plotters::drawing::DrawingAreaErrorKind<<DB as DrawingBackend>::ErrorType>>;

/// Grid of a backend: how many of its units make one CSS px, and how many make one dot of the device.
#[derive(Clone, Copy, Debug)]
pub struct Grid {
    /// Backend units per CSS px.
    pub per_px: f64,
    /// Backend units per device dot, even; `None` where there are no dots (SVG).
    pub per_dot: Option<u32>,
}

impl Grid {
    /// Line width in backend units: whole dots, thin to thick always 1:2.
    fn width(self, weight: Weight) -> u32 {
        let thin = match self.per_dot {
            Some(dot) => (self.per_px / f64::from(dot)).round().max(1.0) as u32 * dot,
            None => self.per_px.round() as u32,
        };
        match weight {
            Weight::Thin => thin,
            Weight::Thick => 2 * thin,
        }
    }

    fn unit(self, point: Point) -> (i32, i32) {
        ((point.x * self.per_px).round() as i32, (point.y * self.per_px).round() as i32)
    }

    /// Level and upright lines are moved onto dots, so that they have sharp edges.
    fn snapped(self, points: &[Point], weight: Weight) -> Vec<(i32, i32)> {
        let mut units: Vec<_> = points.iter().map(|point| self.unit(*point)).collect();
        let Some(dot) = self.per_dot.map(|dot| dot as i32) else { return units };
        let half = if self.width(weight) as i32 / dot % 2 == 1 { dot / 2 } else { 0 };
        let onto_dots = |at: i32| (at - half + dot / 2).div_euclid(dot) * dot + half;
        if let [first, .., last] = units[..] {
            if units.iter().all(|unit| unit.0 == first.0) {
                units.iter_mut().for_each(|unit| unit.0 = onto_dots(last.0));
            }
            if units.iter().all(|unit| unit.1 == first.1) {
                units.iter_mut().for_each(|unit| unit.1 = onto_dots(last.1));
            }
        }
        units
    }
}

/// A mark in backend units. Everything that does not depend on the backend ends here, or the page would load it twice.
enum Stroke<'s> {
    Line(Vec<(i32, i32)>, ShapeStyle),
    Polygon(Vec<(i32, i32)>, RGBColor),
    Text(&'s str, (i32, i32), RGBColor),
}

/// All marks in backend units, dashes cut, level and upright lines on the dots.
fn strokes<'s>(surface: &'s Surface<'_>, palette: &Palette, grid: Grid) -> Vec<Stroke<'s>> {
    let mut strokes = Vec::new();
    for mark in surface.marks() {
        match mark {
            Mark::Stroke { points, pen } => {
                let width = grid.width(pen.weight);
                let style = ShapeStyle { color: palette.colour(pen.ink).to_rgba(), filled: false, stroke_width: width };
                let pattern = pen.dash.pattern(f64::from(width) / grid.per_px);
                let pieces = if pattern.is_empty() { vec![points.clone()] } else { dashes(points, &pattern) };
                strokes.extend(pieces.iter().map(|piece| Stroke::Line(grid.snapped(piece, pen.weight), style)));
            }
            Mark::Fill { points, ink } => {
                strokes.push(Stroke::Polygon(
                    points.iter().map(|point| grid.unit(*point)).collect(),
                    palette.colour(*ink),
                ));
            }
            Mark::Text { text, area, ink } => {
                let at = Point::new(area.x0, area.center().y + CAPITALS * surface.text_size);
                strokes.push(Stroke::Text(text, grid.unit(at), palette.colour(*ink)));
            }
        }
    }
    strokes
}

/// Paints every mark of the surface.
///
/// # Errors
/// What the backend reports.
pub fn paint<DB: DrawingBackend>(
    surface: &Surface<'_>,
    palette: &Palette,
    grid: Grid,
    root: &DrawingArea<DB, Shift>,
) -> Painted<DB> {
    root.fill(&palette.colour(Ink::Paper))?;
    for stroke in strokes(surface, palette, grid) {
        match stroke {
            Stroke::Line(points, style) => root.draw(&PathElement::new(points, style))?,
            Stroke::Polygon(corners, colour) => root.draw(&Polygon::new(corners, colour.filled()))?,
            Stroke::Text(text, at, colour) => {
                root.draw(&Text::new(text, at, text_style(surface.text_size, grid).color(&colour)))?;
            }
        }
    }
    root.present()
}

/// Width of a text, CSS px, as the backend will draw it.
pub fn measure<DB: DrawingBackend>(root: &DrawingArea<DB, Shift>, text_size: f64, grid: Grid, text: &str) -> f64 {
    root.estimate_text_size(text, &text_style(text_size, grid)).map_or(0.0, |(width, _)| f64::from(width) / grid.per_px)
}

fn text_style(size: f64, grid: Grid) -> TextStyle<'static> {
    let font = FontDesc::new(FontFamily::Name(FONT), size * grid.per_px, FontStyle::Normal);
    TextStyle::from(font).color(&BLACK).pos(Pos::new(HPos::Left, VPos::Center))
}
