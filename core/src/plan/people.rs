//! Zones, class and means of protection of the site.

use super::{Clearances, Model, OverGround};
use crate::job::Stopped;
use crate::safety::{
    AngleSpan, Bodies, GroundGap, KnownGaps, MeansCount, PostGap, SensorReach, Source, UseClass, Zone, count_means,
    edge_unseen, sensor_reach, use_class, zones,
};
use crate::terms::{Direction, ZoneKind};
use alloc::vec::Vec;
use serde::Serialize;

/// The site: class, zones, means of protection.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
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
    pub(super) fn entrapment(&self, ground: Option<&OverGround>, room: Option<&Clearances>) -> Option<Entrapment> {
        let site = self.job().site.as_ref()?;
        let known = KnownGaps {
            ground: ground.map(|over| GroundGap {
                widest_m: over.widest_gap_m,
                least_m: over.least_gap_m,
                leaf_rad: over.least_gap_leaf_deg.to_radians(),
            }),
            hinge: room.and_then(|room| room.hinge_gap).map(|gap| PostGap {
                closed_m: gap.closed_m,
                open_m: gap.open_m,
                least_m: gap.least_m,
                leaf_rad: gap.least_leaf_deg.to_radians(),
            }),
        };
        let around = self.job().stopping(Stopped::Leaf).filter(|(_, obstacle)| !obstacle.is_hinge_post());
        let around: Vec<_> = around.map(|(index, obstacle)| (index, obstacle.place().sides())).collect();
        let bodies = Bodies {
            leaf: self.job().leaf.sides_m(),
            arm_half_width_m: self.job().arm_half_width(),
            obstacles: &around,
            operator: self.operator_body(),
        };
        let zones = zones(self.linkage(), &bodies, site, &known);
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
