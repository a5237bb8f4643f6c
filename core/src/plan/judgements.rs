//! What was judged and what came of it, a subject at a time.

use super::judgement::{Judged, Judgement, Unjudged};
use super::overall::Overall;
use super::{CheckVerdict, Finding, FindingCode, Plan, Severity, Subject};
use crate::drive::Verdict;
use crate::fault::LeftOut;

impl Finding {
    /// Whether it is measured against a threshold that it states.
    fn has_threshold(&self) -> bool {
        self.values.iter().any(|value| matches!(value.name, "limit" | "least" | "most" | "wanted"))
    }
}

/// Whether what is needed to judge a subject was said.
fn asked(plan: &Plan, about: Subject) -> bool {
    match about {
        Subject::Torque | Subject::Arm => true,
        Subject::Tape => plan.tape.is_some(),
        Subject::Clearances => plan.clearances.is_some() || plan.ground.is_some(),
        Subject::Motion => plan.motion.is_some(),
        Subject::Breakaway => plan.breakaway.is_some(),
        Subject::Storm => plan.storm.is_some(),
        Subject::People => forces(plan) == [true; 2],
        Subject::AsBuilt => plan.as_built.is_some(),
        Subject::Record => plan.record.is_some(),
    }
}

/// Only a calibrated instrument on the finished gate tells the forces on a person: whether the dynamic and the static one were measured and are
/// within their limits.
fn forces(plan: &Plan) -> [bool; 2] {
    ["record.dynamic_force_n", "record.static_force_n"].map(|path| {
        let checks = plan.record.iter().flat_map(|record| &record.checks);
        checks.filter(|check| check.path == path).any(|check| check.verdict == CheckVerdict::Pass)
    })
}

/// Whether anything was said that is about people.
fn people_come(plan: &Plan) -> bool {
    plan.person.is_some() || plan.entrapment.is_some() || forces(plan) != [false; 2]
}

/// Whether a finding is about a subject. A force that was measured and is over its limit is one of the record, and of the people it may hit.
fn is_about(code: FindingCode, about: Subject) -> bool {
    let measured = matches!(code, FindingCode::DynamicForceOver | FindingCode::StaticForceOver);
    code.about() == about || (measured && about == Subject::People)
}

impl Plan {
    /// Judges every subject, of what was computed and found; a subject of which a part is begun and left out is not judged, unless what is there
    /// is over already. The overall follows.
    pub fn judge(&mut self, left_out: &[LeftOut]) {
        self.judgements = Subject::ALL.iter().map(|&about| judgement(self, left_out, about)).collect();
        self.overall = Overall::of(&self.judgements, &self.findings, left_out.is_empty());
    }
}

/// `findings` of the plan stand most severe first.
fn judgement(plan: &Plan, left_out: &[LeftOut], about: Subject) -> Judgement {
    let mut about_it = plan.findings.iter().filter(|finding| is_about(finding.code, about));
    let first = about_it.clone().next();
    let threshold = about_it.find(|finding| finding.severity < Severity::Info && finding.has_threshold());
    let begun = left_out.iter().any(|part| part_is_about(&part.path, about));
    let torque = if about == Subject::Torque { plan.rating.verdict } else { Verdict::Within };
    let (state, finding) = match first {
        Some(stop) if stop.severity == Severity::Error => (Judged::Over, first),
        _ if torque == Verdict::Over => (Judged::Over, first),
        _ if begun || !asked(plan, about) => (Judged::NotJudged, first),
        _ if threshold.is_some() || torque == Verdict::Tight => (Judged::Tight, threshold.or(first)),
        _ => (Judged::Within, first),
    };
    let unjudged = (state == Judged::NotJudged).then(|| match about {
        _ if begun => Unjudged::Begun,
        Subject::People if people_come(plan) => Unjudged::NotMeasured,
        _ => Unjudged::NotAsked,
    });
    let code = finding.map(|finding| finding.code);
    Judgement { about, state, unjudged, finding: code, path: code.and_then(FindingCode::path) }
}

/// Whether a part of the job that is left out is about a subject.
fn part_is_about(path: &str, about: Subject) -> bool {
    let subjects: &[Subject] = match path.split('.').next().unwrap_or_default() {
        "drag" | "ice" | "uncertainty" | "lean" => &[Subject::Torque],
        "ground" | "obstacles" | "operator" | "migrated" => &[Subject::Clearances],
        "tape" | "marks" => &[Subject::Tape],
        "as_built" => &[Subject::AsBuilt],
        "motion" => &[Subject::Motion],
        "breakaway" => &[Subject::Breakaway],
        "storm" | "holding" => &[Subject::Storm],
        "contact" => &[Subject::People],
        "site" => &[Subject::People],
        "record" | "settings" => &[Subject::Record],
        _ => &[],
    };
    subjects.contains(&about)
}
