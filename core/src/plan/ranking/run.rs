//! A ranking that can stop and go on, and be asked again.

use super::answer::{NextSmaller, OperatorRanking, OperatorStanding, RankAsked, RankedOperator, in_order};
use super::known::{Key, Known, place_key, without_what_does_not_matter};
use super::limits::limits;
use super::place::{KitPlace, PlaceSought, quantity_of};
use super::refusal::{OperatorRefusal, RefusalCode, named};
use super::standing::standing;
use super::suggestion::Suggestion;
use super::suggestions::suggestions;
use crate::fault::Invalid;
use crate::job::{CheckedJob, Job, ToChecked};
use crate::operators::ListEntry;
use crate::plan::setout_search::SetOutSearch;
use alloc::vec::Vec;
use serde::Serialize;

/// A ranking being made. [`Ranking::step`] does a little and returns, so that a worker can be cancelled and show how far it is, and a page without a
/// worker stays awake; dropping it is cancelling it. The answer is the same to the bit however it is divided.
#[derive(Clone, Debug)]
pub struct Ranking {
    job: CheckedJob,
    asked: RankAsked,
    entries: Vec<ListEntry>,
    /// What the known rests on.
    rests_on: Job,
    known: Known,
    /// The operators that were held against the leaf, in the list's order.
    ranked: Vec<RankedOperator>,
    /// The search that is under way, and what its place depends on.
    search: Option<(Key, SetOutSearch)>,
    /// How many searches were begun.
    searched: usize,
}

/// How far a ranking is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct RankProgress {
    /// Operators held against the leaf.
    pub done: usize,
    /// Operators in all.
    pub of: usize,
    /// Searches for a place made since there is this ranking, those that were known not counted.
    pub searches: usize,
}

/// Ranks operators in one go: [`Ranking`] to its end.
///
/// # Errors
/// [`Invalid`] with every fault of the job's values.
pub fn rank(job: &impl ToChecked, entries: &[ListEntry], asked: RankAsked) -> Result<OperatorRanking, Invalid> {
    let mut ranking = Ranking::new(job, entries, asked)?;
    while ranking.step(usize::MAX) {}
    Ok(ranking.answer())
}

impl Ranking {
    /// A ranking of the entries of a list for the leaf of a job, of whose own operator only what a list does not say of arm and outline stays.
    ///
    /// # Errors
    /// [`Invalid`] with every fault of the job's values.
    pub fn new(job: &impl ToChecked, entries: &[ListEntry], asked: RankAsked) -> Result<Ranking, Invalid> {
        let job = job.checked()?.into_owned();
        let rests_on = without_what_does_not_matter(&job);
        let (known, ranked, entries) = (Known::default(), Vec::new(), entries.into());
        Ok(Ranking { job, asked, entries, rests_on, known, ranked, search: None, searched: 0 })
    }

    /// Begins again for a job or a list that may have changed; what they leave as it was is not computed again.
    ///
    /// # Errors
    /// As [`Ranking::new`]; the ranking then stays as it is.
    pub fn renew(&mut self, job: &impl ToChecked, entries: &[ListEntry], asked: RankAsked) -> Result<(), Invalid> {
        let job = job.checked()?.into_owned();
        let rests_on = without_what_does_not_matter(&job);
        if rests_on != self.rests_on {
            (self.known, self.search, self.rests_on) = (Known::default(), None, rests_on);
        }
        (self.job, self.asked, self.entries) = (job, asked, entries.into());
        self.ranked.clear();
        Ok(())
    }

    /// How far it is.
    #[must_use]
    pub fn progress(&self) -> RankProgress {
        RankProgress { done: self.ranked.len(), of: self.entries.len(), searches: self.searched }
    }

    /// Does up to `work` more; `true` while there is any left. A unit is a fraction of a millisecond natively.
    pub fn step(&mut self, work: usize) -> bool {
        let mut left = work;
        while left > 0 && self.ranked.len() < self.entries.len() {
            let entry = self.entries[self.ranked.len()].clone();
            let fitted = self.fitted(&entry);
            let key = place_key(&fitted);
            if fitted.setout.is_some() && !self.known.places.contains_key(&key) {
                left = self.seek(&fitted, key, left);
                continue;
            }
            let place = fitted.setout.as_ref().and_then(|_| self.known.places.get(&key).copied());
            let ranked = self.held(&entry, &fitted, place);
            self.ranked.push(ranked);
            left -= 1;
        }
        self.ranked.len() < self.entries.len()
    }

    /// The answer so far, in order.
    #[must_use]
    pub fn answer(&self) -> OperatorRanking {
        let operators = in_order(self.ranked.clone());
        let done = self.ranked.len() == self.entries.len();
        let next_smaller = next_smaller(&operators).filter(|_| done).map(|one| (one.index, one.id.clone()));
        let next_smaller = next_smaller.map(|(index, id)| NextSmaller { index, suggestions: self.suggestions(&id) });
        OperatorRanking { operators, next_smaller }
    }

    /// What would make an operator do, each by itself; nothing where it does already or was not held against the leaf yet.
    #[must_use]
    pub fn suggestions(&self, id: &str) -> Vec<Suggestion> {
        let Some(index) = self.ranked.iter().position(|one| one.id == id) else { return Vec::new() };
        suggestions(&self.job, self.asked, self.entries[index].operator(), &self.ranked[index])
    }

    /// The job with an operator in it, at its best place where one was found: to be taken in one go. `None` for one that is not in the list or not
    /// looked at yet.
    #[must_use]
    pub fn taken(&self, id: &str) -> Option<Job> {
        let index = self.ranked.iter().position(|one| one.id == id)?;
        let mut job = Job::from(self.fitted(&self.entries[index]));
        job.arm = self.ranked[index].best.as_ref().map(|best| best.arm).or(job.arm);
        Some(job)
    }

    fn fitted(&self, entry: &ListEntry) -> CheckedJob {
        let RankAsked { air_c, own_efficiency, own_body } = self.asked;
        let own = self.job.operator;
        self.job.changed(|job| {
            entry.operator().fit(job, air_c.map(|[_, hottest_c]| hottest_c));
            if own_efficiency {
                job.operator.arm_efficiency = own.arm_efficiency;
            }
            if own_body {
                job.operator.body = own.body;
            }
        })
    }

    /// Looks on for the best place of an operator; the work that is left.
    fn seek(&mut self, fitted: &CheckedJob, key: Key, work: usize) -> usize {
        let mut search = match self.search.take() {
            Some((of, search)) if of == key => search,
            _ => {
                self.searched += 1;
                match SetOutSearch::brief(fitted) {
                    Some(search) => search,
                    None => return work,
                }
            }
        };
        let before = search.units();
        if search.step(work) {
            self.search = Some((key, search));
            return 0;
        }
        let done = search.units() - before;
        if let Some(answer) = search.answer() {
            self.known.places.insert(key, KitPlace::of(answer));
        }
        work.saturating_sub(done)
    }

    /// An operator whose place is known, held against the leaf.
    fn held(&mut self, entry: &ListEntry, fitted: &CheckedJob, place: Option<KitPlace>) -> RankedOperator {
        let operator = entry.operator();
        let mut on = |arm| standing(&mut self.known, fitted, arm, operator);
        let as_placed = fitted.arm.as_ref().and_then(&mut on);
        let best = match &place {
            Some(KitPlace::Found(arm)) => on(arm),
            _ => None,
        };
        let limits = limits(&self.job, operator, self.asked);
        let refusal = limits.or_else(|| refused(place.as_ref(), as_placed.as_ref(), best.as_ref()));
        let reserve = reserve([&as_placed, &best]);
        RankedOperator {
            index: entry.index(),
            id: operator.id.clone(),
            rated_torque_n_m: operator.rated_torque_n_m,
            does: refusal.is_none(),
            refusal,
            reserve,
            as_placed,
            place: match place {
                None => PlaceSought::NotAsked,
                Some(KitPlace::Found(_)) => PlaceSought::Found,
                Some(KitPlace::NotFound(..)) => PlaceSought::NotFound,
            },
            best,
            leaf_limit_kg: operator.leaf_limit(fitted.leaf.length_m).and_then(|(_, most_kg)| most_kg),
            rated_cycles: operator.rated_cycles(self.asked.air_c.map(|[_, hottest_c]| hottest_c)),
        }
    }
}

/// The operator that nearly does, of operators in order.
fn next_smaller(operators: &[RankedOperator]) -> Option<&RankedOperator> {
    let smallest = operators.iter().filter(|one| one.does).map(|one| one.rated_torque_n_m).reduce(f64::min);
    let smaller = |one: &&RankedOperator| !one.does && smallest.is_none_or(|least| one.rated_torque_n_m < least);
    // Of equals the one that is nearer to doing: they are in order.
    operators
        .iter()
        .filter(smaller)
        .reduce(|best, one| if one.rated_torque_n_m > best.rated_torque_n_m { one } else { best })
}

/// Why an operator does neither where the arm stands nor at its best place: the reason at the place that was looked for, where one was.
fn refused(
    place: Option<&KitPlace>,
    as_placed: Option<&OperatorStanding>,
    best: Option<&OperatorStanding>,
) -> Option<OperatorRefusal> {
    let does = |standing: &OperatorStanding| standing.refusal.is_none();
    if as_placed.is_some_and(does) || best.is_some_and(does) {
        return None;
    }
    match (place, best, as_placed) {
        (_, Some(standing), _) | (None, None, Some(standing)) => standing.refusal.clone(),
        (Some(KitPlace::NotFound(limit, by)), ..) => {
            let values = [named("amount", *by, quantity_of(*limit))];
            Some(OperatorRefusal { limit: Some(*limit), ..OperatorRefusal::new(RefusalCode::NoPlace, &values) })
        }
        _ => Some(OperatorRefusal::new(RefusalCode::NoArm, &[])),
    }
}

/// The larger reserve of the standings that do, or of all where none does; where nothing is demanded there is none, and no other is more.
fn reserve(standings: [&Option<OperatorStanding>; 2]) -> Option<f64> {
    let stands = standings.into_iter().flatten();
    let does = stands.clone().filter(|standing| standing.refusal.is_none());
    let reserves: Vec<Option<f64>> = match does.clone().count() {
        0 => stands.map(|standing| standing.rating.reserve).collect(),
        _ => does.map(|standing| standing.rating.reserve).collect(),
    };
    if reserves.contains(&None) { None } else { reserves.into_iter().flatten().reduce(f64::max) }
}
