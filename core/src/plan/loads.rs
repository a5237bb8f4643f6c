//! The loads about the hinge, as the plan tells them.

use super::Model;
use crate::job::Hinges;
use crate::leaf::{Body, SNOW_DEPTH_M, snow_moment_n_m};
use crate::terms::Direction;
use serde::Serialize;

/// Loads on the leaf about the hinge.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Loads {
    /// Friction of all hinges and steady drag, N·m; on a ramp when opening.
    pub hinge_friction_n_m: f64,
    /// The job's gust, square to the leaf, N·m.
    pub wind_n_m: f64,
    /// Moment of inertia about the hinge axis, kg·m².
    pub inertia_kg_m2: f64,
    /// The relation by which the hinges' friction was computed, in symbols; absent where it was measured.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction_relation: Option<&'static str>,
    /// Snow in the way of the leaf; nothing is calculated with it.
    pub snow: SnowInTheWay,
    /// What a ramp does, where the hinges rise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ramp: Option<Ramp>,
}

/// Snow that the leaf would push: a measure of size.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct SnowInTheWay {
    /// Its depth above the leaf's lower edge, m.
    pub depth_m: f64,
    /// Rough moment about the hinge of pushing it, settled, N·m.
    pub moment_n_m: f64,
}

/// Ice on the leaf.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct IceLoad {
    /// Its mass, kg.
    pub mass_kg: f64,
    /// Wind area with it, m².
    pub wind_area_m2: f64,
    /// Whether it lies all round the leaf's members; on both faces of the wind area where they are not known.
    pub all_round: bool,
}

/// The ramp of rising hinges: weight and friction depend on the way the leaf moves.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Ramp {
    /// Moment of the weight on the ramp, N·m; positive where it closes the leaf.
    pub weight_n_m: f64,
    /// Friction of hinges and steady drag when opening, N·m: what the drive must give beyond the weight's moment.
    pub friction_open_n_m: f64,
    /// The same when closing.
    pub friction_close_n_m: f64,
}

impl Model {
    /// The loads of the leaf.
    pub(super) fn told_loads(&self) -> Loads {
        let loads = self.loads();
        Loads {
            hinge_friction_n_m: loads.friction_n_m(Direction::Open),
            wind_n_m: loads.wind_n_m,
            inertia_kg_m2: loads.inertia_kg_m2,
            friction_relation: self.job().hinges.friction_relation(),
            snow: SnowInTheWay {
                depth_m: SNOW_DEPTH_M,
                moment_n_m: snow_moment_n_m(SNOW_DEPTH_M, self.job().leaf.length_m),
            },
            ramp: self.ramp(),
        }
    }

    /// `None` without ice.
    pub(super) fn ice(&self) -> Option<IceLoad> {
        let (leaf, iced) = (&self.job().leaf, Body::of(self.job()));
        self.job().ice.map(|_| IceLoad {
            mass_kg: iced.mass_kg - Body::without_ice(leaf).mass_kg,
            wind_area_m2: iced.wind_area_m2,
            all_round: leaf.members.is_some(),
        })
    }

    /// `None` without a ramp.
    fn ramp(&self) -> Option<Ramp> {
        let loads = self.loads();
        matches!(self.job().hinges, Hinges::Rising(_)).then(|| Ramp {
            weight_n_m: loads.rise_n_m(),
            friction_open_n_m: loads.friction_n_m(Direction::Open),
            friction_close_n_m: loads.friction_n_m(Direction::Close),
        })
    }
}
