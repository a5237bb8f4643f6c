//! The map of places for the shaft: lines of equal reserve where an arm exists, hatching by the limit in the way elsewhere.
//!
//! The worker finds what each place is worth; here it is laid out over the plan. Every limit has a line type and direction of its own
//! beside its colour, so that the map reads without colour too.

mod arm;
mod contour;
mod draw;
mod field;
mod fit;
mod hatch;
mod legend;
mod look;

pub use field::code_of;
pub use look::{LIMIT_NAMES, Look};

use kurbo::{Point, Rect, Size};
use pintle_core::{
    fault::{Fault, FaultCode, Invalid},
    job::{Arm, Hand, Job, KeepOut, OperatorBody},
};

use super::surface::{Measure, Surface};
use super::view::View;
use field::Field;
use fit::Fit;

/// A map to be drawn: the site of a job's `setout` block, and what is known of each place.
#[derive(Clone, Debug)]
pub struct PadPicture {
    mirrored: bool,
    /// Shaft ranges, m, in the core's frame.
    area: Rect,
    bracket_v_m: f64,
    keep_out: Vec<KeepOut>,
    required_reserve: f64,
    field: Field,
    /// The best set-out's shaft, and the place looked at, m.
    best: Option<Point>,
    here: Option<Point>,
    /// Its arm, with what it moves.
    arm: Option<Arm>,
    open_rad: f64,
    leaf_m: f64,
    face_m: Option<f64>,
    /// The operator's body, where its size is known, and the turn of its base, rad.
    body: Option<OperatorBody>,
    turn_rad: f64,
}

impl PadPicture {
    /// A map of nothing yet.
    ///
    /// # Errors
    /// The job has no `setout` block.
    pub fn new(job: &Job, columns: usize, rows: usize) -> Result<PadPicture, Invalid> {
        let missing = || Invalid::from(Fault::new("setout", FaultCode::Missing));
        let setout = job.setout.as_ref().ok_or_else(missing)?;
        let ([x0, x1], [y0, y1]) = (setout.shaft_x_m, setout.shaft_y_m);
        Ok(PadPicture {
            mirrored: job.hand == Some(Hand::Left),
            area: Rect::new(x0, y0, x1, y1),
            bracket_v_m: setout.bracket_v_m,
            keep_out: job.standing().map(|(_, obstacle)| obstacle.place()).collect(),
            required_reserve: job.required_reserve(),
            field: Field::new(columns.max(1), rows.max(1)),
            best: None,
            here: None,
            arm: None,
            open_rad: job.open_rad(),
            leaf_m: job.leaf.length_m,
            face_m: job.leaf.face_m,
            body: job.operator.body,
            turn_rad: job.marks.unwrap_or_default().anchor_turn_rad(),
        })
    }

    /// Takes what is known: reserve of every place row by row (not a number where there is none), and its code, see [`code_of`].
    pub fn set(&mut self, reserves: &[f64], codes: &[u8]) {
        self.field.set(reserves, codes);
    }

    /// Marks the best set-out's shaft, m; `None` marks nothing.
    pub fn mark_best(&mut self, best: Option<(f64, f64)>) {
        self.best = best.map(Point::from);
    }

    /// Marks the place looked at.
    pub fn mark_here(&mut self, column: usize, row: usize) {
        self.here = Some(self.field.place(self.area, column, row));
    }

    /// Draws the arm of the place looked at; `None` draws none.
    pub fn mark_arm(&mut self, arm: Option<Arm>) {
        self.arm = arm;
    }

    /// Where the shaft stands at a column and row, m.
    pub fn place_m(&self, column: usize, row: usize) -> (f64, f64) {
        self.field.place(self.area, column, row).into()
    }

    /// Column and row of the place nearest to a px of the drawing.
    pub fn place_at(&self, view: &View, x: f64, y: f64) -> (usize, usize) {
        let at = self.fit(view).to_surface.inverse() * Point::new(x, y);
        self.field.nearest(self.area, at)
    }

    /// As an SVG document.
    pub fn svg(&self, view: &View, look: &Look) -> String {
        super::svg::svg(view, &mut |measure| self.lay(view, look, measure))
    }

    fn fit(&self, view: &View) -> Fit {
        let rows = legend::rows(&self.field.present(), view.width);
        Fit::new(self.area, self.mirrored, Size::new(view.width, view.height), view.text_size(), rows)
    }

    /// Lays the map out.
    pub(super) fn lay<'m>(&self, view: &View, look: &Look, measure: Measure<'m>) -> Surface<'m> {
        let mut surface = view.surface(measure);
        draw::draw(&mut surface, self, &self.fit(view), view, look);
        surface
    }
}
