//! Published values: one table of checks, run as tests and printed as `CONFORMANCE.md`.
//!
//! An expected value never comes from the crate under test. It stands as its source prints it, and its last digit is the tolerance.

mod asce7;
mod asce7_shapes;
mod beaufort;
mod cautions;
mod check;
mod collars;
mod en1991;
mod gate_arm;
mod hinges;
mod inertia;
mod linkage;
mod motion;
mod motors;
mod page;
mod rockers;
mod sliders;
mod solve;
mod stops;
mod traction;
mod tubes;
mod unit_factors;
mod unit_names;
mod unit_numbers;
mod unit_shown;
mod units;
mod us_sections;
mod use_class;
mod wind;

use check::{Check, Kind};
use std::collections::BTreeSet;

/// A topic and its parts of the table.
struct Group {
    title: &'static str,
    /// Said at its head.
    note: &'static str,
    parts: &'static [&'static [Check]],
}

impl Group {
    const fn new(title: &'static str, parts: &'static [&'static [Check]]) -> Group {
        Group { title, note: "", parts }
    }

    fn checks(&self) -> impl Iterator<Item = &'static Check> + use<> {
        self.parts.iter().copied().flatten()
    }
}

/// The table, one group a topic.
const GROUPS: &[Group] = &[
    Group::new("Linkages of textbooks", &[linkage::CHECKS, rockers::CHECKS, sliders::CHECKS]),
    Group::new("A gate's arm", gate_arm::CHECKS),
    Group::new("Hinges", &[hinges::CHECKS, collars::CHECKS]),
    Group::new("Mass and inertia", &[inertia::CHECKS]),
    Group::new("Wind", wind::CHECKS),
    Group::new("Wind by ASCE 7", asce7::CHECKS),
    Group::new("Coefficients of ASCE 7", asce7_shapes::CHECKS),
    Group { title: "Wind by EN 1991-1-4", note: en1991::NOTE, parts: en1991::CHECKS },
    Group::new("Beaufort scale", beaufort::CHECKS),
    Group::new("Motion and motors", &[motion::CHECKS, traction::CHECKS, motors::CHECKS]),
    Group::new("Stops and forces", &[stops::CHECKS]),
    Group::new("European sections", tubes::CHECKS),
    Group::new("American sections", us_sections::CHECKS),
    Group::new("Units", &[unit_factors::CHECKS]),
];

fn all() -> impl Iterator<Item = &'static Check> {
    GROUPS.iter().flat_map(Group::checks)
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

/// A held table gives back its digits to the last bit; what is worked out hardly ever does. So a number that is merely repeated cannot pass
/// for a printed result, and none of what is worked out hides among the tables.
#[test]
fn a_repeated_table_is_told_from_a_printed_result() {
    for check in all() {
        match check.kind() {
            Kind::PrintedResult | Kind::RememberedResult => assert!(
                check.exact.is_some() == check.is_the_digits(1e-14),
                "{} gives {}: a table that is repeated, or worked out and exact for a reason to be stated?",
                check.id,
                (check.computed)()
            ),
            Kind::TableSeen | Kind::TableFromMemory => assert!(
                check.exact.is_none() && check.is_the_digits(1e-12),
                "{} gives {}: not a table that is repeated",
                check.id,
                (check.computed)()
            ),
            Kind::WorkedOut => {
                assert!(!check.held && check.exact.is_none(), "{} has no source to be held or exact by", check.id);
            }
        }
    }
}

/// Fewer than this would mean that rows were lost.
#[test]
fn there_are_printed_results_enough() {
    let printed = all().filter(|check| check.kind() == Kind::PrintedResult).count();
    assert!(printed >= 150, "{printed} printed results");
}

#[test]
fn the_conformance_page_is_in_step() {
    pintle_tests::kept_in_step("CONFORMANCE.md", &page::page(GROUPS));
}
