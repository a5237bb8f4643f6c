//! Independent means of protection: how many each movement needs, and how many of those fitted count.

use super::{Source, Zone};
use crate::drive::Direction;
use crate::job::Means;
use crate::words::words;
use alloc::vec::Vec;
use serde::Serialize;

words! {
    /// How a means of protection works. Types A, B1, B2, C and D of UL 325 (from memory).
    pub enum MeansKind {
        /// The drive senses by itself that it is stopped, and reverses (A).
        Inherent = "inherent",
        /// A photo-eye or other sensor that detects people without touch (B1); a vehicle loop is not one.
        NonContact = "non_contact",
        /// An edge that is pressed (B2).
        Contact = "contact",
        /// Force limiting built into the drive and certified by its maker as protection (C); a breakaway clutch is not one.
        InherentForce = "inherent_force",
        /// Moves only while a control in sight of the gate is held (D).
        ConstantPressure = "constant_pressure",
    }
}

impl MeansKind {
    /// Whether it stands outside the operator, and so counts only where its faults are watched.
    const fn external(self) -> bool {
        matches!(self, MeansKind::NonContact | MeansKind::Contact)
    }
}

/// Means wanted and counted in one movement.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct MeansCount {
    /// The movement.
    pub direction: Direction,
    /// Independent means wanted, no two of one kind.
    pub wanted: u32,
    /// Kinds fitted that count.
    pub counted: u32,
    /// Means fitted that do not count: external and not monitored, or of a kind that is there already.
    pub not_counted: u32,
    /// Where the number wanted comes from.
    pub source: Source,
}

/// Counts one movement: two means where it has a zone of entrapment, one where it has none; no two of one kind, external ones monitored.
///
/// The number is the same in all four classes. Source: UL 325, editions 2016 to 2018, from memory; the edition in force decides.
pub fn count_means(direction: Direction, zones: &[Zone], means: &[Means]) -> MeansCount {
    let has_zone = zones.iter().any(|zone| zone.present && zone.directions.contains(&direction));
    let fitted: Vec<&Means> = means.iter().filter(|means| means.direction.is_none_or(|own| own == direction)).collect();
    let mut kinds: Vec<MeansKind> = Vec::new();
    for means in &fitted {
        let watched = !means.kind.external() || means.monitored == Some(true);
        if watched && !kinds.contains(&means.kind) {
            kinds.push(means.kind);
        }
    }
    MeansCount {
        direction,
        wanted: if has_zone { 2 } else { 1 },
        counted: kinds.len() as u32,
        not_counted: (fitted.len() - kinds.len()) as u32,
        source: Source::UL_325,
    }
}
