//! Where a gust comes from.

use crate::job::table::*;
use crate::terms::{Asce7Edition, Exposure, LoadLevel, Terrain};
use crate::units::Quantity::{Count, Length, Ratio, Speed};

choice! {
    /// Where a gust comes from.
    #[derive(Copy)]
    pub enum WindFrom by "kind" {
        /// A Beaufort number.
        Beaufort(BeaufortWind) = "beaufort",
        /// ASCE 7.
        Asce7(Asce7Wind) = "asce7",
        /// EN 1991-1-4.
        En1991(En1991Wind) = "en1991",
    }
}

block! {
    /// A Beaufort number, taken at its fastest mean.
    #[derive(Copy)]
    pub struct BeaufortWind at "wind.from." also at "storm.from." {
        /// 0 to 11; 12 has no upper end.
        number: u32 = number(Count, 0.0, 11.0, 6.0),
        /// Gust over ten-minute mean.
        gust_factor: f64 = number(Ratio, 1.0, 3.0, 1.6).varied(),
        /// Mean at the gate's height over mean at 10 m.
        height_factor: f64 = number(Ratio, 0.1, 2.0, 0.7).varied(),
    }
}

block! {
    /// Velocity pressure and gust effect by ASCE 7.
    #[derive(Copy)]
    pub struct Asce7Wind at "wind.from." also at "storm.from." {
        /// Edition the mapped speed belongs to.
        edition: Asce7Edition = word(Asce7Edition::WORDS),
        /// Load level wanted.
        level: LoadLevel = word(LoadLevel::WORDS),
        /// Exposure category.
        exposure: Exposure = word(Exposure::WORDS),
        /// Mapped speed, three-second gust at 10 m in exposure C, m/s.
        speed_m_s: f64 = number(Speed, 0.0, 100.0, 45.0).varied(),
        /// Top of the leaf over ground, m.
        height_m: f64 = number(Length, 0.2, 10.0, 2.0).varied(),
        /// Topographic factor `K_zt`; default 1.
        topographic: Option<f64> = assumed(Ratio, 1.0, 3.0, 1.0) => topographic,
        /// Directionality factor `K_d`; default 0.85.
        directionality: Option<f64> = assumed(Ratio, 0.5, 1.0, 0.85) => directionality,
        /// Importance factor, 7-05 only; default 1.
        importance: Option<f64> = assumed(Ratio, 0.5, 1.5, 1.0) => importance,
        /// Gust effect factor `G`; default 0.85 (rigid).
        gust_effect: Option<f64> = assumed(Ratio, 0.5, 2.0, 0.85) => gust_effect,
    }
}

block! {
    /// Peak velocity pressure by EN 1991-1-4:2005 + A1:2010, recommended values; a national annex replaces them and goes first.
    #[derive(Copy)]
    pub struct En1991Wind at "wind.from." also at "storm.from." {
        /// Terrain category.
        terrain: Terrain = word(Terrain::WORDS),
        /// Basic wind velocity with its direction and season factors, m/s.
        basic_m_s: f64 = number(Speed, 0.0, 60.0, 26.0).varied(),
        /// Top of the leaf over ground, m.
        height_m: f64 = number(Length, 0.2, 10.0, 2.0).varied(),
        /// Orography factor `c_o`; default 1.
        orography: Option<f64> = assumed(Ratio, 1.0, 3.0, 1.0) => orography,
        /// Yearly probability of being exceeded; default 0.02 (50 years).
        yearly_probability: Option<f64> = assumed(Ratio, 0.001, 0.5, 0.02) => yearly_probability,
    }
}
