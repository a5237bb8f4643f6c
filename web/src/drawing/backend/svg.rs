//! plotters' SVG backend on a grid ten times finer than the px.

use plotters_svg::SVGBackend;

use super::widths::width_em;

/// plotters-svg writes the font size divided by this; undone here, so that a size means the same on every backend.
const FONT_DIVISOR: f64 = 1.24;

/// [`SVGBackend`] with text measured and sized as on the canvas.
pub struct FineSvg<'a>(SVGBackend<'a>);

impl<'a> FineSvg<'a> {
    /// Backend units per px.
    pub const FINE: u32 = 10;

    /// A drawing of `width` by `height` px written into `text`.
    pub fn new(text: &'a mut String, width: f64, height: f64) -> FineSvg<'a> {
        let units = |px: f64| (px * f64::from(Self::FINE)).round() as u32;
        FineSvg(SVGBackend::with_string(text, (units(width), units(height))))
    }
}

/// Replaces the first tag by one whose size is in px and whose view box keeps the fine grid; corners of lines are round, as on the
/// canvas.
pub fn with_header(drawn: &str, width: f64, height: f64) -> String {
    let body = drawn.split_once('>').map_or("", |(_, body)| body);
    let fine = f64::from(FineSvg::FINE);
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {} {}\" \
         stroke-linejoin=\"round\">{body}",
        (width * fine).round(),
        (height * fine).round(),
    )
}

mod forward {
    use super::{FONT_DIVISOR, FineSvg, SVGBackend, width_em};
    use plotters::prelude::DrawingBackend;
    use plotters_backend::{
        BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingErrorKind, FontFamily, FontStyle,
        FontTransform, text_anchor,
    };

    type Outcome = Result<(), DrawingErrorKind<<SVGBackend<'static> as DrawingBackend>::ErrorType>>;

    /// A text style whose size survives plotters-svg's divisor.
    struct Undivided<'s, S>(&'s S);

    impl<S: BackendTextStyle> BackendTextStyle for Undivided<'_, S> {
        type FontError = S::FontError;

        fn color(&self) -> BackendColor {
            self.0.color()
        }
        fn size(&self) -> f64 {
            self.0.size() * FONT_DIVISOR
        }
        fn transform(&self) -> FontTransform {
            self.0.transform()
        }
        fn style(&self) -> FontStyle {
            self.0.style()
        }
        fn anchor(&self) -> text_anchor::Pos {
            self.0.anchor()
        }
        fn family(&self) -> FontFamily<'_> {
            self.0.family()
        }
        fn layout_box(&self, text: &str) -> Result<((i32, i32), (i32, i32)), Self::FontError> {
            self.0.layout_box(text)
        }
        fn draw<E, DrawFunc: FnMut(i32, i32, BackendColor) -> Result<(), E>>(
            &self,
            text: &str,
            pos: BackendCoord,
            draw: DrawFunc,
        ) -> Result<Result<(), E>, Self::FontError> {
            self.0.draw(text, pos, draw)
        }
    }

    impl DrawingBackend for FineSvg<'_> {
        type ErrorType = <SVGBackend<'static> as DrawingBackend>::ErrorType;

        fn get_size(&self) -> (u32, u32) {
            self.0.get_size()
        }
        fn ensure_prepared(&mut self) -> Outcome {
            self.0.ensure_prepared()
        }
        fn present(&mut self) -> Outcome {
            self.0.present()
        }
        fn draw_pixel(&mut self, point: BackendCoord, color: BackendColor) -> Outcome {
            self.0.draw_pixel(point, color)
        }
        fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(&mut self, path: I, style: &S) -> Outcome {
            self.0.draw_path(path, style)
        }
        fn fill_polygon<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
            &mut self,
            path: I,
            style: &S,
        ) -> Outcome {
            self.0.fill_polygon(path, style)
        }
        fn draw_rect<S: BackendStyle>(&mut self, a: BackendCoord, b: BackendCoord, style: &S, fill: bool) -> Outcome {
            self.0.draw_rect(a, b, style, fill)
        }
        fn draw_text<S: BackendTextStyle>(&mut self, text: &str, style: &S, at: BackendCoord) -> Outcome {
            self.0.draw_text(text, &Undivided(style), at)
        }
        fn estimate_text_size<S: BackendTextStyle>(
            &self,
            text: &str,
            style: &S,
        ) -> Result<(u32, u32), DrawingErrorKind<Self::ErrorType>> {
            Ok(((width_em(text) * style.size()).ceil() as u32, style.size().ceil() as u32))
        }
    }
}
