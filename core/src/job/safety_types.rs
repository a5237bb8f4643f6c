//! What is said about people near the gate: contact, the site, the means of protection that are fitted.

use super::rules::default_of;
use super::setout::KeepOut;
use super::types::Job;
use crate::drive::Direction;
use crate::safety::{MeansKind, ZoneKind};
use alloc::vec::Vec;
use serde::Serialize;

/// What a force on a person is estimated with. An estimate never stands in for a measurement.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Contact {
    /// Stiffness of what the leaf meets, N/m; default 500 000, that of the measuring device (EN 12445, superseded; from memory).
    pub stiffness_n_per_m: Option<f64>,
    /// Dynamic force that is not to be exceeded at gaps of 50 to 500 mm, for at most 0.75 s, N; default 400 (EN 12453:2001 Annex A, superseded; from
    /// memory). Wider gaps are held to 1,400 N of the same.
    pub dynamic_limit_n: Option<f64>,
    /// Static force that is not to be exceeded after those 0.75 s, at any gap, N; default 150 (the same).
    pub static_limit_n: Option<f64>,
    /// Time from contact until the drive has let go, s; default 0.3 (common practice, no source).
    pub response_s: Option<f64>,
    /// Compression the safety edge offers, m; unknown unless given.
    pub edge_travel_m: Option<f64>,
    /// Distance from the hinge axis at which a hand may be caught, m; default 0.3 (common practice, no source).
    pub near_m: Option<f64>,
}

/// The place the gate stands at.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Site {
    /// Whether the public, guests or customers use the gate; unknown unless said.
    pub public: Option<bool>,
    /// Whether security staff watch it and keep others away; unknown unless said.
    pub guarded: Option<bool>,
    /// How many families live behind it, 0 where it serves no home; unknown unless said.
    pub homes: Option<u32>,
    /// Whether people on foot have a way of their own; unknown unless said.
    pub pedestrian_way: Option<bool>,
    /// Whether there is a warning sign on both faces; unknown unless said.
    pub signs_both_faces: Option<bool>,
    /// Gap between the closed leaf's edge and what it closes on, m; default 0.
    pub latch_gap_m: Option<f64>,
    /// Half the thickness of the leaf, m; default 0.03.
    pub leaf_half_thickness_m: Option<f64>,
    /// Post, wall, plants, steps: rectangles in plan, from the hinge axis, that leaf or arm may meet or close on. One list with
    /// `room.obstacles`: every check looks at both.
    pub obstacles: Option<Vec<KeepOut>>,
    /// Means of protection that are fitted.
    pub means: Option<Vec<Means>>,
}

/// One means of protection, ticked off.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Means {
    /// How it works.
    pub kind: MeansKind,
    /// The movement it protects in; both unless said.
    pub direction: Option<Direction>,
    /// Whether its fault stops the drive; unknown, and then not counted, unless said.
    pub monitored: Option<bool>,
    /// Zones it reaches; none unless said.
    pub reaches: Option<Vec<ZoneKind>>,
    /// What it senses, in plan: where it reaches and leaves a gap is not looked at without.
    pub area: Option<SensedArea>,
}

/// What a sensor senses, seen from above: a beam, a mat or a strip is a line widened to both sides; a point is a line of no length.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct SensedArea {
    /// What it is fixed to.
    pub on: SensorFrame,
    /// One end, m: along the closed leaf from the hinge axis, or along the leaf.
    pub from_x_m: f64,
    /// The same end, m: square to the closed leaf from the hinge axis, towards the opening side, or square to the leaf as it turns.
    pub from_y_m: f64,
    /// The other end, m.
    pub to_x_m: f64,
    /// The other end, m.
    pub to_y_m: f64,
    /// Half of what it is wide, m; default 0.05.
    pub half_width_m: Option<f64>,
}

/// What a sensor is fixed to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum SensorFrame {
    /// The ground: beams between posts, mats.
    Ground,
    /// The leaf: strips and scanners that turn with it.
    Leaf,
}

impl SensorFrame {
    pub(crate) const NAMES: [&str; 2] = ["ground", "leaf"];
    pub(crate) const ALL: [SensorFrame; 2] = [SensorFrame::Ground, SensorFrame::Leaf];
}

impl SensedArea {
    /// Half of what it is wide, m.
    pub fn half_width(&self) -> f64 {
        self.half_width_m.unwrap_or(default_of("site.means.area.half_width_m"))
    }
    fn numbers(&self) -> [(&'static str, Option<f64>); 5] {
        [
            ("site.means.area.from_x_m", Some(self.from_x_m)),
            ("site.means.area.from_y_m", Some(self.from_y_m)),
            ("site.means.area.to_x_m", Some(self.to_x_m)),
            ("site.means.area.to_y_m", Some(self.to_y_m)),
            ("site.means.area.half_width_m", self.half_width_m),
        ]
    }
}

impl Contact {
    /// Stiffness of what the leaf meets, N/m.
    pub fn stiffness(&self) -> f64 {
        self.stiffness_n_per_m.unwrap_or(default_of("contact.stiffness_n_per_m"))
    }
    /// Dynamic force that is not to be exceeded, N.
    pub fn dynamic_limit(&self) -> f64 {
        self.dynamic_limit_n.unwrap_or(default_of("contact.dynamic_limit_n"))
    }
    /// Static force that is not to be exceeded, N.
    pub fn static_limit(&self) -> f64 {
        self.static_limit_n.unwrap_or(default_of("contact.static_limit_n"))
    }
    /// Time until the drive has let go, s.
    pub fn response(&self) -> f64 {
        self.response_s.unwrap_or(default_of("contact.response_s"))
    }
    /// Where a hand may be caught, m from the hinge axis.
    pub fn near(&self) -> f64 {
        self.near_m.unwrap_or(default_of("contact.near_m"))
    }
    pub(super) fn numbers(&self) -> [(&'static str, Option<f64>); 6] {
        [
            ("contact.stiffness_n_per_m", self.stiffness_n_per_m),
            ("contact.dynamic_limit_n", self.dynamic_limit_n),
            ("contact.static_limit_n", self.static_limit_n),
            ("contact.response_s", self.response_s),
            ("contact.edge_travel_m", self.edge_travel_m),
            ("contact.near_m", self.near_m),
        ]
    }
}

impl Site {
    /// Gap at the latch, m.
    pub fn latch_gap(&self) -> f64 {
        self.latch_gap_m.unwrap_or(default_of("site.latch_gap_m"))
    }
    /// Half the thickness of the leaf, m.
    pub fn half_thickness(&self) -> f64 {
        self.leaf_half_thickness_m.unwrap_or(default_of("site.leaf_half_thickness_m"))
    }
    pub(super) fn numbers(&self) -> Vec<(&'static str, Option<f64>)> {
        let mut numbers: Vec<(&'static str, Option<f64>)> = alloc::vec![
            ("site.latch_gap_m", self.latch_gap_m),
            ("site.leaf_half_thickness_m", self.leaf_half_thickness_m),
        ];
        // How many families is asked, not assumed.
        numbers.extend(self.homes.map(|homes| ("site.homes", Some(f64::from(homes)))));
        for obstacle in self.obstacles.iter().flatten() {
            numbers.extend(obstacle.x_m.map(|x| ("site.obstacles.x_m", Some(x))));
            numbers.extend(obstacle.y_m.map(|y| ("site.obstacles.y_m", Some(y))));
        }
        for area in self.means.iter().flatten().filter_map(|means| means.area.as_ref()) {
            numbers.extend(area.numbers());
        }
        numbers
    }
}

impl Job {
    /// Limits of the dynamic and the static force on a person, N, whether the job speaks of a contact or not.
    pub(crate) fn force_limits_n(&self) -> [f64; 2] {
        match &self.contact {
            Some(contact) => [contact.dynamic_limit(), contact.static_limit()],
            None => ["contact.dynamic_limit_n", "contact.static_limit_n"].map(default_of),
        }
    }
}
