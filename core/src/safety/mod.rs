//! People near the gate: forces on them, zones that can catch them, how the site is used, what protects them.
//!
//! Nothing here says that a gate may be used. Forces are estimates that a calibrated instrument has to confirm on the finished gate; classes
//! and counts are those of editions named beside them, and the edition in force, local codes and licensed practice decide.
//!
//! ```
//! use pintle_core::safety::{edge_mass_kg, impact_force_n, impact_speed_m_s};
//!
//! // A leaf of 540 kg·m² and 3 m has the edge of 60 kg; at 0.2 m/s into 100 kN/m.
//! let mass_kg = edge_mass_kg(540.0, 3.0);
//! assert!((mass_kg - 60.0).abs() < 1e-12);
//! let force_n = impact_force_n(0.2, 1e5, mass_kg);
//! assert!((force_n - 489.898).abs() < 1e-3);
//! assert!((impact_speed_m_s(force_n, 1e5, mass_kg) - 0.2).abs() < 1e-15);
//! ```

mod class;
mod force;
mod means;
mod reach;
mod stance;
mod zones;

pub use class::{UseClass, use_class};
pub use force::{compression_m, edge_mass_kg, edge_travel_m, impact_force_n, impact_speed_m_s, spring_force_n};
pub use means::{MeansCount, count_means};
pub use reach::{AngleSpan, SensorReach, ZoneGap};
pub(crate) use reach::{edge_unseen, sensor_reach};
pub use zones::Zone;
pub(crate) use zones::{Bodies, GroundGap, KnownGaps, PostGap, zones};

use serde::Serialize;

/// How a published number was come by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum SourceProvenance {
    /// Read in the named source.
    Seen,
    /// From memory; the source was not at hand.
    FromMemory,
    /// From memory, and the wording is doubtful.
    Doubtful,
    /// What the trade does; no source.
    CommonPractice,
}

/// Where a published number comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Source {
    /// Standard and edition; empty for common practice.
    pub name: &'static str,
    /// How it was come by.
    pub provenance: SourceProvenance,
    /// Whether a later edition is in force.
    pub superseded: bool,
}

impl Source {
    const fn from_memory(name: &'static str) -> Source {
        Source { name, provenance: SourceProvenance::FromMemory, superseded: false }
    }
    /// Force limits of powered gates, by an edition that is superseded.
    pub const EN_12453: Source = Source { superseded: true, ..Source::from_memory("EN 12453:2001 Annex A") };
    /// Measuring of forces, by an edition that is superseded.
    pub const EN_12445: Source = Source { superseded: true, ..Source::from_memory("EN 12445:2000") };
    /// Force to move a gate by hand.
    pub const EN_12604: Source = Source { provenance: SourceProvenance::Doubtful, ..Source::from_memory("EN 12604") };
    /// Gaps that do not crush a part of the body.
    pub const ISO_13854: Source = Source {
        name: "ISO 13854, as AUVA prints its figures (Safety Distances)",
        provenance: SourceProvenance::Seen,
        superseded: false,
    };
    /// Means of protection against entrapment.
    pub const UL_325: Source = Source::from_memory("UL 325 (2016-2018)");
    /// Classes of use.
    pub const F2200_CLASSES: Source =
        Source { name: "ASTM F2200-20", provenance: SourceProvenance::Seen, superseded: false };
    /// Gaps around a swing gate.
    pub const F2200_GAPS: Source =
        Source { name: "ASTM F2200", provenance: SourceProvenance::Doubtful, superseded: false };
    /// One earth rod and when it needs another.
    pub const NEC_ROD: Source = Source::from_memory("US National Electrical Code (NEC) 250.53(A)(2)");
    /// What the trade does.
    pub const PRACTICE: Source = Source { name: "", provenance: SourceProvenance::CommonPractice, superseded: false };
}
