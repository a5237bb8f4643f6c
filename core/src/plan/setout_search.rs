//! The search for a set-out, a little at a time.

use super::setout::{JobLoads, SetOutAnswer, answer};
use crate::arm::setout::Journal;
use crate::fault::{Invalid, missing_object};
use crate::job::{CheckedJob, SetOutSite, ToChecked};
use alloc::rc::Rc;
use core::cell::RefCell;

/// A search being made. [`SetOutSearch::step`] does a little and returns, so that a worker can be cancelled and show how far it is, and a page
/// without a worker stays awake; dropping it is cancelling it. The answer is that of [`set_out`](super::set_out), to the bit.
#[derive(Clone, Debug)]
pub struct SetOutSearch {
    job: CheckedJob,
    setout: SetOutSite,
    journal: Journal,
    /// Whether, where nothing keeps the limits, it is searched for what would do alone.
    thorough: bool,
    answer: Option<SetOutAnswer>,
}

impl SetOutSearch {
    /// The search of the job's `setout` block.
    ///
    /// # Errors
    /// [`Invalid`] with every fault of the values, or naming the missing block.
    pub fn new(job: &impl ToChecked) -> Result<SetOutSearch, Invalid> {
        let missing = || Invalid { errors: alloc::vec![missing_object("setout")] };
        SetOutSearch::of(&*job.checked()?, true).ok_or_else(missing)
    }

    /// The same without what would do alone where nothing keeps the limits, which takes a dozen searches; `None` without the block.
    pub(super) fn brief(job: &CheckedJob) -> Option<SetOutSearch> {
        SetOutSearch::of(job, false)
    }

    fn of(job: &CheckedJob, thorough: bool) -> Option<SetOutSearch> {
        let (setout, journal) = (job.setout_around()?, Journal::default());
        Some(SetOutSearch { job: job.clone(), setout, journal, thorough, answer: None })
    }

    /// Does up to `work` units more, at least one; `true` while there is any left. A unit is about a millisecond natively, and less: a descent, or
    /// some hundred scattered starts; a walk over a lattice is one unit and may take a fifth of a second.
    pub fn step(&mut self, work: usize) -> bool {
        if self.answer.is_some() {
            return false;
        }
        let mut journal = core::mem::take(&mut self.journal);
        journal.begin(work.max(1));
        let written = Rc::new(RefCell::new(journal));
        let told = JobLoads::new(&self.job).with_problem(&self.setout, |problem| {
            problem.journal = Some(Rc::clone(&written));
            let told = answer(&self.job, &self.setout, problem, self.thorough);
            problem.journal = None;
            told
        });
        self.journal = written.take();
        if !self.journal.is_cut() {
            self.answer = Some(told);
        }
        self.answer.is_none()
    }

    /// Units done. How many there are in all is not known before the end.
    #[must_use]
    pub fn units(&self) -> usize {
        self.journal.units()
    }

    /// The answer, once it is there.
    #[must_use]
    pub fn answer(&self) -> Option<&SetOutAnswer> {
        self.answer.as_ref()
    }
}
