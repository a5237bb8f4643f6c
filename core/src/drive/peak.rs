//! The largest shaft torque over the continuous swing.

use super::demand::{Demand, Direction};
use crate::arm::{Linkage, Pose};
use alloc::vec::Vec;
use kurbo::common::solve_itp;

/// Intervals the swing is cut into before each maximum is refined. The torque has a handful of extremes over a swing of at most
/// 180°, all of them wide on this scale except the flanks of a nearly straight arm, where it is monotone.
const INTERVALS: u32 = 360;

/// Angle to which a maximum is refined, rad. Torque is flat there, so its own error is of second order.
const REFINED_RAD: f64 = 1e-11;

/// The swing's poses on a fixed grid, independent of how many samples a curve is to have.
#[derive(Clone, Debug)]
pub struct Swept<'a> {
    linkage: &'a Linkage,
    poses: Vec<Pose>,
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

impl<'a> Swept<'a> {
    /// Poses of a linkage without defect.
    pub fn new(linkage: &'a Linkage) -> Swept<'a> {
        let step = linkage.open_rad / f64::from(INTERVALS);
        let poses = (0..=INTERVALS)
            .map(|index| if index == INTERVALS { linkage.open_rad } else { f64::from(index) * step })
            .map(|leaf_rad| linkage.pose(leaf_rad))
            .collect();
        Swept { linkage, poses }
    }

    /// The same with a leaf angle of the swing added, at which a demand steps: both sides of the step are looked at, the far one a bit of
    /// the angle's last place beyond it. What drags before the step helps to hold the leaf back: there the torque held is largest behind it.
    pub fn with_step(mut self, step_rad: Option<f64>) -> Swept<'a> {
        let Some(at) = step_rad.filter(|&at| at > 0.0 && at < self.linkage.open_rad) else { return self };
        let index = self.poses.partition_point(|pose| pose.leaf_rad <= at);
        self.poses.splice(index..index, [at, at.next_up()].map(|at| self.linkage.pose(at)));
        self
    }

    /// The poses of the grid from a leaf angle on, that angle itself included.
    pub fn from(&self, least_rad: f64) -> impl Iterator<Item = Pose> {
        let first = self.linkage.pose(least_rad);
        core::iter::once(first).chain(self.poses.iter().copied().filter(move |pose| pose.leaf_rad > least_rad))
    }

    /// The largest `|shaft torque|` of a demand, `None` if `counts` holds nowhere.
    ///
    /// Every grid point is looked at, and every interval in which the slope turns from rising to falling is refined by bracketing
    /// (ITP, see [`turning_point`]). `counts` limits the search to poses with a property (say, the leaf driving the shaft).
    pub fn peak(&self, demand: &Demand, counts: impl Fn(&Pose) -> bool) -> Option<PeakDemand> {
        let at = |pose: &Pose| PeakDemand {
            leaf_rad: pose.leaf_rad,
            shaft_torque_n_m: demand.shaft_torque_n_m(pose).abs(),
            direction: demand.direction,
        };
        let nodes = self.poses.iter().filter(|pose| counts(pose)).map(at);
        let refined = self.poses.windows(2).filter_map(|pair| {
            let rising = demand.slope_sign(&pair[0])?;
            let falling = demand.slope_sign(&pair[1])?;
            (rising > 0.0 && falling < 0.0).then_some(())?;
            let leaf_rad = turning_point((pair[0].leaf_rad, rising), (pair[1].leaf_rad, falling), |leaf_rad| {
                demand.slope_sign(&self.linkage.pose(leaf_rad)).unwrap_or(0.0)
            });
            let pose = self.linkage.pose(leaf_rad);
            counts(&pose).then(|| at(&pose))
        });
        nodes.chain(refined).fold(None, |best: Option<PeakDemand>, peak| match best {
            Some(best) if best.shaft_torque_n_m >= peak.shaft_torque_n_m => Some(best),
            _ => Some(peak),
        })
    }

    /// Least lever of the link about the hinge from a leaf angle on, and where, m and rad.
    pub fn least_lever(&self, least_rad: f64) -> (f64, f64) {
        let poses: Vec<Pose> = self.from(least_rad).collect();
        // Slope of the lever's magnitude, turned over so that a least lever is where it turns from rising to falling.
        let slope = |pose: &Pose| pose.lever_rate_m().map(|rate| if pose.signed_lever_m < 0.0 { rate } else { -rate });
        let refined = poses.windows(2).filter_map(|pair| {
            let (rising, falling) = (slope(&pair[0])?, slope(&pair[1])?);
            (rising > 0.0 && falling < 0.0).then(|| {
                turning_point((pair[0].leaf_rad, rising), (pair[1].leaf_rad, falling), |leaf_rad| {
                    slope(&self.linkage.pose(leaf_rad)).unwrap_or(0.0)
                })
            })
        });
        let refined: Vec<Pose> = refined.map(|leaf_rad| self.linkage.pose(leaf_rad)).collect();
        poses
            .iter()
            .chain(&refined)
            .map(|pose| (pose.lever_m(), pose.leaf_rad))
            .fold((f64::MAX, 0.0), |least, lever| if lever.0 < least.0 { lever } else { least })
    }
}

/// Where a slope turns from rising to falling between two leaf angles, rad.
///
/// ITP (Oliveira and Takahashi 2020, <https://doi.org/10.1145/3423597>): the bracket is kept, the result lies within [`REFINED_RAD`] of a
/// sign change, and it takes at most one evaluation more than bisection: 31 for an interval of half a degree.
fn turning_point((low, rising): (f64, f64), (high, falling): (f64, f64), slope: impl Fn(f64) -> f64) -> f64 {
    solve_itp(|leaf_rad| -slope(leaf_rad), low, high, REFINED_RAD, 1, 0.2 / (high - low), -rising, -falling)
}
