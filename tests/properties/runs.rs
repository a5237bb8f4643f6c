//! Runs told finely: closed forms of a shaft that turns with the leaf, and the way back from a leaf angle to its time. Beside it what the
//! drive holds back and holds at a stand.

use crate::jobs::{job, valid};
use crate::motion::{moving, one_to_one};
use pintle_core::{
    drive::DrivenState,
    plan::{Model, Run, plan},
    terms::Direction,
};
use proptest::prelude::*;
use serde_json::{Value, json};

fn runs(value: &Value) -> Vec<Run> {
    Model::new(&job(value)).expect("valid").fine_runs()
}

/// 60° at 10 °/s with ramps of 2 s: 60/10 + 10/5 = 8 s. Angles and speeds by `½·a·t²` and `v·t`, from any mechanics text.
#[test]
fn a_leaf_that_turns_with_its_shaft_keeps_the_trapezoid() {
    let runs = runs(&moving(&one_to_one(), 10.0, 2.0));
    assert_eq!(
        runs.iter().map(|run| (run.direction, run.state)).collect::<Vec<_>>(),
        [(Direction::Open, None), (Direction::Close, None)]
    );
    for run in &runs {
        assert!((run.time_s() - 8.0).abs() < 1e-9, "{}", run.time_s());
        for (time_s, turned, speed) in
            [(0.0, 0.0, 0.0), (1.0, 2.5, 5.0), (2.0, 10.0, 10.0), (5.0, 40.0, 10.0), (8.0, 60.0, 0.0)]
        {
            let leaf_deg = if run.direction == Direction::Open { turned } else { 60.0 - turned };
            let at = run.at(time_s).expect("rows");
            assert!((at.leaf_deg - leaf_deg).abs() < 2e-3, "{at:?} is not at {leaf_deg}°");
            assert!((at.edge_speed_m_s - f64::to_radians(speed) * 3.2).abs() < 1e-6, "{at:?}");
            let found = run.of_leaf(leaf_deg).expect("on the way");
            assert!((found.time_s - time_s).abs() < 2e-3, "{leaf_deg}° is told at {found:?}");
        }
    }
    // The torque steps by I·α twice over where the ramp ends: 160·3.2²/3 kg·m² times 5 °/s², through the arm's losses.
    let step = 160.0 * 3.2 * 3.2 / 3.0 * f64::to_radians(5.0) / 0.95;
    let (before, behind) = (runs[0].rows[64], runs[0].rows[65]);
    assert_eq!(before.time_s, behind.time_s);
    assert!(((before.shaft_torque_n_m - behind.shaft_torque_n_m).abs() - step).abs() < 1e-3 * step);
}

#[test]
fn a_job_that_says_nothing_of_motion_has_no_runs() {
    let mut fast = crate::plan::example();
    fast["operator"]["shaft_speed_deg_s"] = json!(9);
    assert!(runs(&crate::plan::example()).is_empty() && runs(&fast).is_empty());
}

/// A motor that stalls on the way never comes to what lies behind.
#[test]
fn a_stalled_run_ends_where_it_stalls() {
    let peak = plan(&job(&crate::plan::example())).expect("valid").peak;
    let mut value = moving(&crate::plan::example(), 9.0, 1.0);
    value["motion"]["motor"] =
        json!({ "stall_torque_n_m": 0.9 * peak.shaft_torque_n_m, "no_load_speed_deg_s": 12, "rated_v": 24 });
    let runs = runs(&value);
    assert_eq!(runs.len(), 4);
    let stalled = &runs[2];
    assert_eq!(stalled.state, Some(DrivenState::Stalls));
    let end = stalled.at(f64::MAX).expect("rows");
    assert!(end.leaf_deg > 1.0 && end.leaf_deg < peak.leaf_deg, "{end:?}");
    assert!(stalled.of_leaf(end.leaf_deg - 0.5).is_some());
    assert_eq!(stalled.of_leaf(end.leaf_deg + 0.5), None);
}

/// The contract's job: friction 14.395 N·m, wind 375.38 N·m, ratio at closed 2.8486, efficiency 0.95. What drives the leaf is the
/// difference; to hold it at a stand nobody counts on the hinges.
#[test]
fn what_is_held_back_is_the_wind_less_the_friction() {
    let closed = Model::new(&job(&crate::plan::example())).expect("valid").point(0.0);
    let held = 0.95 * (375.38 - 14.395) / 2.8486;
    assert!((closed.overrun_open_n_m + held).abs() < 0.01, "{}", closed.overrun_open_n_m);
    assert!((closed.overrun_close_n_m - held).abs() < 0.01, "{}", closed.overrun_close_n_m);
    assert!((closed.holding_n_m - 0.95 * 375.38 / 2.8486).abs() < 0.01, "{}", closed.holding_n_m);
    // Calm: friction stops the leaf, nothing is held back.
    let mut calm = crate::plan::example();
    calm["wind"]["speed_m_s"] = json!(0);
    let calm = Model::new(&job(&calm)).expect("valid").point(0.7);
    assert_eq!((calm.overrun_open_n_m, calm.overrun_close_n_m, calm.holding_n_m), (0.0, 0.0, 0.0));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn a_leaf_angle_finds_its_time_again(value in valid(), speed in 2.0..30.0f64, ramp in 0.2..4.0f64, share in 0.0..=1.0f64) {
        let value = moving(&value, speed, ramp);
        let planned = plan(&job(&value)).unwrap();
        let motion = planned.motion.unwrap();
        let open = value["swing"]["open_deg"].as_f64().unwrap();
        for (run, told) in runs(&value).iter().zip([&motion.opening, &motion.closing]) {
            prop_assert!((run.time_s() - told.time_s).abs() < 1e-9);
            let found = run.of_leaf(share * open).expect("a prescribed run passes every angle");
            prop_assert!((found.leaf_deg - share * open).abs() < 1e-6, "{found:?} for {}", share * open);
            let again = run.at(found.time_s).unwrap();
            prop_assert!((again.leaf_deg - found.leaf_deg).abs() < 1e-6);
            // The plan's own rows lie on it: between two rows it is straight, so a bend of a ramp's row is missed.
            for row in told.curve.iter().step_by(7) {
                let at = run.at(row.time_s).unwrap();
                let bend = told.leaf_acceleration_deg_s2 * (told.time_s / 64.0).powi(2) / 8.0;
                prop_assert!((at.leaf_deg - row.leaf_deg).abs() <= bend + 1e-9, "{at:?} {row:?}");
            }
        }
    }

    #[test]
    fn the_most_that_is_held_back_is_the_plan_s_overrun(value in valid()) {
        let planned = plan(&job(&value)).unwrap();
        let held = planned.curve.iter().flat_map(|row| [row.overrun_open_n_m, row.overrun_close_n_m]);
        let most = held.fold(0.0, |most: f64, torque| most.max(torque.abs()));
        match planned.overrun {
            None => prop_assert_eq!(most, 0.0),
            Some(overrun) => prop_assert!(most <= overrun.shaft_torque_n_m * (1.0 + 1e-9), "{} {}", most, overrun.shaft_torque_n_m),
        }
    }
}
