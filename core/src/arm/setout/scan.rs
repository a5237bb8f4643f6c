//! Where to start: an even scatter of set-outs over everything that is free, the most promising of them far from one another.

use super::found::Found;
use super::journal;
use super::problem::Problem;
use super::variables::{DIMENSIONS, Point};
use crate::job::Elbow;
use crate::real::{cos, sin, sqrt};
use alloc::collections::BinaryHeap;
use alloc::vec::Vec;
use core::cmp::Ordering;

/// Weights of an excess when starts are ranked: by what they promise, and by how little they exceed. Where few arms keep the limits, those
/// that promise most may all lie in a valley that has none.
const WEIGHTS: [f64; 2] = [10.0, 1e4];

/// Steps of the additive sequence: powers of the inverse of the root of `x⁶ = x + 1`, which scatters evenly in five dimensions.
/// Source: Roberts (2018), on generalised golden ratios, from memory.
const GOLDEN: [f64; DIMENSIONS] = {
    let base = 1.0 / 1.134_724_138_401_519_5;
    [base, base * base, base * base * base, base * base * base * base, base * base * base * base * base]
};

/// A scattered arm by its merit: the least is the greatest of a heap, of equals the first that was drawn.
struct Ranked {
    merit: f64,
    index: usize,
}

impl Ord for Ranked {
    fn cmp(&self, other: &Ranked) -> Ordering {
        other.merit.total_cmp(&self.merit).then(other.index.cmp(&self.index))
    }
}

impl PartialOrd for Ranked {
    fn partial_cmp(&self, other: &Ranked) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Ranked {
    fn eq(&self, other: &Ranked) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Ranked {}

impl Problem<'_> {
    /// The most promising of `count` scattered set-outs, at most `keep` by each weight, no two of one branch closer than
    /// some tenth of the ranges.
    pub fn scan(&self, count: usize, keep: usize) -> Vec<Found> {
        self.scan_in(&self.bounds(), count, keep)
    }

    /// The same within other bounds.
    pub fn scan_in(&self, bounds: &[Point; 2], count: usize, keep: usize) -> Vec<Found> {
        let draw = |from, to, tried: &mut Vec<Found>| self.scatter(bounds, from, to, tried);
        journal::starts(&self.journal, count, &bounds[0], draw, |tried| self.chosen(tried, bounds, keep))
    }

    /// The scattered set-outs from one index up to another.
    fn scatter(&self, bounds: &[Point; 2], from: usize, to: usize, tried: &mut Vec<Found>) {
        for index in from..to {
            let share: Point = core::array::from_fn(|i| {
                let turn = 0.5 + GOLDEN[i] * (index + 1) as f64;
                turn - libm::floor(turn)
            });
            match index % 4 {
                0 | 1 => {
                    for latch in [1.0, -1.0] {
                        tried.extend(
                            self.squared(bounds, &share, latch).map(|(point, elbow)| self.promised(&point, elbow)),
                        );
                    }
                }
                2 => {
                    let point = mixed(bounds, &share);
                    tried.extend(self.setout.elbows().iter().map(|&elbow| self.promised(&point, elbow)));
                }
                _ => {
                    if let Some(point) = self.spanned(bounds, &share) {
                        tried.extend(self.setout.elbows().iter().map(|&elbow| self.promised(&point, elbow)));
                    }
                }
            }
        }
    }

    /// The best by each weight, far from one another. An arm is ranked by what it promises, looked at among the rectangles only when its turn comes,
    /// no longer than until it is worse than the next, and ranked anew: rectangles can but make it worse, so the choice is that among arms all of
    /// which were looked at.
    fn chosen(&self, mut tried: Vec<Found>, bounds: &[Point; 2], keep: usize) -> Vec<Found> {
        let mut ranked = alloc::vec![!self.setout.is_around() && self.proof.is_none(); tried.len()];
        let mut starts: Vec<Found> = Vec::with_capacity(2 * keep);
        for weight in WEIGHTS {
            let rank = |(index, found): (usize, &Found)| Ranked { merit: found.merit(weight), index };
            let mut heap: BinaryHeap<Ranked> = tried.iter().enumerate().map(rank).collect();
            let most = starts.len() + keep;
            while starts.len() < most
                && let Some(Ranked { index, .. }) = heap.pop()
            {
                let found = tried[index];
                let near = |start: &Found| {
                    start.elbow == found.elbow
                        && start.sense == found.sense
                        && distance(bounds, &start.point, &found.point) < 0.15
                };
                if starts.iter().any(near) {
                    continue;
                }
                if ranked[index] {
                    starts.push(found);
                } else {
                    let next = heap.peek().map_or(f64::MAX, |next| next.merit);
                    (tried[index], ranked[index]) = self.ranked(&found, weight, next);
                    heap.push(Ranked { merit: tried[index].merit(weight), index });
                }
            }
        }
        // What was good enough to choose by is evaluated as everything that is descended from.
        starts.iter().map(|start| self.found(&start.point, start.elbow, start.sense)).collect()
    }

    /// A set-out with the link at a chosen angle to the open leaf: with `D = P − S` open, `L = a + b` and the link's unit vector `w`,
    /// `|D − b·w| = L − b` gives `b = (L² − D²)/(2(L − D·w))`.
    fn squared(&self, bounds: &[Point; 2], share: &Point, latch: f64) -> Option<(Point, Elbow)> {
        let mut point = mixed(bounds, share);
        let [x, y, u, _, z] = point;
        let v = self.setout.bracket_v_m;
        let (cosine, sine) = (self.open().cosine, self.open().sine);
        let off = self.limits.square_rad * (2.0 * share[3] - 1.0);
        let (along, across) = (sin(off), latch * cos(off));
        let link = (along * cosine - across * sine, along * sine + across * cosine);
        let reach = (u * cosine - v * sine - x, u * sine + v * cosine - y);
        let both = if self.proof.is_some() {
            self.both_m(u - x, v - y, z)
        } else {
            sqrt((u - x) * (u - x) + (v - y) * (v - y)) / (1.0 - z * z)
        };
        let reach2 = reach.0 * reach.0 + reach.1 * reach.1;
        let link_m = (both * both - reach2) / (2.0 * (both - reach.0 * link.0 - reach.1 * link.1));
        if !(link_m > 0.0 && link_m < both) {
            return None;
        }
        let elbow = (reach.0 - link_m * link.0, reach.1 - link_m * link.1);
        let side = if reach.0 * elbow.1 - reach.1 * elbow.0 > 0.0 { Elbow::Left } else { Elbow::Right };
        point[3] = (both - link_m).clamp(bounds[0][3], bounds[1][3]);
        self.setout.elbows().contains(&side).then_some((point, side))
    }

    /// A set-out whose crank and link are both drawn from their ranges, the bracket placed to suit: for arms bought at a length.
    fn spanned(&self, bounds: &[Point; 2], share: &Point) -> Option<Point> {
        let mut point = mixed(bounds, share);
        let [least, most] = self.setout.link_m;
        let both = point[3] + least + (most - least) * share[2];
        let short_m = self.proof.as_ref().map_or(0.0, |proof| proof.lengths_m() + proof.pins_m().iter().sum::<f64>());
        let reach = (both - short_m) * (1.0 - point[4] * point[4]);
        let across = self.setout.bracket_v_m - point[1];
        if reach < across.abs() {
            return None;
        }
        let along = sqrt(reach * reach - across * across);
        point[2] = (point[0] + along).clamp(bounds[0][2], bounds[1][2]);
        Some(point)
    }
}

fn mixed([least, most]: &[Point; 2], share: &Point) -> Point {
    core::array::from_fn(|i| least[i] + (most[i] - least[i]) * share[i])
}

/// Largest difference of two points in shares of the ranges.
fn distance([least, most]: &[Point; 2], one: &Point, other: &Point) -> f64 {
    (0..DIMENSIONS)
        .map(|i| if most[i] > least[i] { (one[i] - other[i]).abs() / (most[i] - least[i]) } else { 0.0 })
        .fold(0.0, f64::max)
}

#[cfg(test)]
mod tests;
