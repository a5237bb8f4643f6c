//! Programs that building the page must do without: this program stands in their place, and refuses.

use std::fs;
use std::path::PathBuf;

use anyhow::{Result, bail};

use super::bindgen::lay;
use crate::place::target;

/// What nobody needs who only wants to serve the page.
pub const NAMES: [&str; 3] = ["node", "npm", "npx"];

/// A folder, to be put first on `PATH`, in which those names point at this program.
pub fn ensure() -> Result<PathBuf> {
    let folder = target().join("tools/barred");
    fs::create_dir_all(&folder)?;
    NAMES.iter().try_for_each(|name| lay(&folder, name))?;
    Ok(folder)
}

/// What this program does under one of those names.
pub fn refuse(name: &str) -> Result<()> {
    bail!("the page is built without {name}, so that a fresh clone serves where there is none")
}
