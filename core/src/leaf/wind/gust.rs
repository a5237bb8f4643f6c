//! From what the job says about a wind to one gust and one coefficient.

use super::*;
use crate::elements::bar_solidity;
use crate::job::{Job, Leaf, Wind, WindFrom, WindShape};
use crate::real::sqrt;
use serde::Serialize;

/// A wind as it is reckoned with.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Gust {
    /// Gust at the gate whose plain pressure `½ρV²` equals `pressure_pa`, m/s.
    pub speed_m_s: f64,
    /// Pressure at the wanted load level, gust effect and shelter included, Pa.
    pub pressure_pa: f64,
    /// Force coefficient on the leaf's solid area at its centre, so that the moment about the hinge is right.
    pub force_coefficient: f64,
    /// Force coefficient on the same area, so that the force is right: less where a standard's shape puts the resultant towards the latch edge.
    pub resultant_coefficient: f64,
    /// Air density, kg/m³.
    pub air_density_kg_m3: f64,
}

impl WindFrom {
    /// Pressure at the wanted load level with the gust effect, Pa.
    fn pressure_pa(&self, density_kg_m3: f64) -> f64 {
        match self {
            WindFrom::Beaufort(wind) => {
                let (least, most) = beaufort_range_m_s(wind.number as u8);
                let gust_m_s = most.unwrap_or(least) * wind.gust_factor * wind.height_factor;
                velocity_pressure_pa(density_kg_m3, gust_m_s)
            }
            WindFrom::Asce7(wind) => {
                let factors = asce7_exposure_coefficient(wind.edition, wind.exposure, wind.height_m)
                    * wind.topographic()
                    * wind.directionality()
                    * wind.importance();
                let pressure_pa = asce7_velocity_pressure_pa(factors, wind.speed_m_s);
                pressure_pa * wind.gust_effect() * wind.edition.level_factor(wind.level)
            }
            WindFrom::En1991(wind) => {
                let basic_m_s = wind.basic_m_s * en1991_probability_factor(wind.yearly_probability());
                en1991_peak_pressure_pa(basic_m_s, wind.terrain, wind.height_m, wind.orography())
            }
        }
    }
}

impl WindShape {
    /// Solid over gross area as the shape has it.
    pub(crate) fn solidity(&self) -> f64 {
        match self {
            WindShape::Asce7Wall(wall) => wall.solidity,
            WindShape::Asce7Open(open) => bar_solidity(open.bar_m, open.pitch_m),
            WindShape::En1991Wall(wall) => wall.solidity,
            WindShape::En1991Lattice(lattice) => lattice.solidity,
        }
    }

    /// Coefficients on the leaf's solid area: at its middle for the moment about the hinge, and for the force.
    fn coefficients(&self, leaf: &Leaf, pressure_pa: f64) -> [f64; 2] {
        // A shape without a height is refused before.
        let height_m = leaf.height_m.unwrap_or(leaf.length_m);
        let aspect = leaf.length_m / height_m;
        match self {
            WindShape::Asce7Wall(wall) => [wall.eccentric(), false]
                .map(|eccentric| asce7_wall_moment_coefficient(aspect, wall.clearance(), wall.solidity, eccentric)),
            WindShape::Asce7Open(open) => {
                let solidity = bar_solidity(open.bar_m, open.pitch_m);
                [asce7_open_coefficient(solidity, open.bars, open.bar_m, pressure_pa); 2]
            }
            WindShape::En1991Lattice(lattice) => {
                [en1991_lattice_coefficient(lattice.solidity, lattice.end_effect()); 2]
            }
            WindShape::En1991Wall(wall) => {
                let zones = en1991_zone_coefficients(aspect, wall.solidity, wall.returns());
                let shelter = wall.shelter_factor();
                [en1991_wall_moment_coefficient, en1991_wall_force_coefficient]
                    .map(|coefficient| coefficient(leaf.length_m, height_m, zones, shelter) / wall.solidity)
            }
        }
    }
}

impl Gust {
    /// The gust of a wind that passed its checks, on a leaf.
    #[must_use]
    pub fn new(wind: &Wind, leaf: &Leaf) -> Gust {
        let density = wind.air_density();
        let plain = |speed_m_s| (speed_m_s, velocity_pressure_pa(density, speed_m_s));
        let (speed_m_s, pressure_pa) = match &wind.from {
            Some(from) => {
                let pressure_pa = from.pressure_pa(density);
                (sqrt(2.0 * pressure_pa / density), pressure_pa)
            }
            None => plain(wind.speed_m_s.unwrap_or(0.0)),
        };
        let [force_coefficient, resultant_coefficient] = match &wind.shape {
            Some(shape) => shape.coefficients(leaf, pressure_pa),
            None => [wind.force_coefficient.unwrap_or(0.0); 2],
        };
        Gust { speed_m_s, pressure_pa, force_coefficient, resultant_coefficient, air_density_kg_m3: density }
    }

    /// The same wind at another gust speed; its coefficient stays.
    #[must_use]
    pub fn at(&self, speed_m_s: f64) -> Gust {
        Gust { speed_m_s, pressure_pa: velocity_pressure_pa(self.air_density_kg_m3, speed_m_s), ..*self }
    }

    /// Force on a solid area, N.
    #[must_use]
    pub fn force_n(&self, area_m2: f64) -> f64 {
        self.pressure_pa * self.resultant_coefficient * area_m2
    }

    /// Force that has the wind's moment when it acts at the area's centre, N; the force itself unless a standard's shape sets them apart.
    #[must_use]
    pub fn moment_equivalent_n(&self, area_m2: f64) -> f64 {
        self.pressure_pa * self.force_coefficient * area_m2
    }
}

impl Job {
    /// The working wind.
    #[must_use]
    pub fn gust(&self) -> Gust {
        Gust::new(&self.wind, &self.leaf)
    }
}
