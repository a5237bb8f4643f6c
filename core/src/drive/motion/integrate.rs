//! Stepping an ordinary differential equation with control of its error.
//!
//! The kept crates for this need `std` or an allocator per step, and none finds the moment a quantity crosses zero; what is needed here is
//! one embedded pair and one root, so it stands in this file.

use kurbo::common::solve_itp;

/// Dormand and Prince, "A family of embedded Runge-Kutta formulae", J. Comput. Appl. Math. 6 (1980): stages.
const STAGES: [[f64; 6]; 6] = [
    [1.0 / 5.0, 0.0, 0.0, 0.0, 0.0, 0.0],
    [3.0 / 40.0, 9.0 / 40.0, 0.0, 0.0, 0.0, 0.0],
    [44.0 / 45.0, -56.0 / 15.0, 32.0 / 9.0, 0.0, 0.0, 0.0],
    [19372.0 / 6561.0, -25360.0 / 2187.0, 64448.0 / 6561.0, -212.0 / 729.0, 0.0, 0.0],
    [9017.0 / 3168.0, -355.0 / 33.0, 46732.0 / 5247.0, 49.0 / 176.0, -5103.0 / 18656.0, 0.0],
    [35.0 / 384.0, 0.0, 500.0 / 1113.0, 125.0 / 192.0, -2187.0 / 6784.0, 11.0 / 84.0],
];

/// Fifth-order weights less the fourth-order ones: the error of the pair.
const ERROR: [f64; 7] =
    [71.0 / 57600.0, 0.0, -71.0 / 16695.0, 71.0 / 1920.0, -17253.0 / 339200.0, 22.0 / 525.0, -1.0 / 40.0];

/// Shortest step, s: a load that jumps (a latch letting go) is walked over in steps no shorter than this.
const SHORTEST_S: f64 = 1e-9;

/// Time to which a crossing is found, s.
const CROSSED_S: f64 = 1e-12;

/// One step of an autonomous system `y' = f(y)`: the fifth-order result and the estimate of its error.
pub(super) fn step<const N: usize>(
    rate: impl Fn(&[f64; N]) -> [f64; N],
    state: &[f64; N],
    h: f64,
) -> ([f64; N], [f64; N]) {
    let mut slopes = [[0.0; N]; 7];
    slopes[0] = rate(state);
    let mut next = *state;
    for (stage, weights) in STAGES.iter().enumerate() {
        for (index, value) in next.iter_mut().enumerate() {
            let sum: f64 = weights.iter().zip(&slopes).map(|(weight, slope)| weight * slope[index]).sum();
            *value = state[index] + h * sum;
        }
        slopes[stage + 1] = rate(&next);
    }
    let error = core::array::from_fn(|index| {
        h * ERROR.iter().zip(&slopes).map(|(weight, slope)| weight * slope[index]).sum::<f64>()
    });
    (next, error)
}

/// A walk along the solution.
pub(super) struct Walk<const N: usize> {
    pub time_s: f64,
    pub state: [f64; N],
    /// The step that is tried next, s.
    pub step_s: f64,
    /// Longest step, s.
    pub longest_s: f64,
    /// Error allowed in each quantity for one step, relative to the scale beside it.
    pub tolerance: f64,
    /// Scale of each quantity: an error below `tolerance × scale` counts for nothing.
    pub scale: [f64; N],
}

impl<const N: usize> Walk<N> {
    /// Takes one step that keeps the tolerance, and returns its length, s.
    ///
    /// The next length follows from the error with the usual exponent 1/5, factor 0.9, between a fifth and five times the last.
    pub fn advance(&mut self, rate: impl Fn(&[f64; N]) -> [f64; N]) -> f64 {
        loop {
            let h = self.step_s.clamp(SHORTEST_S, self.longest_s);
            let (next, error) = step(&rate, &self.state, h);
            let worst = (0..N).fold(0.0, |worst: f64, index| {
                let allowed = self.tolerance * self.scale[index].max(next[index].abs());
                let share = error[index].abs() / allowed;
                // A step that is tried may look beyond a limit, where the arm cannot follow: it has to be shorter.
                worst.max(if share.is_finite() { share } else { f64::INFINITY })
            });
            let factor = if worst > 0.0 { 0.9 / libm::pow(worst, 0.2) } else { 5.0 };
            self.step_s = h * factor.clamp(0.2, 5.0);
            if worst <= 1.0 || h <= SHORTEST_S {
                self.state = next;
                self.time_s += h;
                return h;
            }
        }
    }
}

/// Length of the step from `state` at which `value` reaches zero, s, between 0 and `h`; it is positive at 0 and not at `h`.
///
/// ITP (Oliveira and Takahashi 2020) on the step's own length: the point found is on the solution to the method's order.
pub(super) fn crossing_s<const N: usize>(
    rate: impl Fn(&[f64; N]) -> [f64; N],
    state: &[f64; N],
    h: f64,
    value: impl Fn(&[f64; N]) -> f64,
) -> f64 {
    let at = |length: f64| value(&step(&rate, state, length).0);
    let (before, behind) = (value(state), at(h));
    if before <= 0.0 {
        return 0.0;
    }
    if behind >= 0.0 {
        return h;
    }
    solve_itp(|length| -at(length), 0.0, h, CROSSED_S, 1, 0.2 / h, -before, -behind)
}

#[cfg(test)]
mod tests {
    use super::Walk;

    #[test]
    fn a_step_beyond_where_there_is_a_rate_is_shortened() {
        let rate = |state: &[f64; 1]| [if state[0] > 1.0 { f64::NAN } else { 1.0 }];
        let mut walk = Walk { time_s: 0.0, state: [0.5], step_s: 5.0, longest_s: 10.0, tolerance: 1e-8, scale: [1.0] };
        let length = walk.advance(rate);
        assert!(length > 0.0 && length <= 0.5);
        assert!((walk.state[0] - 0.5 - length).abs() < 1e-12);
    }
}
