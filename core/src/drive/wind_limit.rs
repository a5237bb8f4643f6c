//! The gust at which the operator runs out.

use kurbo::common::solve_itp;
use serde::Serialize;

/// Fastest gust that is searched, m/s; the same as the fastest a job may name.
const FASTEST_M_S: f64 = 100.0;

/// Gust speed to which the limit is solved, m/s.
const SOLVED_M_S: f64 = 1e-10;

/// Whether there is a limit in the range searched.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum WindLimitState {
    /// Found: below it the demand is within the rating, above it over.
    Found,
    /// Over the rating even in calm air.
    OverWithoutWind,
    /// The wind has no hold on the leaf.
    NoWindLoad,
    /// Within the rating up to 100 m/s.
    AboveSearch,
}

/// The gust speed at which the utilisation is 1, the wind always against.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct WindLimit {
    /// Whether there is one.
    pub state: WindLimitState,
    /// Gust speed at the gate, m/s; `null` unless found.
    pub speed_m_s: Option<f64>,
}

impl WindLimit {
    /// Solves `utilisation(V) = 1` for a gust speed.
    ///
    /// At each angle and direction `|T_shaft|` is a convex function of `V²`, and so is their largest: once within the rating in calm
    /// air, the demand crosses it at most once. The root is bracketed in 0…100 m/s and found by ITP (Oliveira and Takahashi 2020), which
    /// keeps the bracket and needs at most 41 evaluations; the answer lies within 1e-10 m/s.
    pub fn solve(has_wind_load: bool, utilisation: impl Fn(f64) -> f64) -> WindLimit {
        let none = |state| WindLimit { state, speed_m_s: None };
        let calm = utilisation(0.0) - 1.0;
        if calm > 0.0 {
            return none(WindLimitState::OverWithoutWind);
        }
        if !has_wind_load {
            return none(WindLimitState::NoWindLoad);
        }
        let found = |speed| WindLimit { state: WindLimitState::Found, speed_m_s: Some(speed) };
        if calm == 0.0 {
            return found(0.0);
        }
        let fastest = utilisation(FASTEST_M_S) - 1.0;
        if fastest < 0.0 {
            return none(WindLimitState::AboveSearch);
        }
        if fastest == 0.0 {
            return found(FASTEST_M_S);
        }
        found(solve_itp(
            |speed| utilisation(speed) - 1.0,
            0.0,
            FASTEST_M_S,
            SOLVED_M_S,
            1,
            0.2 / FASTEST_M_S,
            calm,
            fastest,
        ))
    }
}
