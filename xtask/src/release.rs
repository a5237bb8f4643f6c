//! A release: the page built and packed, and what is to be said of it. Nothing is tagged or published: whoever releases does that.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result, bail, ensure};
use sha2::{Digest, Sha256};

use crate::bundle::notices;
use crate::place::{dist, root, target};
use crate::shell::{read, run, say};
use crate::{page, sizes};

/// The version of the workspace.
const VERSION: &str = env!("CARGO_PKG_VERSION");

/// Makes a release of the version that the workspace has; a rehearsal of one that is not final, too, from a folder with changes.
pub fn release(is_rehearsal: bool) -> Result<()> {
    let log = fs::read_to_string(root().join("CHANGELOG.md"))?;
    let told = section(&log, VERSION)?;
    if !is_rehearsal {
        ensure!(
            !VERSION.contains("-dev"),
            "{VERSION} is no release: set the version in Cargo.toml, or add --rehearsal"
        );
        ensure!(told.date.is_some(), "the section {VERSION} of CHANGELOG.md has no date: ## {VERSION} (2027-01-31)");
        let changed = read(Command::new("git").args(["status", "--porcelain"]).current_dir(root()))?;
        ensure!(changed.trim().is_empty(), "there are changes that are not committed:\n{changed}");
    }
    page::build()?;
    let (_, within) = sizes::table(&dist())?;
    within?;
    let made = target().join("release-artefacts").join(VERSION);
    if made.is_dir() {
        fs::remove_dir_all(&made)?;
    }
    fs::create_dir_all(&made)?;
    let page = made.join(format!("pintle-{VERSION}.tar.gz"));
    say(format!("packing dist/ into {}", page.display()));
    pack(&dist(), &page)?;
    let notices = made.join(notices::FILE);
    fs::copy(dist().join(notices::FILE), &notices)?;
    let tag = made.join("tag.txt");
    fs::write(&tag, tag_text(VERSION, told.text))?;
    print!("{}", report(VERSION, &tag, &[page, notices])?);
    Ok(())
}

/// What the log says of a version.
#[derive(Debug, PartialEq)]
struct Told<'t> {
    date: Option<&'t str>,
    text: &'t str,
}

/// The section of a version: its date, if it has one, and its text.
fn section<'t>(log: &'t str, version: &str) -> Result<Told<'t>> {
    let missing = || format!("CHANGELOG.md has no section {version}");
    for part in log.split("\n## ").skip(1) {
        let (head, text) = part.split_once('\n').with_context(missing)?;
        let mut words = head.split_whitespace();
        if words.next() == Some(version) {
            let date = words.next().and_then(|date| date.strip_prefix('(')?.strip_suffix(')'));
            ensure!(!text.trim().is_empty(), "the section {version} of CHANGELOG.md says nothing");
            return Ok(Told { date, text: text.trim() });
        }
    }
    bail!(missing())
}

/// The text of the tag: headings have no mark that git takes for a comment.
fn tag_text(version: &str, text: &str) -> String {
    format!("Pintle {version}\n\n{}\n", text.replace("### ", ""))
}

/// The folder as an archive that is the same for the same files.
fn pack(folder: &Path, archive: &Path) -> Result<()> {
    let times = ["--sort=name", "--mtime=@0", "--owner=0", "--group=0", "--numeric-owner"];
    run(Command::new("tar").args(times).arg("-czf").arg(archive).arg("-C").arg(folder).arg("."))
}

/// What was done, and what is left to do.
fn report(version: &str, tag: &Path, artefacts: &[PathBuf]) -> Result<String> {
    let mut text = format!("\nversion    {version}\ntag        v{version}, its text:\n");
    for line in fs::read_to_string(tag)?.lines() {
        text += &format!("           | {line}\n");
    }
    for artefact in artefacts {
        let content = fs::read(artefact)?;
        let hash: String = Sha256::digest(&content).iter().map(|byte| format!("{byte:02x}")).collect();
        text += &format!("artefact   {} ({} bytes)\n           sha256 {hash}\n", artefact.display(), content.len());
    }
    text += &format!(
        "to be done git tag --annotate v{version} --file {}\n           git push origin v{version}\n",
        tag.display()
    );
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    const LOG: &str = "# Changelog\n\nWhat changes.\n\n## 2.0.0-dev\n\n### Added\n- One.\n\n## 1.0.0 (2027-01-31)\n\n- First.\n\n## 0.9.0\n\n";

    #[test]
    fn the_section_of_a_version_is_found() {
        assert_eq!(section(LOG, "2.0.0-dev").unwrap(), Told { date: None, text: "### Added\n- One." });
        assert_eq!(section(LOG, "1.0.0").unwrap(), Told { date: Some("2027-01-31"), text: "- First." });
        assert!(section(LOG, "0.9.0").is_err(), "it says nothing");
        assert!(section(LOG, "2.0.0").is_err(), "there is none");
    }

    /// The hash of "abc": FIPS 180-4.
    #[test]
    fn it_says_what_it_did() {
        let folder = tempfile::tempdir().unwrap();
        let (tag, page) = (folder.path().join("tag.txt"), folder.path().join("page.tar.gz"));
        fs::write(&tag, tag_text("1.0.0", "### Added\n- One.")).unwrap();
        fs::write(&page, "abc").unwrap();
        let said = report("1.0.0", &tag, &[page]).unwrap();
        for line in [
            "version    1.0.0\n",
            "| Pintle 1.0.0\n",
            "| Added\n",
            "| - One.\n",
            "(3 bytes)",
            "sha256 ba7816bf8f01cfea",
        ] {
            assert!(said.contains(line), "{line}: {said}");
        }
        assert!(said.contains("git tag --annotate v1.0.0 --file"), "{said}");
    }

    #[test]
    fn the_log_has_a_section_for_the_version_at_hand() {
        let log = fs::read_to_string(root().join("CHANGELOG.md")).unwrap();
        let told = section(&log, VERSION).unwrap();
        let heads: Vec<&str> = told.text.lines().filter(|line| line.starts_with('#')).collect();
        assert!(
            !heads.is_empty() && heads.iter().all(|head| ["### Added", "### Changed", "### Fixed"].contains(head)),
            "{heads:?}"
        );
    }
}
