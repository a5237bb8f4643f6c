//! From a document to a job that can be computed with.

use super::blocks::{Job, Leaf};
use super::migrate::migrated;
use super::table::{Reading, Value, document};
use super::{Arm, Operator};
use crate::Document;
use crate::fault::{FaultCode, Invalid};
use alloc::borrow::Cow;
use core::ops::Deref;

/// A job that keeps every rule of the table and every relation between its fields. Only such a job makes a model.
#[derive(Clone, Debug, PartialEq)]
pub struct CheckedJob(Job);

impl Deref for CheckedJob {
    type Target = Job;
    fn deref(&self) -> &Job {
        &self.0
    }
}

impl From<CheckedJob> for Job {
    fn from(job: CheckedJob) -> Job {
        job.0
    }
}

/// What can be computed with: a job that was checked as it is, any other at the price of a check.
pub trait ToChecked {
    /// The job, checked.
    ///
    /// # Errors
    /// As [`Job::check`].
    fn checked(&self) -> Result<Cow<'_, CheckedJob>, Invalid>;
}

impl ToChecked for CheckedJob {
    fn checked(&self) -> Result<Cow<'_, CheckedJob>, Invalid> {
        Ok(Cow::Borrowed(self))
    }
}

impl ToChecked for Job {
    fn checked(&self) -> Result<Cow<'_, CheckedJob>, Invalid> {
        self.check()?;
        Ok(Cow::Owned(CheckedJob(self.clone())))
    }
}

impl CheckedJob {
    /// Makes a job of a document, as [`Job::read`].
    ///
    /// # Errors
    /// As [`Job::read`].
    pub fn read(document: &Document) -> Result<CheckedJob, Invalid> {
        let migrated = migrated(document);
        let document = &*migrated.document;
        let mut reading = shape(document)?;
        let job = if reading.broken { None } else { Job::build(document) };
        reading.faults.extend(job.iter().flat_map(Job::relations));
        let errors = migrated.as_written(reading.faults);
        match job {
            Some(job) if errors.is_empty() => Ok(CheckedJob(job)),
            _ => Err(Invalid { errors }),
        }
    }

    /// The same job changed to values that keep the rules, or that is only looked at.
    pub(crate) fn changed(&self, change: impl FnOnce(&mut Job)) -> CheckedJob {
        let mut job = self.0.clone();
        change(&mut job);
        CheckedJob(job)
    }

    /// The same job with another arm, whose numbers are in the table's bounds or that is only looked at.
    pub(crate) fn on(&self, arm: Arm) -> CheckedJob {
        CheckedJob(Job { arm: Some(arm), ..self.0.clone() })
    }
}

impl Arm {
    /// Whether its numbers are within their bounds.
    pub(crate) fn in_bounds(&self) -> bool {
        Reading::of(&document(self, Arm::BLOCK), Arm::BLOCK).faults.is_empty()
    }
}

impl Operator {
    /// The operator of an entry of a list, whose other keys are not looked at; `None` where it has no torque that is a number.
    #[must_use]
    pub fn read(document: &Document) -> Option<Operator> {
        Operator::build(document)
    }

    /// Holds ratings from elsewhere, as a list has them, to the rules of the job's.
    ///
    /// # Errors
    /// All faults of its numbers, with their paths in the operator.
    pub fn check(&self) -> Result<(), Invalid> {
        let errors = Reading::of(&document(self, Operator::BLOCK), Operator::BLOCK).faults;
        if errors.is_empty() { Ok(()) } else { Err(Invalid { errors }) }
    }
}

impl Job {
    /// Makes a job of a document, or says everything that is wrong with it.
    ///
    /// `null` and absent are the same. `entry` (text as typed) is carried by files and ignored here; of `record` (measured values) what is
    /// not known is, too.
    ///
    /// # Errors
    /// Every fault of shape and range, and the relations between fields once all of them could be read. A document of a newer
    /// schema is refused with that one fault, since nothing else about it can be judged.
    pub fn read(document: &Document) -> Result<Job, Invalid> {
        CheckedJob::read(document).map(Job::from)
    }

    /// Looks at the shape of a document only, which is what its published schema says: kinds of values, ranges, what has to be there.
    ///
    /// # Errors
    /// Every fault of shape and range.
    pub fn check_shape(document: &Document) -> Result<(), Invalid> {
        let migrated = migrated(document);
        let mut errors = migrated.as_written(shape(&migrated.document)?.faults);
        // Ends the wrong way round are a relation.
        errors.retain(|fault| fault.code != FaultCode::LeastAboveMost);
        if errors.is_empty() { Ok(()) } else { Err(Invalid { errors }) }
    }

    /// The document that says what the job says.
    #[must_use]
    pub fn document(&self) -> Document {
        document(self, Job::BLOCK)
    }

    /// A job that passed its checks with one input replaced, checked anew.
    ///
    /// No input is one of a list, so of what is listed, hundreds of members at times, the first stands for all where the rows look.
    ///
    /// # Errors
    /// As [`Job::check`].
    pub(crate) fn checked_with_input(&self, path: &str, replaced: f64) -> Result<CheckedJob, Invalid> {
        let members = self.leaf.members.as_ref().map(|members| members.iter().take(1).cloned().collect());
        let few = Job { leaf: Leaf { members, ..self.leaf.clone() }, ..self.clone() };
        let mut errors = shape(&few.with_input(path, replaced).document())?.faults;
        let job = self.with_input(path, replaced);
        if errors.is_empty() {
            errors.extend(job.relations());
        }
        if errors.is_empty() { Ok(CheckedJob(job)) } else { Err(Invalid { errors }) }
    }

    /// Holds a job that was made or changed in code to the rules of one that was read.
    ///
    /// # Errors
    /// All faults of its numbers at once, and where there are none those of relations. A job that passes holds finite numbers only.
    pub fn check(&self) -> Result<(), Invalid> {
        let mut errors = shape(&self.document())?.faults;
        // Relations mean something between numbers that are within their own ranges.
        if errors.is_empty() {
            errors.extend(self.relations());
        }
        if errors.is_empty() { Ok(()) } else { Err(Invalid { errors }) }
    }
}

/// What the rows say of a document; of one of a newer schema that alone.
fn shape(document: &Document) -> Result<Reading, Invalid> {
    let reading = Reading::of(document, Job::BLOCK);
    match reading.faults.iter().find(|fault| fault.code == FaultCode::NewerSchema) {
        Some(newer) => Err(Invalid { errors: alloc::vec![newer.clone()] }),
        None => Ok(reading),
    }
}

#[cfg(test)]
mod tests;
