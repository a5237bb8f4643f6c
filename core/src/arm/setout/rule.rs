//! The rule of thumb: link square to the leaf when open, arm straight or a chosen bend from it when closed. Common practice, no source.

use crate::arm::Linkage;
use crate::job::{Arm, Elbow};
use crate::real::{cos, sin, sqrt};
use kurbo::common::{solve_quadratic, solve_quartic};
use serde::Serialize;

/// Least length of crank and link, m: the job's own.
const LEAST_M: f64 = 0.02;

/// Which length the rule finds no room for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum ShortLength {
    /// The crank.
    CrankM,
    /// The link.
    LinkM,
}

/// Lengths by the rule of thumb, or why there are none.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct RuleOfThumb {
    /// The arm; `null` where shaft and bracket leave no room for one, or where it would not pass through the swing.
    pub arm: Option<Arm>,
    /// The length that is short, and by how much, m; `null` where none is.
    pub short: Option<(ShortLength, f64)>,
}

/// Crank and link from shaft, bracket and bend, in closed form.
///
/// `shaft_m` and `bracket_m` in the crate's frame with the leaf closed, m; `open_rad` the swing; `bend_rad` the angle from straight between crank
/// and link when closed, 0 up to a right angle.
///
/// With `d` from shaft to bracket closed, `D` open, `q = D·ê_v` its part square to the open leaf and `σ = ±1` the side the link is on:
/// - open: `a² = D² − 2σqb + b²`, as the elbow is `b` from the bracket square to the leaf;
/// - closed: `d² = a² + b² + 2ab·cos β`.
///
/// Straight, `a + b = d` and `b = (d² − D²)/(2(d − σq))`. Bent, `a` is eliminated and a quartic in `b` is left, solved in closed form. Of several
/// arms the one with the shorter link is taken, among those that work through the swing.
#[must_use]
pub fn rule_of_thumb(shaft_m: (f64, f64), bracket_m: (f64, f64), open_rad: f64, bend_rad: f64) -> RuleOfThumb {
    let (u, v) = bracket_m;
    let (cosine, sine) = (cos(open_rad), sin(open_rad));
    let (dx, dy) = (u - shaft_m.0, v - shaft_m.1);
    let closed2 = dx * dx + dy * dy;
    // Shaft→bracket open, along the leaf's axes.
    let along = u - shaft_m.0 * cosine - shaft_m.1 * sine;
    let across = v + shaft_m.0 * sine - shaft_m.1 * cosine;
    let (open2, gain) = (along * along + across * across, closed2 - along * along - across * across);
    let mut answer = RuleOfThumb { arm: None, short: None };
    let mut least_short = f64::MAX;
    for side in [1.0, -1.0] {
        let q = side * across;
        for link_m in links(closed2, open2, gain, q, bend_rad) {
            let crank_m = sqrt(open2 - 2.0 * q * link_m + link_m * link_m);
            // Straight, the crank is what is left, below nothing too.
            let left_m = if bend_rad == 0.0 { sqrt(closed2) - link_m } else { crank_m };
            let short = [(ShortLength::LinkM, LEAST_M - link_m), (ShortLength::CrankM, LEAST_M - left_m)];
            let short = short.into_iter().filter(|(_, by)| *by > 0.0).max_by(|one, other| one.1.total_cmp(&other.1));
            if let Some((length, by)) = short {
                if by < least_short {
                    (answer.short, least_short) = (Some((length, by)), by);
                }
                continue;
            }
            // The elbow open stands the link's length from the bracket, square to the leaf: `(along, across − side·link)` from the shaft.
            let arm = Arm {
                shaft_x_m: shaft_m.0,
                shaft_y_m: shaft_m.1,
                bracket_u_m: u,
                bracket_v_m: v,
                crank_m,
                link_m,
                elbow: if along * side < 0.0 { Elbow::Left } else { Elbow::Right },
            };
            let works = Linkage::new(&arm, open_rad).defect().is_none();
            if works && answer.arm.is_none_or(|other| link_m < other.link_m) {
                answer.arm = Some(arm);
            }
        }
    }
    if answer.arm.is_some() {
        answer.short = None;
    }
    answer
}

/// Links that fulfil both conditions, not all of them positive.
fn links(closed2: f64, open2: f64, gain: f64, q: f64, bend_rad: f64) -> impl Iterator<Item = f64> {
    let straight = (bend_rad == 0.0).then(|| gain / (2.0 * (sqrt(closed2) - q)));
    let (cosine2, sine2) = (cos(bend_rad) * cos(bend_rad), sin(bend_rad) * sin(bend_rad));
    // (gain + 2qb − 2b²)² = 4b²·cos²β·(D² − 2qb + b²)
    let coefficients =
        [gain * gain, 4.0 * gain * q, 4.0 * (q * q - gain - cosine2 * open2), -8.0 * sine2 * q, 4.0 * sine2];
    let bent = (bend_rad != 0.0).then(|| {
        let [c0, c1, c2, c3, c4] = coefficients;
        // At a bend next to nothing the leading terms are nothing but the others' rounding; without them the lengths are a square of the bend off.
        let roots = if sine2 < 1e-12 {
            solve_quadratic(c0, c1, c2).into_iter().collect()
        } else {
            solve_quartic(c0, c1, c2, c3, c4)
        };
        // Squaring has let in arms folded the other way: there `2ab·cos β` is negative.
        roots.into_iter().filter(move |&b| gain + 2.0 * q * b - 2.0 * b * b >= 0.0)
    });
    straight.into_iter().chain(bent.into_iter().flatten())
}
