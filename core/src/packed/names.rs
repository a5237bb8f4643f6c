//! The names of fields and the words of jobs, by number.

use alloc::vec::Vec;

/// Every name and word that a packed document writes as a number: the line in this list, counted from 0.
///
/// **Append-only.** Links that people have printed and sent depend on these places: a name is never moved, renamed or taken away,
/// also when jobs no longer use it. New names go to the end, where a test puts what the table of the job has more (`PINTLE_BLESS=1`); it holds
/// the lines of released links by their check sum.
pub const NAMES: &str = include_str!("names.txt");

/// Places below this one take one byte; from it on, two: the first says which page of 256, the second the place on it.
pub const SHORT: u8 = 240;

/// Stands in place of a name that has no number: its text follows.
pub const SPELT: u8 = 255;

pub fn number_of(text: &str) -> Option<usize> {
    NAMES.lines().position(|name| name == text)
}

pub fn at(place: usize) -> Option<&'static str> {
    NAMES.lines().nth(place)
}

pub fn write(bytes: &mut Vec<u8>, place: usize) {
    match place.checked_sub(usize::from(SHORT)) {
        None => bytes.push(place as u8),
        Some(beyond) => bytes.extend([SHORT + (beyond / 256) as u8, (beyond % 256) as u8]),
    }
}
