//! Force on a person along the swing, and the zones, class and means of protection of the site.

use super::{Clearances, Model, Motion, OverGround};
use crate::arm::ShaftPath;
use crate::drive::{Direction, blocked_moment_n_m};
use crate::leaf::Body;
use crate::safety::{
    AngleSpan, KnownGaps, MeansCount, PostGap, SensorReach, Source, UseClass, Zone, ZoneKind, compression_m,
    count_means, edge_mass_kg, edge_travel_m, edge_unseen, impact_force_n, impact_speed_m_s, sensor_reach, use_class,
    zones,
};
use alloc::vec::Vec;
use serde::Serialize;

/// Which torque the drive's push is reckoned with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
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
pub struct ForceOnPerson {
    /// Always true: every number here must be measured on the finished gate with a calibrated instrument.
    pub must_be_measured: bool,
    /// Torque at the shaft the push is reckoned with, N·m.
    pub torque_n_m: f64,
    /// Which torque that is.
    pub torque_from: PushTorque,
    /// Mass that stands for the leaf at its latch edge, kg.
    pub edge_mass_kg: f64,
    /// Largest push of the latch edge outside the toggle zone, N.
    pub edge_push_n: f64,
    /// Leaf angle there, degrees.
    pub edge_push_leaf_deg: f64,
    /// Greatest speed of the latch edge, prescribed or driven, the wind against or behind, m/s; `null` where motion is not described.
    pub edge_speed_m_s: Option<f64>,
    /// Force of the blow at that speed, N: rigid leaf, the drive's push apart.
    pub impact_n: Option<f64>,
    /// How far what is met gives then, m.
    pub compression_m: Option<f64>,
    /// Edge speed at which the blow reaches the dynamic limit, m/s.
    pub speed_at_limit_m_s: f64,
    /// Compression a safety edge needs at the greatest speed, m.
    pub edge_travel_m: Option<f64>,
    /// Dynamic limit, N.
    pub dynamic_limit_n: f64,
    /// Static limit, N.
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
    /// Force of the blow at that speed, N.
    pub impact_n: Option<f64>,
}

/// The site: class, zones, means of protection.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Entrapment {
    /// Class of use; `null` while an answer that decides it is missing.
    pub class: Option<UseClass>,
    /// Where the classes come from.
    pub class_source: Source,
    /// Zones, each at the leaf angle where it is worst.
    pub zones: Vec<Zone>,
    /// Means wanted and counted, opening first.
    pub means: [MeansCount; 2],
    /// Zones that no means reaches.
    pub unreached: Vec<ZoneKind>,
    /// What each sensor whose area is described reaches, in plan.
    pub sensors: Vec<SensorReach>,
    /// Leaf angles at which no such sensor senses the latch edge, opening first; the whole swing where there is none.
    pub edge_unseen: [Vec<AngleSpan>; 2],
}

impl Model {
    pub(super) fn force_on_person(&self, motion: Option<&Motion>, toggle_rad: f64) -> Option<ForceOnPerson> {
        let job = self.job();
        let contact = job.contact.as_ref()?;
        let (operator, length) = (&job.operator, job.leaf.length_m);
        let slip = job.breakaway.as_ref().and_then(|facts| facts.slip_torque_n_m);
        let (torque, torque_from) = match (slip, operator.peak_torque_n_m) {
            (Some(slip), _) => (slip, PushTorque::Slip),
            (None, Some(peak)) => (peak, PushTorque::Peak),
            (None, None) => (operator.rated_torque_n_m, PushTorque::Rated),
        };
        let mass = edge_mass_kg(Body::of(job).inertia_kg_m2, length);
        let (stiffness, dynamic) = (contact.stiffness(), contact.dynamic_limit());
        let speed = operator.shaft_speed_deg_s.map(f64::to_radians);
        let path = ShaftPath::new(self.linkage());
        let point = |leaf_rad: f64| {
            let pose = self.linkage().pose(leaf_rad);
            let moment = blocked_moment_n_m(torque, &pose, operator.efficiency());
            let gain = path.at(pose.crank_rad.abs()).gain;
            let full = speed.map(|speed| speed * gain * length);
            ForcePoint {
                leaf_deg: leaf_rad.to_degrees(),
                edge_n: moment.map(|moment| moment / length),
                middle_n: moment.map(|moment| moment / (0.5 * length)),
                near_n: moment.map(|moment| moment / contact.near().min(length)),
                over_static_within_m: moment.map(|moment| (moment / contact.static_limit()).min(length)),
                full_edge_speed_m_s: full,
                impact_n: full.map(|full| impact_force_n(full, stiffness, mass)),
            }
        };
        let curve: Vec<ForcePoint> = self.leaf_angles().map(point).collect();
        // The push has its largest value outside the toggle zone on a grid of its own, whatever the number of samples.
        let grid =
            (0..=360).map(|index| toggle_rad + (self.linkage().open_rad - toggle_rad) * f64::from(index) / 360.0);
        let (edge_push_n, edge_push_leaf_deg) = grid.map(point).fold((0.0, 0.0), |most: (f64, f64), row| {
            row.edge_n.filter(|push| *push > most.0).map_or(most, |push| (push, row.leaf_deg))
        });
        let fastest = motion.map(|motion| {
            let driven = motion.driven.iter().flat_map(|driven| {
                [&driven.opening, &driven.closing, &driven.opening_following, &driven.closing_following]
            });
            let prescribed = motion.opening.edge_speed_m_s.max(motion.closing.edge_speed_m_s);
            driven.fold(prescribed, |most, run| most.max(run.edge_speed_m_s))
        });
        Some(ForceOnPerson {
            must_be_measured: true,
            torque_n_m: torque,
            torque_from,
            edge_mass_kg: mass,
            edge_push_n,
            edge_push_leaf_deg,
            edge_speed_m_s: fastest,
            impact_n: fastest.map(|speed| impact_force_n(speed, stiffness, mass)),
            compression_m: fastest.map(|speed| compression_m(speed, stiffness, mass)),
            speed_at_limit_m_s: impact_speed_m_s(dynamic, stiffness, mass),
            edge_travel_m: fastest.map(|speed| edge_travel_m(speed, contact.response(), mass, dynamic)),
            dynamic_limit_n: dynamic,
            static_limit_n: contact.static_limit(),
            limits_source: Source::EN_12453,
            measuring_source: Source::EN_12445,
            curve,
        })
    }

    pub(super) fn entrapment(&self, ground: Option<&OverGround>, room: Option<&Clearances>) -> Option<Entrapment> {
        let site = self.job().site.as_ref()?;
        let known = KnownGaps {
            ground: ground.map(|over| (over.least_gap_m, over.least_gap_leaf_deg.to_radians())),
            hinge: room.and_then(|room| room.hinge_gap).map(|gap| PostGap {
                closed_m: gap.closed_m,
                open_m: gap.open_m,
                least_m: gap.least_m,
                leaf_rad: gap.least_leaf_deg.to_radians(),
            }),
        };
        let zones = zones(self.linkage(), self.job().leaf.length_m, site, &self.job().obstacles(), &known);
        let fitted = site.means.as_deref().unwrap_or_default();
        let reached = |zone: &Zone, direction: Direction| {
            fitted.iter().any(|means| {
                means.direction.is_none_or(|own| own == direction)
                    && means.reaches.as_deref().unwrap_or_default().contains(&zone.kind)
            })
        };
        let mut unreached: Vec<ZoneKind> = Vec::new();
        for zone in zones.iter().filter(|zone| zone.present) {
            let open = zone.directions.iter().any(|direction| !reached(zone, *direction));
            if open && !unreached.contains(&zone.kind) {
                unreached.push(zone.kind);
            }
        }
        let (length, open) = (self.job().leaf.length_m, self.linkage().open_rad);
        Some(Entrapment {
            sensors: sensor_reach(fitted, &zones, length, open),
            edge_unseen: Direction::BOTH.map(|direction| edge_unseen(fitted, direction, length, open)),
            class: use_class(site.public, site.guarded, site.homes),
            class_source: Source::F2200_CLASSES,
            means: Direction::BOTH.map(|direction| count_means(direction, &zones, fitted)),
            unreached,
            zones,
        })
    }
}
