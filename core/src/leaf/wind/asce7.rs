//! Velocity pressure by ASCE 7.

use crate::real::pow;
use crate::terms::{Asce7Edition, Exposure, LoadLevel};
use crate::units::{Quantity, System};

/// Lowest height the profile is used at, m (15 ft); below it the coefficient stays what it is there.
const LOWEST_M: f64 = 15.0 * 0.3048;

impl Asce7Edition {
    /// Factor on the pressure of the edition's mapped speed to reach a load level.
    ///
    /// ASCE 7-05 maps speeds at allowable level (strength: 1.6 W), the later editions at strength level (allowable: 0.6 W). Source:
    /// ASCE 7-05 and 7-16 §2.3, §2.4 load combinations, from memory.
    #[must_use]
    pub const fn level_factor(self, level: LoadLevel) -> f64 {
        match (self, level) {
            (Asce7Edition::E05, LoadLevel::Allowable) => 1.0,
            (Asce7Edition::E05, LoadLevel::Strength) => 1.6,
            (_, LoadLevel::Strength) => 1.0,
            (_, LoadLevel::Allowable) => 0.6,
        }
    }
}

/// Exposure coefficient at a height, `K_z = k·(z/z_g)^(2/α)`, `z ≥ 15 ft`.
///
/// `height_m` of the leaf's top over ground. Up to 7-16 `k` = 2.01 with `α`, `z_g` (ft) = 7.0, 1200 (B), 9.5, 900 (C), 11.5, 700 (D); in
/// 7-22 `k` = 2.41 with 7.5, 3280, 9.8, 2460, 11.5, 1935. Source: ASCE 7-05 Table 6-3 note 2 (case 2), 7-16 Table 26.10-1, 7-22 Table
/// 26.10-1, from memory; 0.85 at 15 ft, exposure C, seen in a worked example.
#[must_use]
pub fn asce7_exposure_coefficient(edition: Asce7Edition, exposure: Exposure, height_m: f64) -> f64 {
    let (factor, [b, c, d]) = match edition {
        Asce7Edition::E22 => (2.41, [(7.5, 3280.0), (9.8, 2460.0), (11.5, 1935.0)]),
        _ => (2.01, [(7.0, 1200.0), (9.5, 900.0), (11.5, 700.0)]),
    };
    let (alpha, gradient_ft) = match exposure {
        Exposure::B => b,
        Exposure::C => c,
        Exposure::D => d,
    };
    let gradient_m = gradient_ft * Quantity::Length.unit(System::Us).factor;
    factor * pow(height_m.max(LOWEST_M) / gradient_m, 2.0 / alpha)
}

/// Velocity pressure, Pa: `q = 0.00256·K_z·K_zt·K_d·I·V²` psf with V in mph, taken to SI exactly.
///
/// `factors` is the product `K_z·K_zt·K_d·I` (`I` in 7-05 only; in 7-22 `K_d` stands in the force instead, with the same product), `speed_m_s`
/// the mapped three-second gust at 10 m in exposure C. The metric print's 0.613 lies 0.06 % lower. The ground elevation factor `K_e` is
/// taken as 1, which is the careful side. Source: ASCE 7-16 eq. 26.10-1.
#[must_use]
pub fn asce7_velocity_pressure_pa(factors: f64, speed_m_s: f64) -> f64 {
    let mph = speed_m_s / Quantity::Speed.unit(System::Us).factor;
    let psf_pa = Quantity::Force.unit(System::Us).factor / Quantity::Area.unit(System::Us).factor;
    0.00256 * factors * mph * mph * psf_pa
}
