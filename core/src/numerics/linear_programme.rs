//! A small linear programme: the step of the search.
//!
//! `minimise c·x` subject to `A·x ≤ b` and `lo ≤ x ≤ hi`. The simplex method works on the dual, which has one equation per variable
//! (at most [`VARIABLES`]) and one column per row of `A` and per bound, and which is feasible from the start with one bound of each
//! variable as its basis. A pivot costs variables × columns operations; between ten and forty pivots are usual, [`PIVOTS`] the end.

/// Most variables.
pub const VARIABLES: usize = 7;
/// Most rows beside the bounds.
pub const ROWS: usize = 112;
const COLUMNS: usize = ROWS + 2 * VARIABLES;
const PIVOTS: usize = 200;
/// Violation of a row that counts as none, and the least pivot.
const SLACK: f64 = 1e-11;

/// Room for one programme, reused from step to step so that nothing is allocated on the way.
pub struct Programme {
    rows: usize,
    columns: [[f64; COLUMNS]; VARIABLES],
    limits: [f64; COLUMNS],
    shares: [f64; VARIABLES],
    basis: [usize; VARIABLES],
}

/// A constraint that holds the minimiser in place, with its multiplier.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Active {
    /// A row, by the order it was added in.
    Row(usize, f64),
    /// A bound of a variable.
    Bound(usize),
}

/// What held a minimiser in place.
pub struct Basis {
    shares: [f64; VARIABLES],
    columns: [usize; VARIABLES],
}

impl Programme {
    pub fn new() -> Programme {
        Programme {
            rows: 0,
            columns: [[0.0; COLUMNS]; VARIABLES],
            limits: [0.0; COLUMNS],
            shares: [0.0; VARIABLES],
            basis: [0; VARIABLES],
        }
    }

    pub fn clear(&mut self) {
        self.rows = 0;
    }

    /// Adds `row·x ≤ limit`. Rows beyond [`ROWS`] are left out: the next step sees them again if they matter.
    pub fn add(&mut self, row: &[f64; VARIABLES], limit: f64) {
        if self.rows < ROWS {
            for (line, value) in self.columns.iter_mut().zip(row) {
                line[self.rows] = *value;
            }
            self.limits[self.rows] = limit;
            self.rows += 1;
        }
    }

    /// The minimiser. The programme is used up.
    pub fn solve(&mut self, cost: &[f64; VARIABLES], lo: &[f64; VARIABLES], hi: &[f64; VARIABLES]) -> [f64; VARIABLES] {
        let (first, last) = (self.rows, self.rows + 2 * VARIABLES);
        for i in 0..VARIABLES {
            for line in 0..VARIABLES {
                self.columns[line][first + 2 * i] = if line == i { -1.0 } else { 0.0 };
                self.columns[line][first + 2 * i + 1] = if line == i { 1.0 } else { 0.0 };
            }
            self.limits[first + 2 * i] = -lo[i];
            self.limits[first + 2 * i + 1] = hi[i];
        }
        // Dual: Σ A_j λ_j = −c. A lower bound carries a positive cost, an upper bound a negative one.
        let mut corner = *lo;
        for i in 0..VARIABLES {
            self.shares[i] = cost[i].abs();
            self.basis[i] = first + 2 * i + usize::from(cost[i] < 0.0);
            if cost[i] >= 0.0 {
                self.columns[i][..last].iter_mut().for_each(|value| *value = -*value);
            } else {
                corner[i] = hi[i];
            }
        }
        // Reduced limits are the rows' slacks at the corner the basis stands for.
        for (j, limit) in self.limits[..last].iter_mut().enumerate() {
            for i in 0..VARIABLES {
                let value = if cost[i] >= 0.0 { -self.columns[i][j] } else { self.columns[i][j] };
                *limit -= value * corner[i];
            }
        }
        for _ in 0..PIVOTS {
            let Some(entering) = self.most_violated(last) else { break };
            let Some(leaving) = self.leaving(entering) else { break };
            self.pivot(leaving, entering, last);
        }
        core::array::from_fn(|i| (lo[i] + self.limits[first + 2 * i]).clamp(lo[i], hi[i]))
    }

    /// What [`Programme::active`] reads, to be put back after another solution of the same rows.
    pub fn basis(&self) -> Basis {
        Basis { shares: self.shares, columns: self.basis }
    }

    /// Puts it back.
    pub fn put_back(&mut self, basis: &Basis) {
        (self.shares, self.basis) = (basis.shares, basis.columns);
    }

    /// What holds the last minimiser in place.
    pub fn active(&self) -> impl Iterator<Item = Active> + '_ {
        let first = self.rows;
        self.basis.iter().zip(&self.shares).map(move |(&column, &share)| {
            if column < first { Active::Row(column, share) } else { Active::Bound((column - first) / 2) }
        })
    }

    fn most_violated(&self, last: usize) -> Option<usize> {
        let (mut entering, mut least) = (None, -SLACK);
        for (j, &limit) in self.limits[..last].iter().enumerate() {
            if limit < least {
                (entering, least) = (Some(j), limit);
            }
        }
        entering
    }

    fn leaving(&self, entering: usize) -> Option<usize> {
        let (mut leaving, mut least) = (None, f64::MAX);
        for i in 0..VARIABLES {
            let value = self.columns[i][entering];
            if value > 1e-9 && self.shares[i] < least * value {
                (leaving, least) = (Some(i), self.shares[i] / value);
            }
        }
        leaving
    }

    fn pivot(&mut self, leaving: usize, entering: usize, last: usize) {
        self.basis[leaving] = entering;
        let scale = 1.0 / self.columns[leaving][entering];
        self.columns[leaving][..last].iter_mut().for_each(|value| *value *= scale);
        self.shares[leaving] *= scale;
        let (line, share) = (self.columns[leaving], self.shares[leaving]);
        for i in (0..VARIABLES).filter(|&i| i != leaving) {
            let factor = self.columns[i][entering];
            if factor != 0.0 {
                self.columns[i][..last].iter_mut().zip(&line).for_each(|(value, own)| *value -= factor * own);
                self.shares[i] -= factor * share;
            }
        }
        let factor = self.limits[entering];
        self.limits[..last].iter_mut().zip(&line).for_each(|(value, own)| *value -= factor * own);
    }
}

#[cfg(test)]
mod tests;
