//! Limits, stops, coasting, the push by hand and duty, each by its closed form on the arm's own geometry.

use crate::bench::{Arm, EFFICIENCY, FRICTION, INERTIA, LENGTH, WIND, bench, demand, near, on_an_arm};
use crate::jobs::planned;
use pintle_core::{
    drive::{CoastState, coast},
    plan::{Coast, EndStop, Motion},
};
use serde_json::{Value, json};
use std::f64::consts::FRAC_PI_2;

fn motion(value: &Value, facts: Value) -> Motion {
    let mut value = value.clone();
    value["motion"] = facts;
    planned(&value).motion.expect("motion")
}

/// Leaf angle at which the crank has turned so far from closed, by halving; degrees.
fn leaf_deg(arm: &Arm, turned_rad: f64) -> f64 {
    let (mut low, mut high) = (0.0, FRAC_PI_2);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        let there = (arm.at(middle).crank_rad - arm.at(0.0).crank_rad).abs();
        if there < turned_rad { low = middle } else { high = middle }
    }
    f64::to_degrees((low + high) / 2.0)
}

#[test]
fn limits_and_slow_zones_are_shaft_angles_from_closed() {
    let arm = Arm::of(&on_an_arm());
    let turned = arm.at(FRAC_PI_2).crank_rad - arm.at(0.0).crank_rad;
    let (sign, travel) = (turned.signum(), turned.abs().to_degrees());
    let zones = json!({ "slow_open_deg": 12, "slow_close_deg": 17, "slow_speed_deg_s": 4 });
    let limits = motion(&on_an_arm(), zones).limits;
    assert_eq!((limits.closed_deg, limits.slow_speed_deg_s), (0.0, 4.0));
    near(limits.open_deg, sign * travel, 1e-9);
    near(limits.slow_opening_from_deg, sign * (travel - 12.0), 1e-9);
    near(limits.slow_closing_from_deg, sign * 17.0, 1e-9);
    near(limits.slow_opening_leaf_deg, leaf_deg(&arm, (travel - 12.0).to_radians()), 1e-9);
    near(limits.slow_closing_leaf_deg, leaf_deg(&arm, 17f64.to_radians()), 1e-9);
    // A zone longer than the way is all of it; nothing said of its speed is a third; no zone is faster than the rest.
    let whole = motion(&on_an_arm(), json!({ "slow_open_deg": 360, "slow_close_deg": 360 })).limits;
    near(whole.slow_opening_from_deg, 0.0, 1e-9);
    near(whole.slow_closing_from_deg, sign * travel, 1e-9);
    near(whole.slow_speed_deg_s, 10.0 / 3.0, 1e-12);
    near(motion(&bench(), json!({ "slow_speed_deg_s": 30 })).limits.slow_speed_deg_s, 10.0, 1e-12);
}

/// `ω = Ω/|n|`, `v = ω·L`, `½·I·ω²`, `ω·√(k·I)`.
fn stop(found: &EndStop, ratio: f64, arrival_deg_s: f64, stiffness: Option<f64>) {
    let [slow, full] = [arrival_deg_s, 10.0].map(|speed| speed.to_radians() / ratio.abs());
    near(found.edge_speed_m_s, slow * LENGTH, 1e-9);
    near(found.full_edge_speed_m_s, full * LENGTH, 1e-9);
    near(found.energy_j, INERTIA * slow * slow / 2.0, 1e-9);
    near(found.full_energy_j, INERTIA * full * full / 2.0, 1e-9);
    assert_eq!(found.force_n.is_some(), stiffness.is_some());
    if let (Some(k), Some(force), Some(hard)) = (stiffness, found.force_n, found.full_force_n) {
        near(force, slow * (k * INERTIA).sqrt(), 1e-9);
        near(hard, full * (k * INERTIA).sqrt(), 1e-9);
    }
}

#[test]
fn a_stop_takes_the_speed_of_its_own_limit() {
    let arm = Arm::of(&on_an_arm());
    let (closed, open) = (arm.at(0.0).ratio, arm.at(FRAC_PI_2).ratio);
    let facts = |zone: &str| json!({ zone: 10, "slow_speed_deg_s": 4, "stop_stiffness_n_per_m": 2e4 });
    let slow_open = motion(&on_an_arm(), facts("slow_open_deg"));
    stop(&slow_open.open_stop, open, 4.0, Some(2e4));
    stop(&slow_open.closed_stop, closed, 10.0, Some(2e4));
    let slow_close = motion(&on_an_arm(), facts("slow_close_deg"));
    stop(&slow_close.open_stop, open, 10.0, Some(2e4));
    stop(&slow_close.closed_stop, closed, 4.0, Some(2e4));
    stop(&motion(&on_an_arm(), json!({})).open_stop, open, 10.0, None);
}

/// Angle after which friction, weight, wind and the drive's drag have taken the energy, by the midpoint rule; degrees, `None` past the stop.
fn spent(arm: &Arm, sign: f64, wind: f64, drag: f64, energy: f64) -> Option<f64> {
    let (half, step) = (FRAC_PI_2 / 2.0, 1e-4);
    let at = |angle: f64| half + sign * angle;
    let mut taken = 0.0;
    let steps = (half / step) as u32;
    for index in 0..steps {
        let (from, to) = (step * f64::from(index), step * f64::from(index + 1));
        let shaft = (arm.at(at(to)).crank_rad - arm.at(at(from)).crank_rad).abs();
        let part = sign * demand(at((from + to) / 2.0), sign, -wind) * step + drag / EFFICIENCY * shaft;
        if taken + part >= energy {
            return Some((from + step * (energy - taken) / part).to_degrees());
        }
        taken += part;
    }
    None
}

fn coasts(found: &Coast, arm: &Arm, sign: f64, drag: f64) {
    let speed = 25f64.to_radians() / arm.at(FRAC_PI_2 / 2.0).ratio.abs();
    near(found.leaf_speed_deg_s, speed.to_degrees(), 1e-9);
    let energy = INERTIA * speed * speed / 2.0;
    let rows = [(found.calm, found.calm_leaf_deg, 0.0), (found.following, found.following_leaf_deg, WIND)];
    for (state, turned, wind) in rows {
        match spent(arm, sign, wind, drag, energy) {
            Some(way) => {
                assert_eq!(state, CoastState::Stops);
                near(turned.expect("it stops"), way, 1e-4);
            }
            None => assert_ne!(state, CoastState::Stops),
        }
        assert_eq!(turned.is_none(), state == CoastState::RunsOn);
    }
}

#[test]
fn a_released_leaf_runs_on_until_its_energy_is_spent() {
    let arm = Arm::of(&on_an_arm());
    let mut value = on_an_arm();
    value["operator"]["shaft_speed_deg_s"] = json!(25);
    for drag in [0.0, 30.0, 60.0] {
        let motion = motion(&value, json!({ "coast_drag_n_m": drag }));
        coasts(&motion.coast_open, &arm, 1.0, drag);
        coasts(&motion.coast_close, &arm, -1.0, drag);
    }
    // With drag enough it stops in either wind, both ways: the rows above are not all of one kind.
    let braked = motion(&value, json!({ "coast_drag_n_m": 60 }));
    assert_eq!((braked.coast_open.following, braked.coast_close.following), (CoastState::Stops, CoastState::Stops));
    // At rest, and nothing moves it.
    assert_eq!(coast(0.0, 1.0, |_, _| 0.0), (CoastState::Stops, 0.0));
}

/// `(τ_f ± A)/L`, where the weight is square to the slope: 20° with downhill at −70°, the other way round with downhill at 110°.
#[test]
fn a_push_by_hand_is_most_where_the_lean_is() {
    let lean = 100.0 * 9.80665 * 0.75 * 1.5f64.to_radians().sin();
    for (downhill, leaf) in [(-70.0, 20.0), (110.0, 20.0), (-60.0, 30.0)] {
        let mut value = bench();
        value["lean"]["downhill_deg"] = json!(downhill);
        let hand = motion(&value, json!({})).hand;
        near(hand.calm_n, (FRICTION + lean) / LENGTH, 1e-9);
        near(hand.against_wind_n, (FRICTION + WIND + lean) / LENGTH, 1e-9);
        near(hand.leaf_deg, leaf, 1e-9);
    }
}

/// 60° at 10°/s with 2 s up and 1 s down: 60/10 + ½·(2 + 1) s, both ways alike.
#[test]
fn duty_is_cycles_over_rated_ones() {
    let duty =
        |duty: Value| motion(&bench(), json!({ "ramp_up_s": 2, "ramp_down_s": 1, "duty": duty })).duty.expect("duty");
    let all = duty(json!({ "cycles_per_hour": 6, "cycles_per_day": 45, "rated_cycles_per_hour": 20,
        "rated_cycles_per_day": 90 }));
    near(all.cycle_s, 15.0, 1e-12);
    near(all.running.expect("cycles an hour"), 6.0 * 15.0 / 3600.0, 1e-12);
    assert_eq!((all.hour_utilisation, all.day_utilisation), (Some(0.3), Some(0.5)));
    let none = duty(json!({ "rated_cycles_per_hour": 20, "cycles_per_day": 45 }));
    assert_eq!((none.running, none.hour_utilisation, none.day_utilisation), (None, None, None));
}
