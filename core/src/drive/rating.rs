//! Demand against the operator's rated torque.

use serde::Serialize;

/// Within the torque rating or not; no more than that is said.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum Verdict {
    /// The demand exceeds the rated torque.
    Over,
    /// Within the rated torque, with less reserve than asked for.
    Tight,
    /// Within the rated torque, with the reserve asked for.
    Within,
}

/// Demand compared with the ratings.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Rating {
    /// Demand over rated torque.
    pub utilisation: f64,
    /// Rated torque over demand; `null` where nothing is demanded.
    pub reserve: Option<f64>,
    /// Word for it.
    pub verdict: Verdict,
    /// Demand of steady movement over peak torque; `null` where the peak torque is unknown. With start and inertia it stands in the motion's own
    /// `peak_utilisation`.
    pub peak_utilisation: Option<f64>,
}

impl Rating {
    /// Compares a demand with the ratings, all N·m.
    #[must_use]
    pub fn new(demand_n_m: f64, rated_n_m: f64, peak_n_m: Option<f64>, required_reserve: f64) -> Rating {
        let reserve = Some(rated_n_m / demand_n_m).filter(|reserve| reserve.is_finite());
        let verdict = match reserve {
            Some(reserve) if reserve < 1.0 => Verdict::Over,
            Some(reserve) if reserve < required_reserve => Verdict::Tight,
            _ => Verdict::Within,
        };
        Rating {
            utilisation: demand_n_m / rated_n_m,
            reserve,
            verdict,
            peak_utilisation: peak_n_m.map(|peak| demand_n_m / peak),
        }
    }
}
