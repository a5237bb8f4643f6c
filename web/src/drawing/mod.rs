//! Drawings: laid out once, painted by any plotters backend.
//!
//! `curve` and `plan_view` lay out, `surface` is what they write on, `paint` carries it to a backend of `backend`. Values come
//! from the core; nothing here is computed but where a line lies on the surface.

mod axes;
mod backend;
mod colour;
mod curve;
mod datum;
mod hatching;
mod map;
mod paint;
mod pen;
mod place;
mod plan_view;
mod qr;
mod reader;
mod surface;
mod template;
mod ticks;
mod time;
mod view;

#[cfg(target_arch = "wasm32")]
mod canvas;
mod svg;

#[cfg(target_arch = "wasm32")]
pub use canvas::{NoCanvas, draw_curve, draw_pads, draw_plan_view, draw_time};
pub use colour::Colour;
pub use map::{LIMIT_NAMES, Look, PadPicture, code_of};
pub use qr::{QrPath, qr};
pub use svg::{curve_svg, pair_svg, plan_view_svg, time_svg};
pub use template::template_svgs;
pub use view::{Labels, Palette, PlotArea, RUNS, View};

use kurbo::{Point, Size};
use pintle_core::plan::{Model, Plan, Run};

/// The leaf angle under a point of the curve's canvas (CSS px), degrees, held inside the swing.
pub fn leaf_deg_at_curve(model: &Model, plan: &Plan, view: &View, x: f64) -> f64 {
    let curve = curve::Curve::new(model, plan, view);
    let frame = curve::Frame::new(&curve, Size::new(view.width, view.height), view.text_size(), view.system);
    frame.across_at(x)
}

/// The leaf angle whose direction from the hinge a point of the plan view's canvas (CSS px) has, degrees, held inside the swing.
pub fn leaf_deg_at_plan_view(model: &Model, plan: &Plan, view: &View, x: f64, y: f64) -> f64 {
    let picture = plan_view::PlanView::new(model, plan, view);
    let fit = plan_view::Fit::new(&picture, Size::new(view.width, view.height), view.text_size());
    fit.leaf_deg_at(Point::new(x, y), model.job().swing.open_deg)
}

/// The leaf angle of the followed run under a point of the time plot's canvas (CSS px), degrees; `None` without runs.
pub fn leaf_deg_at_time(runs: &[Run], view: &View, x: f64) -> Option<f64> {
    let run = runs.get(view.run)?;
    let frame = time::Frame::new(runs, Size::new(view.width, view.height), view.text_size(), view.system);
    Some(run.at(frame.speed.across_at(x))?.leaf_deg)
}

/// Lays out the plots against time; nothing without runs.
fn lay_time<'m>(runs: &[Run], view: &View, measure: surface::Measure<'m>) -> surface::Surface<'m> {
    let mut surface = view.surface(measure);
    if !runs.is_empty() {
        let frame = time::Frame::new(runs, surface.size, surface.text_size, view.system);
        time::draw(&mut surface, runs, &frame, view);
    }
    surface
}

/// Lays out the curve; the way a backend measures text comes in from outside.
fn lay_curve<'m>(
    model: &Model,
    plan: &Plan,
    view: &View,
    measure: surface::Measure<'m>,
) -> (surface::Surface<'m>, PlotArea) {
    let curve = curve::Curve::new(model, plan, view);
    let mut surface = view.surface(measure);
    let frame = curve::Frame::new(&curve, surface.size, surface.text_size, view.system);
    curve::draw(&mut surface, &curve, &frame, view);
    let plot = frame.plot;
    (surface, PlotArea { left: plot.x0, top: plot.y0, width: plot.width(), height: plot.height() })
}

/// Lays out the plan view.
fn lay_plan_view<'m>(model: &Model, plan: &Plan, view: &View, measure: surface::Measure<'m>) -> surface::Surface<'m> {
    let picture = plan_view::PlanView::new(model, plan, view);
    let mut surface = view.surface(measure);
    let fit = plan_view::Fit::new(&picture, surface.size, surface.text_size);
    plan_view::draw(&mut surface, &picture, &fit, view);
    surface
}
