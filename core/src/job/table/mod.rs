//! What the job's blocks are made of: fields, words, lists, choices; the one reader of them all; what is made of the rows besides. Knows no
//! block.

mod block;
mod date;
#[cfg(feature = "describe")]
mod description;
mod fault;
mod field;
mod interpreter;
mod rule;
mod value;
mod walk;

pub use crate::words::Worded;
pub use block::{Block, Choice, Chosen, Fields, entry};
pub(crate) use block::{block, choice, default_or, getter, has_default, is_open, twin};
#[cfg(feature = "describe")]
pub use description::description;
pub(crate) use fault::missing_object;
pub use fault::{Allowed, Example, Fault, FaultCode, Invalid, NamedValue};
pub use field::{
    Field, Kind, List, Number, assumed, assumed_direction, block, choice, date, direction, flag, list, number, range,
    schema, shares, text, word,
};
pub use interpreter::Reading;
pub use rule::{FieldRule, rules};
pub use value::{Held, Value};
pub use walk::{assumed as assumed_paths, document, varied};
