//! Drawings on a canvas of the page.

use pintle_core::plan::{Model, Plan, Run};
use plotters::coord::Shift;
use plotters::prelude::{DrawingArea, IntoDrawingArea};
use web_sys::HtmlCanvasElement;

use super::backend::FineCanvas;
use super::map::{Look, PadPicture};
use super::paint::{Grid, measure, paint};
use super::surface::Lay;
use super::{PlotArea, View, lay_curve, lay_plan_view, lay_time};

/// The canvas gives no 2D context, or lost it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoCanvas;

/// Draws the curve and says where its plot lies.
///
/// # Errors
/// The canvas gives no context, or lost it.
pub fn draw_curve(canvas: HtmlCanvasElement, model: &Model, plan: &Plan, view: &View) -> Result<PlotArea, NoCanvas> {
    let mut area = None;
    on_canvas(canvas, view, &mut |measure| {
        let (surface, plot) = lay_curve(model, plan, view, measure);
        area = Some(plot);
        surface
    })?;
    area.ok_or(NoCanvas)
}

/// Draws the plan view.
///
/// # Errors
/// The canvas gives no context, or lost it.
pub fn draw_plan_view(canvas: HtmlCanvasElement, model: &Model, plan: &Plan, view: &View) -> Result<(), NoCanvas> {
    on_canvas(canvas, view, &mut |measure| lay_plan_view(model, plan, view, measure))
}

/// Draws the plots against time.
///
/// # Errors
/// The canvas gives no context, or lost it.
pub fn draw_time(canvas: HtmlCanvasElement, runs: &[Run], view: &View) -> Result<(), NoCanvas> {
    on_canvas(canvas, view, &mut |measure| lay_time(runs, view, measure))
}

/// Draws the map of places for the shaft.
///
/// # Errors
/// The canvas gives no context, or lost it.
pub fn draw_pads(canvas: HtmlCanvasElement, map: &PadPicture, view: &View, look: &Look) -> Result<(), NoCanvas> {
    on_canvas(canvas, view, &mut |measure| map.lay(view, look, measure))
}

fn on_canvas(canvas: HtmlCanvasElement, view: &View, lay: Lay<'_>) -> Result<(), NoCanvas> {
    let backend = FineCanvas::new(canvas, view.width, view.height, view.pixel_ratio).ok_or(NoCanvas)?;
    let root: DrawingArea<FineCanvas, Shift> = backend.into_drawing_area();
    let grid = Grid { per_px: view.pixel_ratio * f64::from(FineCanvas::FINE), per_dot: Some(FineCanvas::FINE) };
    let size = view.text_size();
    let width = |text: &str| measure(&root, size, grid, text);
    paint(&lay(&width), &view.palette, grid, &root).map_err(|_| NoCanvas)
}
