//! Where starts come from: each kind of drawn arm against what it is drawn for, the choice among them by drawing them all again.

use super::super::fixtures::{self, Dice, OPEN, close, pose, with_problem};
use super::super::found::Found;
use super::{DIMENSIONS, Point, Problem, distance, mixed};
use crate::job::{Elbow, ElbowChoice, SetOut};
use alloc::vec::Vec;

fn share(dice: &mut Dice) -> Point {
    core::array::from_fn(|_| dice.between(0.0, 1.0))
}

#[test]
fn shares_of_ranges_are_mixed_and_measured() {
    let bounds = [[1.0, -2.0, 0.0, 5.0, 0.5], [3.0, 2.0, 10.0, 5.0, 0.75]];
    assert_eq!(mixed(&bounds, &[0.25, 0.5, 0.1, 0.7, 1.0]), [1.5, 0.0, 1.0, 5.0, 0.75]);
    // A range without width keeps nobody apart.
    assert_eq!(distance(&bounds, &[1.0, -2.0, 0.0, 5.0, 0.5], &[1.5, -1.0, 4.0, 9.0, 0.5]), 0.4);
    assert_eq!(distance(&bounds, &[1.5, 1.0, 4.0, 9.0, 0.5], &[1.0, -2.0, 4.0, 5.0, 0.5]), 0.75);
}

/// The link stands at the drawn angle to the open leaf, on the side asked for; there is such an arm exactly where the lengths outreach the open bracket.
#[test]
fn a_squared_arm_stands_at_its_angle() {
    let setout = SetOut {
        crank_m: [0.02, 5.0],
        straightness: Some([0.6, 1.0]),
        square_deg: Some(20.0),
        shaft_x_m: [-0.6, 1.0],
        ..fixtures::setout()
    };
    let mut dice = Dice(51);
    let (mut left, mut right, mut none) = (0, 0, 0);
    with_problem(&setout, |problem| {
        let bounds = problem.bounds();
        for _ in 0..300 {
            let (share, latch) = (share(&mut dice), if dice.between(0.0, 1.0) < 0.5 { 1.0 } else { -1.0 });
            let plain = mixed(&bounds, &share);
            let bracket = pose(&problem.arm(&plain, Elbow::Left), OPEN).bracket;
            let reach = (bracket.0 - plain[0]).hypot(bracket.1 - plain[1]);
            let both = (plain[2] - plain[0]).hypot(0.06 - plain[1]) / (1.0 - plain[4] * plain[4]);
            let Some((point, elbow)) = problem.squared(&bounds, &share, latch) else {
                none += 1;
                assert!(both <= reach + 1e-9, "{both} reaches {reach}");
                continue;
            };
            assert!(both > reach);
            (0..DIMENSIONS).filter(|&i| i != 3).for_each(|i| assert_eq!(point[i], plain[i]));
            if point[3] <= bounds[0][3] || both - point[3] < 1e-3 {
                continue;
            }
            let link = pose(&problem.arm(&point, elbow), OPEN).link;
            let off = 20_f64.to_radians() * (2.0 * share[3] - 1.0);
            close(link.0 * OPEN.cos() + link.1 * OPEN.sin(), off.sin(), 1e-6);
            close(link.1 * OPEN.cos() - link.0 * OPEN.sin(), latch * off.cos(), 1e-6);
            if elbow == Elbow::Left { left += 1 } else { right += 1 }
        }
    });
    assert!(left > 20 && right > 20 && none > 5, "{left} {right} {none}");
}

#[test]
fn a_squared_arm_keeps_elbow_and_crank_as_far_as_it_can() {
    let mut dice = Dice(52);
    let setout = SetOut { crank_m: [0.5, 0.52], elbow: Some(ElbowChoice::Right), ..fixtures::setout() };
    let wide = SetOut { crank_m: [0.02, 5.0], elbow: None, ..setout.clone() };
    let mut told = 0;
    for _ in 0..100 {
        let share = share(&mut dice);
        let free = with_problem(&wide, |problem| problem.squared(&problem.bounds(), &share, -1.0));
        let kept = with_problem(&setout, |problem| problem.squared(&problem.bounds(), &share, -1.0));
        // The crank does not count among what a squared arm is worked out from, so the narrow range only clamps it.
        let wanted = free.filter(|(_, elbow)| *elbow == Elbow::Right).map(|(point, _)| point[3].clamp(0.5, 0.52));
        assert_eq!(kept.map(|(point, _)| point[3]), wanted);
        told += usize::from(wanted.is_some());
    }
    assert!(told > 10);
}

#[test]
fn a_spanned_arm_has_the_lengths_drawn() {
    let setout =
        SetOut { bracket_u_m: [-3.0, 5.0], straightness: Some([0.5, 1.0]), link_m: [0.02, 0.9], ..fixtures::setout() };
    let mut dice = Dice(53);
    let mut none = 0;
    with_problem(&setout, |problem| {
        let bounds = problem.bounds();
        for _ in 0..200 {
            let share = share(&mut dice);
            let plain = mixed(&bounds, &share);
            let link_m = 0.02 + 0.88 * share[2];
            let Some(point) = problem.spanned(&bounds, &share) else {
                none += 1;
                assert!((link_m + plain[3]) * (1.0 - plain[4] * plain[4]) < (0.06 - plain[1]).abs());
                continue;
            };
            let arm = problem.arm(&point, Elbow::Left);
            close(arm.link_m, link_m, 1e-9);
            assert_eq!((arm.crank_m, arm.shaft_x_m, arm.shaft_y_m), (plain[3], plain[0], plain[1]));
            assert!(arm.bracket_u_m >= arm.shaft_x_m);
        }
        let narrow = [bounds[0], {
            let mut most = bounds[1];
            most[2] = 0.4;
            most
        }];
        for _ in 0..20 {
            let share = share(&mut dice);
            if let (Some(free), Some(kept)) = (problem.spanned(&bounds, &share), problem.spanned(&narrow, &share)) {
                assert_eq!(kept[2], free[2].clamp(-3.0, 0.4));
            }
        }
    });
    assert!(none > 0);
}

/// Everything the scan draws, drawn again in its documented order: kinds by fours, shares from the additive sequence of x⁶ = x + 1.
fn drawn(problem: &Problem, count: usize) -> Vec<Found> {
    let bounds = problem.bounds();
    let mut root = 1.1_f64;
    for _ in 0..100 {
        root = (root + 1.0).powf(1.0 / 6.0);
    }
    let mut all = Vec::new();
    for index in 0..count {
        let share: Point = core::array::from_fn(|i| (0.5 + root.powi(-(i as i32 + 1)) * (index + 1) as f64).fract());
        let mut take = |point: Point, elbow: Elbow| {
            let sense = pose(&problem.arm(&point, elbow), 0.5 * OPEN).lever.signum();
            all.push(problem.found(&point, elbow, sense));
        };
        let points = match index % 4 {
            0 | 1 => {
                [1.0, -1.0]
                    .iter()
                    .filter_map(|&latch| problem.squared(&bounds, &share, latch))
                    .for_each(|(p, e)| take(p, e));
                None
            }
            2 => Some(mixed(&bounds, &share)),
            _ => problem.spanned(&bounds, &share),
        };
        points.into_iter().for_each(|point| problem.setout.elbows().iter().for_each(|&elbow| take(point, elbow)));
    }
    all
}

#[test]
fn the_most_promising_are_kept_apart() {
    let setout = SetOut {
        straightness: Some([0.9, 1.0]),
        square_deg: Some(15.0),
        least_lever_m: Some(0.2),
        ..fixtures::setout()
    };
    with_problem(&setout, |problem| {
        let (count, keep) = (400, 6);
        let starts = problem.scan(count, keep);
        assert_eq!(starts.len(), 2 * keep);
        let all = drawn(problem, count);
        let near = |one: &Found, other: &Found| {
            one.elbow == other.elbow
                && one.sense == other.sense
                && distance(&problem.bounds(), &one.point, &other.point) < 0.15 - 1e-9
        };
        // By each weight in turn: the start is the best of all that are near no start before it.
        for (rank, start) in starts.iter().enumerate() {
            let weight = if rank < keep { 10.0 } else { 1e4 };
            let left = all.iter().filter(|found| !starts[..rank].iter().any(|start| near(start, found)));
            let best = left.map(|found| found.merit(weight)).fold(f64::MAX, f64::min);
            close(start.merit(weight), best, 1e-9 * best.abs().max(1.0));
        }
    });
}

#[test]
fn starts_kept_are_no_more_than_there_are() {
    // Fixed all over: every start is near the first of its branch.
    let setout = SetOut {
        shaft_x_m: [-0.3; 2],
        shaft_y_m: [0.5; 2],
        bracket_u_m: [1.0; 2],
        crank_m: [0.6; 2],
        link_m: [0.3, 0.9],
        straightness: Some([0.95; 2]),
        ..fixtures::setout()
    };
    with_problem(&setout, |problem| {
        let starts = problem.scan(40, 5);
        assert_eq!(starts.len(), 2, "one for each elbow");
        let none = SetOut { elbow: Some(ElbowChoice::Left), ..setout.clone() };
        assert_eq!(with_problem(&none, |problem| problem.scan(40, 5).len()), 1);
    });
}
