//! The best place of a kit.

use crate::arm::Limit;
use crate::job::Arm;
use crate::plan::SetOutAnswer;
use crate::units::Quantity;
use serde::Serialize;

/// Whether a place was looked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum PlaceSought {
    /// The job says nothing of where an operator may stand.
    NotAsked,
    /// Found.
    Found,
    /// No set-out keeps every limit.
    NotFound,
}

/// What a search came to.
#[derive(Clone, Copy, Debug)]
pub(super) enum KitPlace {
    /// The best arm.
    Found(Arm),
    /// What is in the way of the nearest, and by how much.
    NotFound(Limit, f64),
}

/// What the amount of a limit is.
pub(super) fn quantity_of(limit: Limit) -> Quantity {
    match limit {
        Limit::SquareDeg | Limit::ShaftTravelDeg | Limit::TapeShaftTravelDeg => Quantity::Angle,
        Limit::Straightness => Quantity::Ratio,
        Limit::MostShaftTorqueNM => Quantity::Torque,
        _ => Quantity::ShortLength,
    }
}

impl KitPlace {
    pub fn of(answer: &SetOutAnswer) -> KitPlace {
        match (&answer.best, &answer.nearest) {
            (Some(best), _) => KitPlace::Found(best.arm),
            (None, Some(nearest)) => KitPlace::NotFound(nearest.limit, nearest.by),
            (None, None) => KitPlace::NotFound(Limit::Arm, 0.0),
        }
    }
}
