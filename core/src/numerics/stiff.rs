//! A step for stretches where stability, not accuracy, would hold an explicit step short: a linearly implicit Runge–Kutta method.
//!
//! RODAS, order 4 with an embedded method of order 3, L-stable and stiffly accurate. Source: Hairer and Wanner, Solving Ordinary Differential
//! Equations II, 2nd ed. (1996), section VI.4, coefficients from memory; the tests hold the order they promise. It wants the derivatives
//! of the rate, which are taken by difference quotients in the two quantities that act back: way and speed.

use super::trial::StepTrial;

const GAMMA: f64 = 0.25;
/// Stages in their transformed variables: what of the earlier ones makes the place a stage is evaluated at, and what is added over the step.
const PLACES: [[f64; 4]; 4] = [
    [1.544, 0.0, 0.0, 0.0],
    [0.946_678_528_081_582_6, 0.255_701_169_898_328_4, 0.0, 0.0],
    [3.314_825_187_068_521, 2.896_124_015_972_201, 0.998_641_913_997_781_7, 0.0],
    [1.221_224_509_226_641, 6.019_134_481_288_629, 12.537_083_329_320_87, -0.687_886_036_105_895],
];
const ADDED: [[f64; 5]; 6] = [
    [0.0; 5],
    [-5.6688, 0.0, 0.0, 0.0, 0.0],
    [-2.430_093_356_833_875, -0.206_359_915_709_191_5, 0.0, 0.0, 0.0],
    [-0.107_352_905_815_137_5, -9.594_562_251_023_355, -20.470_286_148_096_16, 0.0, 0.0],
    [7.496_443_313_967_647, -10.246_804_314_643_52, -33.999_903_528_199_05, 11.708_908_932_061_6, 0.0],
    [
        8.083_246_795_921_522,
        -7.981_132_988_064_893,
        -31.521_594_328_743_71,
        16.319_305_431_231_36,
        -6.058_818_238_834_054,
    ],
];

/// Step of the difference quotients over the scale of a quantity.
const NUDGE: f64 = 1e-7;

/// Derivatives of the rate by way and by speed at a state whose rate is `slope`. They are taken towards where the motion comes from: beyond
/// a limit ahead the arm may not follow.
pub(super) fn derivatives<const N: usize>(
    rate: impl Fn(&[f64; N]) -> [f64; N],
    state: &[f64; N],
    slope: &[f64; N],
    scale: &[f64; N],
) -> ([f64; N], [f64; N]) {
    let by = |index: usize| {
        let mut moved = *state;
        moved[index] -= if state[1] < 0.0 { -NUDGE } else { NUDGE } * scale[index];
        let step = moved[index] - state[index];
        let there = rate(&moved);
        core::array::from_fn(|i| (there[i] - slope[i]) / step)
    };
    (by(0), by(1))
}

/// One step of an autonomous system from a state with its slope, in which the first quantity is the way, the second its rate, and none of the
/// others acts back.
pub(super) fn step<const N: usize>(
    rate: impl Fn(&[f64; N]) -> [f64; N],
    state: &[f64; N],
    slope: &[f64; N],
    scale: &[f64; N],
    h: f64,
) -> StepTrial<N> {
    let (by_way, by_speed) = derivatives(&rate, state, slope, scale);
    let inverse = 1.0 / (h * GAMMA);
    // (1/(hγ) − J)·u = r: way and speed by Cramer's rule, the others follow.
    let determinant = (inverse - by_way[0]) * (inverse - by_speed[1]) - by_speed[0] * by_way[1];
    let solved = |right: [f64; N]| -> [f64; N] {
        let way = (right[0] * (inverse - by_speed[1]) + by_speed[0] * right[1]) / determinant;
        let speed = (right[1] * (inverse - by_way[0]) + by_way[1] * right[0]) / determinant;
        core::array::from_fn(|i| match i {
            0 => way,
            1 => speed,
            _ => (right[i] + by_way[i] * way + by_speed[i] * speed) / inverse,
        })
    };
    let mut stages = [[0.0; N]; 6];
    let mut place = *state;
    for stage in 0..6 {
        let here = if stage == 0 { *slope } else { rate(&place) };
        let earlier = &stages[..stage];
        let right = core::array::from_fn(|i| {
            here[i] + ADDED[stage].iter().zip(earlier).map(|(weight, own)| weight * own[i]).sum::<f64>() / h
        });
        stages[stage] = solved(right);
        place = core::array::from_fn(|i| match PLACES.get(stage) {
            Some(weights) => {
                state[i] + weights.iter().zip(&stages[..=stage]).map(|(weight, own)| weight * own[i]).sum::<f64>()
            }
            // The last two add their stage to the place they were evaluated at; the last is the estimate of the error.
            None => place[i] + stages[stage][i],
        });
    }
    StepTrial { next: place, error: stages[5], slope: rate(&place) }
}

#[cfg(test)]
mod tests {
    use super::super::integrator::Integrator;
    use super::step;
    use libm::{cos, exp, sin};

    const SCALE: [f64; 3] = [1.0; 3];

    /// A pendulum of small swing, `x'' = −x`, and `∫x·x'`: halved steps leave a sixteenth of the error.
    #[test]
    fn stiff_step_is_of_the_fourth_order() {
        let rate = |&[x, v, _]: &[f64; 3]| [v, -x, x * v];
        let error = |steps: u32| {
            let mut state = [1.0, 0.0, 0.0];
            for _ in 0..steps {
                state = step(rate, &state, &rate(&state), &SCALE, 2.0 / f64::from(steps)).next;
            }
            [state[0] - cos(2.0), state[1] + sin(2.0), state[2] - 0.5 * (cos(2.0) * cos(2.0) - 1.0)]
        };
        for (coarse, fine) in error(20).into_iter().zip(error(40)) {
            let order = libm::log2((coarse / fine).abs());
            assert!(order > 3.7, "{order}");
        }
    }

    /// `v' = −λ(v − 1 − x)` with λ = 10 000: the fast part dies at once, however long the step, and what is left is `x' = 1 + x` to first order in 1/λ.
    #[test]
    fn stiff_step_is_not_held_short_by_a_fast_part() {
        let fast = 1e4;
        let rate = |&[x, v, _]: &[f64; 3]| [v, -fast * (v - 1.0 - x), v * v];
        let mut walk = Integrator { step_s: 1e-6, stiff: true, ..Integrator::new(rate, [0.0; 3], SCALE) };
        while walk.time_s < 1.0 {
            walk.longest_s = 1.0 - walk.time_s;
            walk.advance(rate);
        }
        assert!(walk.steps < 300, "{}", walk.steps);
        // Both roots of r² = −λ(r − 1), x = −1 + A·e^(r₁t) + B·e^(r₂t) from rest.
        let root = libm::sqrt(fast * fast + 4.0 * fast);
        // The greater root without cancellation.
        let (slow, quick) = (2.0 * fast / (fast + root), -0.5 * (fast + root));
        let (a, b) = (-quick / (slow - quick), slow / (slow - quick));
        let [x, v, _] = walk.state;
        assert!((x - (a * exp(slow) + b * exp(quick) - 1.0)).abs() < 1e-6, "{x}");
        assert!((v - a * slow * exp(slow)).abs() < 1e-6, "{v}");
    }
}
