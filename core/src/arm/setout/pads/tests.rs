//! One place of the map: the mean between neighbours, what is descended from, and what is left alone.

use super::super::descent::SlpScratch;
use super::super::fixtures::{self, with_problem};
use super::super::found::Found;
use super::super::problem::Problem;
use super::{PLACE_TOLERANCE, STEEPEST_EXCESS_PER_M, better};
use crate::job::{Elbow, ElbowChoice, SetOut};

fn setout() -> SetOut {
    SetOut {
        straightness: Some([0.93, 0.99]),
        square_deg: Some(20.0),
        least_lever_m: Some(0.2),
        elbow: Some(ElbowChoice::Left),
        link_m: [0.2, 1.0],
        ..fixtures::setout()
    }
}

fn solved(problem: &Problem, scratch: &mut SlpScratch, x: f64, y: f64) -> Found {
    let found = problem.best_alone_longer(scratch, x, y).expect("an arm");
    assert!(found.excess <= PLACE_TOLERANCE, "{found:?}");
    assert_eq!((found.point[0], found.point[1]), (x, y));
    found
}

#[test]
fn the_mean_of_two_alike_is_taken_where_it_is_good_enough() {
    with_problem(&setout(), |problem| {
        let mut scratch = SlpScratch::new();
        let one = solved(problem, &mut scratch, -0.36, 0.5);
        // Its own arm moved a little: between two copies the mean is that arm again.
        let other = Found { objective: one.objective * 1.001, ..one };
        let mean = problem.best_between(&mut scratch, (-0.36, 0.5), &[[Some(one), Some(other)]], 0.01, true);
        let mean = mean.expect("a mean");
        for i in 0..5 {
            assert!((mean.point[i] - one.point[i]).abs() < 1e-12);
        }
        // Two arms whose mean asks more than theirs: not taken, but descended from.
        let lower = |found: Found| Found { objective: 0.5 * found.objective, ..found };
        let start = problem.found(&one.point, one.elbow, one.sense);
        let end = problem.best_between(&mut scratch, (-0.36, 0.5), &[[Some(lower(one)), Some(lower(one))]], 0.01, true);
        assert!(end.expect("some").merit(1.0) <= start.merit(1.0));
        // Apart in bracket and lengths, in the middle of both.
        let apart = solved(problem, &mut scratch, -0.34, 0.5);
        let high = |found: Found| Found { objective: 9.0 * found.objective, ..found };
        let mean =
            problem.best_between(&mut scratch, (-0.35, 0.5), &[[Some(high(one)), Some(high(apart))]], 0.01, true);
        let mean = mean.expect("some");
        assert_eq!((mean.point[0], mean.point[1]), (-0.35, 0.5));
        let middle = [2, 3, 4].map(|i| 0.5 * (one.point[i] + apart.point[i]));
        let between = problem.found(&[-0.35, 0.5, middle[0], middle[1], middle[2]], one.elbow, one.sense);
        if between.excess <= PLACE_TOLERANCE {
            assert_eq!(mean.point, between.point);
        }
    });
}

#[test]
fn two_unlike_arms_give_no_mean() {
    with_problem(&SetOut { elbow: None, ..setout() }, |problem| {
        let mut scratch = SlpScratch::new();
        let one = problem.best_alone_longer(&mut scratch, -0.36, 0.5).expect("an arm");
        let at = |from: &Found| {
            problem.found(&[-0.35, 0.5, from.point[2], from.point[3], from.point[4]], from.elbow, from.sense)
        };
        let turned = Found { elbow: if one.elbow == Elbow::Left { Elbow::Right } else { Elbow::Left }, ..one };
        let away = Found { sense: -one.sense, ..one };
        // All exceed so much that the place is left as it is moved: the best of both, never a mean of them.
        let far = |mut found: Found, crank: f64| {
            found.excess = 1.0;
            found.point[3] = crank;
            found
        };
        for other in [turned, away] {
            let (one, other) = (far(one, 0.5), far(other, 0.8));
            let told = problem.best_between(&mut scratch, (-0.35, 0.5), &[[Some(one), Some(other)]], 0.01, false);
            let told = told.expect("some");
            let wanted = if at(&other).merit(1.0) < at(&one).merit(1.0) { at(&other) } else { at(&one) };
            assert_eq!(told.point, wanted.point);
        }
        assert!(problem.best_between(&mut scratch, (-0.35, 0.5), &[[None, None]; 2], 0.01, true).is_none());
    });
}

/// Without a neighbour that keeps the limits a fine pass leaves a place alone, a coarse one where the excess is too steep to be made up.
#[test]
fn place_without_a_kept_neighbour_is_left_alone_on_a_fine_pass() {
    with_problem(&setout(), |problem| {
        let mut scratch = SlpScratch::new();
        let good = solved(problem, &mut scratch, -0.36, 0.5);
        let mut bad = good;
        (bad.point[3], bad.excess) = (good.point[3] + 0.15, 0.02);
        let place = (-0.35, 0.5);
        let moved = problem.found(&[-0.35, 0.5, bad.point[2], bad.point[3], bad.point[4]], bad.elbow, bad.sense);
        let mut told = |pairs: &[[Option<Found>; 2]], apart_m: f64, coarse: bool| {
            problem.best_between(&mut scratch, place, pairs, apart_m, coarse).expect("some")
        };
        let alone = [[Some(bad), None]];
        assert_eq!(told(&alone, 0.1, false).point, moved.point);
        assert_eq!(told(&alone, 0.9 * 0.02 / STEEPEST_EXCESS_PER_M, true).point, moved.point);
        let end = told(&alone, 1.1 * 0.02 / STEEPEST_EXCESS_PER_M, true);
        assert!(end.point != moved.point && end.merit(5.0) < moved.merit(5.0));
        assert_eq!((end.point[0], end.point[1]), place);
        // One neighbour with an arm is enough.
        let mut kept = bad;
        kept.excess = PLACE_TOLERANCE;
        assert!(told(&[[Some(bad), None], [None, Some(kept)]], 0.1, false).point != moved.point);
    });
}

#[test]
fn seeds_and_neighbours_are_brought_to_the_place() {
    with_problem(&setout(), |problem| {
        let mut scratch = SlpScratch::new();
        let seeds = problem.seeds(&mut scratch);
        assert!(seeds.len() > 10 && seeds.iter().filter(|seed| seed.kept()).count() > 3);
        let seed = seeds.iter().find(|seed| seed.kept()).expect("one");
        let [x, y, u, crank, z] = seed.point;
        let (x, y) = (x + 0.01, y - 0.01);
        let start = problem.found(&[x, y, u, crank, z], seed.elbow, seed.sense);
        let seeded_at = problem.seeded_at(&mut scratch, (x, y), seed);
        assert_eq!((seeded_at.point[0], seeded_at.point[1]), (x, y));
        assert!(seeded_at.merit(5.0) <= start.merit(5.0));
        // Of two neighbours the one that promises more is descended from.
        let mut worse = *seed;
        worse.point[3] += 0.2;
        for pair in [[*seed, worse], [worse, *seed]] {
            let beside = problem.best_beside(&mut scratch, (x, y), pair.into_iter()).expect("some");
            assert_eq!((beside.point[0], beside.point[1]), (x, y));
            assert!(beside.merit(5.0) <= start.merit(5.0));
        }
        let turned = Found { elbow: Elbow::Right, ..*seed };
        let moved = problem.found(&start.point, Elbow::Right, seed.sense);
        assert!(moved.merit(1.0) > start.merit(1.0));
        for pair in [[*seed, turned], [turned, *seed]] {
            let beside = problem.best_beside(&mut scratch, (x, y), pair.into_iter()).expect("some");
            assert_eq!(beside.elbow, Elbow::Left);
        }
        let alone = problem.best_alone(&mut scratch, x, y).expect("some");
        assert_eq!((alone.point[0], alone.point[1]), (x, y));
        assert!(problem.best_beside(&mut scratch, (x, y), core::iter::empty()).is_none());
        let nearest = problem.nearest_alone((x, y), worse);
        assert!(!worse.beats(&nearest));
    });
}

#[test]
fn the_better_of_two_is_kept() {
    let found = |objective: f64| Found { point: [0.0; 5], elbow: Elbow::Left, sense: 1.0, objective, excess: 0.0 };
    let told = |best: Option<f64>, next: f64| better(best.map(found), found(next)).expect("some").objective;
    assert_eq!([told(None, 2.0), told(Some(1.0), 2.0), told(Some(3.0), 2.0)], [2.0, 1.0, 2.0]);
}

/// A mean stands where both arms are kept and of one branch, and it keeps the limits and asks no more than three in ten thousand above their mean.
#[test]
fn mean_of_two_arms_is_judged_by_its_own_objective() {
    with_problem(&setout(), |problem| {
        let mut scratch = SlpScratch::new();
        let best = solved(problem, &mut scratch, -0.36, 0.5);
        // Kept, but with something to gain: whatever is descended from moves.
        let aside = |by: f64, u: f64| {
            let mut point = best.point;
            (point[2], point[3]) = (point[2] + u, point[3] + by);
            problem.found(&point, best.elbow, best.sense)
        };
        let steps = (1..40).flat_map(|index| [0.002, -0.002].map(|step| step * f64::from(index)));
        let pairs = steps.flat_map(|by| [0.0, 0.02, -0.02].map(|u| aside(by, u)));
        let one = pairs.into_iter().find(|found| found.excess < -1e-4 && found.objective > 1.02 * best.objective);
        let one = one.expect("an arm that is kept and no optimum");
        let mean = |pair: [Found; 2]| {
            let told = problem.best_between(
                &mut SlpScratch::new(),
                (-0.36, 0.5),
                &[[Some(pair[0]), Some(pair[1])]],
                0.1,
                true,
            );
            (0..5).all(|i| (told.expect("some").point[i] - one.point[i]).abs() < 1e-12)
        };
        let of = move |objective: f64, excess: f64| {
            let mut found: Found = one;
            (found.objective, found.excess) = (objective * one.objective, excess);
            found
        };
        assert!(mean([of(0.8, -1.0), of(1.2 - 4e-4, -1.0)]));
        assert!(!mean([of(0.8, -1.0), of(1.2 - 8e-4, -1.0)]));
        assert!(mean([of(1.0, PLACE_TOLERANCE), of(1.0, PLACE_TOLERANCE)]));
        assert!(
            !mean([of(1.0, 1.1 * PLACE_TOLERANCE), of(1.0, -1.0)])
                && !mean([of(1.0, -1.0), of(1.0, 1.1 * PLACE_TOLERANCE)])
        );
        let fine = of(2.0, -1.0);
        assert!(mean([fine, fine]));
        assert!(
            !mean([fine, Found { elbow: Elbow::Right, ..fine }]) && !mean([fine, Found { sense: -fine.sense, ..fine }])
        );
        // A mean that exceeds a limit does not stand, however little it asks.
        let wild = (1..60)
            .map(|index| aside(0.005 * f64::from(index), 0.0))
            .find(|found| found.excess > 3.0 * PLACE_TOLERANCE);
        let mut wild = wild.expect("an arm that is not kept");
        let point = wild.point;
        (wild.objective, wild.excess) = (1e6, -1.0);
        let told = problem.best_between(&mut scratch, (-0.36, 0.5), &[[Some(wild), Some(wild)]], 0.1, true);
        assert_ne!(told.expect("some").point, point);
    });
}

/// Of what is around the one that promises most is taken, wherever it stands in the list.
#[test]
fn the_most_promising_neighbour_is_taken() {
    with_problem(&setout(), |problem| {
        let mut scratch = SlpScratch::new();
        let good = solved(problem, &mut scratch, -0.36, 0.5);
        let far = |by: f64| {
            let mut found = good;
            (found.point[3], found.excess) = (good.point[3] + by, 0.02);
            found
        };
        let (near, further) = (far(0.01), far(0.2));
        for pairs in [
            [[Some(near), Some(further)], [None, None]],
            [[Some(further), None], [None, Some(near)]],
            [[Some(further), Some(near)], [None, Some(further)]],
        ] {
            let told = problem.best_between(&mut scratch, (-0.35, 0.5), &pairs, 0.1, false).expect("some");
            assert_eq!(told.point[3], near.point[3]);
        }
    });
}
