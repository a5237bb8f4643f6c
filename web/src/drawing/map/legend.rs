//! What each hatching means, beneath the map.

use kurbo::{Point, Rect};

use super::field::LIMITS;
use super::hatch::hatch_of;
use super::look::Look;
use crate::drawing::pen::{Dash, Ink, Pen};
use crate::drawing::surface::{Surface, corners};

/// Width at which two entries stand side by side, px.
const TWO: f64 = 560.0;
/// Size of a sample, px.
const SAMPLE: (f64, f64) = (30.0, 15.0);

fn columns(width: f64) -> usize {
    if width < TWO { 1 } else { 2 }
}

/// Rows the legend of some codes takes.
pub(super) fn rows(codes: &[u8], width: f64) -> usize {
    codes.len().div_ceil(columns(width))
}

/// Height of that many rows.
pub(super) fn height(rows: usize, text_size: f64) -> f64 {
    if rows == 0 { 0.0 } else { rows as f64 * row_height(text_size) + 0.5 * text_size }
}

fn row_height(text_size: f64) -> f64 {
    (1.6 * text_size).max(SAMPLE.1 + 4.0)
}

/// Draws it from `top` on.
pub(super) fn draw(surface: &mut Surface<'_>, codes: &[u8], top: f64, look: &Look) {
    let columns = columns(surface.size.width);
    let width = surface.size.width / columns as f64;
    for (index, &code) in codes.iter().enumerate() {
        let Some(limit) = LIMITS.get(usize::from(code) - 1) else { continue };
        let (left, row) = (width * (index % columns) as f64 + 8.0, (index / columns) as f64);
        let middle = top + (row + 0.5) * row_height(surface.text_size);
        let sample = Rect::from_center_size(Point::new(left + SAMPLE.0 / 2.0, middle), SAMPLE);
        let hatch = hatch_of(code);
        for piece in hatch.pieces(sample, 1.0, |_| true) {
            surface.line(&piece, hatch.pen);
        }
        let [a, b, c, d] = corners(sample);
        surface.line(&[a, b, c, d, a], Pen::thin(Ink::Faint, Dash::Solid));
        let words = look.word(*limit);
        let size = surface.text_box(words);
        let at = Point::new(sample.x1 + 8.0, middle - size.height / 2.0);
        surface.text(words, Rect::from_origin_size(at, size), Ink::Plain);
    }
}
