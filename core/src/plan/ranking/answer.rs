//! What a ranking says.

use super::place::PlaceSought;
use super::refusal::OperatorRefusal;
use super::suggestion::Suggestion;
use crate::drive::{Rating, WindLimit};
use crate::job::Arm;
use crate::plan::DutyUse;
use alloc::{string::String, vec::Vec};
use core::cmp::Ordering;
use serde::Serialize;

/// What is asked of all operators beside the job.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct RankAsked {
    /// Coldest and hottest air there, °C. Where it is not known the fewest cycles of any temperature count, and no operator is too cold or hot.
    pub air_c: Option<[f64; 2]>,
    /// Whether the job's own arm efficiency was said of the arm that is built, and holds whatever a list says.
    pub own_efficiency: bool,
    /// Whether the job's own outline of the operator was said, and holds whatever a list says.
    pub own_body: bool,
}

/// Operators in the order of how well they do.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct OperatorRanking {
    /// Those that do before those that do not; within each the larger reserve first, then the larger rated torque, then by id.
    pub operators: Vec<RankedOperator>,
    /// Of those that do not, the largest that is smaller than the smallest that does, or the largest of all where none does; `null` where all do.
    pub next_smaller: Option<NextSmaller>,
}

/// The operator that nearly does.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct NextSmaller {
    /// Its place in the host's list, from 0.
    pub index: usize,
    /// What would make it do, each by itself; empty where nothing that is tried does.
    pub suggestions: Vec<Suggestion>,
}

/// One operator against the leaf.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct RankedOperator {
    /// Its place in the host's list, from 0.
    pub index: usize,
    /// Its id.
    pub id: String,
    /// Its rated torque, N·m.
    pub rated_torque_n_m: f64,
    /// Whether it will do, where the arm stands or at its best place. About torque, its maker's limits and where it stands; no more is said.
    pub does: bool,
    /// The one reason why not; `null` where it does.
    pub refusal: Option<OperatorRefusal>,
    /// The larger reserve of the places where it does, or of all where it does nowhere; `null` where nothing is demanded or it has no place.
    pub reserve: Option<f64>,
    /// With the arm of the job; `null` where the job has none, or one that does not work.
    pub as_placed: Option<OperatorStanding>,
    /// Whether a place was looked for, and found.
    pub place: PlaceSought,
    /// At its best place here, with its own arm; `null` unless found.
    pub best: Option<OperatorStanding>,
    /// Most a leaf of this length may weigh, kg; `null` where its maker says nothing, or makes it for none so long.
    pub leaf_limit_kg: Option<f64>,
    /// Cycles an hour and a day it is rated for in this air; `null` where its maker says nothing.
    pub rated_cycles: [Option<f64>; 2],
}

/// An operator on an arm.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS), ts(rename = "Standing"))]
#[non_exhaustive]
pub struct OperatorStanding {
    /// The arm.
    pub arm: Arm,
    /// The largest shaft torque of the plan, N·m.
    pub shaft_torque_n_m: f64,
    /// Leaf angle there, degrees.
    pub leaf_deg: f64,
    /// That torque against its ratings.
    pub rating: Rating,
    /// Gust at which it runs out.
    pub wind_limit: WindLimit,
    /// Angle its shaft turns from closed to open, degrees.
    pub shaft_travel_deg: f64,
    /// Time to open, s, with the job's ramps and slow zones, or the usual ones where it says none; `null` where its speed is not known.
    pub opening_s: Option<f64>,
    /// Time to close, s.
    pub closing_s: Option<f64>,
    /// Cycles against its rating, where the job says how many.
    pub duty: Option<DutyUse>,
    /// Least distance of its body and base from leaf and obstacles, m; `null` where there is nothing to keep clear of, or nothing to keep clear.
    pub clearance_m: Option<f64>,
    /// Why it will not do here; `null` where it does.
    pub refusal: Option<OperatorRefusal>,
}

impl RankedOperator {
    /// The reserve as a number to order by: nothing demanded is more than any, no place is less.
    fn order(&self) -> f64 {
        match (self.reserve, &self.as_placed, &self.best) {
            (Some(reserve), _, _) => reserve,
            (None, None, None) => -1.0,
            (None, _, _) => f64::INFINITY,
        }
    }

    fn before(&self, other: &RankedOperator) -> bool {
        let order = other.does.cmp(&self.does).then(other.order().total_cmp(&self.order()));
        let order = order.then(other.rated_torque_n_m.total_cmp(&self.rated_torque_n_m));
        order.then_with(|| self.id.cmp(&other.id)) == Ordering::Less
    }
}

/// In the order of how well they do.
pub(super) fn in_order(mut operators: Vec<RankedOperator>) -> Vec<RankedOperator> {
    operators.sort_by(|one, other| if one.before(other) { Ordering::Less } else { Ordering::Greater });
    operators
}
