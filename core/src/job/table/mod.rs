//! What the job's blocks are made of: fields, words, lists, choices; the one reader of them all; what is made of the rows besides. Knows no
//! block.

mod block;
mod date;
#[cfg(feature = "describe")]
mod description;
mod field;
mod interpreter;
mod row;
mod rule;
mod rules;
mod value;
mod walk;

pub use crate::fault::{Allowed, Example, Fault, FaultCode, Invalid};
pub use crate::terms::words::Worded;
pub(crate) use block::{block, choice, default_or, getter, has_default, is_open, twin};
#[cfg(feature = "describe")]
pub use description::description;
pub use field::{Block, Choice, Chosen, Field, Kind, List, Number, Spec};
pub use interpreter::Reading;
pub use row::{
    assumed, assumed_direction, block, choice, date, direction, flag, list, name, number, range, schema, shares, text,
    word,
};
pub use rule::FieldRule;
pub use rules::rules;
pub use value::{Fields, Held, Value, entry};
pub use walk::{assumed as assumed_paths, document, varied};
