//! Words of the field that documents and mechanics share. Each is declared here with what it means; what is reckoned with it stands in the
//! rooms above.

mod direction;
mod protection;
mod wind;
pub(crate) mod words;

pub use direction::{Direction, WindCase};
pub use protection::{MeansKind, ZoneKind};
pub use wind::{Asce7Edition, BarShape, Exposure, LoadLevel, Terrain};
