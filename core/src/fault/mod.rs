//! What is wrong with a job: codes, paths and numbers. Sentences live with the page.
//!
//! ```
//! use pintle_core::{Document, job::Job};
//!
//! let document: Document = serde_json::from_str(r#"{ "schema": 2, "leaf": { "mass_kg": 0, "length_m": "long" } }"#)?;
//! let invalid = Job::read(&document).unwrap_err();
//! let told: Vec<String> = invalid.errors.iter().map(ToString::to_string).collect();
//! assert!(told.contains(&"leaf.mass_kg: OutOfRange, found 0, allowed 1 to 5000, for instance 160".into()));
//! assert!(told.iter().any(|fault| fault.starts_with("leaf.length_m: WrongType, found \"long\"")));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod display;

use crate::{Document, units::Quantity};
use alloc::{format, string::String, vec::Vec};
use serde::Serialize;

/// A job that cannot be planned, with every fault that could be found at once.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Invalid {
    /// Never empty.
    pub errors: Vec<Fault>,
}

/// One fault.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct Fault {
    /// Dotted path of the field, empty for the document as a whole.
    pub path: String,
    /// What is wrong.
    pub code: FaultCode,
    /// What stood there, as text; `null` where nothing did.
    pub found: Option<String>,
    /// What may stand there.
    pub allowed: Option<Allowed>,
    /// A value that would be taken.
    pub example: Option<Example>,
    /// Numbers for the sentence: angles, gaps.
    pub values: Vec<NamedValue>,
}

/// A part that was begun, could not be read, and is not counted.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct LeftOut {
    /// Its path in the document: a block, or one item of a list.
    pub path: String,
    /// What it needs, with the paths of the document as it is.
    pub faults: Vec<Fault>,
}

/// What is wrong with a field or the geometry.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum FaultCode {
    /// The text is not JSON at all.
    NotJson,
    /// The text of a link is cut, mistyped or no job at all.
    DamagedLink,
    /// The link was made by a newer version.
    NewerLink,
    /// The document was made by a newer version.
    NewerSchema,
    /// No such field here.
    UnknownField,
    /// The field stands twice.
    RepeatedField,
    /// Another type is wanted.
    WrongType,
    /// A required field is absent.
    Missing,
    /// Not one of the allowed words.
    NotOneOf,
    /// Outside the allowed range.
    OutOfRange,
    /// The upper end of a range is below its lower end.
    LeastAboveMost,
    /// The collar's outer radius is below its inner radius.
    OuterBelowInner,
    /// The ramp of rising hinges binds: with the friction of the hinges no moment turns the leaf up it. `friction`.
    RampBinds,
    /// A centre or a member lies beyond the leaf's end.
    OutsideLeaf,
    /// The wall is thicker than the section's sides and corners allow.
    WallTooThick,
    /// Denser or more open than what the shape's table covers.
    OutsideShape,
    /// A leaf of no members.
    NoMembers,
    /// A table of fewer points than a line needs.
    TooFewPoints,
    /// A table whose points do not follow each other upwards.
    NotRising,
    /// A table that does not start at standstill, has no torque before its last point, or has some there.
    NoMotorCurve,
    /// A table of speed and torque says nothing of a current that a resistance could take its part of.
    NoCurrentKnown,
    /// Said in two ways that may differ: directly, and by a block it would follow from.
    SaidTwice,
    /// One of two values that only mean something together is missing.
    HalfOfPair,
    /// Crank and link together do not reach the bracket.
    ArmTooShort,
    /// Crank and link cannot fold close enough to the bracket.
    ArmTooLong,
    /// The arm passes through straight or folded strictly inside the swing.
    DeadPointInside,
    /// The link's line passes through the hinge: the shaft would turn back and no torque reaches the leaf.
    TurnsBack,
    /// Shaft, hinge and bracket in line with the arm straight or folded: the ratio is undetermined.
    Undetermined,
    /// Below the range of a torque in N·m, and within it where kN·m was meant.
    MeantKilonewtonMetres,
    /// Beyond the range of a length in m, and within it where mm was meant.
    MeantMillimetres,
    /// The peak torque of an operator is below its rated one.
    PeakBelowRated,
    /// An entry before this one of the list has the same id.
    RepeatedId,
}

/// What may stand in a field.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum Allowed {
    /// A number between two ends, both included; `null` is no limit.
    Range {
        /// Least value, in the document's unit.
        least: Option<f64>,
        /// Greatest value, in the document's unit.
        most: Option<f64>,
        /// Kind of quantity.
        quantity: Quantity,
    },
    /// One of these words or field names.
    OneOf {
        /// The words.
        names: Vec<&'static str>,
    },
    /// A value of this type.
    Type {
        /// Name of the type as JSON has it.
        name: &'static str,
    },
}

/// A value that would be taken.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(untagged)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum Example {
    /// A number.
    Number(f64),
    /// A word.
    Text(&'static str),
    /// A range, least and greatest value.
    Range([f64; 2]),
}

/// A number with a name and a quantity, for a sentence to use.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct NamedValue {
    /// Name by which the sentence refers to it.
    pub name: &'static str,
    /// The value in the document's unit.
    pub value: f64,
    /// Kind of quantity.
    pub quantity: Quantity,
}

impl NamedValue {
    /// A leaf angle given in radians.
    pub(crate) fn leaf_angle(leaf_rad: f64) -> NamedValue {
        NamedValue { name: "leaf_angle", value: leaf_rad.to_degrees(), quantity: Quantity::Angle }
    }
}

impl Fault {
    /// A fault with nothing but its place and code.
    pub fn new(path: impl Into<String>, code: FaultCode) -> Fault {
        Fault { path: path.into(), code, found: None, allowed: None, example: None, values: Vec::new() }
    }
    /// A number that cannot stand where it stands.
    pub(crate) fn number(path: impl Into<String>, code: FaultCode, found: f64, allowed: Allowed) -> Fault {
        Fault::new(path, code).found(&Document::Number(found)).allowed(allowed)
    }
    /// A number that follows from something else that was said.
    pub(crate) fn said_twice(path: impl Into<String>, found: f64) -> Fault {
        Fault::new(path, FaultCode::SaidTwice).found(&Document::Number(found))
    }
    /// With what was found there, as text.
    #[must_use]
    pub fn found(mut self, found: &Document) -> Fault {
        self.found = Some(format!("{found}"));
        self
    }
    /// With what may stand there.
    #[must_use]
    pub fn allowed(mut self, allowed: Allowed) -> Fault {
        self.allowed = Some(allowed);
        self
    }
    /// With a value that would be taken.
    #[must_use]
    pub fn example(mut self, example: Example) -> Fault {
        self.example = Some(example);
        self
    }
    /// With numbers for the sentence.
    #[must_use]
    pub fn values(mut self, values: impl Into<Vec<NamedValue>>) -> Fault {
        self.values = values.into();
        self
    }
}

impl Invalid {
    /// A text that is no JSON; `reason` is the parser's.
    pub fn not_json(reason: impl Into<String>) -> Invalid {
        let mut fault = Fault::new("", FaultCode::NotJson);
        fault.found = Some(reason.into());
        Invalid { errors: alloc::vec![fault.allowed(Allowed::Type { name: "object" })] }
    }
}

impl From<Vec<Fault>> for Invalid {
    /// One or more faults; a job without any is not invalid.
    fn from(errors: Vec<Fault>) -> Invalid {
        debug_assert!(!errors.is_empty(), "an invalid job has a fault");
        Invalid { errors }
    }
}

impl From<Fault> for Invalid {
    fn from(fault: Fault) -> Invalid {
        Invalid { errors: alloc::vec![fault] }
    }
}

/// The fault of an object that has to be there.
pub(crate) fn missing_object(path: impl Into<String>) -> Fault {
    Fault::new(path, FaultCode::Missing).allowed(Allowed::Type { name: "object" })
}
