//! Published values: one table of checks, run as tests and printed as `CONFORMANCE.md`.
//!
//! An expected value never comes from the crate under test. It stands as its source prints it, and its last digit is the tolerance.

mod check;
mod hinges;
mod inertia;
mod linkage;
mod motion;
mod page;
mod sections;
mod standards;
mod unit_names;
mod unit_numbers;
mod unit_shown;
mod units;
mod use_class;
mod wind;

use check::Check;
use std::collections::BTreeSet;

/// A topic and its parts of the table.
type Group = (&'static str, &'static [&'static [Check]]);

/// The table, one group a topic.
const GROUPS: &[Group] = &[
    ("Linkage", linkage::CHECKS),
    ("Hinges", &[hinges::CHECKS]),
    ("Mass and inertia", &[inertia::CHECKS]),
    ("Wind", wind::CHECKS),
    ("Wind by standards", standards::CHECKS),
    ("Motion, stops and forces", &[motion::CHECKS]),
    ("Sections", sections::CHECKS),
];

fn all() -> impl Iterator<Item = &'static Check> {
    GROUPS.iter().flat_map(|(_, parts)| parts.iter().copied().flatten())
}

#[test]
fn every_published_value_is_met() {
    let missed: Vec<String> = all()
        .filter(|check| !check.holds())
        .map(|check| {
            format!("{}: {} printed {}, computed {}", check.id, check.what, check.expected, (check.computed)())
        })
        .collect();
    assert!(missed.is_empty(), "{} of {} missed:\n{}", missed.len(), all().count(), missed.join("\n"));
}

#[test]
fn every_check_has_an_id_of_its_own_a_source_and_a_tolerance() {
    let ids: BTreeSet<&str> = all().map(|check| check.id).collect();
    assert_eq!(ids.len(), all().count(), "an id stands twice");
    for check in all() {
        assert!(!check.source.is_empty() && !check.clause.is_empty(), "{} names no source", check.id);
        assert!(check.tolerance() > 0.0, "{} can only fail", check.id);
        // A tolerance as wide as the number would let anything pass.
        assert!(check.tolerance() <= 0.25 * check.expected().abs().max(1e-3) + 1e-15, "{} cannot fail", check.id);
    }
}

#[test]
fn the_conformance_page_is_in_step() {
    pintle_tests::kept_in_step("CONFORMANCE.md", &page::page(GROUPS));
}
