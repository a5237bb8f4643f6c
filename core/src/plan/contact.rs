//! Force on a person: the drive's push along the swing, and the blows of the latch edge.
//!
//! Estimates of a leaf that is rigid from rotor to edge. Each limit holds under a condition that stands beside it: a gap, and a time.

use super::Model;
use super::blows::{Blow, Striking, WIDE_GAP_M};
use crate::arm::ShaftPath;
use crate::drive::Track;
use crate::leaf::Body;
use crate::safety::{Source, edge_mass_kg, spring_force_n};
use alloc::vec::Vec;
use serde::Serialize;

/// Longest time a dynamic limit may be made use of, s; then the static one holds. EN 12453:2001 Annex A (superseded; from memory).
const DYNAMIC_TIME_S: f64 = 0.75;

/// Which torque the drive's push is reckoned with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum PushTorque {
    /// The slip torque that is set.
    Slip,
    /// The operator's peak torque.
    Peak,
    /// The operator's rated torque: the true push may be more.
    Rated,
}

/// Estimates of the force on a person.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct ForceOnPerson {
    /// Always true: every number here must be measured on the finished gate with a calibrated instrument.
    pub must_be_measured: bool,
    /// Torque at the shaft the push is reckoned with, N·m.
    pub torque_n_m: f64,
    /// Which torque that is.
    pub torque_from: PushTorque,
    /// Inertia of motor and gear at the operator's shaft that blows are reckoned with, kg·m²; `null` where the job describes no motor: they
    /// are then those of the leaf alone, and the gate's are harder.
    pub drive_inertia_kg_m2: Option<f64>,
    /// Mass that stands for the leaf alone at its latch edge, kg.
    pub edge_mass_kg: f64,
    /// Largest push of the latch edge outside the toggle zone and at the gaps of `blows`, N.
    pub edge_push_n: f64,
    /// Leaf angle there, degrees.
    pub edge_push_leaf_deg: f64,
    /// The blow closing at gaps of 50, 300 and 500 mm, as far as the leaf comes by them; then, either way, the hardest where more is left.
    pub blows: Vec<Blow>,
    /// Gap up to which the typed dynamic limit holds, and beyond which the larger one does, m.
    pub wide_gap_m: f64,
    /// Compression a safety edge needs for every one of them, m; `null` where motion is not described.
    pub edge_travel_m: Option<f64>,
    /// Longest time a dynamic limit may be made use of, s; then the static one holds.
    pub dynamic_time_s: f64,
    /// Static limit, N: what may remain after that time.
    pub static_limit_n: f64,
    /// Where the limits' defaults come from.
    pub limits_source: Source,
    /// Where the way of measuring comes from.
    pub measuring_source: Source,
    /// Rows at the curve's leaf angles.
    pub curve: Vec<ForcePoint>,
}

/// Estimates at one leaf angle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct ForcePoint {
    /// Leaf angle, degrees.
    pub leaf_deg: f64,
    /// Push of the latch edge on what blocks it, N; `null` at a dead point, where it has no bound.
    pub edge_n: Option<f64>,
    /// Push at the middle of the leaf.
    pub middle_n: Option<f64>,
    /// Push near the hinge, where it is greatest.
    pub near_n: Option<f64>,
    /// Distance from the hinge axis within which the push exceeds the static limit, m.
    pub over_static_within_m: Option<f64>,
    /// Speed of the latch edge at the operator's full speed, m/s; `null` where that is unknown.
    pub full_edge_speed_m_s: Option<f64>,
    /// Force of the blow at that speed, N, drive included where it is known.
    pub impact_n: Option<f64>,
}

impl Model {
    /// `tracks` are those of the motor's runs.
    pub(super) fn force_on_person(&self, tracks: &[Track], toggle_rad: f64) -> Option<ForceOnPerson> {
        let job = self.job();
        let contact = job.contact.as_ref()?;
        let (operator, length) = (&job.operator, job.leaf.length_m);
        let slip = job.breakaway.as_ref().and_then(|facts| facts.slip_torque_n_m);
        let (torque, torque_from) = match (slip, operator.peak_torque_n_m) {
            (Some(slip), _) => (slip, PushTorque::Slip),
            (None, Some(peak)) => (peak, PushTorque::Peak),
            (None, None) => (operator.rated_torque_n_m, PushTorque::Rated),
        };
        let drive = self.drive_inertia_kg_m2();
        let striking = Striking {
            model: self,
            contact,
            path: ShaftPath::new(self.linkage()),
            torque_n_m: torque,
            inertia_kg_m2: Body::of(job).inertia_kg_m2,
            drive_kg_m2: drive.unwrap_or(0.0),
        };
        let blows = striking.blows(tracks);
        // The push has its largest value outside the toggle zone on a grid of its own, whatever the number of samples; at the test gaps it is
        // measured wherever they lie.
        let grid =
            (0..=360).map(|index| toggle_rad + (self.linkage().open_rad - toggle_rad) * f64::from(index) / 360.0);
        let at_gaps = blows.iter().filter(|blow| blow.gap_m.is_some()).filter_map(|blow| blow.leaf_deg);
        let looked_at = grid.chain(at_gaps.map(f64::to_radians));
        let (edge_push_n, edge_push_leaf_deg) = looked_at.fold((0.0, 0.0), |most: (f64, f64), leaf_rad| {
            let push = striking.push_n(leaf_rad).filter(|push| *push > most.0);
            push.map_or(most, |push| (push, leaf_rad.to_degrees()))
        });
        let speed = operator.shaft_speed_deg_s.map(f64::to_radians);
        let point = |leaf_rad: f64| {
            let moment = striking.push_n(leaf_rad).map(|push| push * length);
            let gain = striking.path.at(self.linkage().pose(leaf_rad).crank_rad.abs()).gain;
            ForcePoint {
                leaf_deg: leaf_rad.to_degrees(),
                edge_n: moment.map(|moment| moment / length),
                middle_n: moment.map(|moment| moment / (0.5 * length)),
                near_n: moment.map(|moment| moment / contact.near().min(length)),
                over_static_within_m: moment.map(|moment| (moment / contact.static_limit()).min(length)),
                full_edge_speed_m_s: speed.map(|speed| speed * gain * length),
                impact_n: speed.map(|speed| spring_force_n(contact.stiffness(), striking.energy_j(gain, speed))),
            }
        };
        Some(ForceOnPerson {
            must_be_measured: true,
            torque_n_m: torque,
            torque_from,
            drive_inertia_kg_m2: drive,
            edge_mass_kg: edge_mass_kg(striking.inertia_kg_m2, length),
            edge_push_n,
            edge_push_leaf_deg,
            edge_travel_m: blows.iter().filter_map(|blow| blow.edge_travel_m).reduce(f64::max),
            blows,
            wide_gap_m: WIDE_GAP_M,
            dynamic_time_s: DYNAMIC_TIME_S,
            static_limit_n: contact.static_limit(),
            limits_source: Source::EN_12453,
            measuring_source: Source::EN_12445,
            curve: self.leaf_angles().map(point).collect(),
        })
    }
}
