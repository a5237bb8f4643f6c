//! Coefficients of friction as handbooks give them: ranges.

use crate::terms::words::words;
use serde::Serialize;

words! {
    /// What slides or rolls on what in the hinge.
    pub enum Pairing {
        /// Steel on steel, dry.
        SteelSteelDry = "steel_steel_dry",
        /// Steel on steel, greased.
        SteelSteelGreased = "steel_steel_greased",
        /// Steel on bronze, dry.
        SteelBronzeDry = "steel_bronze_dry",
        /// Steel on bronze, greased.
        SteelBronzeGreased = "steel_bronze_greased",
        /// PTFE-lined bush.
        PtfeLined = "ptfe_lined",
        /// Rolling bearings.
        Rolling = "rolling",
    }
}

/// A coefficient of friction with its uncertainty.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct FrictionRange {
    /// Lower end.
    pub low: f64,
    /// What to reckon with.
    pub likely: f64,
    /// Upper end.
    pub high: f64,
}

impl Pairing {
    /// Sliding (or rolling) coefficient of a steady movement; breaking loose takes more.
    ///
    /// Source: Marks' Standard Handbook Table 3.2.1 and bearing handbooks, from memory. The likely value is the middle of the range:
    /// common practice, no source.
    #[must_use]
    pub const fn friction(self) -> FrictionRange {
        let (low, high) = match self {
            Pairing::SteelSteelDry => (0.42, 0.57),
            Pairing::SteelSteelGreased => (0.03, 0.19),
            Pairing::SteelBronzeDry => (0.18, 0.22),
            Pairing::SteelBronzeGreased => (0.07, 0.16),
            Pairing::PtfeLined => (0.03, 0.15),
            Pairing::Rolling => (0.0013, 0.0025),
        };
        FrictionRange { low, likely: (low + high) / 2.0, high }
    }
}
