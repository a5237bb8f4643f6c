//! The runs' lines in both plots, where a motor's run ends on the way, and the cursor through both.

use kurbo::{Point, Rect, Vec2};
use pintle_core::units::{Quantity, show, symbol};
use pintle_core::{
    drive::DrivenState,
    plan::{Run, RunPoint},
};

use super::{Frame, followed};
use crate::drawing::axes::Axes;
use crate::drawing::pen::{Dash, Ink, Pen};
use crate::drawing::place::{Places, around, beside, centred};
use crate::drawing::surface::Surface;
use crate::drawing::view::View;

/// By the run's place in the core's list: a motor's lines are thin.
const PENS: [Pen; 4] = [
    Pen::thick(Ink::Opening, Dash::Solid),
    Pen::thick(Ink::Closing, Dash::Dashed),
    Pen::thin(Ink::Opening, Dash::Chain),
    Pen::thin(Ink::Closing, Dash::DoubleChain),
];
/// Radius of the cursor's rings, and half a cross, px.
const RING: f64 = 3.5;
const CROSS: f64 = 5.0;

/// What a plot shows of a row.
type Value = fn(&RunPoint) -> f64;

/// Draws both plots on an empty surface.
pub fn draw(surface: &mut Surface<'_>, runs: &[Run], frame: &Frame, view: &View) {
    let (speed, torque): (Value, Value) = (|row| row.edge_speed_m_s, |row| row.shaft_torque_n_m);
    frame.speed.draw(surface, None);
    frame.torque.draw(surface, Some(""));
    titles(surface, frame, view);
    let at = followed(runs, view).filter(|at| at.time_s <= frame.until_s);
    // The torque's plot has the names, the speed's where there is no room for one; lines lie farther apart in the lower.
    let mut spare = Vec::new();
    for (axes, value, quantity) in [(&frame.torque, torque, Quantity::Torque), (&frame.speed, speed, Quantity::Speed)] {
        let mut places = Places::new(axes.plot.inset(-1.0));
        let lines: Vec<_> =
            runs.iter().zip(PENS).map(|(run, pen)| line(surface, run, axes, frame.until_s, value, pen)).collect();
        for points in &lines {
            places.avoid(&points.iter().copied().step_by(9).collect::<Vec<_>>(), 2.0);
        }
        if let Some(at) = &at {
            let x = axes.at(at.time_s, 0.0).x;
            surface.line(
                &[Point::new(x, axes.plot.y0 - 4.0), Point::new(x, axes.plot.y1)],
                Pen::thin(Ink::Cursor, Dash::Solid),
            );
        }
        let labels = &view.labels;
        let names = [&labels.opening, &labels.closing, &labels.motor_opening, &labels.motor_closing];
        for (index, (run, points)) in runs.iter().zip(&lines).enumerate() {
            end(surface, &mut places, run, axes, frame.until_s, (value, quantity == Quantity::Torque), view);
            let wanted = quantity == Quantity::Torque || spare.contains(&index);
            if wanted && !beside(surface, &mut places, points, names[index], PENS[index].ink) {
                spare.push(index);
            }
        }
        if let Some(at) = &at {
            let ring = axes.at(at.time_s, value(at));
            let text = show(value(at), quantity, view.system);
            let size = surface.text_box(&text);
            places.take(Rect::from_center_size(ring, (2.5 * RING, 2.5 * RING)));
            if let Some(area) = places.best(&around(ring, size, 10.0)) {
                surface.text(&text, area, PENS[view.run].ink);
            }
            surface.ring(ring, RING, Pen::thin(PENS[view.run].ink, Dash::Solid));
        }
    }
    if let Some(at) = &at {
        let text =
            [&show(at.time_s, Quantity::Time, view.system), ", ", &show(view.leaf_deg, Quantity::Angle, view.system)]
                .concat();
        let size = surface.text_box(&text);
        let plot = frame.speed.plot;
        let x = frame.speed.at(at.time_s, 0.0).x.min(plot.x1 - size.width / 2.0).max(plot.x0 + size.width / 2.0);
        surface.text(&text, centred(Point::new(x, plot.y0 - 4.0 - size.height / 2.0), size), Ink::Cursor);
    }
}

/// Titles of the axes, with units.
fn titles(surface: &mut Surface<'_>, frame: &Frame, view: &View) {
    let labels = &view.labels;
    let below = frame.torque.plot.y0 - 1.3 * surface.text_size;
    for (name, quantity, y) in
        [(&labels.edge_speed, Quantity::Speed, 1.0), (&labels.shaft_torque, Quantity::Torque, below)]
    {
        let text = [name, ", ", symbol(quantity, view.system)].concat();
        let size = surface.text_box(&text);
        surface.text(&text, Rect::from_origin_size((2.0, y), size), Ink::Plain);
    }
    let text = [&labels.time, ", ", symbol(Quantity::Time, view.system)].concat();
    let size = surface.text_box(&text);
    let origin = (frame.torque.plot.x1 - size.width, surface.size.height - size.height - 1.0);
    surface.text(&text, Rect::from_origin_size(origin, size), Ink::Plain);
}

/// One run's line, cut where the axis ends; its points.
fn line(surface: &mut Surface<'_>, run: &Run, axes: &Axes, until_s: f64, value: Value, pen: Pen) -> Vec<Point> {
    let mut points: Vec<_> =
        run.rows.iter().filter(|row| row.time_s <= until_s).map(|row| axes.at(row.time_s, value(row))).collect();
    if run.time_s() > until_s {
        points.extend(run.at(until_s).map(|row| axes.at(until_s, value(&row))));
    }
    surface.line(&points, pen);
    points
}

/// A motor's run that ends on the way: a cross in both plots and, in one of them, how and at which leaf angle; one that goes on beyond the
/// axis is told with an arrow.
fn end(
    surface: &mut Surface<'_>,
    places: &mut Places,
    run: &Run,
    axes: &Axes,
    until_s: f64,
    (value, told): (Value, bool),
    view: &View,
) {
    let (Some(state), Some(last)) = (run.state, run.rows.last()) else { return };
    let word = match state {
        DrivenState::Arrives => "",
        DrivenState::Stalls => &view.labels.stalls,
        DrivenState::DrivenBack => &view.labels.driven_back,
        DrivenState::Creeps => &view.labels.creeps,
    };
    let beyond = last.time_s > until_s;
    if word.is_empty() && !beyond {
        return;
    }
    let shown = if beyond { run.at(until_s).unwrap_or(*last) } else { *last };
    let at = axes.at(shown.time_s, value(&shown));
    let ink = if run.direction == pintle_core::terms::Direction::Open { Ink::Opening } else { Ink::Closing };
    if !beyond {
        for arm in [Vec2::new(CROSS, CROSS), Vec2::new(CROSS, -CROSS)] {
            surface.line(&[at - arm, at + arm], Pen::thick(ink, Dash::Solid));
        }
        places.take(Rect::from_center_size(at, (2.0 * CROSS, 2.0 * CROSS)));
    }
    if !told {
        return;
    }
    let angle = show(last.leaf_deg, Quantity::Angle, view.system);
    let time = show(last.time_s, Quantity::Time, view.system);
    let text = match (word.is_empty(), beyond) {
        (false, false) => [word, ", ", &angle].concat(),
        (false, true) => [word, ", ", &angle, " \u{2192}"].concat(),
        (true, _) => [&time, " \u{2192}"].concat(),
    };
    let size = surface.text_box(&text);
    if let Some(area) = places.best(&around(at, size, 9.0)) {
        surface.text(&text, area, ink);
    }
}
