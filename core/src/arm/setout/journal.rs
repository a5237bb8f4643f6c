//! What a search has done so far, so that it can stop and go on.
//!
//! A search is a fixed sequence of costly units: a scatter of starts, a descent, a walk over a lattice, a check where the tape errs. Each asks here first. What was done before
//! is given back as it was; what is new is done while there is work left, and kept; and once there is none, nothing more is done: the search runs
//! to an end that is thrown away, and the next step begins where this one stopped. So every step takes the same way, and the answer is that of one
//! go, to the bit.

use super::found::Found;
use super::on_lattice::OnLattice;
use super::piece::Piece;
use super::variables::{DIMENSIONS, Point};
use crate::job::Elbow;
use alloc::vec::Vec;

/// Units of work of a walk over a lattice, and of this many scattered starts.
const LATTICE_WORK: usize = 50;
pub(super) const SCATTERED_AT_ONCE: usize = 256;

/// What a search has done so far.
#[derive(Clone, Debug, Default)]
pub(crate) struct Journal {
    done: Vec<Entry>,
    /// Starts of a scatter that is not whole yet, and how many indices of it were drawn.
    scattered: (Vec<Found>, usize),
    /// Next unit of this step.
    next: usize,
    /// Work left in this step.
    left: usize,
    /// Whether this step ended before the search did.
    cut: bool,
    /// Whether a unit is being done: what it is made of is part of it.
    busy: bool,
}

#[derive(Clone, Debug)]
enum Entry {
    Starts(Vec<Found>),
    Descent(Found),
    Lattice(Option<OnLattice>),
    Broken(Vec<(Piece, f64)>),
    Keeps(bool),
}

/// What to do about a unit.
enum Turn {
    /// It was done before.
    Known(Entry),
    /// Do it.
    New,
    /// No work is left for it.
    Cut,
}

impl Journal {
    /// Begins a step.
    pub fn begin(&mut self, work: usize) {
        (self.next, self.left, self.cut, self.busy) = (0, work, false, false);
    }

    /// Whether the step ended before the search did.
    pub fn is_cut(&self) -> bool {
        self.cut
    }

    /// Units done.
    pub fn units(&self) -> usize {
        self.done.len()
    }

    fn unit(&mut self, work: usize) -> Turn {
        if let Some(entry) = self.done.get(self.next) {
            self.next += 1;
            return Turn::Known(entry.clone());
        }
        // The first unit of a step is done whatever it costs, so that every step comes further.
        if self.cut || self.left == 0 {
            self.cut = true;
            return Turn::Cut;
        }
        self.left = self.left.saturating_sub(work);
        self.busy = true;
        Turn::New
    }

    fn keep(&mut self, entry: Entry) {
        self.done.push(entry);
        self.next += 1;
        self.busy = false;
    }

    /// A start that promises nothing, for a search that is thrown away.
    fn nothing(point: &Point) -> Found {
        Found { point: *point, elbow: Elbow::Left, sense: 1.0, objective: 0.0, excess: f64::MAX }
    }
}

/// A journal that a problem writes, where it has one.
pub(crate) type Written = Option<alloc::rc::Rc<core::cell::RefCell<Journal>>>;

/// A unit of so much work: what it came to before, or now; `cut` where no work is left for it.
fn unit<T: Clone>(
    written: &Written,
    work: usize,
    cut: T,
    entry: fn(T) -> Entry,
    known: fn(Entry) -> Option<T>,
    compute: impl FnOnce() -> T,
) -> T {
    let Some(journal) = written.as_ref().filter(|journal| !journal.borrow().busy) else { return compute() };
    let turn = journal.borrow_mut().unit(work);
    match turn {
        Turn::Known(done) => known(done).unwrap_or(cut),
        Turn::Cut => cut,
        Turn::New => {
            let found = compute();
            journal.borrow_mut().keep(entry(found.clone()));
            found
        }
    }
}

/// A descent from a start.
pub(super) fn descent(written: &Written, start: Found, compute: impl FnOnce() -> Found) -> Found {
    let known = |done| if let Entry::Descent(found) = done { Some(found) } else { None };
    unit(written, 1, start, Entry::Descent, known, compute)
}

/// A walk over a lattice.
pub(super) fn lattice(written: &Written, compute: impl FnOnce() -> Option<OnLattice>) -> Option<OnLattice> {
    let known = |done| if let Entry::Lattice(found) = done { Some(found) } else { None };
    unit(written, LATTICE_WORK, None, Entry::Lattice, known, compute)
}

/// A check at the corners of the tape's errors: what is broken there.
pub(super) fn broken(written: &Written, compute: impl FnOnce() -> Vec<(Piece, f64)>) -> Vec<(Piece, f64)> {
    let known = |done| if let Entry::Broken(broken) = done { Some(broken) } else { None };
    unit(written, 1, Vec::new(), Entry::Broken, known, compute)
}

/// The same of an answer: whether it keeps everything there.
pub(super) fn keeps(written: &Written, compute: impl FnOnce() -> bool) -> bool {
    let known = |done| if let Entry::Keeps(keeps) = done { Some(keeps) } else { None };
    unit(written, 1, true, Entry::Keeps, known, compute)
}

/// The chosen of a scatter of `count` starts, of which `least` is a corner: `draw` draws from one index up to another, `choose` chooses of all.
pub(super) fn starts(
    written: &Written,
    count: usize,
    least: &[f64; DIMENSIONS],
    draw: impl Fn(usize, usize, &mut Vec<Found>),
    choose: impl FnOnce(Vec<Found>) -> Vec<Found>,
) -> Vec<Found> {
    let Some(journal) = written.as_ref().filter(|journal| !journal.borrow().busy) else {
        let mut tried = Vec::with_capacity(2 * count);
        draw(0, count, &mut tried);
        return choose(tried);
    };
    let known = {
        let mut journal = journal.borrow_mut();
        let known = journal.done.get(journal.next).cloned();
        journal.next += usize::from(known.is_some());
        known
    };
    match known {
        Some(Entry::Starts(starts)) => return starts,
        Some(_) => return alloc::vec![Journal::nothing(least)],
        None => {}
    }
    let (mut tried, mut from) = core::mem::take(&mut journal.borrow_mut().scattered);
    while from < count {
        if matches!(journal.borrow_mut().unit(1), Turn::Cut) {
            break;
        }
        let to = (from + SCATTERED_AT_ONCE).min(count);
        draw(from, to, &mut tried);
        journal.borrow_mut().busy = false;
        from = to;
    }
    // Choosing among them is a unit of its own.
    if from < count || matches!(journal.borrow_mut().unit(1), Turn::Cut) {
        let mut journal = journal.borrow_mut();
        // A second scatter behind the cut is none of this one's.
        if from > 0 && journal.scattered.1 == 0 {
            journal.scattered = (tried, from);
        }
        return alloc::vec![Journal::nothing(least)];
    }
    let starts = choose(tried);
    journal.borrow_mut().keep(Entry::Starts(starts.clone()));
    starts
}
