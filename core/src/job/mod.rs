//! The job: what a person says about a gate, and the rules that every value has to keep.

mod fault;
mod fit_reader;
mod fit_types;
mod hinge_reader;
mod member_reader;
mod member_types;
mod migrate;
mod motion_types;
mod numbers;
mod obstacles;
mod ramp;
mod reader;
mod record;
mod rules;
mod safety_reader;
mod safety_types;
mod setout;
mod setout_reader;
mod site_reader;
mod site_types;
mod types;
mod vary;
mod wind_reader;
mod wind_types;

pub use fault::{Allowed, Example, Fault, FaultCode, Invalid, NamedValue};
pub use fit_types::{AsBuilt, BuiltFrom, Marks, Room, Tape};
pub use member_types::{Bar, Boards, Member, MemberPlace, Mesh, RoundBar, RoundTube, Sheet, Tube};
pub use motion_types::{BreakawayFacts, Duty, HoldingFacts, MotionFacts, MotorFacts};
pub use obstacles::Obstacle;
pub(crate) use reader::missing_object;
pub use record::{Record, Settings};
pub use rules::{FIELDS, FieldRule};
pub use safety_types::{Contact, Means, SensedArea, SensorFrame, Site};
pub use setout::{Aim, ElbowChoice, KeepOut, Place, SetOut};
pub use site_types::{Drag, Ground, Ice};
pub use types::{
    Arm, Elbow, Hand, Hinges, Job, Leaf, Lean, MeasuredHinges, Operator, PlainHinges, RisingHinges, RollingHinges,
    Swing,
};
pub use wind_types::{
    Asce7Open, Asce7Wall, Asce7Wind, BeaufortWind, En1991Wall, En1991Wind, Wind, WindFrom, WindShape,
};

/// The schema this version of the crate writes, and the newest it reads.
pub const SCHEMA: u32 = 1;
