//! Stepping an ordinary differential equation with control of its error.
//!
//! The kept crates for this need `std` or an allocator per step, and none finds the moment a quantity crosses zero; what is needed here is
//! an embedded pair, one for stiff stretches, and one root, so it stands in this file and [`stiff`](super::stiff).

use super::stiff;
use super::trial::StepTrial;
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

/// Steps after each of which it is looked whether stability holds them short: the explicit pair takes no step longer than some 3.3 times the
/// shortest time constant, however smooth the motion.
const LOOKED_AT_EVERY: usize = 100;

/// Mean of those steps over that time constant from which on they are held short.
const HELD_SHORT: f64 = 2.5;

/// One step of an autonomous system `y' = f(y)` from a state with its slope: the fifth-order result. Its slope is the last stage.
fn explicit<const N: usize>(
    rate: impl Fn(&[f64; N]) -> [f64; N],
    state: &[f64; N],
    slope: &[f64; N],
    h: f64,
) -> StepTrial<N> {
    let mut slopes = [[0.0; N]; 7];
    slopes[0] = *slope;
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
    StepTrial { next, error, slope: slopes[6] }
}

/// Where an integration is on its way along the solution: way and speed first, then quantities that do not act back on either.
#[derive(Clone)]
pub struct Integrator<const N: usize> {
    pub time_s: f64,
    pub state: [f64; N],
    /// The rate at the state.
    pub slope: [f64; N],
    /// The step that is tried next, s.
    pub step_s: f64,
    /// Longest step, s.
    pub longest_s: f64,
    /// Longest way of one step.
    pub longest_way: f64,
    /// Error allowed in each quantity for one step, relative to the scale beside it.
    pub tolerance: f64,
    /// Scale of each quantity: an error below `tolerance × scale` counts for nothing.
    pub scale: [f64; N],
    /// Steps taken.
    pub steps: usize,
    /// Whether steps are those for stiff stretches.
    pub stiff: bool,
    /// When steps were last looked at, s.
    pub looked_s: f64,
}

impl<const N: usize> Integrator<N> {
    /// From a state, nothing walked yet.
    pub fn new(rate: impl Fn(&[f64; N]) -> [f64; N], state: [f64; N], scale: [f64; N]) -> Integrator<N> {
        Integrator {
            time_s: 0.0,
            state,
            slope: rate(&state),
            step_s: SHORTEST_S,
            longest_s: f64::MAX,
            longest_way: f64::MAX,
            tolerance: 1e-8,
            scale,
            steps: 0,
            stiff: false,
            looked_s: 0.0,
        }
    }

    /// One step tried from here.
    pub fn trial(&self, rate: impl Fn(&[f64; N]) -> [f64; N], h: f64) -> StepTrial<N> {
        if self.stiff {
            stiff::step(rate, &self.state, &self.slope, &self.scale, h)
        } else {
            explicit(rate, &self.state, &self.slope, h)
        }
    }

    /// Takes one step that keeps the tolerance, and returns its length, s.
    ///
    /// The next length follows from the error with the usual exponent, one over the order of the lesser of the pair and one more, factor 0.9,
    /// between a fifth and five times the last.
    pub fn advance(&mut self, rate: impl Fn(&[f64; N]) -> [f64; N]) -> f64 {
        self.look(&rate);
        loop {
            let h = self.step_s.clamp(SHORTEST_S, self.longest_s);
            let StepTrial { next, error, slope } = self.trial(&rate, h);
            let worst = (0..N).fold(0.0, |worst: f64, index| {
                let allowed = self.tolerance * self.scale[index].max(next[index].abs());
                let share = error[index].abs() / allowed;
                // A step that is tried may look beyond a limit, where the arm cannot follow: it has to be shorter.
                worst.max(if share.is_finite() { share } else { f64::INFINITY })
            });
            let exponent = if self.stiff { 0.25 } else { 0.2 };
            let factor = if worst > 0.0 { 0.9 / libm::pow(worst, exponent) } else { 5.0 };
            let leaps = (next[0] - self.state[0]).abs() > self.longest_way;
            self.step_s = h * if leaps { factor.min(0.5) } else { factor }.clamp(0.2, 5.0);
            if (worst <= 1.0 && !leaps) || h <= SHORTEST_S {
                (self.state, self.slope) = (next, slope);
                self.time_s += h;
                self.steps += 1;
                return h;
            }
        }
    }

    /// Whether stability holds the steps short. A leaf on a motor's line comes to its speed within milliseconds and then creeps along it for
    /// minutes; what is left of the difference falls off as `∂q̈/∂q̇` says.
    fn look(&mut self, rate: impl Fn(&[f64; N]) -> [f64; N]) {
        if self.stiff || self.steps == 0 || !self.steps.is_multiple_of(LOOKED_AT_EVERY) {
            return;
        }
        let mean_s = (self.time_s - self.looked_s) / LOOKED_AT_EVERY as f64;
        self.looked_s = self.time_s;
        let (_, by_speed) = stiff::derivatives(rate, &self.state, &self.slope, &self.scale);
        self.stiff = mean_s * by_speed[1].abs() > HELD_SHORT;
    }

    /// Length of the step from here at which `value` reaches zero, s, between 0 and `h`; it is positive at 0 and not at `h`.
    ///
    /// ITP (Oliveira and Takahashi 2020) on the step's own length: the point found is on the solution to the method's order.
    pub fn crossing_s(&self, rate: impl Fn(&[f64; N]) -> [f64; N], h: f64, value: impl Fn(&[f64; N]) -> f64) -> f64 {
        let at = |length: f64| value(&self.trial(&rate, length).next);
        let (before, behind) = (value(&self.state), at(h));
        if before <= 0.0 {
            return 0.0;
        }
        if behind >= 0.0 {
            return h;
        }
        solve_itp(|length| -at(length), 0.0, h, CROSSED_S, 1, 0.2 / h, -before, -behind)
    }
}

#[cfg(test)]
mod tests {
    use super::Integrator;

    #[test]
    fn a_step_beyond_where_there_is_a_rate_is_shortened() {
        let rate = |state: &[f64; 1]| [if state[0] > 1.0 { f64::NAN } else { 1.0 }];
        let mut walk = Integrator { step_s: 5.0, longest_s: 10.0, ..Integrator::new(rate, [0.5], [1.0]) };
        let length = walk.advance(rate);
        assert!(length > 0.0 && length <= 0.5);
        assert!((walk.state[0] - 0.5 - length).abs() < 1e-12);
    }
}
