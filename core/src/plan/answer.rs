//! The plan document: what is said of a job, each part from the file of its own.

use super::band::Band;
use super::breakaway::Breakaway;
use super::clearances::Clearances;
use super::contact::ForceOnPerson;
use super::curve::CurvePoint;
use super::findings::Finding;
use super::ground::OverGround;
use super::holding::Holding;
use super::judgement::Judgement;
use super::loads::{IceLoad, Loads};
use super::marks::MarkOut;
use super::motion::Motion;
use super::overall::Overall;
use super::peak::{Overrun, Peak};
use super::people::Entrapment;
use super::record::Commissioning;
use super::sensitivity::Sensitivity;
use super::storm::Storm;
use super::tape::{Rebuilt, TapeCost};
use super::wind::WorkingWind;
use crate::drive::{Rating, WindLimit};
use crate::job::MemberTotals;
use alloc::vec::Vec;
use serde::Serialize;

/// Everything computed from a job. Serialises to the plan document.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Plan {
    /// Version of the document.
    pub schema: u32,
    /// Loads on the leaf.
    pub loads: Loads,
    /// Rows at evenly spaced leaf angles, both ends included.
    pub curve: Vec<CurvePoint>,
    /// Where the shaft torque is largest over the continuous swing, wind against.
    pub peak: Peak,
    /// That torque against the operator's ratings.
    pub rating: Rating,
    /// Shaft angle from closed to open, degrees, magnitude.
    pub shaft_travel_deg: f64,
    /// Least lever of the link about the hinge from a tenth of the swing on, m.
    pub least_lever_m: f64,
    /// Gust at which the operator runs out.
    pub wind_limit: WindLimit,
    /// The most the drive must hold back with the wind following; `null` where the leaf never drives the shaft.
    pub overrun: Option<Overrun>,
    /// What to look at, most severe first.
    pub findings: Vec<Finding>,
    /// The worst of the judgements: what stands for the whole plan is this, not the rating alone.
    pub overall: Overall,
    /// What was judged and what came of it, every subject once.
    pub judgements: Vec<Judgement>,
    /// Paths of the job's fields that were not said and are assumed.
    pub assumed: Vec<&'static str>,
    /// The working wind, where it comes from a standard or has a bearing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wind: Option<WorkingWind>,
    /// What the leaf's members come to, where the job lists them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub members: Option<MemberTotals>,
    /// What ice adds to the leaf, where the job has any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ice: Option<IceLoad>,
    /// The demand over the range of the friction coefficient, where the job has a range.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub band: Option<Band>,
    /// What each input does to the reserve, largest effect first, where the job asks.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sensitivity: Option<Vec<Sensitivity>>,
    /// The closed leaf in the storm, where the job names one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub storm: Option<Storm>,
    /// The leaf over the ground, where the job describes it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ground: Option<OverGround>,
    /// Leaf and arm in the room around them, where the job describes it or says what stands around.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub clearances: Option<Clearances>,
    /// What to mark, cut and set, where the job says what with.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mark_out: Option<MarkOut>,
    /// What a tape error costs, where the job asks.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tape: Option<TapeCost>,
    /// What became of the arm that was built, where the job says how it was.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub as_built: Option<Rebuilt>,
    /// The leaf through time, where the job describes its motion.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub motion: Option<Motion>,
    /// The window of slip torque, where the job describes the breakaway.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub breakaway: Option<Breakaway>,
    /// The closed leaf held by the arm in the storm, where the job asks.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub holding: Option<Holding>,
    /// Force on a person, where the job describes the contact.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub person: Option<ForceOnPerson>,
    /// Zones, class and means of protection, where the job describes the site.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub entrapment: Option<Entrapment>,
    /// What was measured at the gate against all this, where the job records anything.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub record: Option<Commissioning>,
}
