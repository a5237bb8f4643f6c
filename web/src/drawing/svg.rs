//! Drawings as SVG: for print and for tests without a browser.

use pintle_core::plan::{Model, Plan, Run};
use plotters::coord::Shift;
use plotters::prelude::{DrawingArea, IntoDrawingArea};

use super::backend::{FineSvg, with_header};
use super::curve::lay_pair;
use super::paint::{Grid, measure, paint};
use super::surface::Lay;
use super::{View, lay_curve, lay_plan_view, lay_time};

/// SVG has no dots; ten units make a px.
const GRID: Grid = Grid { per_px: FineSvg::FINE as f64, per_dot: None };

/// The curve as an SVG document.
pub fn curve_svg(model: &Model, plan: &Plan, view: &View) -> String {
    svg(view, &mut |measure| lay_curve(model, plan, view, measure).0)
}

/// Two operators on one curve as an SVG document, under the names given.
pub fn pair_svg(models: [&Model; 2], names: [&str; 2], view: &View) -> String {
    svg(view, &mut |measure| lay_pair(models, names, view, measure))
}

/// The plots against time as an SVG document.
pub fn time_svg(runs: &[Run], view: &View) -> String {
    svg(view, &mut |measure| lay_time(runs, view, measure))
}

/// The plan view as an SVG document.
pub fn plan_view_svg(model: &Model, plan: &Plan, view: &View) -> String {
    svg(view, &mut |measure| lay_plan_view(model, plan, view, measure))
}

/// Any drawing.
pub(super) fn svg(view: &View, lay: Lay<'_>) -> String {
    let mut text = String::new();
    {
        let root: DrawingArea<FineSvg<'_>, Shift> =
            FineSvg::new(&mut text, view.width, view.height).into_drawing_area();
        let size = view.text_size();
        let width = |text: &str| measure(&root, size, GRID, text);
        // Writing into a string cannot fail.
        let _ = paint(&lay(&width), &view.palette, GRID, &root);
    }
    with_header(&text, view.width, view.height)
}
