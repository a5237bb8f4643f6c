//! A driven run by where the shaft was.

use alloc::vec::Vec;
use kurbo::common::solve_itp;

/// Place within a step to which a way is found, as a part of the step.
const FOUND: f64 = 1e-10;

/// Where the shaft was and how fast, step by step; the way never turns back.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Track {
    /// Time from the start, s, progress from closed, rad, and its speed, rad/s.
    pub steps: Vec<[f64; 3]>,
}

impl Track {
    /// Speed of the shaft where it had turned so far from closed, rad/s, magnitude; `None` where the run does not come to it.
    ///
    /// By the cubic that keeps progress and speed at both ends of a step.
    pub fn speed_at(&self, progress_rad: f64) -> Option<f64> {
        self.steps.windows(2).find_map(|pair| {
            let ([t0, from, v0], [t1, to, v1]) = (pair[0], pair[1]);
            let (h, way) = (t1 - t0, to - from);
            let wanted = (progress_rad - from) / way;
            if !(0.0..=1.0).contains(&wanted) {
                return None;
            }
            // Ends of the step first: there the speed is known.
            if wanted == 0.0 || wanted == 1.0 {
                return Some(if wanted == 0.0 { v0 } else { v1 }.abs());
            }
            let (s0, s1) = (v0 * h / way, v1 * h / way);
            let share = |u: f64| u * u * (3.0 - 2.0 * u) + u * (1.0 - u) * (s0 * (1.0 - u) - s1 * u);
            let at = solve_itp(|u| share(u) - wanted, 0.0, 1.0, FOUND, 1, 0.2, -wanted, 1.0 - wanted);
            let slope = 6.0 * at * (1.0 - at) + s0 * (1.0 - at) * (1.0 - 3.0 * at) + s1 * at * (3.0 * at - 2.0);
            Some((slope * way / h).abs())
        })
    }
}
