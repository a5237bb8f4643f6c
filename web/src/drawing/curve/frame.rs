//! The curve's axes: what they span, and which limits are inside.

use std::ops::Deref;

use kurbo::{Rect, Size};
use pintle_core::units::{Quantity, System};

use super::Curve;
use crate::drawing::axes::{Axes, margin, ticks_up};
use crate::drawing::ticks;

/// The axes of a curve: leaf angle in degrees across, torque in N·m up.
#[derive(Clone, Debug)]
pub struct Frame {
    axes: Axes,
    /// Whether the line of the rated torque, and that of the peak torque, are inside.
    pub shows: (bool, bool),
}

impl Deref for Frame {
    type Target = Axes;

    fn deref(&self) -> &Axes {
        &self.axes
    }
}

/// A limit further off than this many times what is drawn so far would flatten the curve; it is named at the edge instead.
const RATED_REACH: f64 = 5.0;
const PEAK_REACH: f64 = 2.2;
/// Room beyond the outermost line, as part of the span.
const MARGIN: f64 = 0.07;
/// The same at the top where a limit beyond the axis is named.
const HEADROOM: f64 = 0.22;

impl Frame {
    /// Lays the axes on a surface.
    pub fn new(curve: &Curve, size: Size, text_size: f64, system: System) -> Frame {
        let unit = Quantity::Torque.unit(system).factor;
        let (low, high, shows) = span(curve);
        let line = 1.35 * text_size;
        let (top, bottom) = (2.0 * line + 4.0, size.height - 2.0 * line - 8.0);
        let torques = ticks_up((low, high), unit, bottom - top, text_size);
        let plot = Rect::new(margin(&torques, text_size), top, size.width - 0.9 * text_size, bottom);
        let angles = ticks::degrees((0.0, curve.open_deg), (plot.width() / (4.2 * text_size)) as usize);
        Frame { axes: Axes::new(plot, curve.open_deg, (low, high), angles, torques, unit), shows }
    }
}

/// Lowest and highest torque of the axis, N·m, and which limits are inside.
fn span(curve: &Curve) -> (f64, f64, (bool, bool)) {
    let rows = || curve.rows.iter().chain(curve.band.iter().flatten().flatten());
    let held = curve.held.iter().flatten().flat_map(|held| held.iter().map(|(_, torque)| *torque));
    let torques = rows().flat_map(|row| [row.opening, row.closing]).chain(held);
    let (low, high) = torques.fold((0.0_f64, 0.0_f64), |(low, high), t| (low.min(t), high.max(t)));
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
