//! The leaf away from closed in the storm: stranded by a power cut, or left open. The arm alone holds it, or a bolt.

use super::Model;
use super::holding_limit::HoldingLimit;
use crate::arm::Pose;
use crate::leaf::{Body, Gust};
use kurbo::Vec2;
use serde::Serialize;

/// Leaf angles looked at between closed and open for the one that asks most of the shaft.
const INTERVALS: u32 = 256;

/// What holds the leaf at one angle while the storm pushes square to it; magnitudes, since it may come from either side.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct HeldLeaf {
    /// Leaf angle, degrees from closed.
    pub leaf_deg: f64,
    /// Moment about the hinge, N·m: the storm's and, as it may come from the side the leaf leans to, that of a lean or a ramp there. The hinges'
    /// friction is not counted on.
    pub moment_n_m: f64,
    /// Torque that holds the shaft, `η·T_leaf/n` with the losses that help to hold, N·m; 0 at a dead point.
    pub shaft_torque_n_m: f64,
    /// Force in the link, N.
    pub link_force_n: f64,
    /// Part of it along the leaf, N.
    pub bracket_along_n: f64,
    /// Part of it square to the leaf, N.
    pub bracket_across_n: f64,
    /// Horizontal force on the hinges together, N.
    pub hinge_n: f64,
    /// Force on a bolt or catch at the latch edge that holds the leaf instead of the arm, N: `T_leaf/L`. One that stands nearer to the hinge takes
    /// more, by the ratio of the distances.
    pub bolt_n: f64,
}

/// The leaf away from closed in the storm.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Stranded {
    /// Half of the swing.
    pub half_open: HeldLeaf,
    /// All of it.
    pub open: HeldLeaf,
    /// Where the shaft has most to hold.
    pub worst: HeldLeaf,
    /// The lesser of what the drive at a stand holds and what slips the clutch, N·m; `null` where neither is known.
    pub limit_n_m: Option<f64>,
    /// Which of the two that is; `null` where neither is known.
    pub limit_by: Option<HoldingLimit>,
}

/// Forces that keep the leaf at rest while the arm alone holds it.
pub(super) struct ArmForces {
    /// In the link, N, compression positive.
    pub(super) link_n: f64,
    /// Of the link on the bracket, along the leaf and square to it, N.
    pub(super) bracket_n: [f64; 2],
    /// Of the hinges together on the leaf, horizontal, N.
    pub(super) hinge_n: f64,
}

impl Model {
    /// Statics of the leaf at an angle: the link balances a moment about the hinge, the hinges what is left of the forces.
    ///
    /// `across_n` acts square to the leaf and `moment_n_m` about the hinge, both positive opening.
    pub(super) fn arm_forces(&self, pose: &Pose, across_n: f64, moment_n_m: f64) -> ArmForces {
        let (sine, cosine) = crate::real::sin_cos(pose.leaf_rad);
        let (leaf, square) = (Vec2::new(cosine, sine), Vec2::new(-sine, cosine));
        let link_n = pose.link_force_n(-moment_n_m);
        let link = (pose.bracket - pose.elbow) * (link_n / self.linkage().link_m);
        ArmForces {
            link_n,
            bracket_n: [link.dot(leaf), link.dot(square)],
            hinge_n: crate::real::length(link + square * across_n),
        }
    }

    /// The leaf away from closed in a gust square to it.
    pub(super) fn stranded(&self, gust: &Gust) -> Stranded {
        let open_rad = self.linkage().open_rad;
        let at = |share: f64| self.held_leaf(gust, open_rad * share);
        let (half_open, open) = (at(0.5), at(1.0));
        let all = (0..=INTERVALS).map(|index| at(f64::from(index) / f64::from(INTERVALS)));
        let more =
            |most: HeldLeaf, one: HeldLeaf| if one.shaft_torque_n_m > most.shaft_torque_n_m { one } else { most };
        let limit = self.job().holding_limit();
        Stranded {
            half_open,
            open,
            worst: all.fold(open, more),
            limit_n_m: limit.map(|(limit, _)| limit),
            limit_by: limit.map(|(_, by)| by),
        }
    }

    fn held_leaf(&self, gust: &Gust, leaf_rad: f64) -> HeldLeaf {
        let (job, body) = (self.job(), Body::of(self.job()));
        let pose = self.linkage().pose(leaf_rad);
        let wind_n_m = body.wind_centroid_m * gust.moment_equivalent_n(body.wind_area_m2);
        let moment_n_m = wind_n_m.abs() + self.loads().gravity_n_m(leaf_rad).abs();
        let forces = self.arm_forces(&pose, gust.force_n(body.wind_area_m2), moment_n_m * wind_n_m.signum());
        HeldLeaf {
            leaf_deg: leaf_rad.to_degrees(),
            moment_n_m,
            shaft_torque_n_m: crate::drive::holding_torque_n_m(moment_n_m, &pose, self.efficiency().back),
            link_force_n: forces.link_n.abs(),
            bracket_along_n: forces.bracket_n[0].abs(),
            bracket_across_n: forces.bracket_n[1].abs(),
            hinge_n: forces.hinge_n,
            bolt_n: moment_n_m / job.leaf.length_m,
        }
    }
}
