//! What holds a step, and the three ways that follow it: the curved step, the way back to the limits, the last excess.
// Lines and columns of a matrix are told by their numbers.
#![allow(clippy::needless_range_loop)]

use super::super::descent::{Effort, Workshop};
use super::super::fixtures::{self, OPEN, with_site};
use super::super::found::{Found, KEPT};
use super::super::site::Site;
use super::super::variables::{DIMENSIONS, Point};
use crate::job::{Aim, Elbow, ElbowChoice, Place, SetOut};
use crate::numerics::{Active, ROWS, VARIABLES};
use alloc::vec::Vec;

const TO_THE_END: Effort = Effort { steps: 60, trust: 0.1, least_gain: 1e-9, curved: true, hopeful: false };

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

/// A site, its optimum and its bounds; what the descent ends at is held by grids in its own tests.
fn at_optima(then: impl Fn(&Site, &mut Workshop, Found, &[Point; 2])) {
    let mut seen = 0;
    for setout in sites() {
        with_site(&setout, |site| {
            site.exact = true;
            let (bounds, mut workshop) = (site.bounds(), Workshop::new());
            let ends = site.scan_in(&bounds, 120, 6).into_iter().map(|start| {
                let end = workshop.descend(site, start, &bounds, TO_THE_END);
                workshop.restore(site, end, &bounds)
            });
            let best = ends.filter(Found::kept).reduce(|one, other| if other.beats(&one) { other } else { one });
            if let Some(best) = best {
                seen += 1;
                then(site, &mut workshop, best, &bounds);
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
fn solved(site: &Site, workshop: &mut Workshop, here: &Found, [least, most]: &[Point; 2], trust: f64) -> Solved {
    let (mut values, mut slopes) = ([0.0; ROWS], [[0.0; VARIABLES]; ROWS]);
    workshop.tangents(site, here, &mut values, &mut slopes, &[*least, *most]);
    workshop.programme.clear();
    for index in 0..workshop.count {
        let mut row = slopes[index];
        row[if site.is_objective(workshop.pieces[index].term) { DIMENSIONS } else { DIMENSIONS + 1 }] = -1.0;
        workshop.programme.add(&row, -values[index]);
        workshop.rows[index] = index;
    }
    let (mut lo, mut hi) = ([0.0; VARIABLES], [0.0; VARIABLES]);
    for i in 0..DIMENSIONS {
        lo[i] = (least[i] - here.point[i]).max(-trust).min(0.0);
        hi[i] = (most[i] - here.point[i]).min(trust).max(0.0);
    }
    (hi[DIMENSIONS], hi[DIMENSIONS + 1]) = (1e6, 1e3);
    let step = workshop.programme.solve(&[1.3e-9, 1.1e-9, 1.7e-9, 1.9e-9, 1.4e-9, 1.0, 100.0], &lo, &hi);
    Solved { values, slopes, step }
}

/// A point beside another, within the bounds, by as much in every free variable.
fn beside(site: &Site, from: &Found, [least, most]: &[Point; 2], by: f64) -> Found {
    let signs = [1.0, -1.0, -1.0, 1.0, 1.0];
    let point = core::array::from_fn(|i| (from.point[i] + by * signs[i]).clamp(least[i], most[i]));
    site.found(&point, from.elbow, from.sense)
}

fn moved(one: &Found, other: &Found) -> f64 {
    (0..DIMENSIONS).map(|i| (one.point[i] - other.point[i]).abs()).fold(0.0, f64::max)
}

#[test]
fn active_rows_and_bounds_are_what_holds() {
    at_optima(|site, workshop, best, bounds| {
        for (by, trust) in [(0.0, 0.05), (0.01, 0.05), (0.02, 0.004)] {
            let here = beside(site, &best, bounds, by);
            let solved = solved(site, workshop, &here, bounds, trust);
            let grip = workshop.grip(site, &solved.step, bounds, trust, &solved.slopes);
            let active: Vec<Active> = workshop.programme.active().collect();
            let rows: Vec<(usize, f64)> = active
                .iter()
                .filter_map(|active| match active {
                    Active::Row(row, share) if *share > 1e-6 => Some((*row, *share)),
                    _ => None,
                })
                .collect();
            assert_eq!(grip.weights[..grip.count], rows);
            for (level, (row, _)) in grip.levels[..grip.count].iter().zip(&rows) {
                assert_eq!(level.slope, solved.slopes[*row]);
                assert_eq!(level.objective, site.is_objective(workshop.pieces[*row].term));
            }
            for i in 0..DIMENSIONS {
                let wide = bounds[1][i] > bounds[0][i];
                let bound = active.contains(&Active::Bound(i)) && solved.step[i].abs() < trust;
                let wanted = if !wide { Some(0.0) } else { bound.then_some(solved.step[i]) };
                assert_eq!(grip.held[i], wanted, "variable {i}");
            }
        }
    });
}

/// Newton's step: where the tangent step keeps the limits, most of what is to be gained near the optimum is gained at once, and never from further
/// than four boxes away.
#[test]
fn the_curved_step_is_newton_s() {
    let counted = core::cell::Cell::new(0);
    at_optima(|site, workshop, best, bounds| {
        for by in [2e-3, -2e-3, 5e-4, -5e-4] {
            let here = beside(site, &best, bounds, by);
            let before = solved(site, workshop, &here, bounds, 0.1);
            let grip = workshop.grip(site, &before.step, bounds, 0.1, &before.slopes);
            let Some(there) = workshop.curved(site, &here, &grip, &before.values, bounds, 0.1) else { continue };
            let there = workshop.corrected(site, there, &grip, bounds, 100.0);
            let gap = |found: &Found| (found.merit(100.0) - best.merit(100.0)).max(0.0);
            counted.set(counted.get() + usize::from(gap(&there) < 0.05 * gap(&here)));
            // The same step cut short, and one that just fits.
            let there = workshop.curved(site, &here, &grip, &before.values, bounds, 0.1).expect("as before");
            let inside = (0..DIMENSIONS).all(|i| {
                there.point[i] == here.point[i] || (bounds[0][i] < there.point[i] && there.point[i] < bounds[1][i])
            });
            let free = moved(&there, &here);
            if inside && free > 1e-5 {
                let trust = free / 7.0;
                let short = workshop.curved(site, &here, &grip, &before.values, bounds, trust).expect("a step");
                assert!((moved(&short, &here) - 4.0 * trust).abs() < 1e-9, "{} of {free}", moved(&short, &here));
                let whole = workshop.curved(site, &here, &grip, &before.values, bounds, 0.26 * free).expect("a step");
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
    at_optima(|site, workshop, best, bounds| {
        let before = solved(site, workshop, &best, bounds, 0.05);
        let grip = workshop.grip(site, &before.step, bounds, 0.05, &before.slopes);
        for by in [1e-3, -1e-3] {
            let out = beside(site, &best, bounds, by);
            let there = workshop.corrected(site, out, &grip, bounds, 100.0);
            if out.excess < 1e-10 {
                assert_eq!(there.point, out.point);
            } else if out.excess > 1e-5 && grip.levels[..grip.count].iter().any(|level| !level.objective) {
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
    at_optima(|site, workshop, best, bounds| {
        for by in [1e-5, -1e-5, 1e-3, -1e-3] {
            let out = beside(site, &best, bounds, by);
            let there = workshop.restore(site, out, bounds);
            if out.excess <= 0.3 * KEPT {
                assert_eq!(there.point, out.point);
            } else if out.excess < 2e-3 {
                // A bound set by watching, no fact of geometry: twelve steps need not end within KEPT.
                assert!(there.excess <= 1e-8, "{} from {}", there.excess, out.excess);
                left.set(left.get() + usize::from(there.excess > 0.3 * KEPT));
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
fn near_its_end_a_descent_is_quick() {
    at_optima(|site, workshop, best, bounds| {
        for by in [0.01, -0.01] {
            let start = beside(site, &best, bounds, by);
            let quick = Effort { steps: 8, trust: 0.05, least_gain: 1e-10, curved: true, hopeful: false };
            let end = workshop.descend(site, start, bounds, quick);
            let end = workshop.restore(site, end, bounds);
            assert!(end.kept() && end.objective < best.objective + 1e-6, "{} {}", end.objective, best.objective);
        }
    });
}

/// Where no step takes half of the excess away, a hopeful descent ends at once; another goes on.
#[test]
fn a_hopeful_descent_ends_where_there_is_no_hope() {
    let setout = SetOut { shaft_travel_deg: Some(20.0), ..sites()[0].clone() };
    with_site(&setout, |site| {
        let (bounds, mut workshop) = (site.bounds(), Workshop::new());
        for start in site.scan_in(&bounds, 60, 3) {
            let effort = Effort { steps: 6, trust: 0.02, least_gain: 1e-6, curved: false, hopeful: true };
            let end = workshop.descend(site, start, &bounds, effort);
            assert_eq!(end.point, start.point);
            let on = workshop.descend(site, start, &bounds, Effort { hopeful: false, ..effort });
            assert!(on.merit(5.0) <= start.merit(5.0));
        }
        assert!(site.open().leaf_rad == OPEN && sites()[0].elbows() == [Elbow::Left]);
    });
}
