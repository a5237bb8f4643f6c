//! What would make an operator do: changes tried one by one, of which those are told with which it does.

use super::answer::{OperatorStanding, RankAsked, RankedOperator};
use super::known::Known;
use super::limits::limits;
use super::refusal::{RefusalCode, named};
use super::standing::standing;
use super::suggestion::{Suggestion, SuggestionKind};
use crate::fault::NamedValue;
use crate::job::{Arm, CheckedJob, ToChecked};
use crate::leaf::Body;
use crate::operators::ListedOperator;
use crate::units::Quantity;
use alloc::vec::Vec;

/// Rounds of halving, after which what is found is rounded to the careful side anyhow.
const HALVINGS: u32 = 40;
/// Wind areas are told to a hundredth of a square metre, ramps to a tenth of a second, gaps to a millimetre.
const AREA_STEP_M2: f64 = 0.01;
const RAMP_STEP_S: f64 = 0.1;
const GAP_STEP_M: f64 = 0.001;
/// Longest ramp of a job, s.
const LONGEST_RAMP_S: f64 = 30.0;
/// Wind area over outline from which on a leaf is a sail that may be cut into boards, and the face of a board, m. Common practice, no source.
const SAIL: f64 = 0.8;
const BOARD_M: f64 = 0.1;

/// The changes with which an operator that does not would; nothing for one that does where the arm stands.
pub(super) fn suggestions(
    job: &CheckedJob,
    asked: RankAsked,
    operator: &ListedOperator,
    ranked: &RankedOperator,
) -> Vec<Suggestion> {
    let does = |standing: &OperatorStanding| standing.refusal.is_none();
    let (placed, best) = (ranked.as_placed.as_ref(), ranked.best.as_ref());
    // At its best place, or where the arm stands if no place was looked for.
    let (Some(here), false) = (best.or(placed), placed.is_some_and(does) && ranked.does) else { return Vec::new() };
    let tried = Tried { job, asked, operator, arm: here.arm };
    if ranked.does {
        return tried.told(SuggestionKind::AnotherPlace, &[]).into_iter().collect();
    }
    let Some(refusal) = &ranked.refusal else { return Vec::new() };
    match refusal.code {
        RefusalCode::TorqueOverRated | RefusalCode::ReserveTooSmall => {
            [tried.less_wind_area(), tried.boards()].into_iter().flatten().collect()
        }
        RefusalCode::MotionOverPeakTorque => tried.slower_ramps().into_iter().collect(),
        RefusalCode::LeafTooHeavy => tried.lighter(&refusal.values).into_iter().collect(),
        RefusalCode::CyclesPerHour => {
            tried.fewer(SuggestionKind::FewerCyclesPerHour, &refusal.values).into_iter().collect()
        }
        RefusalCode::CyclesPerDay => {
            tried.fewer(SuggestionKind::FewerCyclesPerDay, &refusal.values).into_iter().collect()
        }
        _ => Vec::new(),
    }
}

/// An operator on an arm, with changes to the job.
struct Tried<'a> {
    job: &'a CheckedJob,
    asked: RankAsked,
    operator: &'a ListedOperator,
    arm: Arm,
}

impl Tried<'_> {
    fn suggestion(&self, kind: SuggestionKind, values: &[NamedValue]) -> Suggestion {
        Suggestion { kind, values: values.into(), arm: self.arm, reserve: None }
    }

    /// The operator on the arm with a change made; `None` where the job is none any more, or what the maker limits is passed.
    fn with(&self, suggestion: &Suggestion) -> Option<OperatorStanding> {
        let changed = suggestion.applied(self.job);
        let changed = changed.checked().ok()?;
        if limits(&changed, self.operator, self.asked).is_some() {
            return None;
        }
        let hottest_c = self.asked.air_c.map(|[_, hottest_c]| hottest_c);
        let fitted = changed.changed(|job| self.operator.fit(job, hottest_c));
        standing(&mut Known::default(), &fitted, &self.arm, self.operator)
    }

    /// A change, if with it the operator does.
    fn told(&self, kind: SuggestionKind, values: &[NamedValue]) -> Option<Suggestion> {
        let suggestion = self.suggestion(kind, values);
        let standing = self.with(&suggestion).filter(|standing| standing.refusal.is_none())?;
        Some(Suggestion { reserve: standing.rating.reserve, ..suggestion })
    }

    fn does(&self, kind: SuggestionKind, values: &[NamedValue]) -> bool {
        self.told(kind, values).is_some()
    }

    /// The wind area said or summed, m².
    fn area_m2(&self) -> f64 {
        Body::without_ice(&self.job.leaf).wind_area_m2
    }

    /// The largest area with which it does. Torque grows with area, so it is halved towards.
    fn less_wind_area(&self) -> Option<Suggestion> {
        let before_m2 = self.area_m2();
        let values = |area_m2| [area("area", area_m2), area("area_before", before_m2)];
        let (mut least, mut most) = (0.0, before_m2);
        for _ in 0..HALVINGS {
            let middle = 0.5 * (least + most);
            if self.does(SuggestionKind::LessWindArea, &values(middle)) { least = middle } else { most = middle }
        }
        let rounded_m2 = libm::floor(least / AREA_STEP_M2) * AREA_STEP_M2;
        (rounded_m2 > 0.0).then(|| self.told(SuggestionKind::LessWindArea, &values(rounded_m2)))?
    }

    /// Boards over the whole outline of a leaf that is a sail: the narrowest gap with which it does, no wider than a board.
    fn boards(&self) -> Option<Suggestion> {
        let (before_m2, leaf) = (self.area_m2(), &self.job.leaf);
        let outline_m2 = leaf.length_m * leaf.height_m?;
        if before_m2 < SAIL * outline_m2 {
            return None;
        }
        let values = |gap_m: f64| {
            let short = |name, metres| named(name, metres, Quantity::ShortLength);
            let area_m2 = before_m2 * BOARD_M / (BOARD_M + gap_m);
            [short("board", BOARD_M), short("gap", gap_m), area("area", area_m2), area("area_before", before_m2)]
        };
        let most = libm::round(BOARD_M / GAP_STEP_M) as u32;
        let gap_m = |steps: u32| f64::from(steps) * GAP_STEP_M;
        let (mut none, mut some) = (0, most);
        if !self.does(SuggestionKind::CutIntoBoards, &values(gap_m(some))) {
            return None;
        }
        while some - none > 1 {
            let middle = u32::midpoint(none, some);
            if self.does(SuggestionKind::CutIntoBoards, &values(gap_m(middle))) { some = middle } else { none = middle }
        }
        self.told(SuggestionKind::CutIntoBoards, &values(gap_m(some)))
    }

    /// Both ramps as many times as long as they need to be.
    fn slower_ramps(&self) -> Option<Suggestion> {
        let motion = self.job.motion.as_ref()?;
        let [up_s, down_s] = [motion.ramp_up(), motion.ramp_down()];
        let values = |times: f64| {
            let ramp_s = |ramp_s: f64| libm::ceil(ramp_s * times / RAMP_STEP_S) * RAMP_STEP_S;
            let time = |name, seconds: f64| named(name, ramp_s(seconds).min(LONGEST_RAMP_S), Quantity::Time);
            [time("ramp_up", up_s), time("ramp_down", down_s)]
        };
        let (mut least, mut most) = (1.0, LONGEST_RAMP_S / up_s.min(down_s));
        if !self.does(SuggestionKind::SlowerRamps, &values(most)) {
            return None;
        }
        for _ in 0..HALVINGS {
            let middle = 0.5 * (least + most);
            if self.does(SuggestionKind::SlowerRamps, &values(middle)) { most = middle } else { least = middle }
        }
        self.told(SuggestionKind::SlowerRamps, &values(most))
    }

    /// The leaf's own weight lowered by what it is too heavy, its ice kept; only a weight that is said can be said otherwise.
    fn lighter(&self, refused: &[NamedValue]) -> Option<Suggestion> {
        let said_kg = self.job.leaf.mass_kg?;
        let mass_kg = libm::floor(said_kg - (of(refused, "mass")? - of(refused, "limit")?));
        let mass = |name, kilograms| named(name, kilograms, Quantity::Mass);
        self.told(SuggestionKind::LighterLeaf, &[mass("mass", mass_kg), mass("mass_before", said_kg)])
    }

    fn fewer(&self, kind: SuggestionKind, refused: &[NamedValue]) -> Option<Suggestion> {
        let cycles = |name, cycles| named(name, cycles, Quantity::Count);
        self.told(kind, &[cycles("cycles", of(refused, "limit")?), cycles("cycles_before", of(refused, "cycles")?)])
    }
}

fn area(name: &'static str, area_m2: f64) -> NamedValue {
    named(name, area_m2, Quantity::Area)
}

fn of(values: &[NamedValue], name: &str) -> Option<f64> {
    values.iter().find(|value| value.name == name).map(|value| value.value)
}
