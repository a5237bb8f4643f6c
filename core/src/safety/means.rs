//! Independent means of protection: how many each movement needs, and how many of those fitted count.

use super::{Source, Zone};
use crate::job::Means;
use crate::terms::{Direction, MeansKind};
use alloc::vec::Vec;
use serde::Serialize;

impl MeansKind {
    /// Whether it stands outside the operator, and so counts only where its faults are watched.
    const fn external(self) -> bool {
        matches!(self, MeansKind::NonContact | MeansKind::Contact)
    }
}

/// Means wanted and counted in one movement.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
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
#[must_use]
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
