//! Why an operator will not do: the one reason, with its numbers.

use crate::arm::Limit;
use crate::fault::NamedValue;
use crate::units::Quantity;
use alloc::vec::Vec;
use serde::Serialize;

/// Why an operator will not do. Sentences live with the page, under the code.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub enum RefusalCode {
    /// The leaf is longer than any it is made for. `length`, `limit`.
    LeafTooLong,
    /// The leaf weighs more than it is made for at that length. `mass`, `limit`, `length`.
    LeafTooHeavy,
    /// It gets colder than it is made for. `temperature`, `limit`.
    TooCold,
    /// It gets hotter than it is made for. `temperature`, `limit`.
    TooHot,
    /// More cycles an hour than it is rated for. `cycles`, `limit`.
    CyclesPerHour,
    /// More cycles a day than it is rated for. `cycles`, `limit`.
    CyclesPerDay,
    /// The crank that is planned is not one of its kit. `crank`, `least`, `most`.
    CrankOutsideKit,
    /// The link that is planned is not one of its kit. `link`, `least`, `most`.
    LinkOutsideKit,
    /// Its shaft would have to turn further than it does. `angle`, `limit`.
    TravelTooLong,
    /// Its arm meets something that stands around. `overlap`, `leaf_angle`.
    ArmMeetsObstacle,
    /// Its arm meets the leaf. `overlap`, `leaf_angle`.
    ArmMeetsLeaf,
    /// Its body or base stands in something. `overlap`.
    StandsInObstacle,
    /// The leaf runs into its body or base. `overlap`, `leaf_angle`.
    LeafMeetsOperator,
    /// The leaf asks more of its shaft than its rated torque. `torque`, `limit`, `leaf_angle`.
    TorqueOverRated,
    /// Start and inertia ask more than its peak torque. `torque`, `limit`, `leaf_angle`.
    MotionOverPeakTorque,
    /// It leaves less reserve than is asked for. `reserve`, `limit`.
    ReserveTooSmall,
    /// With its arm there is no place on this site; `limit` of the refusal names what is in the way. `amount`, by how much, in that limit's unit.
    NoPlace,
    /// The arm that is planned does not work, and no place was looked for.
    NoArm,
}

/// The one reason why an operator will not do.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
#[non_exhaustive]
pub struct OperatorRefusal {
    /// The reason.
    pub code: RefusalCode,
    /// The limit of the set-out that is in the way, where it has no place.
    pub limit: Option<Limit>,
    /// Numbers for the sentence.
    pub values: Vec<NamedValue>,
}

impl OperatorRefusal {
    pub(super) fn new(code: RefusalCode, values: &[NamedValue]) -> OperatorRefusal {
        OperatorRefusal { code, limit: None, values: values.into() }
    }
}

pub(super) fn named(name: &'static str, value: f64, quantity: Quantity) -> NamedValue {
    NamedValue { name, value, quantity }
}
