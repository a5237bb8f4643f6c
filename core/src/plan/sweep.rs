//! The inner loop of the searches, by itself: the largest torque at tabulated leaf angles, nothing refined.

use super::setout::JobLoads;
use crate::arm::setout::{ArmKernel, SearchStation};
use crate::fault::Invalid;
use crate::job::{Arm, ToChecked};
use crate::real::{cos, sin};
use alloc::vec::Vec;

/// Evenly spaced leaf angles with all that does not depend on the arm.
#[derive(Clone, Debug)]
pub struct TorqueSweep {
    stations: Vec<SearchStation>,
}

impl TorqueSweep {
    /// Tabulates `angles` leaf angles, at least 2, both ends included.
    ///
    /// # Errors
    /// [`Invalid`] with every fault of the values.
    pub fn new(job: &impl ToChecked, angles: usize) -> Result<TorqueSweep, Invalid> {
        let job = &*job.checked()?;
        let last = angles.max(2) - 1;
        let loads = JobLoads::new(job);
        let station = |index: usize| {
            let leaf_rad = job.open_rad() * index as f64 / last as f64;
            let (cosine, sine) = (cos(leaf_rad), sin(leaf_rad));
            SearchStation { leaf_rad, cosine, sine, effort_n_m: loads.effort_n_m(leaf_rad), storm_n_m: 0.0 }
        };
        let stations = (0..=last).map(station).collect();
        Ok(TorqueSweep { stations })
    }

    /// The largest shaft torque of an arm at these angles, both ways, wind against, N·m. Means nothing for an arm with a defect.
    #[must_use]
    pub fn largest_n_m(&self, arm: &Arm) -> f64 {
        let kernel = ArmKernel::new(arm);
        self.stations.iter().fold(0.0, |most, station| {
            let torque = station.effort_n_m * kernel.at(station.cosine, station.sine).inverse_ratio();
            if torque > most { torque } else { most }
        })
    }
}
