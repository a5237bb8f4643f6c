//! Packages of the npm registry that judge the page: what the lock file of a folder pins by content.

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use anyhow::Result;
use sha2::{Digest, Sha256};

use super::install_packages;
use crate::place::{cache, program, root};
use crate::shell::{run, say};

/// A folder with the packages that a folder's lock file pins, from the user's cache or, the first time, from npm, which holds each to
/// its hash. It is named by the lock file's hash, so that a changed pin makes a new one.
pub fn ensure(pinned: &str, what_for: &str) -> Result<PathBuf> {
    let pins = root().join(pinned);
    let hash = Sha256::digest(fs::read(pins.join("package-lock.json"))?);
    let name: String = hash.iter().take(6).map(|byte| format!("{byte:02x}")).collect();
    let home = cache()?.join(format!("{}-{name}", pinned.rsplit('/').next().unwrap_or(pinned)));
    if program("npm").is_none() || program("node").is_none() {
        install_packages(&["nodejs", "npm"], what_for)?;
    }
    if home.is_dir() {
        return Ok(home);
    }
    say(format!("installing the packages of {pinned}/package.json into {}", home.display()));
    let fresh = home.with_extension("new");
    let _ = fs::remove_dir_all(&fresh);
    fs::create_dir_all(&fresh)?;
    for file in ["package.json", "package-lock.json"] {
        fs::copy(pins.join(file), fresh.join(file))?;
    }
    run(Command::new("npm")
        .args(["ci", "--ignore-scripts", "--silent", "--no-audit", "--no-fund"])
        .current_dir(&fresh))?;
    fs::rename(&fresh, &home)?;
    Ok(home)
}
