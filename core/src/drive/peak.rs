//! The largest shaft torque over the continuous swing.

use super::demand::Demand;
use crate::arm::{Leverage, Linkage};
use crate::leaf::{LeafLoads, LeafStation};
use crate::terms::Direction;
use alloc::vec::Vec;
use kurbo::common::solve_itp;

/// Intervals the swing is cut into before each maximum is refined. The torque has a handful of extremes over a swing of at most
/// 180°, all of them wide on this scale except the flanks of a nearly straight arm, where it is monotone.
const INTERVALS: u32 = 360;

/// Angle to which a maximum is refined, rad. Torque is flat there, so its own error is of second order.
const REFINED_RAD: f64 = 1e-11;

/// Leaf angles of a swing on a fixed grid, independent of how many samples a curve is to have, with what of the loads depends on the angle: one
/// grid serves every arm, every gust and every friction.
#[derive(Clone, Debug)]
pub struct Grid {
    loads: LeafLoads,
    stations: Vec<LeafStation>,
}

impl Grid {
    /// The grid of a swing, rad, under loads.
    pub fn new(open_rad: f64, loads: &LeafLoads) -> Grid {
        let step = open_rad / f64::from(INTERVALS);
        let angle = |index: u32| if index == INTERVALS { open_rad } else { f64::from(index) * step };
        Grid { loads: *loads, stations: (0..=INTERVALS).map(|index| loads.station(angle(index))).collect() }
    }

    /// The same with the leaf angle of the swing added at which the loads step: both sides of the step are looked at, the far one a bit of
    /// the angle's last place beyond it. What drags before the step helps to hold the leaf back: there the torque held is largest behind it.
    pub fn with_step(open_rad: f64, loads: &LeafLoads) -> Grid {
        let mut grid = Grid::new(open_rad, loads);
        if let Some(at) = loads.step_rad().filter(|&at| at > 0.0 && at < open_rad) {
            let index = grid.stations.partition_point(|station| station.leaf_rad <= at);
            grid.stations.splice(index..index, [at, at.next_up()].map(|at| loads.station(at)));
        }
        grid
    }

    /// An arm without defect at the angles of the grid.
    pub fn swept<'a>(&'a self, linkage: &'a Linkage) -> Swept<'a> {
        let levers = self.stations.iter().map(|station| linkage.leverage(station.leaf_rad)).collect();
        Swept { grid: self, linkage, levers }
    }
}

/// An arm at the leaf angles of a grid.
#[derive(Clone, Debug)]
pub struct Swept<'a> {
    grid: &'a Grid,
    linkage: &'a Linkage,
    levers: Vec<Leverage>,
}

/// The largest shaft torque of one or several demands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PeakDemand {
    /// Leaf angle, rad.
    pub leaf_rad: f64,
    /// Magnitude of the shaft torque, N·m.
    pub shaft_torque_n_m: f64,
    /// Which way the leaf moves there.
    pub direction: Direction,
}

impl Swept<'_> {
    /// The largest `|shaft torque|` of a demand, whose loads hang like those of the grid; `None` where nothing counts.
    ///
    /// Every grid point is looked at, and every interval in which the slope turns from rising to falling is refined by bracketing
    /// (ITP, see [`turning_point`]).
    pub fn peak(&self, demand: &Demand) -> Option<PeakDemand> {
        self.largest(demand, |_| true)
    }

    /// The same where the leaf drives the shaft alone: the most that is held back.
    pub fn held(&self, demand: &Demand) -> Option<PeakDemand> {
        self.largest(demand, |leaf_torque_n_m| demand.leaf_drives(leaf_torque_n_m))
    }

    fn largest(&self, demand: &Demand, counts: impl Fn(f64) -> bool) -> Option<PeakDemand> {
        debug_assert!(demand.loads.hangs_like(&self.grid.loads), "the grid is that of other loads");
        let mut best: Option<PeakDemand> = None;
        let mut look = |lever: &Leverage, leaf_torque_n_m: f64| {
            if !counts(leaf_torque_n_m) {
                return;
            }
            let shaft_torque_n_m = demand.shaft_n_m(leaf_torque_n_m, lever.ratio).abs();
            if best.is_none_or(|best| shaft_torque_n_m > best.shaft_torque_n_m) {
                best = Some(PeakDemand { leaf_rad: lever.leaf_rad, shaft_torque_n_m, direction: demand.direction });
            }
        };
        let mut crests: Vec<[(f64, f64); 2]> = Vec::new();
        let mut before: Option<(f64, f64)> = None;
        for (lever, station) in self.levers.iter().zip(&self.grid.stations) {
            let (torque, slope) = demand.leaf_torque_and_slope(lever, station);
            look(lever, torque);
            let here = slope.map(|slope| (lever.leaf_rad, slope));
            if let (Some(rising), Some(falling)) = (before, here)
                && rising.1 > 0.0
                && falling.1 < 0.0
            {
                crests.push([rising, falling]);
            }
            before = here;
        }
        let anywhere = |leaf_rad: f64| {
            let (lever, station) = (self.linkage.leverage(leaf_rad), demand.loads.station(leaf_rad));
            let (torque, slope) = demand.leaf_torque_and_slope(&lever, &station);
            (lever, torque, slope)
        };
        for [rising, falling] in crests {
            let leaf_rad = turning_point(rising, falling, |leaf_rad| anywhere(leaf_rad).2.unwrap_or(0.0));
            let (lever, torque, _) = anywhere(leaf_rad);
            look(&lever, torque);
        }
        best
    }

    /// Least lever of the link about the hinge from a leaf angle on, and where, m and rad.
    pub fn least_lever(&self, least_rad: f64) -> (f64, f64) {
        // Slope of the lever's magnitude, turned over so that a least lever is where it turns from rising to falling.
        let slope =
            |lever: &Leverage| lever.lever_rate_m().map(|rate| if lever.signed_lever_m < 0.0 { rate } else { -rate });
        let first = self.linkage.leverage(least_rad);
        let (mut least, mut before) = ((first.lever_m(), first.leaf_rad), (first.leaf_rad, slope(&first)));
        let mut look = |lever: &Leverage| {
            if lever.lever_m() < least.0 {
                least = (lever.lever_m(), lever.leaf_rad);
            }
        };
        let mut valleys: Vec<[(f64, f64); 2]> = Vec::new();
        for lever in self.levers.iter().filter(|lever| lever.leaf_rad > least_rad) {
            look(lever);
            let here = (lever.leaf_rad, slope(lever));
            if let ((from, Some(rising)), (to, Some(falling))) = (before, here)
                && rising > 0.0
                && falling < 0.0
            {
                valleys.push([(from, rising), (to, falling)]);
            }
            before = here;
        }
        for [from, to] in valleys {
            let leaf_rad = turning_point(from, to, |leaf_rad| slope(&self.linkage.leverage(leaf_rad)).unwrap_or(0.0));
            look(&self.linkage.leverage(leaf_rad));
        }
        least
    }
}

/// Where a slope turns from rising to falling between two leaf angles, rad.
///
/// ITP (Oliveira and Takahashi 2020, <https://doi.org/10.1145/3423597>): the bracket is kept, the result lies within [`REFINED_RAD`] of a
/// sign change, and it takes at most one evaluation more than bisection: 31 for an interval of half a degree.
fn turning_point((low, rising): (f64, f64), (high, falling): (f64, f64), slope: impl Fn(f64) -> f64) -> f64 {
    solve_itp(|leaf_rad| -slope(leaf_rad), low, high, REFINED_RAD, 1, 0.2 / (high - low), -rising, -falling)
}
