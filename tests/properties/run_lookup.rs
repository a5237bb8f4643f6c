//! Following a run through time and by leaf angle, on rows made by hand.

use crate::bench::{bench, near};
use crate::jobs::{job, with};
use pintle_core::{
    plan::{Model, Run, RunPoint, plan},
    terms::Direction,
};
use serde_json::json;

/// Rows (time, leaf angle, edge speed, torque), the torque stepping after one second.
fn run(direction: Direction, rows: &[[f64; 4]]) -> Run {
    let rows = rows.iter().map(|&[time_s, leaf_deg, edge_speed_m_s, shaft_torque_n_m]| RunPoint {
        time_s,
        leaf_deg,
        edge_speed_m_s,
        shaft_torque_n_m,
    });
    Run { direction, state: None, rows: rows.collect() }
}

fn opening() -> Run {
    run(
        Direction::Open,
        &[[0.0, 0.0, 0.0, 5.0], [1.0, 10.0, 1.0, 15.0], [1.0, 10.0, 1.0, 25.0], [3.0, 40.0, 2.0, 45.0]],
    )
}

fn closing() -> Run {
    run(Direction::Close, &[[0.0, 40.0, 0.0, 5.0], [2.0, 10.0, 3.0, 9.0], [4.0, 0.0, 0.0, 7.0]])
}

fn is(found: Option<RunPoint>, [time_s, leaf_deg, edge, torque]: [f64; 4]) {
    let found = found.expect("rows");
    near(found.time_s, time_s, 1e-12);
    near(found.leaf_deg, leaf_deg, 1e-12);
    near(found.edge_speed_m_s, edge, 1e-12);
    near(found.shaft_torque_n_m, torque, 1e-12);
}

#[test]
fn between_two_rows_all_is_straight() {
    let run = opening();
    assert_eq!(run.time_s(), 3.0);
    is(run.at(0.0), [0.0, 0.0, 0.0, 5.0]);
    is(run.at(0.25), [0.25, 2.5, 0.25, 7.5]);
    is(run.at(1.0), [1.0, 10.0, 1.0, 15.0]);
    is(run.at(2.5), [2.5, 32.5, 1.75, 40.0]);
    // Held before its start and behind its end.
    is(run.at(-1.0), [0.0, 0.0, 0.0, 5.0]);
    is(run.at(9.0), [3.0, 40.0, 2.0, 45.0]);
    let none = self::run(Direction::Open, &[]);
    assert_eq!((none.time_s(), none.at(0.0), none.of_leaf(0.0)), (0.0, None, None));
}

#[test]
fn a_leaf_angle_is_told_where_it_is_first_come_to() {
    is(opening().of_leaf(2.5), [0.25, 2.5, 0.25, 7.5]);
    is(opening().of_leaf(10.0), [1.0, 10.0, 1.0, 15.0]);
    is(opening().of_leaf(32.5), [2.5, 32.5, 1.75, 40.0]);
    is(opening().of_leaf(0.0), [0.0, 0.0, 0.0, 5.0]);
    assert_eq!(opening().of_leaf(40.1), None);
    is(closing().of_leaf(40.0), [0.0, 40.0, 0.0, 5.0]);
    is(closing().of_leaf(17.5), [1.5, 17.5, 2.25, 8.0]);
    is(closing().of_leaf(2.5), [3.5, 2.5, 0.75, 7.5]);
    assert_eq!(closing().of_leaf(-0.1), None);
}

/// The runs that are drawn are the plan's own, told as finely as a plan of 401 rows.
#[test]
fn the_fine_runs_are_the_plan_s_runs() {
    let mut value = with(&bench(), "samples", json!(401));
    value["motion"] = json!({ "motor": { "stall_torque_n_m": 300, "no_load_speed_deg_s": 12, "rated_v": 24 } });
    let motion = plan(&job(&value)).expect("valid").motion.expect("motion");
    let runs = Model::new(&job(&value)).expect("valid").fine_runs();
    let driven = motion.driven.expect("a motor");
    assert_eq!(runs.len(), 4);
    for (run, told) in runs.iter().zip([&motion.opening, &motion.closing]) {
        assert_eq!((run.state, run.rows.len()), (None, 3 * 65));
        near(run.time_s(), told.time_s, 1e-12);
    }
    for (run, told) in runs[2..].iter().zip([&driven.opening, &driven.closing]) {
        assert_eq!(run.state, Some(told.state));
        assert_eq!(run.rows.len(), told.curve.len());
        for (row, point) in run.rows.iter().zip(&told.curve) {
            assert_eq!((row.time_s, row.leaf_deg), (point.time_s, point.leaf_deg));
            assert_eq!((row.edge_speed_m_s, row.shaft_torque_n_m), (point.edge_speed_m_s, point.shaft_torque_n_m));
        }
    }
}
