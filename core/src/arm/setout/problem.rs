//! What the search works on: the leaf angles it looks at, and the limits of the job turned into numbers it can compare.

use super::journal::Written;
use super::kernel::{ArmKernel, SearchStation};
use super::limit::Limit;
use super::proof::Proof;
use super::variables::{DIMENSIONS, Point};
use crate::job::{Arm, Elbow, SetOutSite};
use crate::real::{cos, sin, sqrt};
use alloc::vec::Vec;

/// Intervals of the swing between the tabulated leaf angles; a multiple of ten, so that a tenth of the swing is one of them.
pub(crate) const INTERVALS: usize = 40;

/// What the leaf asks of the arm at a leaf angle.
#[derive(Clone, Copy)]
pub(crate) struct SearchLoads<'a> {
    /// Largest moment both ways asked of a shaft that turns as fast as the leaf, N·m.
    pub effort_n_m: &'a dyn Fn(f64) -> f64,
    /// Largest leaf moment both ways against the storm gust, N·m.
    pub storm_n_m: &'a dyn Fn(f64) -> f64,
}

/// A job's set-out, ready to be searched.
#[derive(Clone)]
pub(crate) struct Problem<'a> {
    pub setout: &'a SetOutSite,
    pub loads: SearchLoads<'a>,
    pub stations: Vec<SearchStation>,
    pub open_rad: f64,
    /// Torque and force that count as 1 in the search: the largest moment over the swing, at a metre of lever for the force.
    pub torque_scale_n_m: f64,
    pub force_scale_n: f64,
    pub limits: Limits,
    pub margin: Margin,
    /// Extremes between stations to the last digit, or good enough to look around.
    pub exact: bool,
    /// The limit that is given up to find out by how much.
    pub given_up: Option<Limit>,
    /// What the tape may do, where that has to leave an arm that works.
    pub proof: Option<Proof>,
    /// What has to be kept where the tape errs is given up, all of it, to find out by how much.
    pub corners_given_up: bool,
    /// What was done of the search, where it may stop and go on.
    pub journal: Written,
}

/// The plain limits of a set-out, defaults filled in once: the inner loops ask for them at every arm.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Limits {
    /// Most the link may be off square to the open leaf, rad, and its sine.
    pub square_rad: f64,
    pub square_sine: f64,
    pub lever_m: f64,
    pub travel_rad: f64,
    pub half_width_m: f64,
}

impl Limits {
    fn of(setout: &SetOutSite) -> Limits {
        let square_rad = setout.square().to_radians();
        Limits {
            square_rad,
            square_sine: sin(square_rad),
            lever_m: setout.least_lever(),
            travel_rad: setout.shaft_travel().to_radians(),
            half_width_m: setout.half_width(),
        }
    }
}

/// How far inside its limits the search stays, so that whoever checks the answer in another arithmetic finds them kept.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Margin {
    /// Lengths, m.
    pub length_m: f64,
    /// Angles, rad, and numbers without unit.
    pub plain: f64,
}

impl Margin {
    pub const USUAL: Margin = Margin { length_m: 2e-8, plain: 2e-9 };
    /// For ranges so thin that nothing is left inside by a margin.
    pub const NONE: Margin = Margin { length_m: 0.0, plain: 0.0 };
}

/// How far a range reaches that is given up, a metre each way at most: the job's own bounds, an arm bent to a third.
const GIVEN_UP: [(f64, f64); DIMENSIONS] = [(-10.0, 10.0), (-10.0, 10.0), (-10.0, 10.0), (0.02, 10.0), (0.0, 0.8)];

impl<'a> Problem<'a> {
    pub fn new(setout: &'a SetOutSite, loads: SearchLoads<'a>, open_rad: f64) -> Problem<'a> {
        let mut problem = Problem {
            setout,
            loads,
            stations: Vec::with_capacity(INTERVALS + 1),
            open_rad,
            torque_scale_n_m: 1.0,
            force_scale_n: 1.0,
            limits: Limits::of(setout),
            margin: Margin::USUAL,
            exact: false,
            given_up: None,
            proof: None,
            corners_given_up: false,
            journal: None,
        };
        for index in 0..=INTERVALS {
            let share = index as f64 / INTERVALS as f64;
            let leaf_rad = if index == INTERVALS { open_rad } else { open_rad * share };
            let station = problem.station(leaf_rad);
            problem.stations.push(station);
        }
        let largest = |of: fn(&SearchStation) -> f64| problem.stations.iter().map(of).fold(0.0, f64::max);
        let (torque, force) = (largest(|station| station.effort_n_m), largest(|station| station.storm_n_m));
        // A leaf that asks for nothing still has a scale, so that nothing is divided by zero.
        problem.torque_scale_n_m = if torque > 0.0 { torque } else { 1.0 };
        problem.force_scale_n = if force > 0.0 { force } else { 1.0 };
        problem
    }

    pub fn station(&self, leaf_rad: f64) -> SearchStation {
        SearchStation {
            leaf_rad,
            cosine: cos(leaf_rad),
            sine: sin(leaf_rad),
            effort_n_m: (self.loads.effort_n_m)(leaf_rad),
            storm_n_m: (self.loads.storm_n_m)(leaf_rad),
        }
    }

    pub fn closed(&self) -> &SearchStation {
        &self.stations[0]
    }
    pub fn open(&self) -> &SearchStation {
        &self.stations[INTERVALS]
    }
    /// Index of the station a tenth of the swing on.
    pub const fn tenth() -> usize {
        INTERVALS / 10
    }

    /// Box of the variables.
    pub fn bounds(&self) -> [Point; 2] {
        let setout = self.setout;
        let [loose, straight] = setout.straightness();
        let z = |straightness: f64| sqrt(1.0 - straightness);
        // A straightness below a fiftieth would mean an arm fifty times longer than what it spans.
        let bent = z((loose + 1e-12).max(0.02).min(straight));
        // Inside by a margin too, except where the arm may be straight: a margin there is a visible height.
        let straight = z(if straight < 1.0 { straight * (1.0 - 1e-13) } else { 1.0 }).min(bent);
        // With a proof the variable is that of the corner that is straightest: it reaches to where that is straight.
        let straight = if self.shifts() { 0.0 } else { straight };
        let mut least = [setout.shaft_x_m[0], setout.shaft_y_m[0], setout.bracket_u_m[0], setout.crank_m[0], straight];
        let mut most = [setout.shaft_x_m[1], setout.shaft_y_m[1], setout.bracket_u_m[1], setout.crank_m[1], bent];
        if let Some(variable) = self.given_up.and_then(Limit::variable) {
            let (lowest, highest) = GIVEN_UP[variable];
            least[variable] = (least[variable] - 1.0).max(lowest);
            most[variable] = (most[variable] + 1.0).min(highest);
        }
        [least, most]
    }

    /// The arm a point stands for.
    pub fn arm(&self, point: &Point, elbow: Elbow) -> Arm {
        let [shaft_x_m, shaft_y_m, bracket_u_m, crank_m, z] = *point;
        let bracket_v_m = self.setout.bracket_v_m;
        let (dx, dy) = (bracket_u_m - shaft_x_m, bracket_v_m - shaft_y_m);
        let both_m = self.both_m(dx, dy, z);
        Arm { shaft_x_m, shaft_y_m, bracket_u_m, bracket_v_m, crank_m, link_m: (both_m - crank_m).max(1e-3), elbow }
    }

    /// From here on every tape error within the job's has to leave an arm that works, where the job asks for that.
    pub fn prove(&mut self) {
        self.proof = self.setout.errors_m.map(Proof::new);
    }

    /// Whether the step of a search ended before this: what follows is thrown away.
    pub fn is_cut(&self) -> bool {
        self.journal.as_ref().is_some_and(|journal| journal.borrow().is_cut())
    }

    /// Whether the last variable is that of the straightest corner instead of the planned arm's.
    fn shifts(&self) -> bool {
        self.proof.is_some() && !self.corners_given_up
    }

    /// Crank and link together, m, where shaft to bracket closed is `(dx, dy)`.
    ///
    /// Where every tape error has to leave an arm that closes, `z` is that of the corner with the longest way and the shortest lengths: so the limit is a
    /// bound, and what grows like a root from it is smooth in `z`, as for the planned arm elsewhere.
    pub fn both_m(&self, dx: f64, dy: f64, z: f64) -> f64 {
        match &self.proof {
            Some(proof) if self.shifts() => {
                proof.closed_reach_m(dx, dy) / (1.0 - z * z).max(0.01) + proof.lengths_m() + self.margin.length_m
            }
            _ => sqrt(dx * dx + dy * dy) / (1.0 - z * z).max(0.01),
        }
    }

    /// The variables of a planned arm under the proof: as they are, but no straighter than every tape error allows.
    pub fn shifted(&self, arm: &Arm) -> Point {
        let (dx, dy) = (arm.bracket_u_m - arm.shaft_x_m, arm.bracket_v_m - arm.shaft_y_m);
        let (reach_m, short_m) = match &self.proof {
            Some(proof) if self.shifts() => (proof.closed_reach_m(dx, dy), proof.lengths_m()),
            _ => (sqrt(dx * dx + dy * dy), 0.0),
        };
        let z = sqrt((1.0 - reach_m / (arm.crank_m + arm.link_m - short_m).max(0.02)).max(0.0));
        let [least, most] = self.bounds();
        let point = [arm.shaft_x_m, arm.shaft_y_m, arm.bracket_u_m, arm.crank_m, z];
        core::array::from_fn(|i| point[i].clamp(least[i], most[i]))
    }

    pub fn kernel(&self, point: &Point, elbow: Elbow) -> ArmKernel {
        ArmKernel::new(&self.arm(point, elbow))
    }
}

#[cfg(test)]
mod tests;
