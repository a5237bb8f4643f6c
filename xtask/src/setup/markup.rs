//! The validators of HTML and CSS that `tests/markup` pins.

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use anyhow::Result;
use sha2::{Digest, Sha256};

use super::install_packages;
use crate::place::{cache, program, root};
use crate::shell::{run, say};

/// A folder with the validators, from the user's cache or, the first time, as the lock file pins them by content. It is named by that
/// file's hash, so that a changed pin makes a new one.
pub fn ensure() -> Result<PathBuf> {
    let pins = root().join("tests/markup");
    let hash = Sha256::digest(fs::read(pins.join("package-lock.json"))?);
    let name: String = hash.iter().take(6).map(|byte| format!("{byte:02x}")).collect();
    let home = cache()?.join(format!("markup-{name}"));
    if home.is_dir() {
        return Ok(home);
    }
    if program("npm").is_none() || program("node").is_none() {
        install_packages(&["nodejs", "npm"], "validating HTML and CSS")?;
    }
    say(format!("installing the packages of tests/markup/package.json into {}", home.display()));
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
