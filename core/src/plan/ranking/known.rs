//! What is computed once for all operators it is the same for, by what it depends on.

use super::place::KitPlace;
use crate::drive::{PeakDemand, WindLimit};
use crate::elements::Efficiency;
use crate::job::{Arm, Job};
use crate::plan::{Gap, Model};
use alloc::{collections::BTreeMap, vec::Vec};

/// Numbers to the bit.
pub(super) type Key = Vec<u64>;

/// Everything known under one leaf, wind and site.
#[derive(Clone, Debug, Default)]
pub(super) struct Known {
    /// Best places by what a search of an operator depends on.
    pub places: BTreeMap<Key, KitPlace>,
    /// Arms by what their torque depends on.
    pub arms: BTreeMap<Key, KnownArm>,
}

/// An arm under the loads.
#[derive(Clone, Debug, Default)]
pub(super) struct KnownArm {
    /// The largest shaft torque.
    pub peak: Option<PeakDemand>,
    /// Wind limits by rated torque.
    pub limits: BTreeMap<u64, WindLimit>,
    /// What meets what by outline and width of the arm; none where nothing is asked.
    pub gaps: BTreeMap<Key, Vec<Gap>>,
}

fn bits(numbers: impl IntoIterator<Item = f64>, key: &mut Key) {
    key.extend(numbers.into_iter().map(f64::to_bits));
}

/// What body and width of the arm come to in the job.
pub(super) fn outline_key(job: &Job) -> Key {
    let mut key = Key::new();
    bits([job.arm_half_width()], &mut key);
    // Its height is for whoever reads it.
    bits(job.operator.body.iter().flat_map(|body| [body.along_m, body.across_m]).flatten(), &mut key);
    key
}

/// Parts of the work that pass between shaft and leaf, either way: both decide what is asked of the shaft.
fn both_ways(job: &Job) -> [f64; 2] {
    let Efficiency { forward, back } = job.operator.efficiencies();
    [forward, back]
}

/// What the search of a job with an operator in it depends on beside leaf, wind and site.
pub(super) fn place_key(job: &Job) -> Key {
    let mut key = outline_key(job);
    bits(both_ways(job), &mut key);
    if let Some(setout) = &job.setout {
        bits(setout.crank_m.into_iter().chain(setout.link_m), &mut key);
        bits([setout.shaft_travel(), setout.step_m.unwrap_or(0.0)], &mut key);
    }
    key
}

/// What an arm's torque depends on beside the leaf and the wind.
pub(super) fn arm_key(arm: &Arm, model: &Model) -> Key {
    let mut key = Key::new();
    bits(arm.lengths_m().into_iter().chain([arm.elbow.side()]).chain(both_ways(model.job())), &mut key);
    key
}

/// A job without what neither a place nor an arm's torque depends on: names, what is measured or marked out, what is judged beside torque.
pub(super) fn without_what_does_not_matter(job: &Job) -> Job {
    let mut job = job.clone();
    (job.title, job.hand, job.arm, job.samples, job.required_reserve) = (None, None, None, None, None);
    (job.motion, job.breakaway, job.holding, job.contact, job.site) = (None, None, None, None, None);
    (job.settings, job.record, job.as_built, job.uncertainty, job.migrated) = (None, None, None, None, None);
    job
}
