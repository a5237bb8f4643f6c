//! Separation of segments and rectangles against dense samples where they are apart, and where they overlap against the way out of
//! their difference body (Minkowski's), a hexagon.

use super::super::fixtures::{Dice, close, least};
use super::{Sides, parting_m, separation_m};

/// Least of the distances of points of the segment from the rectangle.
fn sampled(room: &Sides, from: (f64, f64), to: (f64, f64)) -> f64 {
    let over = |value: f64, [least, most]: [f64; 2]| (least - value).max(value - most).max(0.0);
    let distance = |share: f64| {
        let (x, y) = (from.0 + share * (to.0 - from.0), from.1 + share * (to.1 - from.1));
        over(x, room[0]).hypot(over(y, room[1]))
    };
    least(0.0, 1.0, distance)
}

/// How deep the origin is in the hexagon of differences, by the distances of its sides; negative where it is outside.
fn depth(room: &Sides, from: (f64, f64), to: (f64, f64)) -> f64 {
    let corners = [from, to]
        .into_iter()
        .flat_map(|(x, y)| [(0, 0), (0, 1), (1, 0), (1, 1)].map(|(i, j)| (room[0][i] - x, room[1][j] - y)));
    let corners: alloc::vec::Vec<(f64, f64)> = corners.collect();
    let normals = [(1.0, 0.0), (0.0, 1.0), (from.1 - to.1, to.0 - from.0)];
    let sides = normals.into_iter().flat_map(|(x, y)| [(x, y), (-x, -y)]).filter(|(x, y)| x.hypot(*y) > 0.0);
    let reach =
        |(nx, ny): (f64, f64)| corners.iter().map(|(x, y)| (x * nx + y * ny) / nx.hypot(ny)).fold(f64::MIN, f64::max);
    sides.map(reach).fold(f64::MAX, f64::min)
}

#[test]
fn separation_apart_is_the_distance_and_overlapping_the_way_out() {
    let mut dice = Dice(11);
    let (mut apart, mut overlapping) = (0, 0);
    for _ in 0..400 {
        let (x, y) = (dice.between(-1.0, 1.0), dice.between(-1.0, 1.0));
        let room = [[x, x + dice.between(0.0, 0.8)], [y, y + dice.between(0.0, 0.8)]];
        let mut end = || (dice.between(-1.5, 1.5), dice.between(-1.5, 1.5));
        let (from, to) = (end(), end());
        let (separation, parting, depth) =
            (separation_m(&room, from, to), parting_m(&room, from, to), depth(&room, from, to));
        close(parting, -depth, 1e-12);
        if depth >= 0.0 {
            overlapping += 1;
            assert_eq!(separation, parting);
        } else {
            apart += 1;
            close(separation, sampled(&room, from, to), 1e-7);
            assert!(parting <= separation + 1e-12);
        }
    }
    assert!(apart > 50 && overlapping > 50);
}

/// By hand, on a rectangle of 2 by 1: before every side and every corner, and a point for a segment.
#[test]
fn every_side_and_corner_is_seen() {
    let room = [[1.0, 3.0], [1.0, 2.0]];
    for (from, to, wanted) in [
        ((0.5, 0.0), (0.5, 3.0), 0.5),
        ((3.25, 0.0), (3.25, 3.0), 0.25),
        ((0.0, 0.25), (4.0, 0.25), 0.75),
        ((0.0, 2.125), (4.0, 2.125), 0.125),
        // Ends before a corner: 3-4-5.
        ((0.7, 0.6), (-1.0, -2.0), 0.5),
        ((3.3, 0.6), (5.0, -1.0), 0.5),
        ((0.7, 2.4), (-1.0, 3.0), 0.5),
        ((3.3, 2.4), (5.0, 4.0), 0.5),
        // Sides past a corner: x + y = 1 is √½ from (1, 1), and so on round.
        ((0.0, 1.0), (1.0, 0.0), 0.5_f64.sqrt()),
        ((3.0, 0.0), (4.0, 1.0), 0.5_f64.sqrt()),
        ((0.0, 2.0), (1.0, 3.0), 0.5_f64.sqrt()),
        ((3.0, 3.0), (4.0, 2.0), 0.5_f64.sqrt()),
        // A point.
        ((4.0, 1.5), (4.0, 1.5), 1.0),
        ((2.0, 1.75), (2.0, 1.75), -0.25),
        ((1.125, 1.5), (1.125, 1.5), -0.125),
        // Through, and touching.
        ((0.0, 1.75), (4.0, 1.75), -0.25),
        ((0.0, 2.0), (4.0, 2.0), 0.0),
    ] {
        close(separation_m(&room, from, to), wanted, 1e-12);
        close(separation_m(&room, to, from), wanted, 1e-12);
    }
}
