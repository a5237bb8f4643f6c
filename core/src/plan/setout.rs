//! The set-out, put together: the search under the job's loads, its answer evaluated by the plan itself.

use super::Model;
use crate::arm::setout::{Found, Limit, Problem, RuleOfThumb, SearchLoads, rule_of_thumb};
use crate::drive::effort_n_m;
use crate::elements::Efficiency;
use crate::fault::{Invalid, missing_object};
use crate::job::{Arm, CheckedJob, Job, SetOutSite, ToChecked};
use crate::leaf::{Body, LeafLoads, gust_moment_n_m};
use crate::order::insertion_sort;
use crate::terms::{Direction, WindCase};
use alloc::vec::Vec;
use serde::Serialize;

/// What a search found.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct SetOutAnswer {
    /// The set-out that serves the aim best; `null` where none keeps every limit.
    pub best: Option<Candidate>,
    /// Other local optima that keep every limit, the best first; empty on a lattice.
    pub others: Vec<Candidate>,
    /// Lengths by the rule of thumb with the arm straight when closed, for the best's shaft and bracket; to stand beside it.
    pub rule_of_thumb: Option<RuleOfThumb>,
    /// Where there is no best: the set-out that comes nearest, and what is in the way.
    pub nearest: Option<Nearest>,
    /// With `tape_proof`: the best without it, so that its torque beside that of `best` is what the proof costs; `null` where there is none either.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub without_proof: Option<Option<Candidate>>,
}

/// A place to stand the operator with its arm, and what that comes to.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS), ts(rename = "Stand"))]
#[non_exhaustive]
pub struct Candidate {
    /// The arm.
    #[serde(flatten)]
    pub arm: Arm,
    /// Peak shaft torque of its plan, N·m.
    pub shaft_torque_n_m: f64,
    /// Rated torque over it; `null` where nothing is demanded.
    pub reserve: Option<f64>,
    /// Largest force in the link over the swing against the storm gust, N; against the working gust where no storm is given.
    pub link_force_n: f64,
    /// Shaft angle from closed to open, degrees.
    pub shaft_travel_deg: f64,
    /// Least lever from a tenth of the swing on, m.
    pub least_lever_m: f64,
    /// Distance from shaft to bracket when closed over crank + link.
    pub straightness: f64,
    /// How far the link is from square to the open leaf, degrees, positive where the bracket end leans towards the latch.
    pub off_square_deg: f64,
    /// Least distance of the arm's edge from what stops it, m, over the swing; `null` where nothing does.
    pub clearance_m: Option<f64>,
    /// Least reserve at the 64 corners of the tape's errors, of the best of a search with `tape_proof`; `null` where nothing is demanded.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub worst_reserve: Option<Option<f64>>,
    /// What else becomes of it there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_corners: Option<AtCorners>,
}

/// The worst of an arm at the 64 corners of the tape's errors.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct AtCorners {
    /// Error of each dimension either way, m.
    pub error_m: f64,
    /// Error of the link, m: the same unless it is set last.
    pub link_error_m: f64,
    /// Largest peak shaft torque, N·m.
    pub shaft_torque_n_m: f64,
    /// Largest shaft angle from closed to open, degrees.
    pub shaft_travel_deg: f64,
    /// Least lever from a tenth of the swing on, m.
    pub least_lever_m: f64,
    /// Straightness, least and most.
    pub straightness: [f64; 2],
    /// Link from square to the open leaf, least and most, degrees.
    pub off_square_deg: [f64; 2],
    /// Least distance of the arm's edge from what stops it, m; `null` where nothing does.
    pub clearance_m: Option<f64>,
}

/// The nearest set-out that is none, and what is in the way.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Nearest {
    /// The arm with the least excess over any limit.
    #[serde(flatten)]
    pub arm: Arm,
    /// The limit it exceeds most.
    pub limit: Limit,
    /// By how much, in the unit of that limit's field.
    pub by: f64,
    /// Every limit it exceeds.
    pub exceeded: Vec<Change>,
    /// For each limit that would do alone: the least change of it with which a set-out exists, the least change first.
    pub changes: Vec<Change>,
}

/// A limit and an amount.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Change {
    /// The limit.
    pub limit: Limit,
    /// By how much, in the unit of the limit's field.
    pub by: f64,
}

/// Searches the place, bracket and lengths that serve the job's aim best within everything its `setout` block asks, clear of what stands around.
///
/// ```
/// use pintle_core::{Document, job::Job, plan::{plan, set_out}};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// # let text = include_str!("../../../www/data/starting-job.json").replacen("\"samples\"", r#""setout": {
/// #     "shaft_x_m": [-0.55, -0.15], "shaft_y_m": [0.25, 0.7], "bracket_u_m": [0.7, 1.5], "bracket_v_m": 0.06,
/// #     "crank_m": [0.35, 0.9], "link_m": [0.35, 0.9], "straightness": [0.9, 1.0] }, "samples""#, 1);
/// let document: Document = serde_json::from_str(&text)?; // a job with a `setout` block
/// let mut job = Job::read(&document)?;
/// let best = set_out(&job)?.best.ok_or("some limit is in the way")?;
/// let before = plan(&job)?.peak.shaft_torque_n_m;
/// job.arm = Some(best.arm);
/// assert!(plan(&job)?.peak.shaft_torque_n_m < before);
/// # Ok(()) }
/// ```
///
/// # Errors
/// [`Invalid`] with every fault of the values, or naming the missing block. That nothing keeps the limits is an answer, not an error.
pub fn set_out(job: &impl ToChecked) -> Result<SetOutAnswer, Invalid> {
    let job = &*job.checked()?;
    let missing = || Invalid { errors: alloc::vec![missing_object("setout")] };
    let setout = job.setout_around().ok_or_else(missing)?;
    Ok(JobLoads::new(job).with_problem(&setout, |problem| answer(job, &setout, problem, true)))
}

/// The figures of the job's own arm, to stand beside what was found, whether or not it keeps the block's limits; `None` where the job has no arm
/// or it does not work.
///
/// # Errors
/// As [`set_out`].
pub fn evaluate(job: &impl ToChecked) -> Result<Option<Candidate>, Invalid> {
    let job = &*job.checked()?;
    let missing = || Invalid { errors: alloc::vec![missing_object("setout")] };
    let setout = job.setout_around().ok_or_else(missing)?;
    let Some(arm) = job.arm.as_ref() else { return Ok(None) };
    Ok(JobLoads::new(job).with_problem(&setout, |problem| Candidate::of(job, &setout, arm, problem)))
}

pub(super) fn answer(job: &CheckedJob, setout: &SetOutSite, problem: &mut Problem, thorough: bool) -> SetOutAnswer {
    let planned = problem.optima();
    let Some(errors_m) = setout.errors_m else { return told(job, setout, problem, &planned, thorough) };
    let without = told(job, setout, problem, &planned, thorough);
    let without_proof = Some(without.best);
    if without.best.is_none() {
        // What is in the way is so without the tape.
        return SetOutAnswer { without_proof, ..without };
    }
    let mut answer = without.clone();
    problem.prove();
    if !answer.best.is_some_and(|best| problem.keeps_at_corners(&best.arm)) {
        let proven = problem.proven_optima(&planned);
        answer = told(job, setout, problem, &proven, thorough);
    }
    answer.others.retain(|other| problem.keeps_at_corners(&other.arm));
    if problem.is_cut() {
        return answer;
    }
    if let Some(best) = &mut answer.best {
        best.set_at_corners(job, problem, errors_m);
    } else if let Some(found) = problem.least_broken(&planned)
        && let Some(nearest) = &mut answer.nearest
        && nearest.limit != Limit::StepM
    {
        nearest.at_corners(problem, &found);
    }
    SetOutAnswer { without_proof, ..answer }
}

/// The answer of a search that ended at these optima; an empty one where its step ended before, which nobody looks at.
fn told(
    job: &CheckedJob,
    setout: &SetOutSite,
    problem: &mut Problem,
    optima: &[Found],
    thorough: bool,
) -> SetOutAnswer {
    if problem.is_cut() {
        return SetOutAnswer {
            best: None,
            others: Vec::new(),
            rule_of_thumb: None,
            nearest: None,
            without_proof: None,
        };
    }
    let candidate = |arm: &Arm, problem: &Problem| Candidate::of(job, setout, arm, problem);
    if let Some(step_m) = setout.step_m {
        let best = problem.best_on_lattice(step_m, optima).and_then(|found| candidate(&found.arm, problem));
        let nearest = if best.is_some() { None } else { Some(nearest(problem, optima, optima[0].kept(), thorough)) };
        let rule_of_thumb = by_rule(job, &best);
        return SetOutAnswer { rule_of_thumb, best, others: Vec::new(), nearest, without_proof: None };
    }
    let kept = optima.iter().filter(|found| found.kept());
    let mut candidates: Vec<Candidate> =
        kept.filter_map(|found| candidate(&problem.arm(&found.point, found.elbow), problem)).collect();
    if candidates.is_empty() {
        let nearest = Some(nearest(problem, optima, false, thorough));
        return SetOutAnswer { best: None, others: candidates, rule_of_thumb: None, nearest, without_proof: None };
    }
    let best = candidates.remove(0);
    candidates.dedup_by(|one, other| near(&one.arm, &other.arm));
    candidates.retain(|other| !near(&best.arm, &other.arm));
    let best = Some(best);
    SetOutAnswer { rule_of_thumb: by_rule(job, &best), best, others: candidates, nearest: None, without_proof: None }
}

/// The rule of thumb for the shaft and bracket of a candidate.
fn by_rule(job: &Job, best: &Option<Candidate>) -> Option<RuleOfThumb> {
    let arm = best.as_ref()?.arm;
    let (shaft, bracket) = ((arm.shaft_x_m, arm.shaft_y_m), (arm.bracket_u_m, arm.bracket_v_m));
    Some(rule_of_thumb(shaft, bracket, job.open_rad(), 0.0))
}

/// Whether two arms are the same for anyone with a tape: within a centimetre everywhere.
fn near(one: &Arm, other: &Arm) -> bool {
    let numbers = |arm: &Arm| [arm.shaft_x_m, arm.shaft_y_m, arm.bracket_u_m, arm.crank_m, arm.link_m];
    one.elbow == other.elbow && numbers(one).iter().zip(numbers(other)).all(|(one, other)| (one - other).abs() < 0.01)
}

/// What is in the way. `off_lattice`: only whole multiples of the step are; `thorough`: what would do alone is searched for.
fn nearest(problem: &mut Problem, optima: &[Found], off_lattice: bool, thorough: bool) -> Nearest {
    let closest = &optima[0];
    let arm = problem.arm(&closest.point, closest.elbow);
    let mut exceeded = problem.exceeded(&problem.kernel(&closest.point, closest.elbow), closest.sense);
    let mut changes = Vec::new();
    if off_lattice {
        exceeded = alloc::vec![(Limit::StepM, problem.setout.step_m.unwrap_or(0.0))];
    } else if thorough {
        for limit in Limit::ALL {
            if let Some(found) = problem.without(limit).filter(|found| found.objective > 0.0) {
                changes.push((found.objective, limit));
            }
        }
        insertion_sort(&mut changes, |one, other| one.0 < other.0);
    }
    let change = |(limit, by): (Limit, f64)| Change { limit, by: limit.in_document(by, problem) };
    let exceeded: Vec<Change> = exceeded.into_iter().map(change).collect();
    let (limit, by) = exceeded.first().map_or((Limit::Arm, 0.0), |first| (first.limit, first.by));
    let changes = changes.into_iter().map(|(by, limit)| change((limit, by))).collect();
    Nearest { arm, limit, by, exceeded, changes }
}

impl Candidate {
    /// Evaluates an arm by its plan; `None` if the plan refuses it.
    fn of(job: &CheckedJob, setout: &SetOutSite, arm: &Arm, problem: &Problem) -> Option<Candidate> {
        let model = arm.in_bounds().then(|| Model::of(job.on(*arm)))?.ok()?;
        let (peak, least_lever_m, shaft_travel_rad) = model.peak_lever_and_travel();
        let figures = problem.figures(arm);
        Some(Candidate {
            arm: *arm,
            shaft_torque_n_m: peak,
            reserve: Some(job.operator.rated_torque_n_m / peak).filter(|reserve| reserve.is_finite()),
            link_force_n: figures.link_force_n,
            shaft_travel_deg: shaft_travel_rad.to_degrees(),
            least_lever_m,
            straightness: figures.straightness,
            off_square_deg: figures.off_square_rad.to_degrees(),
            clearance_m: figures.gap_m.map(|gap_m| gap_m - setout.half_width()),
            worst_reserve: None,
            at_corners: None,
        })
    }
}

impl Nearest {
    /// Where the planned arm's own limits can be kept: that arm, and what it breaks where the tape errs.
    fn at_corners(&mut self, problem: &Problem, found: &Found) {
        let arm = problem.planned_arm(found);
        let mut exceeded: Vec<Change> = Vec::new();
        for (limit, by) in problem.exceeded_at_corners(&arm, found.sense) {
            exceeded.push(Change { limit, by: limit.in_document(by, problem) });
        }
        if let Some(first) = exceeded.first() {
            (self.arm, self.limit, self.by) = (arm, first.limit, first.by);
            self.exceeded = exceeded;
        }
    }
}

impl Candidate {
    /// Says what becomes of it at the corners of the tape's errors.
    fn set_at_corners(&mut self, job: &CheckedJob, problem: &Problem, errors_m: [f64; 6]) {
        let Ok(model) = Model::of(job.on(self.arm)) else { return };
        let (shaft_torque_n_m, worst) = (model.corner_torque_n_m(&errors_m), problem.worst_at_corners(&self.arm));
        let reserve = job.operator.rated_torque_n_m / shaft_torque_n_m;
        self.worst_reserve = Some(Some(reserve).filter(|reserve| reserve.is_finite()));
        self.at_corners = Some(AtCorners {
            error_m: errors_m[0],
            link_error_m: errors_m[5],
            shaft_torque_n_m,
            shaft_travel_deg: worst.travel_rad.to_degrees(),
            least_lever_m: worst.lever_m,
            straightness: worst.straightness,
            off_square_deg: worst.off_square_rad.map(f64::to_degrees),
            clearance_m: worst.gap_m.map(|gap_m| gap_m - problem.setout.half_width()),
        });
    }
}

/// The loads a search looks at.
pub(super) struct JobLoads {
    working: LeafLoads,
    storm: LeafLoads,
    efficiency: Efficiency,
    open_rad: f64,
}

impl JobLoads {
    /// The loads of a job that passed its checks.
    pub fn new(job: &Job) -> JobLoads {
        let working = LeafLoads::new(job);
        let gust = job.gust();
        let asked = job.setout.as_ref().and_then(|setout| setout.storm_speed_m_s);
        let storm = gust.at(asked.unwrap_or(gust.speed_m_s));
        let storm = working.in_wind(gust_moment_n_m(&storm, &Body::of(job)));
        JobLoads { working, storm, efficiency: job.operator.efficiencies(), open_rad: job.open_rad() }
    }

    /// Largest moment both ways asked of a shaft that turns as fast as the leaf, N·m.
    pub fn effort_n_m(&self, leaf_rad: f64) -> f64 {
        larger(|direction| {
            effort_n_m(self.working.demand_n_m(leaf_rad, direction, WindCase::Against), direction, self.efficiency)
        })
    }

    fn storm_n_m(&self, leaf_rad: f64) -> f64 {
        larger(|direction| self.storm.demand_n_m(leaf_rad, direction, WindCase::Against))
    }

    /// The problem of a set-out under these loads.
    pub fn with_problem<T>(&self, setout: &SetOutSite, then: impl FnOnce(&mut Problem) -> T) -> T {
        let effort = |leaf_rad: f64| self.effort_n_m(leaf_rad);
        let storm = |leaf_rad: f64| self.storm_n_m(leaf_rad);
        then(&mut Problem::new(setout, SearchLoads { effort_n_m: &effort, storm_n_m: &storm }, self.open_rad))
    }
}

fn larger(of: impl Fn(Direction) -> f64) -> f64 {
    let [opening, closing] = Direction::BOTH.map(|direction| of(direction).abs());
    opening.max(closing)
}
