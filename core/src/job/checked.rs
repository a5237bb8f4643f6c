//! From a document to a job that can be computed with.

use super::blocks::Job;
use super::migrate::migrated;
use super::table::{FaultCode, Invalid, Reading, Value, document};
use crate::Document;

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
        let document = &*migrated(document);
        let mut reading = shape(document)?;
        let job = if reading.broken { None } else { Job::build(document) };
        reading.faults.extend(job.iter().flat_map(Job::relations));
        match job {
            Some(job) if reading.faults.is_empty() => Ok(job),
            _ => Err(Invalid { errors: reading.faults }),
        }
    }

    /// Looks at the shape of a document only, which is what its published schema says: kinds of values, ranges, what has to be there.
    ///
    /// # Errors
    /// Every fault of shape and range.
    pub fn check_shape(document: &Document) -> Result<(), Invalid> {
        let errors = shape(&migrated(document))?.faults;
        if errors.is_empty() { Ok(()) } else { Err(Invalid { errors }) }
    }

    /// The document that says what the job says.
    pub fn document(&self) -> Document {
        document(self, Job::BLOCK)
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
