//! The curved step against the systems worked by hand for one and two terms, the second differences against a quadratic's own.
// Lines and columns of a matrix are told by their numbers.
#![allow(clippy::needless_range_loop)]

use super::super::active_set::EVEN;
use super::super::fixtures::{Dice, close};
use super::super::variables::{DIMENSIONS, Point};
use super::{ActiveTerm, curvature, step};
use crate::numerics::VARIABLES;

const FREE: [Option<f64>; DIMENSIONS] = [None; DIMENSIONS];

fn dot(one: &Point, other: &Point) -> f64 {
    one.iter().zip(other).map(|(one, other)| one * other).sum()
}

fn term(slope: &Point, value: f64, objective: bool) -> ActiveTerm {
    let mut padded = [0.0; VARIABLES];
    padded[..DIMENSIONS].copy_from_slice(slope);
    ActiveTerm { slope: padded, value, objective }
}

fn point(dice: &mut Dice) -> Point {
    core::array::from_fn(|_| dice.between(-1.0, 1.0))
}

#[test]
fn second_differences_of_a_quadratic_are_its_own() {
    let mut dice = Dice(3);
    let mut even = [[0.0; DIMENSIONS]; DIMENSIONS];
    for i in 0..DIMENSIONS {
        for j in 0..=i {
            even[i][j] = dice.between(-1.0, 1.0);
            even[j][i] = even[i][j];
        }
    }
    let (slope, at) = (point(&mut dice), point(&mut dice));
    let bent =
        curvature(&at, |x| 0.3 + dot(&slope, x) + 0.5 * (0..DIMENSIONS).map(|i| x[i] * dot(&even[i], x)).sum::<f64>());
    for i in 0..DIMENSIONS {
        for j in 0..DIMENSIONS {
            // The floor of 1e-4 under every direction.
            close(bent[i][j], even[i][j] + if i == j { 1e-4 } else { 0.0 }, 2e-6);
        }
    }
}

#[test]
fn one_objective_is_newton_s_step() {
    let mut dice = Dice(4);
    for round in 0..40 {
        // A matrix with zeros on its diagonal has to be pivoted.
        let mut bent = [[0.0; DIMENSIONS]; DIMENSIONS];
        for i in 0..DIMENSIONS {
            for j in 0..=i {
                bent[i][j] = if i == j && round % 2 == 0 { 0.0 } else { dice.between(-1.0, 1.0) };
                bent[j][i] = bent[i][j];
            }
        }
        let slope = point(&mut dice);
        let mut held = FREE;
        if round % 3 == 0 {
            held[round % DIMENSIONS] = Some(0.25);
        }
        let Some(moved) = step(&bent, &held, &[term(&slope, 0.4, true)]) else { continue };
        for i in 0..DIMENSIONS {
            match held[i] {
                Some(value) => close(moved[i], value, 1e-9),
                None => close(dot(&bent[i], &moved), -slope[i], 1e-7),
            }
        }
    }
}

#[test]
fn two_objectives_are_levelled() {
    let mut dice = Dice(5);
    for _ in 0..20 {
        let (one, other) = (point(&mut dice), point(&mut dice));
        let (at_one, at_other) = (dice.between(0.0, 1.0), dice.between(0.0, 1.0));
        let moved = step(&EVEN, &FREE, &[term(&one, at_one, true), term(&other, at_other, true)]).expect("an answer");
        // s = −(λ·g₁ + (1−λ)·g₂), and both reach the same height.
        let apart: Point = core::array::from_fn(|i| one[i] - other[i]);
        let share = (at_one - at_other - dot(&apart, &other)) / dot(&apart, &apart);
        for i in 0..DIMENSIONS {
            close(moved[i], -(share * one[i] + (1.0 - share) * other[i]), 1e-9);
        }
    }
}

#[test]
fn an_objective_slides_along_a_limit() {
    let mut dice = Dice(6);
    for _ in 0..20 {
        let (slope, limit, excess) = (point(&mut dice), point(&mut dice), dice.between(-0.5, 0.5));
        let terms = [term(&slope, 0.7, true), term(&limit, excess, false)];
        let moved = step(&EVEN, &FREE, &terms).expect("an answer");
        // s = −(g + μ·a) with c + a·s = 0.
        let weight = (excess - dot(&limit, &slope)) / dot(&limit, &limit);
        for i in 0..DIMENSIONS {
            close(moved[i], -(slope[i] + weight * limit[i]), 1e-9);
        }
    }
}

#[test]
fn the_shortest_way_to_a_limit_is_square_to_it() {
    let limit = [3.0, 0.0, -4.0, 0.0, 0.0];
    let moved = step(&EVEN, &FREE, &[term(&limit, 0.5, false)]).expect("an answer");
    for i in 0..DIMENSIONS {
        close(moved[i], -0.5 * limit[i] / 25.0, 1e-12);
    }
    assert_eq!(step(&EVEN, &FREE, &[]).expect("an answer"), [0.0; DIMENSIONS]);
    // Twice the same limit has no single multiplier.
    assert!(step(&EVEN, &FREE, &[term(&limit, 0.5, false); 2]).is_none());
}
