//! The scale bar: a round length of the system's own unit, so that a print of any size still tells its scale.

use kurbo::Rect;
use pintle_core::units::{Quantity, System, show};

use super::Fit;
use crate::drawing::pen::{Dash, Ink, Pen};
use crate::drawing::place::Places;
use crate::drawing::surface::{Surface, corners};
use crate::drawing::ticks::round_steps;

/// Height of the bar, px.
const HEIGHT: f64 = 4.0;

/// Draws it at the lower left corner.
pub fn draw(surface: &mut Surface<'_>, places: &mut Places, fit: &Fit, system: System) {
    let unit_m = Quantity::Length.unit(system).factor;
    let most = (0.3 * surface.size.width).min(160.0);
    let length_m = round_below(most / (fit.scale * unit_m)) * unit_m;
    let width = length_m * fit.scale;
    let text = show(length_m, Quantity::Length, system);
    let size = surface.text_box(&text);
    let (left, bottom) = (8.0, surface.size.height - 6.0);
    let bar = Rect::new(left, bottom - HEIGHT, left + width, bottom);
    // The first half is filled, the second open.
    let pen = Pen::thin(Ink::Plain, Dash::Solid);
    let [a, b, c, d] = corners(bar);
    surface.line(&[a, b, c, d, a], pen);
    surface.fill(&corners(Rect { x1: bar.center().x, ..bar }), Ink::Plain);
    let area = Rect::from_origin_size((bar.x1 + 6.0, surface.size.height - 1.0 - size.height), size);
    surface.text(&text, area, Ink::Plain);
    places.take(bar.union(area));
}

/// The largest round step that is not above a value.
fn round_below(value: f64) -> f64 {
    round_steps().map(|(step, _)| step).take_while(|step| *step <= value).last().unwrap_or(value)
}

#[cfg(test)]
mod tests {
    #[test]
    fn round_lengths_below() {
        for (value, expected) in [(0.99, 0.5), (1.0, 1.0), (4.9, 2.0), (5.0, 5.0), (73.0, 50.0), (0.03, 0.02)] {
            assert!((super::round_below(value) - expected).abs() < 1e-12, "{value}");
        }
    }
}
