//! `CONFORMANCE.md`: the table of checks as a page to read.

use super::Group;
use super::check::{Check, Provenance, Tolerance};
use std::collections::BTreeSet;
use std::fmt::Write;

const HEAD: &str = "\
# Conformance

Generated from the table of published checks in `published/`; do not edit. The test command fails when this page is stale;
`PINTLE_BLESS=1 cargo test -p pintle-tests --test published` writes it anew.

*Expected* is the number as its source prints it. Unless another tolerance is stated, a check holds within half a unit of the last printed
digit; *used* is the share of the tolerance that the deviation takes. Provenance: *seen* in the named source; *from memory*, the source
itself not at hand; *derived* from the named relation outside this crate; *common practice*, no source. What sources print
wrongly stands in [ERRATA.md](ERRATA.md).
";

pub fn page(groups: &[Group]) -> String {
    let all = || groups.iter().flat_map(|(_, parts)| parts.iter().copied().flatten());
    let sources: BTreeSet<&str> = all().map(|check| check.source).collect();
    let count = |provenance: Provenance| all().filter(|check| check.provenance == provenance).count();
    let mut text = String::from(HEAD);
    let _ = writeln!(
        text,
        "\n{} checks from {} sources: {} seen, {} from memory, {} derived, {} common practice.",
        all().count(),
        sources.len(),
        count(Provenance::Seen),
        count(Provenance::FromMemory),
        count(Provenance::Derived),
        count(Provenance::CommonPractice),
    );
    for (title, parts) in groups {
        let checks = || parts.iter().copied().flatten();
        let _ = writeln!(text, "\n## {title}\n");
        text.push_str("| id | check | source | clause or relation | provenance | expected | computed | used |\n");
        text.push_str("| --- | --- | --- | --- | --- | ---: | ---: | ---: |\n");
        for check in checks() {
            text.push_str(&row(check));
        }
        let wider: Vec<&Check> = checks().filter(|check| matches!(check.tolerance, Tolerance::Stated { .. })).collect();
        if !wider.is_empty() {
            text.push_str("\nStated tolerances:\n\n");
        }
        for check in wider {
            if let Tolerance::Stated { value, reason } = check.tolerance {
                let _ = writeln!(text, "- {}: ±{value}. {reason}", check.id);
            }
        }
    }
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
        check.provenance.word(),
        check.expected,
        (check.computed)(),
        100.0 * check.share(),
    )
}
