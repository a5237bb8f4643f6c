//! Verdicts at their thresholds, and the wind limit of demands whose closed form is known.

use crate::bench::near;
use pintle_core::drive::{Rating, Verdict, WindLimit, WindLimitState};

#[test]
fn the_verdict_turns_at_one_and_at_the_reserve_asked_for() {
    let rating = |demand: f64| Rating::new(demand, 150.0, Some(200.0), 1.5);
    for (demand, verdict) in [
        (0.0, Verdict::Within),
        (99.9, Verdict::Within),
        (100.0, Verdict::Within),
        (100.1, Verdict::Tight),
        (150.0, Verdict::Tight),
        (150.1, Verdict::Over),
    ] {
        assert_eq!(rating(demand).verdict, verdict, "{demand}");
    }
    let rated = rating(75.0);
    assert_eq!((rated.utilisation, rated.reserve, rated.peak_utilisation), (0.5, Some(2.0), Some(0.375)));
    assert_eq!(rating(0.0).reserve, None);
    assert_eq!(Rating::new(75.0, 150.0, None, 1.5).peak_utilisation, None);
}

/// A demand that is linear in the pressure: `calm + (1 − calm)·(V/V₀)²` uses the operator up at V₀.
#[test]
fn the_wind_limit_is_where_the_rating_is_used_up() {
    let at = |calm: f64, limit: f64| move |speed: f64| calm + (1.0 - calm) * (speed / limit).powi(2);
    let found = |limit: WindLimit| (limit.state, limit.speed_m_s);
    let solved = WindLimit::solve(true, at(0.5, 20.0));
    assert_eq!(solved.state, WindLimitState::Found);
    near(solved.speed_m_s.expect("found"), 20.0, 1e-10);
    near(WindLimit::solve(true, at(0.2, 97.0)).speed_m_s.expect("found"), 97.0, 1e-10);
    near(WindLimit::solve(true, at(0.9, 0.3)).speed_m_s.expect("found"), 0.3, 1e-9);
    assert_eq!(found(WindLimit::solve(true, at(0.5, 100.0))), (WindLimitState::Found, Some(100.0)));
    assert_eq!(found(WindLimit::solve(true, at(0.5, 100.5))), (WindLimitState::AboveSearch, None));
    assert_eq!(found(WindLimit::solve(true, |_| 1.0)), (WindLimitState::Found, Some(0.0)));
    assert_eq!(found(WindLimit::solve(true, |_| 1.01)), (WindLimitState::OverWithoutWind, None));
    assert_eq!(found(WindLimit::solve(false, |_| 1.01)), (WindLimitState::OverWithoutWind, None));
    assert_eq!(found(WindLimit::solve(false, |_| 0.5)), (WindLimitState::NoWindLoad, None));
}
