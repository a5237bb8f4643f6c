//! Quantities, the units people use for them, and the numbers as people read and write them.
//!
//! Documents hold SI values (degrees for angles); metric and US units exist only where a person reads or types.
//! Factors follow from the definitions of the international yard and pound (0.3048 m, 0.45359237 kg) and standard gravity, all
//! exact; the unit libraries at hand round the pound and the pound-force to seven digits, so the definitions stand here.
//!
//! ```
//! use pintle_core::units::{Quantity, ReadErrorCode, System, read};
//!
//! // Ten feet and six and a half inches, as a tape says it: 126.5 × 25.4 mm.
//! assert!((read("10' 6 1/2\"", Quantity::Length, System::Us).unwrap() - 3.2131).abs() < 1e-12);
//! assert_eq!(read("850 mm", Quantity::Length, System::Metric).unwrap(), 0.85);
//! // A comma that may mean two things is asked about, not guessed.
//! assert_eq!(read("1,234", Quantity::Torque, System::Metric).unwrap_err().code, ReadErrorCode::Ambiguous);
//! ```

mod feet;
mod mark;
mod names;
mod number;
mod quantity;
mod read;
mod refusal;
mod rounding;
mod show;
mod tape;

pub use feet::feet_inches;
pub use mark::{MarkApart, MarkSide, TAPE_STEP_M, mark, mark_apart};
pub use quantity::{Quantity, System, Unit};
pub use read::read;
pub use refusal::{ReadError, ReadErrorCode};
pub use rounding::Rounding;
pub use show::{entered, plain_number, show, show_limit, symbol};
