//! The answer, put together: curve, peak, rating, wind limit, findings.

mod band;
mod blows;
mod breakaway;
mod clearances;
mod contact;
mod curve;
mod elbow_sweep;
mod findings;
mod front;
mod ground;
mod holding;
mod marks;
mod model;
mod motion;
mod overall;
mod pads;
mod people;
mod record;
mod remedies;
mod runs;
mod sensitivity;
mod setout;
mod storm;
mod sweep;
mod tape;
mod wind;
mod wind_source;

pub use band::{Band, BandPoint};
pub use blows::Blow;
pub use breakaway::{Breakaway, SlipPoint, Trial, WindowState};
pub use clearances::{Against, Clearances, Gap, HingeGap, OpenGap, Part};
pub use contact::{ForceOnPerson, ForcePoint, PushTorque};
pub use curve::CurvePoint;
pub use elbow_sweep::ElbowSweep;
pub use findings::{Finding, FindingCode, Severity};
pub use front::front;
pub use ground::{GapPoint, OverGround};
pub use holding::{Holding, HoldingLimit};
pub use marks::{Mark, MarkOut, ShaftLimit, Tubes, mark_out};
pub use model::Model;
pub use motion::{Coast, Driven, DutyUse, EndStop, HandForce, Motion, ShaftLimits};
pub use overall::{Overall, Subject};
pub use pads::{Pad, PadMap};
pub use people::Entrapment;
pub use record::{Check, CheckVerdict, Commissioning, Step};
pub use remedies::{Remedy, RemedyKind};
pub use runs::{Run, RunPoint};
pub use sensitivity::Sensitivity;
pub use setout::{Change, Nearest, SetOutAnswer, Stand, set_out, weigh};
pub use storm::Storm;
pub use sweep::TorqueSweep;
pub use tape::{DimensionCost, Fitted, Rebuilt, TapeCost, WorstCase, tape_cost};
pub use wind::{BearingPoint, BearingWind, WorkingWind};

use crate::drive::{Direction, Rating, WindLimit};
use crate::job::{Invalid, ToChecked};
use crate::leaf::MemberTotals;
use alloc::vec::Vec;
use serde::Serialize;

/// Everything computed from a job. Serialises to the plan document.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
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
    /// The worst of the rating and the findings: what stands for the whole plan is this, not the rating alone.
    pub overall: Overall,
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

/// Loads on the leaf about the hinge.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Loads {
    /// Friction of all hinges and steady drag, N·m; on a ramp when opening.
    pub hinge_friction_n_m: f64,
    /// The job's gust, square to the leaf, N·m.
    pub wind_n_m: f64,
    /// Moment of inertia about the hinge axis, kg·m².
    pub inertia_kg_m2: f64,
    /// The relation by which the hinges' friction was computed, in symbols; absent where it was measured.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction_relation: Option<&'static str>,
    /// What a ramp does, where the hinges rise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ramp: Option<Ramp>,
}

/// Ice on the leaf.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct IceLoad {
    /// Its mass, kg.
    pub mass_kg: f64,
    /// Wind area with it, m².
    pub wind_area_m2: f64,
    /// Whether it lies all round the leaf's members; on both faces of the wind area where they are not known.
    pub all_round: bool,
}

/// The ramp of rising hinges: weight and friction depend on the way the leaf moves.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Ramp {
    /// Moment of the weight on the ramp, N·m; positive where it closes the leaf.
    pub weight_n_m: f64,
    /// Friction of hinges and steady drag when opening, N·m: what the drive must give beyond the weight's moment.
    pub friction_open_n_m: f64,
    /// The same when closing.
    pub friction_close_n_m: f64,
}

/// The deciding angle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Peak {
    /// Leaf angle, degrees.
    pub leaf_deg: f64,
    /// Magnitude of the shaft torque, N·m.
    pub shaft_torque_n_m: f64,
    /// Which way the leaf moves.
    pub direction: Direction,
    /// What the leaf torque there is made of.
    pub shares: Shares,
}

/// Parts of the leaf torque at the deciding angle, as fractions of it; they sum to 1, all 0 where nothing is demanded.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Shares {
    /// Hinge friction.
    pub friction: f64,
    /// Wind.
    pub wind: f64,
    /// Lean of the hinge axis; negative where it helps.
    pub lean: f64,
}

/// The most the drive must hold back.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Overrun {
    /// Leaf angle, degrees.
    pub leaf_deg: f64,
    /// Magnitude of the shaft torque that holds the leaf back, N·m.
    pub shaft_torque_n_m: f64,
    /// Which way the leaf moves.
    pub direction: Direction,
}

/// Plans a job. Pure: the same job always gives the same plan, to the bit.
///
/// ```
/// use pintle_core::{Document, Job, Verdict, plan};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let text = r#"{ "schema": 1, "leaf": { "mass_kg": 160, "length_m": 3.2, "wind_area_m2": 1.9 },
///     "hinges": { "kind": "measured", "pull_open_n": 45, "pull_close_n": 41, "pull_radius_m": 3.0, "pull_leaf_deg": 45 },
///     "wind": { "speed_m_s": 12, "force_coefficient": 1.4 }, "swing": { "open_deg": 90 },
///     "arm": { "shaft_x_m": -0.25, "shaft_y_m": 0.45, "bracket_u_m": 1.2, "bracket_v_m": 0.06,
///              "crank_m": 0.8728, "link_m": 0.6363, "elbow": "left" },
///     "operator": { "rated_torque_n_m": 900 } }"#;
/// let document: Document = serde_json::from_str(text)?;
/// let plan = plan(&Job::read(&document)?)?;
/// assert_eq!(plan.rating.verdict, Verdict::Within);
/// # Ok(()) }
/// ```
///
/// # Errors
/// [`Invalid`] with every fault of the values, or with the reason why the arm cannot work.
pub fn plan(job: &impl ToChecked) -> Result<Plan, Invalid> {
    Ok(Model::new(job)?.plan())
}
