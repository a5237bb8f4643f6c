//! A leaf on rising hinges: its collar slides on a ramp, its pins slide round and up in their bushes.

use crate::elements::{helix_lowering_n_m, helix_raising_n_m};
use crate::real::sqrt;

/// What a leaf on rising hinges weighs on them, all magnitudes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RisingLeaf {
    /// Weight, N.
    pub weight_n: f64,
    /// Radial load on each of the two pins, N.
    pub couple_n: f64,
    /// Radius of the pins, m.
    pub pin_radius_m: f64,
    /// Mean radius of friction of the collar, m, which is the ramp's: see [`crate::elements::Collar::mean_radius_m`].
    pub collar_radius_m: f64,
    /// Rise of the leaf, m/rad: the rise over the swing by the swing's angle. Not negative.
    pub rise_m_per_rad: f64,
    /// Coefficient of friction of ramp and pins.
    pub friction_coefficient: f64,
}

impl RisingLeaf {
    /// Moment that turns the leaf up its ramp, N·m; infinite where the ramp binds, which a job that passed its checks has ruled out.
    ///
    /// The pins slide along helices too, steeper ones where they are thinner than the collar: their friction `2·μ·H` points along the way of
    /// sliding, `r_p` round to `p` up. Its part round is `2·μ·H·cos γ`, on the pins' radius; its part down, `2·μ·H·sin γ` with
    /// `tan γ = p/r_p`, is a load on the ramp besides the weight: `M = 2·μ·H·r_p·cos γ + (W + 2·μ·H·sin γ)·r·tan(α + φ)`.
    /// Source: statics of the leaf cut free of ramp and pins, Coulomb's friction against the way of sliding.
    pub fn raising_n_m(&self) -> f64 {
        let (round_n, along_n) = self.pins_n(1.0);
        let ramp = self.helix(self.weight_n + along_n, helix_raising_n_m).unwrap_or(f64::INFINITY);
        round_n * self.pin_radius_m + ramp
    }

    /// Moment that turns the leaf down its ramp, N·m; negative where it has to be held back by so much.
    ///
    /// The pins' friction points up here and carries a part of the weight. Where it could carry more than all of it, the leaf hangs on its
    /// pins, comes down no faster than they let it, and weighs nothing on the ramp.
    #[must_use]
    pub fn lowering_n_m(&self) -> f64 {
        let (_, along_n) = self.pins_n(1.0);
        let share = if along_n > self.weight_n { self.weight_n / along_n } else { 1.0 };
        let (round_n, along_n) = self.pins_n(share);
        let helix = |load_n, radius_m, rise, friction| Some(helix_lowering_n_m(load_n, radius_m, rise, friction));
        round_n * self.pin_radius_m + self.helix((self.weight_n - along_n).max(0.0), helix).unwrap_or(0.0)
    }

    /// Moment of the weight on the ramp, `W·dz/dθ`, N·m: what an ideal ramp asks up and gives back down. Source: virtual work.
    #[must_use]
    pub fn weight_n_m(&self) -> f64 {
        self.weight_n * self.rise_m_per_rad
    }

    fn helix(&self, load_n: f64, relation: impl Fn(f64, f64, f64, f64) -> Option<f64>) -> Option<f64> {
        relation(load_n, self.collar_radius_m, self.rise_m_per_rad, self.friction_coefficient)
    }

    /// Friction of both pins, N: its parts round and along the axis. `share` takes less of the part along than sliding on the ramp would.
    fn pins_n(&self, share: f64) -> (f64, f64) {
        let friction_n = 2.0 * self.friction_coefficient * self.couple_n;
        let slide_m = sqrt(self.pin_radius_m * self.pin_radius_m + self.rise_m_per_rad * self.rise_m_per_rad);
        let along_n = share * friction_n * self.rise_m_per_rad / slide_m;
        (sqrt((friction_n * friction_n - along_n * along_n).max(0.0)), along_n)
    }
}
