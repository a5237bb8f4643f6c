//! What the commands install: pinned, said before it is done, cached, and never twice.

pub mod axe;
pub mod barred;
pub mod bindgen;
pub mod browser;
pub mod gecko;
pub mod packages;
pub mod python;
pub mod targets;
pub mod trunk;

use std::process::Command;

use anyhow::{Result, bail};

use crate::place::program;
use crate::shell::{read, run, say};

/// Installs Debian packages where this process may, else names the line that does.
fn install_packages(names: &[&str], what_for: &str) -> Result<()> {
    let packages = names.join(" ");
    if program("apt-get").is_none() {
        bail!("{what_for} needs {packages}: install them so that they are on PATH");
    }
    if !is_root() {
        bail!("{what_for} needs Debian packages; this line installs them:\n    sudo apt-get install -y {packages}");
    }
    say(format!("installing the Debian packages {packages}, for {what_for}"));
    run(Command::new("apt-get").args(["update", "--quiet"]))?;
    run(Command::new("apt-get")
        .args(["install", "--quiet", "--yes", "--no-install-recommends"])
        .args(names)
        .env("DEBIAN_FRONTEND", "noninteractive"))
}

/// Whether this process runs as root. Where there is no `id`, it does not.
pub fn is_root() -> bool {
    read(Command::new("id").arg("-u")).is_ok_and(|id| id.trim() == "0")
}
