//! Trunk, which builds the page.

use std::path::PathBuf;
use std::process::Command;

use anyhow::Result;

use crate::place::{cache, program};
use crate::shell::{read, run, say};

/// The version that Trunk.toml and the page's links were tried with; 0.22 needs a newer compiler than this workspace asks for.
const VERSION: &str = "0.21.14";

/// The program: of this version on `PATH`, else in the user's cache, where it is built the first time.
pub fn ensure() -> Result<PathBuf> {
    if let Some(found) = program("trunk").filter(is_right_version) {
        return Ok(found);
    }
    let home = cache()?.join(format!("trunk-{VERSION}"));
    let trunk = home.join("bin").join(format!("trunk{}", std::env::consts::EXE_SUFFIX));
    if !trunk.is_file() {
        say(format!("installing Trunk {VERSION} into {} (once, three to six minutes)", home.display()));
        // An unoptimised build takes half the time, and Trunk has little to do.
        run(Command::new("cargo")
            .args(["install", "trunk", "--version", VERSION, "--locked", "--debug"])
            .args(["--no-default-features", "--features", "rustls", "--root"])
            .arg(&home)
            .arg("--target-dir")
            .arg(home.join("build"))
            .env("CARGO_PROFILE_DEV_DEBUG", "0")
            .env_remove("CARGO_TARGET_DIR"))?;
        std::fs::remove_dir_all(home.join("build"))?;
    }
    Ok(trunk)
}

fn is_right_version(trunk: &PathBuf) -> bool {
    read(Command::new(trunk).arg("--version")).is_ok_and(|text| text.trim() == format!("trunk {VERSION}"))
}
