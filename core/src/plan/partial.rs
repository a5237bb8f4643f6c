//! The plan of a job of which a part is begun.

use super::{Model, Plan};
use crate::Document;
use crate::fault::{Invalid, LeftOut};
use crate::job::CheckedJob;
use alloc::vec::Vec;
use serde::Serialize;

/// A plan of what could be read of a job, and what is not counted in it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct PartialPlan {
    /// The plan of the rest.
    pub plan: Plan,
    /// Parts that were begun and cannot be read yet; empty where the plan is whole.
    pub left_out: Vec<LeftOut>,
}

/// Plans a job of which a part may be begun and not finished: see [`CheckedJob::read_partial`].
///
/// # Errors
/// [`Invalid`] where what cannot be read is needed, or with the reason why the arm cannot work.
pub fn plan_partial(document: &Document) -> Result<PartialPlan, Invalid> {
    let (job, left_out) = CheckedJob::read_partial(document)?;
    let mut plan = Model::of(job)?.plan();
    plan.judge(&left_out);
    Ok(PartialPlan { plan, left_out })
}
