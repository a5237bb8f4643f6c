//! Of known keys the one that was meant.

use alloc::{string::String, vec::Vec};

/// Longer keys than any that is known are not compared.
const LONGEST: usize = 64;

/// The known key that an unknown one is most like, in letters and figures alone; `None` where it is like none: a third of its letters may be
/// wrong, or what there is of it stands in the known one.
pub fn nearest(unknown: &str, known: &[&'static str]) -> Option<&'static str> {
    if unknown.len() > LONGEST {
        return None;
    }
    let asked = letters(unknown);
    if asked.is_empty() {
        return None;
    }
    let mut best: Option<(usize, &'static str)> = None;
    for &key in known {
        let of_key = letters(key);
        let wrong = distance(&asked, &of_key);
        let within = asked.len() >= 3 && of_key.windows(asked.len()).any(|part| part == asked);
        let like = within || wrong <= (asked.len() / 3).max(1);
        if like && best.is_none_or(|(least, _)| wrong < least) {
            best = Some((wrong, key));
        }
    }
    best.map(|(_, key)| key)
}

fn letters(key: &str) -> Vec<char> {
    let lower: String = key.to_ascii_lowercase();
    lower.chars().filter(|character| character.is_alphanumeric()).collect()
}

/// Letters to put in, leave out, replace or swap with their neighbour to make one word of the other.
///
/// Optimal string alignment, three rows at a time. Source: Damerau (1964), Communications of the ACM 7(3), for the four errors; the recurrence
/// from memory.
fn distance(one: &[char], other: &[char]) -> usize {
    let mut before: Vec<usize> = Vec::new();
    let mut last: Vec<usize> = (0..=other.len()).collect();
    for i in 1..=one.len() {
        let mut row = alloc::vec![i; other.len() + 1];
        for j in 1..=other.len() {
            let wrong = usize::from(one[i - 1] != other[j - 1]);
            let mut least = (last[j] + 1).min(row[j - 1] + 1).min(last[j - 1] + wrong);
            if i > 1 && j > 1 && one[i - 1] == other[j - 2] && one[i - 2] == other[j - 1] {
                least = least.min(before[j - 2] + 1);
            }
            row[j] = least;
        }
        before = core::mem::replace(&mut last, row);
    }
    last[other.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_four_errors_of_a_typist_are_one_each() {
        let between = |one: &str, other: &str| distance(&letters(one), &letters(other));
        // One letter left out, put in, replaced, two swapped (Damerau 1964), and none.
        for other in ["torqe", "torquee", "torkue", "torqeu"] {
            assert_eq!(between("torque", other), 1, "{other}");
        }
        assert_eq!(between("Rated-Torque", "rated_torque"), 0);
        // Wagner and Fischer's usual pair.
        assert_eq!(between("kitten", "sitting"), 3);
    }

    #[test]
    fn a_key_is_like_one_or_like_none() {
        let known = ["id", "rated_torque_n_m", "peak_torque_n_m", "kit", "body"];
        assert_eq!(nearest("peek_torque_n_m", &known), Some("peak_torque_n_m"));
        assert_eq!(nearest("ratedTorque", &known), Some("rated_torque_n_m"));
        assert_eq!(nearest("bdoy", &known), Some("body"));
        assert_eq!(nearest("colour", &known), None);
        assert_eq!(nearest("", &known), None);
        assert_eq!(nearest(&"k".repeat(1000), &known), None);
    }
}
