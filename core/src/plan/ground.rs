//! The gap under the leaf through the swing, and the rise of the bracket pin.

use super::Model;
use crate::job::{Ground, Hinges};
use crate::order::insertion_sort;
use crate::real::{atan2, cos, sin, sqrt};
use alloc::vec::Vec;
use core::f64::consts::TAU;
use kurbo::common::solve_itp;
use serde::Serialize;

/// Leaf angle to which a touch is solved, rad.
const SOLVED_RAD: f64 = 1e-11;

/// The leaf over the ground.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct OverGround {
    /// Least gap anywhere along the leaf and the swing, m; negative where the leaf is in the ground.
    pub least_gap_m: f64,
    /// Leaf angle there, degrees.
    pub least_gap_leaf_deg: f64,
    /// Widest gap anywhere along the leaf and the swing, m.
    pub widest_gap_m: f64,
    /// First leaf angle from closed at which the leaf touches, degrees; `null` where it clears the ground.
    pub touch_leaf_deg: Option<f64>,
    /// Rise and fall of the bracket pin through the swing, in all, m.
    pub bracket_rise_m: f64,
    /// Rows at the curve's leaf angles.
    pub curve: Vec<GapPoint>,
}

/// Gaps at one leaf angle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct GapPoint {
    /// Leaf angle, degrees.
    pub leaf_deg: f64,
    /// Gap at the hinge axis, m.
    pub gap_hinge_m: f64,
    /// Gap at the latch edge, m.
    pub gap_latch_m: f64,
    /// Height of the bracket pin over where it is when closed, m.
    pub bracket_rise_m: f64,
}

/// A height that varies with the leaf angle as `base + rise·θ + amplitude·cos(θ − phase)`.
///
/// Both the fall of a leaning hinge axis and sloping ground are such cosines, and two of them are one again.
#[derive(Clone, Copy, Debug)]
struct Height {
    base_m: f64,
    rise_m_rad: f64,
    amplitude_m: f64,
    phase_rad: f64,
}

impl Height {
    fn new(base_m: f64, rise_m_rad: f64, cosines: [(f64, f64); 2]) -> Height {
        let x: f64 = cosines.iter().map(|(amplitude, phase)| amplitude * cos(*phase)).sum();
        let y: f64 = cosines.iter().map(|(amplitude, phase)| amplitude * sin(*phase)).sum();
        Height { base_m, rise_m_rad, amplitude_m: sqrt(x * x + y * y), phase_rad: atan2(y, x) }
    }

    fn at(&self, leaf_rad: f64) -> f64 {
        self.base_m + self.rise_m_rad * leaf_rad + self.amplitude_m * cos(leaf_rad - self.phase_rad)
    }

    /// Ends of the swing and every angle inside it where the height is stationary, rising order, rad.
    ///
    /// `dh/dθ = rise − amplitude·sin(θ − phase) = 0`.
    fn stations(&self, open_rad: f64) -> Vec<f64> {
        let mut stations = alloc::vec![0.0, open_rad];
        let sine = self.rise_m_rad / self.amplitude_m;
        if sine.abs() <= 1.0 {
            let first = atan2(sine, sqrt(1.0 - sine * sine));
            for offset in [first, core::f64::consts::PI - first] {
                let turned = (self.phase_rad + offset) % TAU;
                let inside = |leaf: &f64| *leaf > 0.0 && *leaf < open_rad;
                // Within a turn of nothing either way, so a turn less is never inside.
                stations.extend([turned, turned + TAU].into_iter().filter(inside));
            }
        }
        insertion_sort(&mut stations, |one, other| one < other);
        stations
    }

    /// Leaf angle and height where it is least.
    fn least(&self, open_rad: f64) -> (f64, f64) {
        let heights = self.stations(open_rad).into_iter().map(|leaf| (leaf, self.at(leaf)));
        heights.fold((0.0, f64::MAX), |least, station| if station.1 < least.1 { station } else { least })
    }

    /// Greatest height.
    fn most(&self, open_rad: f64) -> f64 {
        self.stations(open_rad).into_iter().map(|leaf| self.at(leaf)).fold(f64::MIN, f64::max)
    }

    /// First leaf angle at which the height is zero or below. Between two stations it is monotone, so a change of sign brackets one root;
    /// ITP (Oliveira and Takahashi 2020) keeps the bracket.
    fn first_zero(&self, open_rad: f64) -> Option<f64> {
        let stations = self.stations(open_rad);
        if self.at(0.0) <= 0.0 {
            return Some(0.0);
        }
        stations.windows(2).find_map(|pair| {
            let (before, behind) = (self.at(pair[0]), self.at(pair[1]));
            (before > 0.0 && behind <= 0.0).then(|| {
                if behind == 0.0 {
                    return pair[1];
                }
                let k1 = 0.2 / (pair[1] - pair[0]);
                solve_itp(|leaf| -self.at(leaf), pair[0], pair[1], SOLVED_RAD, 1, k1, -before, -behind)
            })
        })
    }
}

impl Model {
    /// Rise of the leaf per leaf angle, m/rad.
    fn rise_m_rad(&self) -> f64 {
        match &self.job().hinges {
            Hinges::Rising(rising) => rising.rise_m / self.linkage().open_rad,
            _ => 0.0,
        }
    }

    /// Gap at a distance along the leaf: the hinge's gap, the rake of the bottom and the hinge's rise, less the fall of a leaning axis
    /// (`u·sin λ·cos(θ − ψ)`) and the rise of the ground (`u·tan s·cos(θ − χ)`).
    fn gap(&self, ground: &Ground, along_m: f64) -> Height {
        let job = self.job();
        let lean = -along_m * sin(job.lean.angle().to_radians());
        let slope = -along_m * libm::tan(ground.slope_rad());
        let base = ground.gap_m + ground.bottom_rise() * along_m / job.leaf.length_m;
        let cosines = [(lean, job.lean.downhill().to_radians()), (slope, ground.uphill_rad())];
        Height::new(base, self.rise_m_rad(), cosines)
    }

    /// Height of the bracket pin against the level of the hinge: it falls towards downhill, and rises with the hinge.
    fn bracket_height(&self) -> Height {
        let (job, linkage) = (self.job(), self.linkage());
        let lean = -linkage.bracket_radius_m() * sin(job.lean.angle().to_radians());
        let phase = job.lean.downhill().to_radians() - linkage.bracket_rad;
        Height::new(0.0, self.rise_m_rad(), [(lean, phase), (0.0, 0.0)])
    }

    /// `None` where the job says nothing of the ground.
    pub(super) fn over_ground(&self) -> Option<OverGround> {
        let ground = self.job().ground.as_ref()?;
        let open_rad = self.linkage().open_rad;
        // The gap is linear along the leaf at every angle, so the least and the widest are at its ends.
        let (hinge, latch) = (self.gap(ground, 0.0), self.gap(ground, self.job().leaf.length_m));
        let (at_hinge, at_latch) = (hinge.least(open_rad), latch.least(open_rad));
        let least = if at_hinge.1 < at_latch.1 { at_hinge } else { at_latch };
        let touches = [hinge.first_zero(open_rad), latch.first_zero(open_rad)];
        let touch = touches
            .into_iter()
            .flatten()
            .fold(None, |first: Option<f64>, leaf| Some(first.map_or(leaf, |first| first.min(leaf))));
        let bracket = self.bracket_height();
        let heights = || bracket.stations(open_rad).into_iter().map(|leaf| bracket.at(leaf));
        let lowest = heights().fold(f64::MAX, f64::min);
        let point = |leaf_rad: f64| GapPoint {
            leaf_deg: leaf_rad.to_degrees(),
            gap_hinge_m: hinge.at(leaf_rad),
            gap_latch_m: latch.at(leaf_rad),
            bracket_rise_m: bracket.at(leaf_rad) - bracket.at(0.0),
        };
        Some(OverGround {
            least_gap_m: least.1,
            least_gap_leaf_deg: least.0.to_degrees(),
            widest_gap_m: hinge.most(open_rad).max(latch.most(open_rad)),
            touch_leaf_deg: touch.map(f64::to_degrees),
            bracket_rise_m: bracket.most(open_rad) - lowest,
            curve: self.leaf_angles().map(point).collect(),
        })
    }
}
