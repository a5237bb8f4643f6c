//! Where the wind comes from, and what the leaf looks like to it.

use super::rules::default_of;
use crate::leaf::{Asce7Edition, BarShape, Exposure, LoadLevel, Terrain};
use serde::Serialize;

/// A gust at the gate: plain, or by a standard or a Beaufort number. The same block describes the working wind and the storm.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Wind {
    /// Gust speed at the gate, m/s; unless `from` says where the gust comes from.
    pub speed_m_s: Option<f64>,
    /// Force coefficient of the wind area; unless `shape` says what the leaf looks like to the wind.
    pub force_coefficient: Option<f64>,
    /// Air density, kg/m³; default 1.225 (International Standard Atmosphere, sea level).
    pub air_density_kg_m3: Option<f64>,
    /// Plan direction a wind of fixed bearing blows towards, in the frame of the closed leaf, degrees. The plan then shows that wind too.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bearing_deg: Option<f64>,
    /// Where the gust comes from.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<WindFrom>,
    /// What the leaf looks like to the wind.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shape: Option<WindShape>,
}

/// Where a gust comes from.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum WindFrom {
    /// A Beaufort number.
    Beaufort(BeaufortWind),
    /// ASCE 7.
    Asce7(Asce7Wind),
    /// EN 1991-1-4.
    En1991(En1991Wind),
}

/// A Beaufort number, taken at its fastest mean.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct BeaufortWind {
    /// 0 to 11; 12 has no upper end.
    pub number: u32,
    /// Gust over ten-minute mean.
    pub gust_factor: f64,
    /// Mean at the gate's height over mean at 10 m.
    pub height_factor: f64,
}

/// Velocity pressure and gust effect by ASCE 7.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Asce7Wind {
    /// Edition the mapped speed belongs to.
    pub edition: Asce7Edition,
    /// Load level wanted.
    pub level: LoadLevel,
    /// Exposure category.
    pub exposure: Exposure,
    /// Mapped speed, three-second gust at 10 m in exposure C, m/s.
    pub speed_m_s: f64,
    /// Top of the leaf over ground, m.
    pub height_m: f64,
    /// Topographic factor `K_zt`; default 1.
    pub topographic: Option<f64>,
    /// Directionality factor `K_d`; default 0.85.
    pub directionality: Option<f64>,
    /// Importance factor, 7-05 only; default 1.
    pub importance: Option<f64>,
    /// Gust effect factor `G`; default 0.85 (rigid).
    pub gust_effect: Option<f64>,
}

/// Peak velocity pressure by EN 1991-1-4:2005 + A1:2010, recommended values; a national annex replaces them and goes first.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct En1991Wind {
    /// Terrain category.
    pub terrain: Terrain,
    /// Basic wind velocity with its direction and season factors, m/s.
    pub basic_m_s: f64,
    /// Top of the leaf over ground, m.
    pub height_m: f64,
    /// Orography factor `c_o`; default 1.
    pub orography: Option<f64>,
    /// Yearly probability of being exceeded; default 0.02 (50 years).
    pub yearly_probability: Option<f64>,
}

/// What the leaf looks like to the wind. Needs the leaf's height.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum WindShape {
    /// ASCE 7 Fig 29.3-1: less than 30 % openings.
    Asce7Wall(Asce7Wall),
    /// ASCE 7 Fig 29.4-2: an open lattice.
    Asce7Open(Asce7Open),
    /// EN 1991-1-4 §7.4.1: at most 20 % openings.
    En1991Wall(En1991Wall),
}

/// A wall by ASCE 7, cases A and B; case C is excluded.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Asce7Wall {
    /// Solid over gross area, at least 0.7.
    pub solidity: f64,
    /// Height of the leaf over height of its top; default 1.
    pub clearance: Option<f64>,
    /// Case B: the resultant 0.2 of the length off the middle, towards the latch edge; default yes.
    pub eccentric: Option<bool>,
}

/// An open lattice by ASCE 7.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Asce7Open {
    /// Flat-sided or round.
    pub bars: BarShape,
    /// Width or diameter of a bar, m.
    pub bar_m: f64,
    /// Distance of the bars, centre to centre, m.
    pub pitch_m: f64,
}

/// A wall by EN 1991-1-4:2005 + A1:2010, its zones taken as a moment about the hinge; recommended values, which a national annex replaces.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct En1991Wall {
    /// Solid over gross area, at least 0.8.
    pub solidity: f64,
    /// Whether the wall goes round a corner at the latch edge; default no.
    pub returns: Option<bool>,
    /// Shelter factor of a wall upwind; default 1 (none). It does not hold within the leaf's height of the latch edge, which is the wall's free
    /// end.
    pub shelter_factor: Option<f64>,
}

impl Wind {
    /// Air density, kg/m³.
    pub fn air_density(&self) -> f64 {
        self.air_density_kg_m3.unwrap_or(default_of("wind.air_density_kg_m3"))
    }

    /// All numbers with the paths of their rules.
    pub(super) fn numbers(&self) -> alloc::vec::Vec<(&'static str, Option<f64>)> {
        let mut numbers = alloc::vec![
            ("wind.speed_m_s", self.speed_m_s),
            ("wind.force_coefficient", self.force_coefficient),
            ("wind.air_density_kg_m3", self.air_density_kg_m3),
        ];
        // A bearing that is not said is no assumption: there is no wind of fixed bearing then.
        numbers.extend(self.bearing_deg.map(|bearing| ("wind.bearing_deg", Some(bearing))));
        match self.from {
            None => {}
            Some(WindFrom::Beaufort(wind)) => numbers.extend([
                ("wind.from.number", Some(f64::from(wind.number))),
                ("wind.from.gust_factor", Some(wind.gust_factor)),
                ("wind.from.height_factor", Some(wind.height_factor)),
            ]),
            Some(WindFrom::Asce7(wind)) => numbers.extend([
                ("wind.from.speed_m_s", Some(wind.speed_m_s)),
                ("wind.from.height_m", Some(wind.height_m)),
                ("wind.from.topographic", wind.topographic),
                ("wind.from.directionality", wind.directionality),
                ("wind.from.importance", wind.importance),
                ("wind.from.gust_effect", wind.gust_effect),
            ]),
            Some(WindFrom::En1991(wind)) => numbers.extend([
                ("wind.from.basic_m_s", Some(wind.basic_m_s)),
                ("wind.from.height_m", Some(wind.height_m)),
                ("wind.from.orography", wind.orography),
                ("wind.from.yearly_probability", wind.yearly_probability),
            ]),
        }
        match self.shape {
            None => {}
            Some(WindShape::Asce7Wall(wall)) => {
                numbers.extend([("wind.shape.solidity", Some(wall.solidity)), ("wind.shape.clearance", wall.clearance)])
            }
            Some(WindShape::Asce7Open(open)) => {
                numbers.extend([("wind.shape.bar_m", Some(open.bar_m)), ("wind.shape.pitch_m", Some(open.pitch_m))])
            }
            Some(WindShape::En1991Wall(wall)) => numbers.extend([
                ("wind.shape.solidity", Some(wall.solidity)),
                ("wind.shape.shelter_factor", wall.shelter_factor),
            ]),
        }
        numbers
    }
}

impl Asce7Wind {
    pub(crate) fn topographic(&self) -> f64 {
        self.topographic.unwrap_or(default_of("wind.from.topographic"))
    }
    pub(crate) fn directionality(&self) -> f64 {
        self.directionality.unwrap_or(default_of("wind.from.directionality"))
    }
    pub(crate) fn importance(&self) -> f64 {
        self.importance.unwrap_or(default_of("wind.from.importance"))
    }
    pub(crate) fn gust_effect(&self) -> f64 {
        self.gust_effect.unwrap_or(default_of("wind.from.gust_effect"))
    }
}

impl En1991Wind {
    pub(crate) fn orography(&self) -> f64 {
        self.orography.unwrap_or(default_of("wind.from.orography"))
    }
    pub(crate) fn yearly_probability(&self) -> f64 {
        self.yearly_probability.unwrap_or(default_of("wind.from.yearly_probability"))
    }
}

impl Asce7Wall {
    pub(crate) fn clearance(&self) -> f64 {
        self.clearance.unwrap_or(default_of("wind.shape.clearance"))
    }
    pub(crate) fn eccentric(&self) -> bool {
        self.eccentric.unwrap_or(true)
    }
}

impl En1991Wall {
    pub(crate) fn shelter_factor(&self) -> f64 {
        self.shelter_factor.unwrap_or(default_of("wind.shape.shelter_factor"))
    }
    pub(crate) fn returns(&self) -> bool {
        self.returns.unwrap_or(false)
    }
}
