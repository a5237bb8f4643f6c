//! What is known of each place of the grid.

use kurbo::{Point, Rect};
use pintle_core::{arm::Limit, plan::Pad};

/// A place the search has not come to.
pub const NOT_YET: u8 = 255;

/// Limits by their code, which counts from 1; 0 is a place with an arm.
pub const LIMITS: [Limit; 17] = [
    Limit::Straightness,
    Limit::SquareDeg,
    Limit::LeastLeverM,
    Limit::ShaftTravelDeg,
    Limit::CrankM,
    Limit::LinkM,
    Limit::BracketUM,
    Limit::KeepOut,
    Limit::Arm,
    Limit::MostShaftTorqueNM,
    Limit::TapeArm,
    Limit::TapeLeastLeverM,
    Limit::TapeShaftTravelDeg,
    Limit::TapeKeepOut,
    Limit::ShaftXM,
    Limit::ShaftYM,
    Limit::StepM,
];

/// The code of what the map says of a place.
pub fn code_of(pad: Option<&Pad>) -> u8 {
    let Some(pad) = pad else { return NOT_YET };
    let Some(change) = pad.ruled_out else {
        return if pad.shaft_torque_n_m.is_some() { 0 } else { limit_code(Limit::Arm) };
    };
    limit_code(change.limit)
}

fn limit_code(limit: Limit) -> u8 {
    LIMITS.iter().position(|&known| known == limit).map_or(NOT_YET - 1, |index| index as u8 + 1)
}

/// Reserves and codes of a grid, row by row.
#[derive(Clone, Debug)]
pub(super) struct Field {
    pub columns: usize,
    pub rows: usize,
    reserves: Vec<f64>,
    codes: Vec<u8>,
    complete: bool,
}

impl Field {
    pub fn new(columns: usize, rows: usize) -> Field {
        let count = columns * rows;
        Field { columns, rows, reserves: vec![f64::NAN; count], codes: vec![NOT_YET; count], complete: false }
    }

    pub fn set(&mut self, reserves: &[f64], codes: &[u8]) {
        let count = self.columns * self.rows;
        if reserves.len() != count || codes.len() != count {
            return;
        }
        self.complete = !codes.contains(&NOT_YET);
        (self.reserves, self.codes) = (reserves.to_vec(), codes.to_vec());
        self.spread();
    }

    /// A place not looked at yet shows what the coarser grid has at its corner.
    fn spread(&mut self) {
        for index in 0..self.codes.len() {
            if self.codes[index] != NOT_YET {
                continue;
            }
            let (column, row) = (index % self.columns, index / self.columns);
            let corner = |apart: usize| (row - row % apart) * self.columns + column - column % apart;
            // Rows come in order, so a corner that was spread itself says the same.
            if let Some(known) = [2, 4, 8, 16].into_iter().map(corner).find(|&corner| self.codes[corner] != NOT_YET) {
                (self.reserves[index], self.codes[index]) = (self.reserves[known], self.codes[known]);
            }
        }
    }

    /// Whether every place was looked at.
    pub fn complete(&self) -> bool {
        self.complete
    }

    /// Codes of limits that occur, in the table's order.
    pub fn present(&self) -> Vec<u8> {
        (1..=LIMITS.len() as u8).filter(|code| self.codes.contains(code)).collect()
    }

    /// Least and greatest finite reserve.
    pub fn range(&self) -> Option<(f64, f64)> {
        let kept = self.codes.iter().zip(&self.reserves).filter(|(code, reserve)| **code == 0 && reserve.is_finite());
        kept.fold(None, |range, (_, &reserve)| match range {
            None => Some((reserve, reserve)),
            Some((least, most)) => Some((f64::min(least, reserve), f64::max(most, reserve))),
        })
    }

    /// The reserve of a place; `None` where there is no arm.
    pub fn reserve(&self, column: usize, row: usize) -> Option<f64> {
        let index = row * self.columns + column;
        Some(self.reserves[index]).filter(|reserve| self.codes[index] == 0 && reserve.is_finite())
    }

    /// Where a point of the area lies on the grid, in columns and rows.
    fn on_grid(&self, area: Rect, at: Point) -> (f64, f64) {
        let along = |value: f64, least: f64, most: f64, count: usize| {
            if most > least { ((value - least) / (most - least)).clamp(0.0, 1.0) * (count - 1) as f64 } else { 0.0 }
        };
        (along(at.x, area.x0, area.x1, self.columns), along(at.y, area.y0, area.y1, self.rows))
    }

    /// The point of the area at a column and row; the middle where there is one only.
    pub fn place(&self, area: Rect, column: usize, row: usize) -> Point {
        let along = |least: f64, most: f64, index: usize, count: usize| {
            if count < 2 { 0.5 * (least + most) } else { least + (most - least) * index as f64 / (count - 1) as f64 }
        };
        Point::new(along(area.x0, area.x1, column, self.columns), along(area.y0, area.y1, row, self.rows))
    }

    pub fn nearest(&self, area: Rect, at: Point) -> (usize, usize) {
        let (column, row) = self.on_grid(area, at);
        (column.round() as usize, row.round() as usize)
    }

    /// Code and reserve at a point: between four places with an arm the mean by distance, elsewhere that of the nearest.
    pub fn at(&self, area: Rect, at: Point) -> (u8, f64) {
        let (column, row) = self.on_grid(area, at);
        let nearest = row.round() as usize * self.columns + column.round() as usize;
        let (left, low) = (column.floor() as usize, row.floor() as usize);
        let (right, high) = ((left + 1).min(self.columns - 1), (low + 1).min(self.rows - 1));
        let corners = [(left, low), (right, low), (left, high), (right, high)].map(|(c, r)| self.reserve(c, r));
        let [Some(a), Some(b), Some(c), Some(d)] = corners else {
            return (self.codes[nearest], self.reserves[nearest]);
        };
        let (across, up) = (column - left as f64, row - low as f64);
        let (lower, upper) = (a + (b - a) * across, c + (d - c) * across);
        (0, lower + (upper - lower) * up)
    }
}
