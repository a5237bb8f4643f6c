//! The curved step: where the optimum is no corner, tangents alone creep along the valley floor.
//!
//! The linear programme has told which terms are active and how much each weighs. With the second derivatives of their weighted sum,
//! one linear system gives the step that keeps the active terms level and balances the curvature: Newton's step on the active set.
//! Source: Fletcher and Sainz de la Maza (1989); Byrd, Gould, Nocedal and Waltz (2004), on SLP-EQP; both from memory.

use super::variables::{DIMENSIONS, Point};
use crate::numerics::VARIABLES;

/// Step of the second differences; the errors of rounding and truncation are both about 1e-7 of the curvature.
const STEP: f64 = 1e-4;
/// Curvature added in every direction, so that a flat valley has a floor.
const FLOOR: f64 = 1e-4;
/// Variables, the largest objective, and at most as many active terms.
const SIZE: usize = DIMENSIONS + 1 + VARIABLES;

/// An active term: its slope, its value, and whether it is one of the objective.
#[derive(Clone, Copy, Debug)]
pub(crate) struct ActiveTerm {
    pub slope: [f64; VARIABLES],
    pub value: f64,
    pub objective: bool,
}

/// Second derivatives of a function at a point.
pub(crate) fn curvature(at: &Point, function: impl Fn(&Point) -> f64) -> [[f64; DIMENSIONS]; DIMENSIONS] {
    let moved = |i: usize, one: f64, j: usize, other: f64| {
        let mut point = *at;
        point[i] += one * STEP;
        point[j] += other * STEP;
        function(&point)
    };
    let centre = function(at);
    let mut curvature = [[0.0; DIMENSIONS]; DIMENSIONS];
    let mut single = [[0.0; 2]; DIMENSIONS];
    for i in 0..DIMENSIONS {
        single[i] = [moved(i, 1.0, i, 0.0), moved(i, -1.0, i, 0.0)];
        curvature[i][i] = (single[i][0] - 2.0 * centre + single[i][1]) / (STEP * STEP) + FLOOR;
    }
    for i in 0..DIMENSIONS {
        for j in 0..i {
            let mixed = moved(i, 1.0, j, 1.0) + moved(i, -1.0, j, -1.0);
            let straight = single[i][0] + single[i][1] + single[j][0] + single[j][1] - 2.0 * centre;
            curvature[i][j] = (mixed - straight) / (2.0 * STEP * STEP);
            curvature[j][i] = curvature[i][j];
        }
    }
    curvature
}

/// The step that levels the active terms under the curvature; `held[i]` is the step of a variable at its bound.
/// `None` where the system has no single answer.
pub(crate) fn step(
    curvature: &[[f64; DIMENSIONS]; DIMENSIONS],
    held: &[Option<f64>; DIMENSIONS],
    terms: &[ActiveTerm],
) -> Option<Point> {
    let size = DIMENSIONS + 1 + terms.len();
    let mut matrix = [[0.0; SIZE + 1]; SIZE];
    for i in 0..DIMENSIONS {
        if let Some(value) = held[i] {
            matrix[i][i] = 1.0;
            matrix[i][SIZE] = value;
            continue;
        }
        matrix[i][..DIMENSIONS].copy_from_slice(&curvature[i]);
        for (index, term) in terms.iter().enumerate() {
            matrix[i][DIMENSIONS + 1 + index] = term.slope[i];
        }
    }
    // The weights of the objective's terms sum to one; without such a term the largest objective stands alone.
    matrix[DIMENSIONS][SIZE] = 1.0;
    if terms.iter().all(|term| !term.objective) {
        matrix[DIMENSIONS][DIMENSIONS] = 1.0;
    }
    for (index, term) in terms.iter().enumerate() {
        let row = DIMENSIONS + 1 + index;
        matrix[row][..DIMENSIONS].copy_from_slice(&term.slope[..DIMENSIONS]);
        matrix[row][SIZE] = -term.value;
        if term.objective {
            matrix[row][DIMENSIONS] = -1.0;
            matrix[DIMENSIONS][row] = 1.0;
        }
    }
    eliminate(&mut matrix, size)?;
    Some(core::array::from_fn(|i| matrix[i][SIZE]))
}

/// Gauss–Jordan elimination with the largest pivot of each column; the right-hand side stands in the last column.
fn eliminate(matrix: &mut [[f64; SIZE + 1]; SIZE], size: usize) -> Option<()> {
    for column in 0..size {
        let pivot =
            (column..size).max_by(|&one, &other| matrix[one][column].abs().total_cmp(&matrix[other][column].abs()))?;
        if matrix[pivot][column].abs() < 1e-12 {
            return None;
        }
        matrix.swap(pivot, column);
        let line = matrix[column];
        let scale = 1.0 / line[column];
        for (row, values) in matrix[..size].iter_mut().enumerate() {
            let factor = values[column] * if row == column { 0.0 } else { scale };
            if factor != 0.0 {
                values.iter_mut().zip(&line).for_each(|(value, own)| *value -= factor * own);
            }
        }
        matrix[column].iter_mut().for_each(|value| *value *= scale);
    }
    Some(())
}

#[cfg(test)]
mod tests;
