//! The job: what a person says about a gate, and the rules that every value has to keep.

mod fault;
mod numbers;
mod reader;
mod rules;
mod setout;
mod setout_reader;
mod types;

pub use fault::{Allowed, Example, Fault, FaultCode, Invalid, NamedValue};
pub(crate) use reader::missing_object;
pub use rules::{FIELDS, FieldRule};
pub use setout::{Aim, ElbowChoice, KeepOut, Place, SetOut};
pub use types::{Arm, Elbow, Hand, Hinges, Job, Leaf, Lean, MeasuredHinges, Operator, PlainHinges, Swing, Wind};

/// The schema this version of the crate writes, and the newest it reads.
pub const SCHEMA: u32 = 1;
