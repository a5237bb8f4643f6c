//! Words of the map beside those every drawing has.

use pintle_core::{Document, arm::Limit, fault::Invalid};

use super::field::LIMITS;
use crate::drawing::reader::Reader;

/// Word `best`, and under `limits` a few words for each limit, by its name.
#[derive(Clone, Debug)]
pub struct Look {
    /// At the best set-out's shaft.
    pub(super) best: String,
    limits: Vec<String>,
}

/// Names of the limits, as the core writes them.
pub const LIMIT_NAMES: [&str; LIMITS.len()] = [
    "straightness",
    "square_deg",
    "least_lever_m",
    "shaft_travel_deg",
    "crank_m",
    "link_m",
    "bracket_u_m",
    "keep_out",
    "arm",
    "most_shaft_torque_n_m",
    "tape_arm",
    "tape_least_lever_m",
    "tape_shaft_travel_deg",
    "tape_keep_out",
    "shaft_x_m",
    "shaft_y_m",
    "step_m",
];

impl Look {
    /// Reads it.
    ///
    /// # Errors
    /// Every field that is missing or ill-typed, with its path below `view`.
    pub fn read(document: &Document) -> Result<Look, Invalid> {
        let reader = Reader::new(document);
        let words = reader.object("limits");
        let look =
            Look { best: reader.text("best"), limits: LIMIT_NAMES.iter().map(|name| words.text(name)).collect() };
        reader.finish()?;
        Ok(look)
    }

    /// What is said of a limit that is in the way.
    pub(super) fn word(&self, limit: Limit) -> &str {
        let index = LIMITS.iter().position(|&known| known == limit);
        index.and_then(|index| self.limits.get(index)).map_or("", String::as_str)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_limit_is_called_what_the_core_calls_it() {
        for (limit, name) in LIMITS.iter().zip(LIMIT_NAMES) {
            // A unit variant's own name is what serde writes, in snake case.
            let written: String = format!("{limit:?}").chars().fold(String::new(), |mut text, letter| {
                if letter.is_uppercase() && !text.is_empty() {
                    text.push('_');
                }
                text.push(letter.to_ascii_lowercase());
                text
            });
            assert_eq!(written, name);
        }
    }
}
