//! The ramp of rising hinges: its radius, and how steep it may be.

use super::{Hinges, Job, RisingHinges};
use crate::Document;
use crate::elements::{Collar, helix_steepest_m_per_rad};
use crate::fault::{Allowed, Example, Fault, FaultCode, NamedValue};
use crate::units::Quantity;

impl RisingHinges {
    /// Radius of the helix the leaf is taken to slide on, m: the collar's mean radius of friction.
    pub(crate) fn collar_radius_m(&self) -> f64 {
        self.collar.unwrap_or(Collar::CAREFUL).mean_radius_m(self.thrust_outer_radius_m, self.thrust_inner_radius_m)
    }
}

impl Job {
    /// The fault of a ramp that binds at the upper end of the friction, up whichever way the leaf rises.
    pub(super) fn ramp_fault(&self) -> Option<Fault> {
        let (Hinges::Rising(rising), Some(friction)) = (&self.hinges, self.hinges.friction_range()) else {
            return None;
        };
        let steepest = helix_steepest_m_per_rad(rising.collar_radius_m(), friction.high) * self.open_rad();
        // A hair below: on the limit itself the moment is no number.
        let most = steepest * (1.0 - 1e-9);
        (rising.rise_m.abs() > most).then(|| {
            let allowed = Allowed::Range { least: Some(-most), most: Some(most), quantity: Quantity::ShortLength };
            let friction = NamedValue { name: "friction", value: friction.high, quantity: Quantity::Ratio };
            Fault::new("hinges.rise_m", FaultCode::RampBinds)
                .found(&Document::Number(rising.rise_m))
                .allowed(allowed)
                .example(Example::Number(most / 2.0 * rising.rise_m.signum()))
                .values([friction])
        })
    }
}
