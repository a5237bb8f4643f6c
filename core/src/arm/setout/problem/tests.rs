//! The problem's tables, limits and box against the block's own numbers.

use super::super::fixtures::{self, OPEN, close, effort, storm, with_problem};
use super::super::limit::Limit;
use super::{INTERVALS, Problem, SearchLoads};
use crate::job::{Elbow, SetOut};

#[test]
fn stations_are_even_over_the_swing() {
    with_problem(&fixtures::setout(), |problem| {
        assert_eq!(problem.stations.len(), INTERVALS + 1);
        for (index, station) in problem.stations.iter().enumerate() {
            let leaf_rad = OPEN * index as f64 / 40.0;
            close(station.leaf_rad, leaf_rad, 1e-12);
            close(station.cosine, leaf_rad.cos(), 1e-12);
            close(station.sine, leaf_rad.sin(), 1e-12);
            close(station.effort_n_m, effort(leaf_rad), 1e-9);
            close(station.storm_n_m, storm(leaf_rad), 1e-9);
        }
        assert_eq!((problem.closed().leaf_rad, problem.open().leaf_rad), (0.0, OPEN));
        close(problem.stations[Problem::tenth()].leaf_rad, 0.1 * OPEN, 1e-12);
        let largest = |of: fn(f64) -> f64| (0..=40).map(|i| of(OPEN * f64::from(i) / 40.0)).fold(0.0, f64::max);
        close(problem.torque_scale_n_m, largest(effort), 1e-9);
        close(problem.force_scale_n, largest(storm), 1e-9);
    });
    let nothing = |_: f64| 0.0;
    let setout = fixtures::setout().into();
    let problem = Problem::new(&setout, SearchLoads { effort_n_m: &nothing, storm_n_m: &nothing }, OPEN);
    assert_eq!((problem.torque_scale_n_m, problem.force_scale_n), (1.0, 1.0));
}

#[test]
fn limits_are_the_block_s_or_none() {
    with_problem(&fixtures::setout(), |problem| {
        close(problem.limits.square_rad, core::f64::consts::FRAC_PI_2, 1e-12);
        close(problem.limits.square_sine, 1.0, 1e-12);
        close(problem.limits.travel_rad, core::f64::consts::TAU, 1e-12);
        assert_eq!((problem.limits.lever_m, problem.limits.half_width_m), (0.0, 0.0));
    });
    let setout =
        SetOut { square_deg: Some(30.0), least_lever_m: Some(0.2), shaft_travel_deg: Some(90.0), ..fixtures::setout() };
    let setout = fixtures::among(setout, alloc::vec![], 0.04);
    with_problem(&setout, |problem| {
        close(problem.limits.square_sine, 0.5, 1e-12);
        close(problem.limits.travel_rad, core::f64::consts::FRAC_PI_2, 1e-12);
        assert_eq!((problem.limits.lever_m, problem.limits.half_width_m), (0.2, 0.04));
    });
}

#[test]
fn the_box_is_the_ranges() {
    let z = |straightness: Option<[f64; 2]>| {
        let setout = SetOut { straightness, ..fixtures::setout() };
        with_problem(&setout, |problem| {
            let [least, most] = problem.bounds();
            for (i, [low, high]) in
                [setout.shaft_x_m, setout.shaft_y_m, setout.bracket_u_m, setout.crank_m].into_iter().enumerate()
            {
                assert_eq!((least[i], most[i]), (low, high));
            }
            [least[4], most[4]]
        })
    };
    let [straight, bent] = z(Some([0.9, 1.0]));
    assert_eq!(straight, 0.0);
    // Inside by a margin of 1e-12.
    close(bent, (0.1_f64 - 1e-12).sqrt(), 1e-13);
    assert!(bent < 0.1_f64.sqrt());
    // 1 − 0.91 = 0.3²; inside by a margin again.
    let [straight, bent] = z(Some([0.5, 0.91]));
    close(straight, 0.3, 1e-12);
    assert!(straight > (1.0_f64 - 0.91).sqrt());
    close(bent, 0.5_f64.sqrt(), 1e-11);
    let [straight, bent] = z(Some([0.91, 0.91]));
    assert!(straight <= bent);
    close(straight, 0.3, 1e-12);
    // No arm is fifty times longer than what it spans.
    close(z(None)[1], 0.98_f64.sqrt(), 1e-12);
}

#[test]
fn a_range_given_up_reaches_a_metre_further() {
    let bounds = |setout: &SetOut, limit: Limit| {
        with_problem(setout, |problem| {
            problem.given_up = Some(limit);
            let [least, most] = problem.bounds();
            let variable = limit.variable().expect("a variable");
            (least[variable], most[variable])
        })
    };
    let within = |(low, high): (f64, f64), wanted: (f64, f64)| {
        close(low, wanted.0, 1e-11);
        close(high, wanted.1, 1e-11);
    };
    let plain = fixtures::setout();
    within(bounds(&plain, Limit::ShaftXM), (-1.55, 0.85));
    within(bounds(&plain, Limit::ShaftYM), (-0.75, 1.7));
    within(bounds(&plain, Limit::BracketUM), (-0.3, 2.5));
    // Never below the job's own least crank, never further than its own most, never an arm bent past a third.
    within(bounds(&plain, Limit::CrankM), (0.02, 1.9));
    within(bounds(&SetOut { straightness: Some([0.9, 0.95]), ..plain.clone() }, Limit::Straightness), (0.0, 0.8));
    let far = SetOut { shaft_x_m: [-9.5, 9.6], crank_m: [1.5, 9.5], ..plain };
    within(bounds(&far, Limit::ShaftXM), (-10.0, 10.0));
    within(bounds(&far, Limit::CrankM), (0.5, 10.0));
}

#[test]
fn a_point_is_its_arm() {
    with_problem(&fixtures::setout(), |problem| {
        // Bracket 0.06 proud: 1.2 along and 0.5 across is 1.3 (5-12-13); straightness 0.91 is z = 0.3.
        let arm = problem.arm(&[-0.3, 0.56, 0.9, 0.8, 0.3], Elbow::Right);
        assert_eq!((arm.shaft_x_m, arm.shaft_y_m, arm.bracket_u_m, arm.bracket_v_m), (-0.3, 0.56, 0.9, 0.06));
        assert_eq!((arm.crank_m, arm.elbow), (0.8, Elbow::Right));
        close(arm.link_m, 1.3 / 0.91 - 0.8, 1e-12);
        // A crank longer than both leaves a millimetre of link; a z of 1 is no division by zero.
        assert_eq!(problem.arm(&[-0.3, 0.56, 0.9, 1.5, 0.0], Elbow::Left).link_m, 1e-3);
        close(problem.arm(&[-0.3, 0.56, 0.9, 0.8, 1.0], Elbow::Left).link_m, 130.0 - 0.8, 1e-9);
        let kernel = problem.kernel(&[-0.3, 0.56, 0.9, 0.8, 0.3], Elbow::Right);
        assert_eq!(kernel.arm(), arm);
    });
}
