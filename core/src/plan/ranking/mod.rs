//! Which operator of a list will do for a leaf: each held against it where the arm stands and at its own best place.
//!
//! What is the same for several operators is computed once for all of them: one search a kit, efficiency, travel and outline; one largest torque
//! an arm and efficiency. A [`Ranking`] does a little at a time, and keeps what it knows while job and list change around it.

mod answer;
mod known;
mod limits;
mod place;
mod refusal;
mod run;
mod standing;
mod suggestion;
mod suggestions;

pub use answer::{NextSmaller, OperatorRanking, OperatorStanding, RankAsked, RankedOperator};
pub use place::PlaceSought;
pub use refusal::{OperatorRefusal, RefusalCode};
pub use run::{RankProgress, Ranking, rank};
pub use suggestion::{Suggestion, SuggestionKind};
