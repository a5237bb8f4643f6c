//! The curve's axes: where they lie, what they span, and the way between values and px.
//!
//! Nothing here depends on a font that only the backend knows, so that a px on the page finds its leaf angle without a canvas.

use kurbo::{Affine, Point, Rect, Size};
use pintle_core::units::{Quantity, System};

use super::Curve;
use crate::drawing::backend::width_em;
use crate::drawing::ticks::{self, Ticks};

/// The axes of a curve.
#[derive(Clone, Debug)]
pub struct Frame {
    /// Inside the axes, px.
    pub plot: Rect,
    /// From (degrees, N·m) to px.
    pub to_sheet: Affine,
    /// Ticks of the leaf angle, degrees.
    pub angles: Ticks,
    /// Ticks of the torque in the unit shown.
    pub torques: Ticks,
    /// N·m per unit shown.
    pub unit_n_m: f64,
    /// Whether the line of the rated torque, and that of the peak torque, are inside.
    pub shows: (bool, bool),
}

/// A limit further off than this many times what is drawn so far would flatten the curve; it is named at the edge instead.
const RATED_REACH: f64 = 5.0;
const PEAK_REACH: f64 = 2.2;
/// Room beyond the outermost line, as part of the span.
const MARGIN: f64 = 0.07;
/// The same at the top where a limit beyond the axis is named.
const HEADROOM: f64 = 0.22;

impl Frame {
    /// Lays the axes on a sheet.
    pub fn new(curve: &Curve, size: Size, text_size: f64, system: System) -> Frame {
        let unit_n_m = Quantity::Torque.unit(system).factor;
        let (low, high, shows) = span(curve);
        let line = 1.35 * text_size;
        let (top, bottom) = (2.0 * line + 4.0, size.height - 2.0 * line - 8.0);
        let range = (low / unit_n_m, high / unit_n_m);
        let torques = ticks::decimal(range, ((bottom - top) / (1.7 * line)) as usize);
        let widest = torques.values.iter().map(|value| width_em(&torques.text(*value))).fold(0.0, f64::max) * text_size;
        let plot = Rect::new(widest + 12.0, top, size.width - 0.9 * text_size, bottom);
        let angles = ticks::degrees((0.0, curve.open_deg), (plot.width() / (4.2 * text_size)) as usize);
        let scale = (plot.width() / curve.open_deg, plot.height() / (high - low));
        let to_sheet = Affine::new([scale.0, 0.0, 0.0, -scale.1, plot.x0, plot.y1 + low * scale.1]);
        Frame { plot, to_sheet, angles, torques, unit_n_m, shows }
    }

    /// Where a torque at a leaf angle lies on the sheet.
    pub fn at(&self, leaf_deg: f64, torque: f64) -> Point {
        self.to_sheet * Point::new(leaf_deg, torque)
    }

    /// The leaf angle under a px, held inside the swing, degrees.
    pub fn leaf_deg_at(&self, x: f64, open_deg: f64) -> f64 {
        let leaf_deg = (self.to_sheet.inverse() * Point::new(x, 0.0)).x;
        leaf_deg.clamp(0.0, open_deg)
    }
}

/// Lowest and highest torque of the axis, N·m, and which limits are inside.
fn span(curve: &Curve) -> (f64, f64, (bool, bool)) {
    let rows = || curve.rows.iter().chain(curve.band.iter().flatten().flatten());
    let torques = || rows().flat_map(|row| [row.opening, row.closing]);
    let (low, high) = torques().fold((0.0_f64, 0.0_f64), |(low, high), t| (low.min(t), high.max(t)));
    let mut extent = high.max(-low);
    // Without any demand the limit is all there is to draw.
    let rated = curve.rated <= RATED_REACH * extent || extent == 0.0;
    if rated {
        extent = extent.max(curve.rated);
    }
    let peak = rated && curve.peak.is_some_and(|peak| peak <= PEAK_REACH * extent);
    let limit = [rated.then_some(curve.rated), curve.peak.filter(|_| peak)].into_iter().flatten().fold(0.0, f64::max);
    // A limit is drawn on the sides where something is asked for; without any demand, above.
    let low = if low < 0.0 { low.min(-limit) } else { 0.0 };
    let high = if high > 0.0 || low == 0.0 { high.max(limit) } else { 0.0 };
    let beyond = !rated || curve.peak.is_some() && !peak;
    let margin = MARGIN * (high - low);
    (low - margin, high + if beyond { HEADROOM * (high - low) } else { margin }, (rated, peak))
}
