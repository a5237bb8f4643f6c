//! From the modules and sheets that people write to the few files a page loads.
//!
//! One script a use (the page, the element, the list of jobs, the search's worker, a shop's own script), what several of them need once,
//! and what is wanted later in files of its own; one sheet for the element and one for paper; and in the page a line for everything that it
//! runs, so that nothing waits for the file that names it.

mod preloads;
mod scripts;
mod styles;

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::{place, precache};

/// Bundles and lists the folder that Trunk names in `TRUNK_STAGING_DIR`.
pub fn run() -> Result<()> {
    let folder = precache::staging()?;
    styles::run(&folder)?;
    lay(&folder, &modules())?;
    let chunks = scripts::run(&folder)?;
    preloads::run(&folder, &chunks)?;
    precache::fill(&folder)
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
