//! A job that passed every check, solved as far as every answer needs it.

use crate::arm::Linkage;
use crate::drive::Demand;
use crate::elements::Efficiency;
use crate::fault::Invalid;
use crate::job::{Arm, CheckedJob, Job, ToChecked};
use crate::leaf::LeafLoads;
use crate::terms::{Direction, WindCase};

/// A valid job with its linkage and loads: what the plan, the cursor and the drawings ask.
#[derive(Clone, Debug)]
pub struct Model {
    job: CheckedJob,
    arm: Arm,
    linkage: Linkage,
    loads: LeafLoads,
    /// Parts of the work that pass between shaft and leaf.
    efficiency: Efficiency,
}

impl Model {
    /// Checks the job, unless it was, and its arm.
    ///
    /// # Errors
    /// [`Invalid`] with every fault of the values, or with the reason why the arm cannot work.
    pub fn new(job: &impl ToChecked) -> Result<Model, Invalid> {
        Model::of(job.checked()?.into_owned())
    }

    /// The model of a checked job.
    ///
    /// # Errors
    /// [`Invalid`] with the reason why the arm cannot work, or naming it where the job has none.
    pub fn of(job: CheckedJob) -> Result<Model, Invalid> {
        let arm = *job.needed_arm()?;
        let linkage = Linkage::new(&arm, job.open_rad());
        match linkage.defect() {
            Some(defect) => Err(Invalid { errors: alloc::vec![defect.fault(&arm)] }),
            None => {
                let (loads, efficiency) = (LeafLoads::new(&job), job.operator.efficiencies());
                Ok(Model { job, arm, linkage, loads, efficiency })
            }
        }
    }

    /// The job.
    #[must_use]
    pub fn job(&self) -> &Job {
        &self.job
    }

    /// The arm as the job gives it.
    #[must_use]
    pub fn arm(&self) -> &Arm {
        &self.arm
    }

    /// The arm as a mechanism.
    #[must_use]
    pub fn linkage(&self) -> &Linkage {
        &self.linkage
    }

    /// The loads on the leaf.
    #[must_use]
    pub fn loads(&self) -> &LeafLoads {
        &self.loads
    }

    /// Shaft torque by leaf angle, one way, in one wind.
    #[must_use]
    pub fn demand(&self, direction: Direction, wind: WindCase) -> Demand<'_> {
        self.demand_of(&self.loads, direction, wind)
    }

    pub(super) fn demand_of<'a>(&'a self, loads: &'a LeafLoads, direction: Direction, wind: WindCase) -> Demand<'a> {
        Demand { linkage: &self.linkage, loads, efficiency: self.efficiency, direction, wind }
    }

    /// Parts of the work that pass between shaft and leaf.
    pub(super) fn efficiency(&self) -> Efficiency {
        self.efficiency
    }

    /// The curve's leaf angles, rad: `samples` evenly spaced ones, both ends included and exact.
    pub(super) fn leaf_angles(&self) -> impl Iterator<Item = f64> + use<> {
        let (last, open) = (self.job.samples() - 1, self.linkage.open_rad);
        (0..=last).map(move |index| if index == last { open } else { open * f64::from(index) / f64::from(last) })
    }
}
