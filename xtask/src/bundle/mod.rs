//! From the modules and sheets that people write to the few files a page loads.
//!
//! One script a use (the page, the element, the list of jobs, the search's worker, a shop's own script), what several of them need once,
//! and what is wanted later in files of its own; one sheet for the element and one for paper; and in the page a line for everything that it
//! runs, so that nothing waits for the file that names it. All of it under names that never change meaning ([`crate::names`]); `app/define.js` and
//! `app/jobs/define.js` alone are addresses for hosts to write down, and the pages, the service worker and the data stay where they are.

mod assets;
pub mod notices;
mod pages;
mod preloads;
mod scripts;
mod search;
mod styles;
mod vendored;

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, ensure};

use crate::{place, precache};

/// Bundles and lists the folder that Trunk names in `TRUNK_STAGING_DIR`.
pub fn run() -> Result<()> {
    let folder = precache::staging()?;
    search::run(&folder)?;
    styles::run(&folder)?;
    notices::run(&folder)?;
    vendored::run(&folder)?;
    lay(&folder, &modules())?;
    let mut names = assets::run(&folder)?;
    let chunks = scripts::run(&folder, &mut names)?;
    preloads::run(&folder, &chunks, &names)?;
    pages::run(&folder, &names)?;
    precache::fill(&folder)
}

/// Replaces the one line of a file that the build fills.
fn fill(path: &Path, line: &str, by: &str) -> Result<()> {
    let text = fs::read_to_string(path).with_context(|| format!("no {} among the built files", path.display()))?;
    ensure!(text.matches(line).count() == 1, "{} must have the line `{line}` exactly once", path.display());
    Ok(fs::write(path, text.replacen(line, by, 1))?)
}

/// The page as it was before its scripts were bundled, beside the task runner: tests that ask a module for something find it there.
fn modules() -> PathBuf {
    place::target().join("modules")
}

/// Copies what is loaded of a page.
fn lay(from: &Path, to: &Path) -> Result<()> {
    if to.is_dir() {
        fs::remove_dir_all(to)?;
    }
    for (name, path) in precache::loaded(from)? {
        let copy = to.join(name);
        fs::create_dir_all(copy.parent().context("a file lies in a folder")?)?;
        fs::copy(path, copy)?;
    }
    Ok(())
}
