//! What holds a step, and the three ways that follow it: the curved step, the way back to the limits, the last excess.
// Lines and columns of a matrix are told by their numbers.
#![allow(clippy::needless_range_loop)]

use super::super::descent::{Budget, SlpScratch};
use super::super::fixtures::{self, OPEN, with_problem};
use super::super::found::{EXCESS_TOLERANCE, Found};
use super::super::problem::Problem;
use super::super::variables::{DIMENSIONS, Point};
use crate::job::{Aim, Elbow, ElbowChoice, Place, SetOut};
use crate::numerics::{Active, ROWS, VARIABLES};
use alloc::vec::Vec;

const TO_THE_END: Budget = Budget { steps: 60, trust: 0.1, least_gain: 1e-9, curved: true, hopeful: false };

/// Lengths and bracket free, each with another limit that holds the optimum.
fn sites() -> Vec<SetOut> {
    let plain = SetOut {
        shaft_x_m: [-0.35; 2],
        shaft_y_m: [0.5; 2],
        straightness: Some([0.95; 2]),
        link_m: [0.2, 1.2],
        elbow: Some(ElbowChoice::Left),
        ..fixtures::setout()
    };
    alloc::vec![
        SetOut { least_lever_m: Some(0.35), ..plain.clone() },
        SetOut { square_deg: Some(10.0), ..plain.clone() },
        SetOut { aim: Some(Aim::LeastShaftTravel), least_lever_m: Some(0.3), ..plain.clone() },
        SetOut { aim: Some(Aim::LeastLinkForce), shaft_travel_deg: Some(120.0), ..plain.clone() },
        SetOut {
            aim: Some(Aim::NearestPlace),
            shaft_x_m: [-0.55, -0.1],
            shaft_y_m: [0.25, 0.7],
            least_lever_m: Some(0.3),
            place: Some(Place { x_m: 0.0, y_m: 0.1 }),
            ..plain.clone()
        },
        SetOut { straightness: Some([0.9, 1.0]), ..plain },
    ]
}

/// A problem, its optimum and its bounds; what the descent ends at is held by grids in its own tests.
fn at_optima(then: impl Fn(&Problem, &mut SlpScratch, Found, &[Point; 2])) {
    let mut seen = 0;
    for setout in sites() {
        with_problem(&setout, |problem| {
            problem.exact = true;
            let (bounds, mut scratch) = (problem.bounds(), SlpScratch::new());
            let ends = problem.scan_in(&bounds, 120, 6).into_iter().map(|start| {
                let end = scratch.descend(problem, start, &bounds, TO_THE_END);
                scratch.restore(problem, end, &bounds)
            });
            let best = ends.filter(Found::kept).reduce(|one, other| if other.beats(&one) { other } else { one });
            if let Some(best) = best {
                seen += 1;
                then(problem, &mut scratch, best, &bounds);
            }
        });
    }
    assert!(seen >= 5, "{seen}");
}

struct Solved {
    values: [f64; ROWS],
    slopes: [[f64; VARIABLES]; ROWS],
    step: [f64; VARIABLES],
}

/// Every gathered term a row of the programme in a box around a point.
fn solved(problem: &Problem, scratch: &mut SlpScratch, here: &Found, [least, most]: &[Point; 2], trust: f64) -> Solved {
    let (mut values, mut slopes) = ([0.0; ROWS], [[0.0; VARIABLES]; ROWS]);
    scratch.tangents(problem, here, &mut values, &mut slopes, &[*least, *most]);
    scratch.programme.clear();
    for index in 0..scratch.count {
        let mut row = slopes[index];
        row[if problem.is_objective(scratch.pieces[index].limit()) { DIMENSIONS } else { DIMENSIONS + 1 }] = -1.0;
        scratch.programme.add(&row, -values[index]);
        scratch.rows[index] = index;
    }
    let (mut lo, mut hi) = ([0.0; VARIABLES], [0.0; VARIABLES]);
    for i in 0..DIMENSIONS {
        lo[i] = (least[i] - here.point[i]).max(-trust).min(0.0);
        hi[i] = (most[i] - here.point[i]).min(trust).max(0.0);
    }
    (hi[DIMENSIONS], hi[DIMENSIONS + 1]) = (1e6, 1e3);
    let step = scratch.programme.solve(&[1.3e-9, 1.1e-9, 1.7e-9, 1.9e-9, 1.4e-9, 1.0, 100.0], &lo, &hi);
    Solved { values, slopes, step }
}

/// A point beside another, within the bounds, by as much in every free variable.
fn beside(problem: &Problem, from: &Found, [least, most]: &[Point; 2], by: f64) -> Found {
    let signs = [1.0, -1.0, -1.0, 1.0, 1.0];
    let point = core::array::from_fn(|i| (from.point[i] + by * signs[i]).clamp(least[i], most[i]));
    problem.found(&point, from.elbow, from.sense)
}

fn moved(one: &Found, other: &Found) -> f64 {
    (0..DIMENSIONS).map(|i| (one.point[i] - other.point[i]).abs()).fold(0.0, f64::max)
}

#[test]
fn active_rows_and_bounds_are_what_holds() {
    at_optima(|problem, scratch, best, bounds| {
        for (by, trust) in [(0.0, 0.05), (0.01, 0.05), (0.02, 0.004)] {
            let here = beside(problem, &best, bounds, by);
            let solved = solved(problem, scratch, &here, bounds, trust);
            let active_set = scratch.active_set(problem, &solved.step, bounds, trust, &solved.slopes);
            let active: Vec<Active> = scratch.programme.active().collect();
            let rows: Vec<(usize, f64)> = active
                .iter()
                .filter_map(|active| match active {
                    Active::Row(row, share) if *share > 1e-6 => Some((*row, *share)),
                    _ => None,
                })
                .collect();
            assert_eq!(active_set.weights[..active_set.count], rows);
            for (term, (row, _)) in active_set.terms[..active_set.count].iter().zip(&rows) {
                assert_eq!(term.slope, solved.slopes[*row]);
                assert_eq!(term.objective, problem.is_objective(scratch.pieces[*row].limit()));
            }
            for i in 0..DIMENSIONS {
                let wide = bounds[1][i] > bounds[0][i];
                let bound = active.contains(&Active::Bound(i)) && solved.step[i].abs() < trust;
                let wanted = if !wide { Some(0.0) } else { bound.then_some(solved.step[i]) };
                assert_eq!(active_set.held[i], wanted, "variable {i}");
            }
        }
    });
}

/// Newton's step: where the tangent step keeps the limits, most of what is to be gained near the optimum is gained at once, and never from further
/// than four boxes away.
#[test]
fn the_curved_step_is_newton_s() {
    let counted = core::cell::Cell::new(0);
    at_optima(|problem, scratch, best, bounds| {
        for by in [2e-3, -2e-3, 5e-4, -5e-4] {
            let here = beside(problem, &best, bounds, by);
            let before = solved(problem, scratch, &here, bounds, 0.1);
            let active_set = scratch.active_set(problem, &before.step, bounds, 0.1, &before.slopes);
            let Some(there) = scratch.curved(problem, &here, &active_set, &before.values, bounds, 0.1) else {
                continue;
            };
            let there = scratch.corrected(problem, there, &active_set, bounds, 100.0);
            let gap = |found: &Found| (found.merit(100.0) - best.merit(100.0)).max(0.0);
            counted.set(counted.get() + usize::from(gap(&there) < 0.05 * gap(&here)));
            // The same step cut short, and one that just fits.
            let there = scratch.curved(problem, &here, &active_set, &before.values, bounds, 0.1).expect("as before");
            let inside = (0..DIMENSIONS).all(|i| {
                there.point[i] == here.point[i] || (bounds[0][i] < there.point[i] && there.point[i] < bounds[1][i])
            });
            let free = moved(&there, &here);
            if inside && free > 1e-5 {
                let trust = free / 7.0;
                let short = scratch.curved(problem, &here, &active_set, &before.values, bounds, trust).expect("a step");
                assert!((moved(&short, &here) - 4.0 * trust).abs() < 1e-9, "{} of {free}", moved(&short, &here));
                let whole =
                    scratch.curved(problem, &here, &active_set, &before.values, bounds, 0.26 * free).expect("a step");
                assert!((moved(&whole, &here) - free).abs() < 1e-9);
            }
        }
    });
    // A floor and no expected value: of 24, where the step before leaves another limit behind, the next one has to find it first.
    assert!(counted.get() >= 16, "{}", counted.get());
}

/// The way back takes an excess of a millimetre to its square, and what has none stays where it is.
#[test]
fn a_step_out_of_its_limits_comes_back() {
    let counted = core::cell::Cell::new(0);
    at_optima(|problem, scratch, best, bounds| {
        let before = solved(problem, scratch, &best, bounds, 0.05);
        let active_set = scratch.active_set(problem, &before.step, bounds, 0.05, &before.slopes);
        for by in [1e-3, -1e-3] {
            let out = beside(problem, &best, bounds, by);
            let there = scratch.corrected(problem, out, &active_set, bounds, 100.0);
            if out.excess < 1e-10 {
                assert_eq!(there.point, out.point);
            } else if out.excess > 1e-5 && active_set.terms[..active_set.count].iter().any(|term| !term.objective) {
                assert!(there.excess < 0.02 * out.excess, "{} from {}", there.excess, out.excess);
                assert!(moved(&there, &out) < 0.02);
                counted.set(counted.get() + 1);
            }
        }
    });
    assert!(counted.get() >= 3, "{}", counted.get());
}

#[test]
fn the_last_excess_is_taken_away_on_a_short_way() {
    let (counted, left) = (core::cell::Cell::new(0), core::cell::Cell::new(0));
    at_optima(|problem, scratch, best, bounds| {
        for by in [1e-5, -1e-5, 1e-3, -1e-3] {
            let out = beside(problem, &best, bounds, by);
            let there = scratch.restore(problem, out, bounds);
            if out.excess <= 0.3 * EXCESS_TOLERANCE {
                assert_eq!(there.point, out.point);
            } else if out.excess < 2e-3 {
                // A bound set by watching, no fact of geometry: twelve steps need not end within EXCESS_TOLERANCE.
                assert!(there.excess <= 1e-8, "{} from {}", there.excess, out.excess);
                left.set(left.get() + usize::from(there.excess > 0.3 * EXCESS_TOLERANCE));
                // A step is no longer than a hundred times the excess it is to take away.
                let box_m = (100.0 * out.excess).clamp(1e-6, 0.05);
                assert!(moved(&there, &out) < 4.0 * box_m, "{} of {box_m}", moved(&there, &out));
                counted.set(counted.get() + 1);
            }
            assert!((0..DIMENSIONS).all(|i| (bounds[0][i]..=bounds[1][i]).contains(&there.point[i])));
        }
    });
    assert!(counted.get() > 4 && left.get() <= 1, "{} {}", counted.get(), left.get());
}

/// What the descent promises: near an optimum with as many active terms as variables, or a curved one, a few steps do.
#[test]
fn descent_beside_the_optimum_arrives_in_eight_steps() {
    at_optima(|problem, scratch, best, bounds| {
        for by in [0.01, -0.01] {
            let start = beside(problem, &best, bounds, by);
            let quick = Budget { steps: 8, trust: 0.05, least_gain: 1e-10, curved: true, hopeful: false };
            let end = scratch.descend(problem, start, bounds, quick);
            let end = scratch.restore(problem, end, bounds);
            assert!(end.kept() && end.objective < best.objective + 1e-6, "{} {}", end.objective, best.objective);
        }
    });
}

/// Where no step takes half of the excess away, a hopeful descent ends at once; another goes on.
#[test]
fn hopeful_descent_ends_where_no_step_halves_the_excess() {
    let setout = SetOut { shaft_travel_deg: Some(20.0), ..sites()[0].clone() };
    with_problem(&setout, |problem| {
        let (bounds, mut scratch) = (problem.bounds(), SlpScratch::new());
        for start in problem.scan_in(&bounds, 60, 3) {
            let budget = Budget { steps: 6, trust: 0.02, least_gain: 1e-6, curved: false, hopeful: true };
            let end = scratch.descend(problem, start, &bounds, budget);
            assert_eq!(end.point, start.point);
            let on = scratch.descend(problem, start, &bounds, Budget { hopeful: false, ..budget });
            assert!(on.merit(5.0) <= start.merit(5.0));
        }
        assert!(problem.open().leaf_rad == OPEN && sites()[0].elbows() == [Elbow::Left]);
    });
}
