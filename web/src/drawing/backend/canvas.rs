//! plotters' canvas backend on a grid finer than the dots of the screen.
//!
//! Paths, polygons and the ground are [`CanvasBackend`]'s own. It knows whole units only, rounds the font and measures text with a
//! span that carries an inline style, which the page's content policy refuses: so the canvas is scaled down by [`FineCanvas::FINE`],
//! and text is measured and drawn here.

use plotters::prelude::DrawingBackend;
use plotters_backend::text_anchor::{HPos, VPos};
use plotters_backend::{BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingErrorKind};
use plotters_canvas::CanvasBackend;
use wasm_bindgen::JsCast;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

/// The canvas, its context scaled to the fine grid, and plotters' backend for it.
pub struct FineCanvas {
    inner: CanvasBackend,
    context: CanvasRenderingContext2d,
    size: (u32, u32),
}

type Error = <CanvasBackend as DrawingBackend>::ErrorType;
type Outcome = Result<(), DrawingErrorKind<Error>>;

impl FineCanvas {
    /// Backend units per dot of the device; even, so that the middle of a dot is on the grid.
    pub const FINE: u32 = 8;

    /// Sizes the canvas in dots and prepares its context. `None` when the canvas has no 2D context to give.
    pub fn new(canvas: HtmlCanvasElement, width: f64, height: f64, pixel_ratio: f64) -> Option<FineCanvas> {
        let dots = |px: f64| (px * pixel_ratio).round() as u32;
        let (wide, high) = (dots(width), dots(height));
        // Giving a canvas its size clears it and its context; done only when it changes, as it is slow.
        if canvas.width() != wide || canvas.height() != high {
            canvas.set_width(wide);
            canvas.set_height(high);
        }
        let context: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.dyn_into().ok()?;
        let scale = 1.0 / f64::from(Self::FINE);
        context.set_transform(scale, 0.0, 0.0, scale, 0.0, 0.0).ok()?;
        context.set_line_join("round");
        let inner = CanvasBackend::with_canvas_object(canvas)?;
        Some(FineCanvas { inner, context, size: (wide * Self::FINE, high * Self::FINE) })
    }

    fn set_font<S: BackendTextStyle>(&self, style: &S) {
        self.context.set_font(&format!("{}px {}", style.size(), style.family().as_str()));
    }
}

impl DrawingBackend for FineCanvas {
    type ErrorType = Error;

    fn get_size(&self) -> (u32, u32) {
        self.size
    }
    fn ensure_prepared(&mut self) -> Outcome {
        self.inner.ensure_prepared()
    }
    fn present(&mut self) -> Outcome {
        self.inner.present()
    }
    fn draw_pixel(&mut self, point: BackendCoord, color: BackendColor) -> Outcome {
        self.inner.draw_pixel(point, color)
    }
    fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(&mut self, path: I, style: &S) -> Outcome {
        self.inner.draw_path(path, style)
    }
    fn fill_polygon<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(&mut self, path: I, style: &S) -> Outcome {
        self.inner.fill_polygon(path, style)
    }
    fn draw_rect<S: BackendStyle>(&mut self, a: BackendCoord, b: BackendCoord, style: &S, fill: bool) -> Outcome {
        self.inner.draw_rect(a, b, style, fill)
    }

    fn estimate_text_size<S: BackendTextStyle>(
        &self,
        text: &str,
        style: &S,
    ) -> Result<(u32, u32), DrawingErrorKind<Error>> {
        self.set_font(style);
        let width = self.context.measure_text(text).map_or(0.0, |measured| measured.width());
        Ok((width.ceil() as u32, style.size().ceil() as u32))
    }

    /// The baseline stands where plotters-svg puts it (0.76 of the size below the top, half an x-height below the middle or above
    /// the bottom), so that both backends agree. Turned text is not needed here and is drawn level.
    fn draw_text<S: BackendTextStyle>(&mut self, text: &str, style: &S, at: BackendCoord) -> Outcome {
        let BackendColor { rgb: (red, green, blue), alpha } = style.color();
        let anchor = style.anchor();
        let below = match anchor.v_pos {
            VPos::Top => 0.76,
            VPos::Center => 0.26,
            VPos::Bottom => -0.26,
        };
        self.set_font(style);
        self.context.set_text_align(match anchor.h_pos {
            HPos::Left => "left",
            HPos::Center => "center",
            HPos::Right => "right",
        });
        self.context.set_text_baseline("alphabetic");
        self.context.set_fill_style_str(&format!("rgba({red},{green},{blue},{alpha})"));
        // A context that is lost draws nothing; the page redraws when it is restored.
        let _ = self.context.fill_text(text, f64::from(at.0), f64::from(at.1) + below * style.size());
        Ok(())
    }
}
