//! The worst of everything that was judged, so that nobody shows one good figure over something that is wrong.

use super::judgement::{Judged, Judgement, Unjudged};
use super::subject::Subject;
use super::{Finding, FindingCode, Severity};
use alloc::vec::Vec;
use serde::Serialize;

/// The worst of what was judged.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Overall {
    /// Over while any finding is a stop, whatever it is about; tight while any subject is; not judged rather than within while a part that was
    /// begun is left out. Within is never to be shown without naming what was judged.
    pub state: Judged,
    /// What that is about: the first stop's subject, the first that is tight, the first that waits for what was begun.
    pub about: Subject,
    /// Every subject that was judged, in the order in which they are told: what is within, where the state is.
    pub judged: Vec<Subject>,
    /// How many findings are stops.
    pub stops: u32,
    /// The finding that it rests on; `null` without one.
    pub finding: Option<FindingCode>,
}

impl Overall {
    /// Of the judgements of a plan and its findings, the most severe of which stand first; `whole` where nothing that was begun is left out.
    pub(super) fn of(judgements: &[Judgement], findings: &[Finding], whole: bool) -> Self {
        let stops = findings.iter().filter(|finding| finding.severity == Severity::Error);
        let first = |state| judgements.iter().find(|one| one.state == state);
        let begun = judgements.iter().find(|one| one.unjudged == Some(Unjudged::Begun));
        // The most severe stop says what it is about; a subject that is over without one still is.
        let (state, about, finding) = match (stops.clone().next(), first(Judged::Over).or(first(Judged::Tight))) {
            (Some(stop), _) => (Judged::Over, stop.about, Some(stop.code)),
            (None, Some(worst)) => (worst.state, worst.about, worst.finding),
            (None, None) if !whole => (Judged::NotJudged, begun.map_or(Subject::Torque, |one| one.about), None),
            (None, None) => (Judged::Within, Subject::Torque, None),
        };
        let judged = judgements.iter().filter(|one| one.state != Judged::NotJudged).map(|one| one.about).collect();
        Overall { state, about, judged, stops: stops.count() as u32, finding }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_subject_over_without_a_stop_is_not_within() {
        let judged = |about, state| Judgement { about, state, unjudged: None, finding: None, path: None };
        let judgements = [judged(Subject::Arm, Judged::Tight), judged(Subject::Storm, Judged::Over)];
        let overall = Overall::of(&judgements, &[], true);
        assert_eq!((overall.state, overall.about, overall.stops), (Judged::Over, Subject::Storm, 0));
    }
}
