//! The inner loop: one arm at one leaf angle in some twenty operations, one square root and one division.
//!
//! With `P` the bracket, `S` the shaft, `e = S·P`, `c = S×P` and `D = d² = r² + s² − 2e`:
//! - `H = √(((a+b)² − D)·(D − (a−b)²))`, twice the height of the elbow over shaft→bracket times `d`;
//! - `N = (D − a² + b²)·c − k·H·(r² − e)`, `k = ±1` the side of the elbow;
//! - lever `û·(ẑ×P) = N/(2·D·b)` and `1/n = −k·H·D/N`.
//!
//! As the leaf turns, `e` and `c` turn like a vector: `e = e₀·cos θ − c₀·sin θ`, `c = c₀·cos θ + e₀·sin θ`. Cosine and sine of the leaf
//! angles are tabulated once for all arms, and no arctangent is needed anywhere but in the shaft's travel.

use crate::job::{Arm, Elbow};
use crate::real::{atan2, sqrt};
use core::f64::consts::TAU;

/// Difference of squared lengths within which an arm is straight: rounding, whose root would be a height of some 1e-8 m.
pub(super) const STRAIGHT_M2: f64 = 1e-12;

/// A leaf angle with all that does not depend on the arm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct SearchStation {
    pub leaf_rad: f64,
    pub cosine: f64,
    pub sine: f64,
    /// Largest moment asked of a shaft as fast as the leaf, both ways, N·m.
    pub effort_n_m: f64,
    /// Largest leaf moment both ways against the storm gust, N·m.
    pub storm_n_m: f64,
}

/// An arm with the products its whole swing shares.
#[derive(Clone, Copy, Debug)]
pub(crate) struct ArmKernel {
    shaft: (f64, f64),
    bracket: (f64, f64),
    pub crank_m: f64,
    pub link_m: f64,
    /// +1 elbow left, −1 right.
    pub side: f64,
    /// `S·P` and `S×P` closed, m².
    dot: f64,
    cross: f64,
    /// `r²`, `r² + s²`, m².
    bracket2: f64,
    both2: f64,
    /// `(a+b)²`, `(a−b)²`, `b² − a²`, m².
    longest2: f64,
    shortest2: f64,
    difference2: f64,
}

/// The products at one leaf angle; see the module.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Instant {
    /// `D`, m².
    pub reach2: f64,
    /// `H`, m².
    pub height: f64,
    /// `N`, m⁴.
    pub numerator: f64,
}

impl ArmKernel {
    pub fn new(arm: &Arm) -> ArmKernel {
        let (a, b) = (arm.crank_m, arm.link_m);
        let shaft = (arm.shaft_x_m, arm.shaft_y_m);
        let bracket = (arm.bracket_u_m, arm.bracket_v_m);
        let bracket2 = bracket.0 * bracket.0 + bracket.1 * bracket.1;
        ArmKernel {
            shaft,
            bracket,
            crank_m: a,
            link_m: b,
            side: arm.elbow.side(),
            dot: shaft.0 * bracket.0 + shaft.1 * bracket.1,
            cross: shaft.0 * bracket.1 - shaft.1 * bracket.0,
            bracket2,
            both2: bracket2 + shaft.0 * shaft.0 + shaft.1 * shaft.1,
            longest2: (a + b) * (a + b),
            shortest2: (a - b) * (a - b),
            difference2: (b - a) * (b + a),
        }
    }

    /// The arm it was made of.
    pub fn arm(&self) -> Arm {
        Arm {
            shaft_x_m: self.shaft.0,
            shaft_y_m: self.shaft.1,
            bracket_u_m: self.bracket.0,
            bracket_v_m: self.bracket.1,
            crank_m: self.crank_m,
            link_m: self.link_m,
            elbow: if self.side > 0.0 { Elbow::Left } else { Elbow::Right },
        }
    }

    /// `d²` from shaft to bracket, m².
    #[inline(always)]
    pub fn reach2(&self, cosine: f64, sine: f64) -> f64 {
        self.both2 - 2.0 * (self.dot * cosine - self.cross * sine)
    }

    #[inline(always)]
    pub fn at(&self, cosine: f64, sine: f64) -> Instant {
        let dot = self.dot * cosine - self.cross * sine;
        let cross = self.cross * cosine + self.dot * sine;
        let reach2 = self.both2 - 2.0 * dot;
        let spare = self.longest2 - reach2;
        let spare = if spare > STRAIGHT_M2 { spare } else { 0.0 };
        let height = sqrt(spare * (reach2 - self.shortest2));
        let numerator = (reach2 + self.difference2) * cross - self.side * height * (self.bracket2 - dot);
        Instant { reach2, height, numerator }
    }

    /// `S×P`, m²: shaft→bracket grows with the leaf angle where it is positive.
    pub fn cross(&self, cosine: f64, sine: f64) -> f64 {
        self.cross * cosine + self.dot * sine
    }

    /// A variable of the search: shaft x, shaft y, bracket u, crank, straightness.
    pub fn variable(&self, index: usize) -> f64 {
        let straightness = || sqrt(self.reach2(1.0, 0.0)) / (self.crank_m + self.link_m);
        match index {
            0 => self.shaft.0,
            1 => self.shaft.1,
            2 => self.bracket.0,
            3 => self.crank_m,
            _ => straightness(),
        }
    }

    /// Lever of the link about the hinge, m, positive when a pushing link opens the leaf.
    #[inline(always)]
    pub fn lever_m(&self, instant: &Instant) -> f64 {
        instant.numerator / (2.0 * instant.reach2 * self.link_m)
    }

    /// Bracket and elbow in plan, m.
    pub fn joints(&self, cosine: f64, sine: f64) -> [(f64, f64); 2] {
        let (u, v) = self.bracket;
        let bracket = (u * cosine - v * sine, u * sine + v * cosine);
        let Instant { reach2, height, .. } = self.at(cosine, sine);
        let (rx, ry) = (bracket.0 - self.shaft.0, bracket.1 - self.shaft.1);
        let along = (reach2 - self.difference2) / (2.0 * reach2);
        let across = self.side * height / (2.0 * reach2);
        [bracket, (self.shaft.0 + along * rx - across * ry, self.shaft.1 + along * ry + across * rx)]
    }

    /// The bracket pin with the leaf closed, m.
    pub fn bracket(&self) -> (f64, f64) {
        self.bracket
    }

    /// Its distance from the hinge, squared, m².
    pub fn bracket_radius2(&self) -> f64 {
        self.bracket2
    }

    /// The shaft, m.
    pub fn shaft(&self) -> (f64, f64) {
        self.shaft
    }

    /// Cosine of the angle between the link and the leaf's u-axis.
    pub fn link_along_leaf(&self, cosine: f64, sine: f64) -> f64 {
        let [(px, py), (ex, ey)] = self.joints(cosine, sine);
        ((px - ex) * cosine + (py - ey) * sine) / self.link_m
    }

    /// Shaft angle from closed to open, rad. A valid arm's crank turns one way only, so the sense of its lever unwraps it.
    pub fn travel_rad(&self, sense: f64, closed: &SearchStation, open: &SearchStation) -> f64 {
        let crank = |station: &SearchStation| {
            let [_, (x, y)] = self.joints(station.cosine, station.sine);
            (x - self.shaft.0, y - self.shaft.1)
        };
        let (from, to) = (crank(closed), crank(open));
        let turned = atan2(from.0 * to.1 - from.1 * to.0, from.0 * to.0 + from.1 * to.1);
        let turned = if self.side * sense > 0.0 { -turned } else { turned };
        if turned < 0.0 { turned + TAU } else { turned }
    }
}

impl Instant {
    /// `|1/n|`: leaf turned per crank turned; 0 at a dead point.
    #[inline(always)]
    pub fn inverse_ratio(&self) -> f64 {
        // The smallest positive number keeps a link through the hinge finite; such an arm is refused elsewhere.
        self.height * self.reach2 / (self.numerator.abs() + f64::MIN_POSITIVE)
    }
}

#[cfg(test)]
mod tests;
