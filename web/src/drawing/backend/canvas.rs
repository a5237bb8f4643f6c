//! plotters' canvas backend on a grid finer than the dots of the screen.
//!
//! Paths, polygons and the ground are [`CanvasBackend`]'s own. It knows whole units only, rounds the font and measures text with a
//! span that carries an inline style, which the page's content policy refuses: so the canvas is scaled down by [`FineCanvas::FINE`],
//! and text is measured and drawn here. Lines are gathered while their style stays.

use std::cell::RefCell;

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
    /// Colour and width of lines that are in the path and not drawn yet. A drawing is hundreds of dashes in a few styles: drawn style
    /// by style it costs a tenth, and a phone keeps up with the finger.
    pending: Option<(BackendColor, u32)>,
    font: RefCell<String>,
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
        let size = (wide * Self::FINE, high * Self::FINE);
        Some(FineCanvas { inner, context, size, pending: None, font: RefCell::default() })
    }

    fn set_font<S: BackendTextStyle>(&self, style: &S) {
        let font = format!("{}px {}", style.size(), style.family().as_str());
        if *self.font.borrow() != font {
            self.context.set_font(&font);
            self.font.replace(font);
        }
    }

    /// Draws the lines gathered so far.
    fn flush(&mut self) {
        if self.pending.take().is_some() {
            self.context.stroke();
        }
    }

    /// A path through points; whether it is lines or an area is the caller's.
    fn lead(&self, path: impl IntoIterator<Item = BackendCoord>) {
        for (at, (x, y)) in path.into_iter().enumerate() {
            let (x, y) = (f64::from(x), f64::from(y));
            if at == 0 { self.context.move_to(x, y) } else { self.context.line_to(x, y) }
        }
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
        self.flush();
        self.inner.present()
    }
    fn draw_pixel(&mut self, point: BackendCoord, color: BackendColor) -> Outcome {
        self.flush();
        self.inner.draw_pixel(point, color)
    }
    fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(&mut self, path: I, style: &S) -> Outcome {
        let BackendColor { rgb: (red, green, blue), alpha } = style.color();
        let wanted = (style.color(), style.stroke_width());
        if self.pending.is_none_or(|(BackendColor { rgb, alpha: seen }, width)| {
            (rgb, seen, width) != ((red, green, blue), alpha, wanted.1)
        }) {
            self.flush();
            self.context.begin_path();
            self.context.set_stroke_style_str(&format!("rgba({red},{green},{blue},{alpha})"));
            self.context.set_line_width(f64::from(wanted.1));
            self.pending = Some(wanted);
        }
        self.lead(path);
        Ok(())
    }
    fn fill_polygon<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(&mut self, path: I, style: &S) -> Outcome {
        self.flush();
        self.inner.fill_polygon(path, style)
    }
    fn draw_rect<S: BackendStyle>(&mut self, a: BackendCoord, b: BackendCoord, style: &S, fill: bool) -> Outcome {
        self.flush();
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
        self.flush();
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
