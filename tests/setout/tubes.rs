//! Tubes of a part, and how far they are in one another.

use crate::{marks, read};
use pintle_core::plan::mark_out;
use serde_json::json;

/// Two tubes of one length L, overlapping by o, are 2·L − o long; where the joints leave no more than the overlap there is nothing to set.
#[test]
fn tubes_reach_beyond_their_overlap() {
    let cut = |overlap: f64| {
        let mut job = marks::job();
        // Halves and quarters, so that nothing is rounded: the link is 0.5 m between its pins.
        job["marks"]["overlap_m"] = json!(overlap);
        job["marks"]["crank_ends_m"] = json!(0.25);
        job["marks"]["link_ends_m"] = json!(0.25);
        let marks = mark_out(&read(&job)).expect("the arm works");
        (marks.crank.cut_m, marks.link.cut_m)
    };
    assert_eq!(cut(0.125), (Some(0.3125), Some(0.1875)));
    assert_eq!(cut(0.25), (Some(0.375), None));
    assert_eq!(cut(0.5), (None, None));
}
