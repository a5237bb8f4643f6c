//! `CONFORMANCE.md`: the table of checks as a page to read.

use super::Group;
use super::check::{Check, Kind, Tolerance};
use std::collections::BTreeSet;
use std::fmt::Write;

const HEAD: &str = "\
# Conformance

Generated from the table of published checks in `published/`; do not edit. The test command fails when this page is stale;
`PINTLE_BLESS=1 cargo test -p pintle-tests --test published` writes it anew.

*Expected* is the number as its source prints it. Unless another tolerance is stated, a check holds within half a unit of the last printed
digit, a repeated table to the digit itself; *used* is the share of the tolerance that the deviation takes. What sources print wrongly or against each other stands in
[ERRATA.md](ERRATA.md).

What a check shows is not always the same, so they are counted apart:

- *printed result*: read in the named source for inputs it states, and worked out here from them. Judges the formula.
- *remembered result*: the same, quoted from memory; the source itself was not at hand.
- *repeated table*: a number the crate holds because a source has it, seen or from memory. Judges the copying, not a formula; one from memory
  shows only that the same was remembered twice.
- *worked out elsewhere*: by hand, from a closed form or by another program.

A table that is held gives its digits back to the last bit, and a result that is worked out hardly ever does. A test holds every row to
that: a printed result that meets its digits to the last bit states how it is worked out.
";

pub fn page(groups: &[Group]) -> String {
    let all = || groups.iter().flat_map(Group::checks);
    let sources: BTreeSet<&str> = all().map(|check| check.source).collect();
    let mut text = String::from(HEAD);
    let _ = writeln!(text, "\n{} checks from {} sources:\n", all().count(), sources.len());
    text.push_str(&counts(groups));
    for group in groups {
        let _ = writeln!(text, "\n## {}\n", group.title);
        if !group.note.is_empty() {
            let _ = writeln!(text, "{}\n", group.note);
        }
        text.push_str("| id | check | source | clause or relation | what it is | expected | computed | used |\n");
        text.push_str("| --- | --- | --- | --- | --- | ---: | ---: | ---: |\n");
        for check in group.checks() {
            text.push_str(&row(check));
        }
        text.push_str(&remarks(group));
    }
    text
}

/// How many of which kind, a line a group.
fn counts(groups: &[Group]) -> String {
    let mut text = String::from("| group |");
    for kind in Kind::ALL {
        let _ = write!(text, " {} |", kind.word());
    }
    text.push_str(" all |\n| --- |");
    text.push_str(&" ---: |".repeat(Kind::ALL.len() + 1));
    text.push('\n');
    let line = |title: &str, checks: &[&Check]| {
        let of = |kind| checks.iter().filter(|check| check.kind() == kind).count();
        let cells: String = Kind::ALL.into_iter().map(|kind| format!(" {} |", of(kind))).collect();
        format!("| {title} |{cells} {} |\n", checks.len())
    };
    for group in groups {
        text.push_str(&line(group.title, &group.checks().collect::<Vec<_>>()));
    }
    text.push_str(&line("**in all**", &groups.iter().flat_map(Group::checks).collect::<Vec<_>>()));
    text
}

fn row(check: &Check) -> String {
    let places = check.decimals() + 3;
    format!(
        "| {} | {} | {} | {} | {} | {} | {:.places$} | {:.0} % |\n",
        check.id,
        check.what,
        check.source,
        check.clause,
        check.kind().word(),
        check.expected,
        (check.computed)(),
        100.0 * check.share(),
    )
}

/// Tolerances that are wider, and results that are exact, with their reasons.
fn remarks(group: &Group) -> String {
    let mut wider = String::new();
    let mut exact = String::new();
    for check in group.checks() {
        if let Tolerance::Stated { value, reason } = check.tolerance {
            let _ = writeln!(wider, "- {}: ±{value}. {reason}", check.id);
        }
        if let Some(reason) = check.exact {
            let _ = writeln!(exact, "- {}: {reason}", check.id);
        }
    }
    let mut text = String::new();
    for (title, lines) in [("Stated tolerances", wider), ("Worked out and exact", exact)] {
        if !lines.is_empty() {
            let _ = write!(text, "\n{title}:\n\n{lines}");
        }
    }
    text
}
