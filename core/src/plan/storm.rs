//! The closed leaf in the storm: what link, bracket, shaft and hinges must hold. The working wind has no part in it.

use super::Model;
use super::stranded::Stranded;
use super::wind_source::sources;
use crate::leaf::{Body, Gust, gust_moment_n_m};
use crate::safety::Source;
use alloc::vec::Vec;
use serde::Serialize;

/// Magnitudes of what the wind alone does; it may come from either side, and then all of them change sign together. A lean or a ramp adds to it:
/// see [`super::Holding`].
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Storm {
    /// The storm as it is reckoned with.
    pub gust: Gust,
    /// Where it comes from; empty for what was typed.
    pub sources: Vec<Source>,
    /// Force of the wind on the leaf, N.
    pub force_n: f64,
    /// Moment about the hinge on the closed leaf, N·m.
    pub wind_n_m: f64,
    /// Moment-equivalent force, N: what has this moment at the wind area's centre. More than the force itself where a standard's shape puts the
    /// resultant towards the latch edge.
    pub wind_n: f64,
    /// Force in the link, N: the arm alone holds the leaf, no latch.
    pub link_force_n: f64,
    /// Part of the link's force along the leaf, N.
    pub bracket_along_n: f64,
    /// Part of the link's force square to the leaf, N.
    pub bracket_across_n: f64,
    /// Horizontal force on the hinges together, N.
    pub hinge_n: f64,
    /// Torque that holds the shaft, `η·T_leaf/n`, N·m; 0 at a dead point, where the arm holds by its shape and is no lock.
    pub shaft_torque_n_m: f64,
    /// The same leaf away from closed: half open, open, where the shaft has most to hold. A lean and a ramp are in it.
    pub stranded: Stranded,
}

impl Model {
    /// Statics of the closed leaf: the link balances the wind's moment, the hinges what is left of the forces.
    pub(super) fn storm(&self) -> Option<Storm> {
        let job = self.job();
        let wind = job.storm.as_ref()?;
        let (gust, sources) = (Gust::new(wind, &job.leaf), sources(wind));
        let body = Body::of(job);
        let wind_n_m = gust_moment_n_m(&gust, &body);
        let pose = self.linkage().pose(0.0);
        let (force_n, wind_n) = (gust.force_n(body.wind_area_m2), gust.moment_equivalent_n(body.wind_area_m2));
        // The wind pushes the leaf open; the link gives the moment opposite to the wind's.
        let forces = self.arm_forces(&pose, force_n, body.wind_centroid_m * wind_n);
        Some(Storm {
            stranded: self.stranded(&gust),
            gust,
            sources,
            force_n,
            wind_n_m,
            wind_n,
            link_force_n: forces.link_n.abs(),
            bracket_along_n: forces.bracket_n[0].abs(),
            bracket_across_n: forces.bracket_n[1].abs(),
            hinge_n: forces.hinge_n,
            shaft_torque_n_m: pose.ratio.map_or(0.0, |ratio| (wind_n_m * self.efficiency().back / ratio).abs()),
        })
    }
}
