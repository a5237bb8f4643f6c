//! The job document's types. Names, units and nesting are the document's; `None` is what was not said, and every `None` has a
//! default that is named here and listed in the plan as assumed.

use super::fit_types::{AsBuilt, Marks, Room, Tape};
use super::member_types::Member;
use super::motion_types::{BreakawayFacts, HoldingFacts, MotionFacts};
use super::record::{Record, Settings};
use super::rules::default_of;
use super::safety_types::{Contact, Site};
use super::setout::SetOut;
use super::site_types::{Drag, Ground, Ice};
use super::wind_types::Wind;
use crate::leaf::{Collar, FrictionRange, Pairing};
use alloc::{collections::BTreeMap, string::String, vec::Vec};
use serde::Serialize;

/// Everything `plan` needs to know. Serialises to the job document.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Job {
    /// Version of the document, [`super::SCHEMA`].
    pub schema: u32,
    /// What the person calls the job.
    pub title: Option<String>,
    /// Side of the hinge; default right.
    pub hand: Option<Hand>,
    /// The leaf.
    pub leaf: Leaf,
    /// What resists at the hinges.
    pub hinges: Hinges,
    /// Lean of the hinge axis; default none.
    pub lean: Lean,
    /// The gust the drive must open against.
    pub wind: Wind,
    /// How far the leaf opens.
    pub swing: Swing,
    /// Crank and link, and where they are fixed; needed for a plan.
    pub arm: Option<Arm>,
    /// What a set-out may choose from; needed for a search.
    pub setout: Option<SetOut>,
    /// The operator's ratings.
    pub operator: Operator,
    /// Rated torque over demand that is asked for; default 1.5 (common practice, from memory).
    pub required_reserve: Option<f64>,
    /// How many evenly spaced leaf angles the curve has, both ends included; default 91.
    pub samples: Option<u32>,
    /// The wind the closed leaf, its arm and its anchors must hold; kept apart from the working wind.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub storm: Option<Wind>,
    /// Drag besides the hinges; default none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drag: Option<Drag>,
    /// Ice or wet snow on the leaf; default none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ice: Option<Ice>,
    /// The ground under the swing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ground: Option<Ground>,
    /// The room around leaf and arm; given, the plan has the clearances.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub room: Option<Room>,
    /// What is marked out with; given, the plan has the marks.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub marks: Option<Marks>,
    /// How far a tape errs; given, the plan says what that costs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tape: Option<Tape>,
    /// What was built; given, the plan says what became of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub as_built: Option<AsBuilt>,
    /// How the leaf is to move through time. Needs the operator's shaft speed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub motion: Option<MotionFacts>,
    /// What lets go before something is overloaded.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub breakaway: Option<BreakawayFacts>,
    /// What holds the closed leaf in the storm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub holding: Option<HoldingFacts>,
    /// What a force on a person is estimated with.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub contact: Option<Contact>,
    /// The place the gate stands at, and the means of protection.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub site: Option<Site>,
    /// What is set at the first power-up.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub settings: Option<Settings>,
    /// What was measured and signed at the gate; given, the plan compares it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub record: Option<Record>,
    /// Uncertainty of inputs as a fraction of their value, by path; given (even empty) the plan shows what each input does to the
    /// reserve, ±10 % where nothing is stated.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uncertainty: Option<BTreeMap<String, f64>>,
}

/// Where the hinge is for a person on the side the leaf opens towards, facing the gate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum Hand {
    /// Hinge at the right.
    Right,
    /// Hinge at the left: mirrors drawings and words, never a number.
    Left,
}

/// The leaf's weight, size and what the wind sees of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Leaf {
    /// Mass, kg; unless its members say.
    pub mass_kg: Option<f64>,
    /// Hinge axis to latch edge, m.
    pub length_m: f64,
    /// Height, m. Needed where a standard's shape gives the force coefficient; also for drawing and hand-over. A plain force coefficient does
    /// without it.
    pub height_m: Option<f64>,
    /// Area that stops the wind, square to the leaf, m²; unless its members say.
    pub wind_area_m2: Option<f64>,
    /// Hinge axis to mass centre along the leaf, m; default half the length.
    pub mass_centroid_m: Option<f64>,
    /// Hinge axis to the wind area's centre along the leaf, m; default half the length.
    pub wind_centroid_m: Option<f64>,
    /// Moment of inertia about the hinge axis, kg·m²; default mass × length² / 3, also where the mass centre was moved.
    pub inertia_kg_m2: Option<f64>,
    /// What it is made of: mass, mass centre, inertia and wind area follow, unless they are given here as well.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub members: Option<Vec<Member>>,
}

/// What resists at the hinges: built up from pins and collar, or measured.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum Hinges {
    /// Two plain pins and one thrust collar.
    Plain(PlainHinges),
    /// Steady pulls both ways: the preferred way.
    Measured(MeasuredHinges),
    /// Rolling bearings.
    Rolling(RollingHinges),
    /// Plain hinges that lift the leaf as it opens.
    Rising(RisingHinges),
}

/// Two plain hinge pins a spacing apart, and a collar that carries the weight.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct PlainHinges {
    /// Vertical distance between the hinges, m.
    pub spacing_m: f64,
    /// Radius of the pins, m.
    pub pin_radius_m: f64,
    /// Outer radius of the thrust collar, m.
    pub thrust_outer_radius_m: f64,
    /// Inner radius of the thrust collar, m.
    pub thrust_inner_radius_m: f64,
    /// Coefficient of friction; unless `pairing` says what slides on what.
    pub friction_coefficient: Option<f64>,
    /// What slides on what: a handbook range.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pairing: Option<Pairing>,
    /// Lower end of the coefficient.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction_low: Option<f64>,
    /// Upper end of the coefficient.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction_high: Option<f64>,
    /// How the collar carries; default uniform pressure, the careful case.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub collar: Option<Collar>,
}

/// Two rolling radial bearings a spacing apart, and a thrust bearing of the same radius.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct RollingHinges {
    /// Vertical distance between the hinges, m.
    pub spacing_m: f64,
    /// Half the bore of the bearings, m.
    pub pin_radius_m: f64,
    /// Coefficient of friction; unless `pairing` says what slides on what.
    pub friction_coefficient: Option<f64>,
    /// What slides on what: a handbook range.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pairing: Option<Pairing>,
    /// Lower end of the coefficient.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction_low: Option<f64>,
    /// Upper end of the coefficient.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction_high: Option<f64>,
}

/// Plain hinges on a ramp: the leaf rises evenly as it opens, and wants to fall shut. The collar slides on the ramp, at its mean radius of
/// friction; a ramp so steep that it binds at the upper end of the friction is refused.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct RisingHinges {
    /// Vertical distance between the hinges, m.
    pub spacing_m: f64,
    /// Radius of the pins, m.
    pub pin_radius_m: f64,
    /// Outer radius of the thrust collar, m.
    pub thrust_outer_radius_m: f64,
    /// Inner radius of the thrust collar, m.
    pub thrust_inner_radius_m: f64,
    /// Coefficient of friction; unless `pairing` says what slides on what.
    pub friction_coefficient: Option<f64>,
    /// What slides on what: a handbook range.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pairing: Option<Pairing>,
    /// Lower end of the coefficient.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction_low: Option<f64>,
    /// Upper end of the coefficient.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub friction_high: Option<f64>,
    /// How the collar carries; default uniform pressure, the careful case.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub collar: Option<Collar>,
    /// Rise of the leaf from closed to open, m; negative where it falls open.
    pub rise_m: f64,
}

/// Steady pulls both ways at one leaf angle, square to the leaf, arm disconnected, calm air.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct MeasuredHinges {
    /// Pull that keeps the leaf opening, N.
    pub pull_open_n: f64,
    /// Pull that keeps the leaf closing, N.
    pub pull_close_n: f64,
    /// Hinge axis to where the pull acts, m.
    pub pull_radius_m: f64,
    /// Leaf angle at which it was measured, degrees.
    pub pull_leaf_deg: f64,
}

/// Lean of the hinge axis out of plumb.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Lean {
    /// Lean out of plumb, degrees; default 0, or what the plumb line says.
    pub angle_deg: Option<f64>,
    /// Plan direction of downhill in the frame of the closed leaf, degrees; default 0. At rest the leaf hangs there.
    pub downhill_deg: Option<f64>,
    /// Offset of a plumb line from the hinge axis, m, over the height below; instead of an angle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plumb_offset_m: Option<f64>,
    /// Height over which the offset was measured, m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plumb_height_m: Option<f64>,
}

/// How far the leaf opens.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Swing {
    /// Leaf angle fully open, degrees from closed.
    pub open_deg: f64,
}

/// Crank and link in plan, and where they are fixed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Arm {
    /// Shaft along the closed leaf from the hinge axis, m.
    pub shaft_x_m: f64,
    /// Shaft square to the closed leaf from the hinge axis, not from the leaf's face, towards the side the leaf opens to, m.
    pub shaft_y_m: f64,
    /// Bracket pin along the leaf from the hinge axis, m.
    pub bracket_u_m: f64,
    /// Bracket pin square to the leaf from the hinge axis, not from the leaf's face, on its opening side, m.
    pub bracket_v_m: f64,
    /// Crank, shaft to elbow, m.
    pub crank_m: f64,
    /// Link, elbow to bracket pin, m.
    pub link_m: f64,
    /// Side of the line shaft→bracket the elbow is on.
    pub elbow: Elbow,
}

/// Side of the line from shaft to bracket, looking along it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub enum Elbow {
    /// Counter-clockwise of the line.
    Left,
    /// Clockwise of the line.
    Right,
}

/// The operator's ratings at its output shaft.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
pub struct Operator {
    /// Rated torque, N·m.
    pub rated_torque_n_m: f64,
    /// Peak torque, N·m; unknown unless given.
    pub peak_torque_n_m: Option<f64>,
    /// Speed of the shaft, degrees a second; unknown unless given.
    pub shaft_speed_deg_s: Option<f64>,
    /// Part of the shaft's work that reaches the leaf; default 1.
    pub arm_efficiency: Option<f64>,
}

impl Hand {
    pub(crate) const NAMES: [&str; 2] = ["right", "left"];
}

impl Elbow {
    pub(crate) const NAMES: [&str; 2] = ["left", "right"];

    /// +1 for `left` (along `ẑ × ê`), −1 for `right`.
    pub const fn side(self) -> f64 {
        match self {
            Elbow::Left => 1.0,
            Elbow::Right => -1.0,
        }
    }
}

impl Hinges {
    /// Coefficient with its uncertainty, where one is used: what is said goes before the handbook.
    pub fn friction_range(&self) -> Option<FrictionRange> {
        let (said, pairing, low, high) = match self {
            Hinges::Plain(part) => (part.friction_coefficient, part.pairing, part.friction_low, part.friction_high),
            Hinges::Rolling(part) => (part.friction_coefficient, part.pairing, part.friction_low, part.friction_high),
            Hinges::Rising(part) => (part.friction_coefficient, part.pairing, part.friction_low, part.friction_high),
            Hinges::Measured(_) => return None,
        };
        let book = pairing.map(Pairing::friction);
        let likely = said.or(book.map(|range| range.likely)).unwrap_or(0.0);
        // A likely value beside the handbook's range widens it.
        let low = low.or(book.map(|range| range.low)).map_or(likely, |low| low.min(likely));
        let high = high.or(book.map(|range| range.high)).map_or(likely, |high| high.max(likely));
        Some(FrictionRange { low, likely, high })
    }

    /// Whether a range of the coefficient was said, and not only one value.
    pub(crate) fn has_friction_range(&self) -> bool {
        self.friction_range().is_some_and(|range| range.low < range.likely || range.likely < range.high)
    }
}

impl Lean {
    /// Lean out of plumb, degrees.
    ///
    /// From a plumb line `λ = atan(offset/height)`, where no angle is given.
    pub fn angle(&self) -> f64 {
        let plumb = self.plumb_offset_m.zip(self.plumb_height_m);
        let plumb_deg = plumb.map(|(offset, height)| crate::real::atan2(offset, height).to_degrees());
        self.angle_deg.or(plumb_deg).unwrap_or(default_of("lean.angle_deg"))
    }
    /// Plan direction of downhill, degrees.
    pub fn downhill(&self) -> f64 {
        self.downhill_deg.unwrap_or(default_of("lean.downhill_deg"))
    }
}

impl Operator {
    /// Part of the shaft's work that reaches the leaf.
    pub fn efficiency(&self) -> f64 {
        self.arm_efficiency.unwrap_or(default_of("operator.arm_efficiency"))
    }
}

impl Job {
    /// Reserve that is asked for.
    pub fn required_reserve(&self) -> f64 {
        self.required_reserve.unwrap_or(default_of("required_reserve"))
    }
    /// Number of rows of the curve.
    pub fn samples(&self) -> u32 {
        self.samples.unwrap_or(default_of("samples") as u32)
    }
    /// Leaf angle fully open, radians.
    pub fn open_rad(&self) -> f64 {
        self.swing.open_deg.to_radians()
    }
}
