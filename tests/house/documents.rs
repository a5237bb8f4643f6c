//! The developers' page stays one that is read, and leads to files that are there.

use std::fs;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// Words as a reader counts them: marks between cells and at the start of lines are none.
fn words(text: &str) -> usize {
    text.split_whitespace().filter(|word| word.chars().any(char::is_alphanumeric)).count()
}

#[test]
fn the_developers_page_is_under_900_words() {
    let text = fs::read_to_string(root().join("DEVELOPERS.md")).expect("DEVELOPERS.md");
    assert!((300..900).contains(&words(&text)), "{} words", words(&text));
    let asked = [
        "## The map",
        "**A formula.**",
        "**A number",
        "**A finding.**",
        "**A unit.**",
        "**A language.**",
        "## How to release",
    ];
    for part in asked {
        assert!(text.contains(part), "{part}");
    }
}

#[test]
fn what_the_documents_link_to_is_there() {
    let mut links = 0;
    let documents = [
        "README.md",
        "DEVELOPERS.md",
        "xtask/DEPENDENCIES.md",
        "tests/README.md",
        "www/app/README.md",
        "www/app/jobs/README.md",
        "www/app/handover/README.md",
    ];
    for name in documents {
        let document = root().join(name);
        let text = fs::read_to_string(&document).unwrap_or_else(|error| panic!("{name}: {error}"));
        for target in text.split("](").skip(1).filter_map(|rest| rest.split([')', '#']).next()) {
            if !target.starts_with("http") && !target.is_empty() {
                links += 1;
                assert!(document.with_file_name("").join(target).exists(), "{name} links to {target}");
            }
        }
    }
    assert!(links > 8, "{links} links");
}
