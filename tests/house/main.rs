//! The house: imports flow one way, and no two files need each other.
//!
//! Read from the source as Rust's own grammar has it, so that the direction that DEVELOPERS.md states is held by more than a promise.

mod circles;
mod documents;
mod names;
mod source;

use source::Crate;
use std::collections::BTreeSet;

/// The rooms of the core from the ground up: a file may take from its own room and from those in lines above it.
const CORE: &[&[&str]] = &[
    &["real", "order", "numerics"],
    &["terms", "units"],
    &["elements", "document"],
    &["fault"],
    &["packed", "job"],
    &["operators"],
    &["leaf"],
    &["arm"],
    &["drive"],
    &["safety"],
    &["plan"],
    &["describe"],
];

/// Those of the binding.
const WEB: &[&[&str]] = &[&["drawing"], &["binding"]];

fn core() -> Crate {
    Crate::read("core/src")
}

fn web() -> Crate {
    Crate::read("web/src")
}

/// Arrows from a lower room to a higher one.
fn back(house: &Crate, rooms: &[&[&str]]) -> Vec<String> {
    let floor = |file: &str| {
        let room = file.split(['/', '.']).next().unwrap_or_default();
        rooms.iter().position(|floor| floor.contains(&room))
    };
    let mut wrong = Vec::new();
    for (from, to, names) in house.arrows() {
        if let (Some(low), Some(high)) = (floor(from), floor(to))
            && high > low
        {
            wrong.push(format!("{from} takes {names} from {to}"));
        }
    }
    wrong
}

#[test]
fn imports_of_the_core_never_point_to_a_higher_room() {
    let wrong = back(&core(), CORE);
    assert!(wrong.is_empty(), "{} arrows back:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn imports_of_the_binding_never_point_to_a_higher_room() {
    let wrong = back(&web(), WEB);
    assert!(wrong.is_empty(), "{} arrows back:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn no_two_files_of_core_or_binding_need_each_other() {
    let circles: Vec<String> = [core(), web()].iter().flat_map(circles::of).map(|circle| circle.join(" ↔ ")).collect();
    assert!(circles.is_empty(), "{} circles:\n{}", circles.len(), circles.join("\n"));
}

#[test]
fn every_room_of_the_core_has_its_floor() {
    let stated: BTreeSet<&str> = CORE.iter().copied().flatten().copied().collect();
    let house = core();
    let unstated: BTreeSet<&str> = house
        .files()
        .filter_map(|file| file.split(['/', '.']).next())
        .filter(|room| *room != "lib" && !stated.contains(room))
        .collect();
    assert!(unstated.is_empty(), "no floor is stated for {unstated:?}");
}

#[test]
fn a_type_of_the_core_has_a_name_of_its_own() {
    let twice = names::twice(&core());
    assert!(twice.is_empty(), "{} names stand twice:\n{}", twice.len(), twice.join("\n"));
}
