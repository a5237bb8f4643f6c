//! Two operators on one curve: leaf angle against the part of its rated torque that each is asked for, each with its own arm.

use kurbo::{Point, Rect, Size};
use pintle_core::plan::Model;

use crate::drawing::axes::{Axes, margin, ticks_up};
use crate::drawing::pen::{Dash, Ink, Pen};
use crate::drawing::place::{Places, beside};
use crate::drawing::surface::{Measure, Surface};
use crate::drawing::ticks;
use crate::drawing::view::View;

/// Points along the swing.
const POINTS: u32 = 240;
/// A percent, of which the axis has its numbers.
const PERCENT: f64 = 0.01;
/// Room above the outermost line, as part of the span.
const HEADROOM: f64 = 0.12;
/// Told apart without colour too.
const PENS: [Pen; 2] = [Pen::thick(Ink::Third, Dash::Solid), Pen::thick(Ink::Fourth, Dash::Dashed)];

/// Lays out both, under the names given.
pub fn lay_pair<'m>(models: [&Model; 2], names: [&str; 2], view: &View, measure: Measure<'m>) -> Surface<'m> {
    let mut surface = view.surface(measure);
    let lines = models.map(used);
    let open_deg = models.map(|model| model.job().swing.open_deg).into_iter().fold(0.0, f64::max);
    let most = lines.iter().flatten().map(|(_, part)| *part).fold(1.0, f64::max);
    let axes = axes(open_deg, most * (1.0 + HEADROOM), surface.size, surface.text_size);
    axes.draw(&mut surface, Some("°"));
    titles(&mut surface, &axes, view);
    let mut places = Places::new(axes.plot.inset(-1.0));
    let whole = [axes.at(0.0, 1.0), axes.at(open_deg, 1.0)];
    surface.line(&whole, Pen::thick(Ink::Limit, Dash::Chain));
    places.avoid(&whole, 2.0);
    let drawn = lines.map(|line| line.into_iter().map(|(leaf_deg, part)| axes.at(leaf_deg, part)).collect::<Vec<_>>());
    for (points, pen) in drawn.iter().zip(PENS) {
        surface.line(points, pen);
        places.avoid(&points.iter().copied().step_by(6).collect::<Vec<_>>(), 2.0);
    }
    for ((points, pen), name) in drawn.iter().zip(PENS).zip(names) {
        beside(&mut surface, &mut places, points, name, pen.ink);
    }
    beside(&mut surface, &mut places, &whole, &view.labels.rated, Ink::Limit);
    surface
}

/// The part of its rated torque that an operator is asked for through the swing.
fn used(model: &Model) -> Vec<(f64, f64)> {
    let open_deg = model.job().swing.open_deg;
    let at = |step: u32| open_deg * f64::from(step) / f64::from(POINTS);
    (0..=POINTS).map(at).map(|leaf_deg| (leaf_deg, model.utilisation_at(leaf_deg.to_radians()))).collect()
}

fn axes(open_deg: f64, most: f64, size: Size, text_size: f64) -> Axes {
    let line = 1.35 * text_size;
    let (top, bottom) = (line + 6.0, size.height - 2.0 * line - 8.0);
    let up = ticks_up((0.0, most), PERCENT, bottom - top, text_size);
    let plot = Rect::new(margin(&up, text_size), top, size.width - 0.9 * text_size, bottom);
    let angles = ticks::degrees((0.0, open_deg), (plot.width() / (4.2 * text_size)) as usize);
    Axes::new(plot, open_deg, (0.0, most), angles, up, PERCENT)
}

fn titles(surface: &mut Surface<'_>, axes: &Axes, view: &View) {
    let used = &view.labels.used;
    let size = surface.text_box(used);
    surface.text(used, Rect::from_origin_size((2.0, 1.0), size), Ink::Plain);
    let angle = &view.labels.leaf_angle;
    let size = surface.text_box(angle);
    let origin = Point::new(axes.plot.x1 - size.width, surface.size.height - size.height - 1.0);
    surface.text(angle, Rect::from_origin_size(origin, size), Ink::Plain);
}
