//! axe-core, which checks pages for accessibility faults.

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use anyhow::{Result, ensure};
use base64::{Engine, prelude::BASE64_STANDARD};
use sha2::{Digest, Sha512};

use super::install_packages;
use crate::place::{cache, program};
use crate::shell::{run, say};

const VERSION: &str = "4.14.1";
/// The registry's sha512 of the package, read when this version was chosen.
const INTEGRITY: &str = "FHfa+lmNjQZfJz1q8wKqIDwC6DExcHt/pkjNQb09a3NPjCKg2rhu5qb2S4r76ASyFNNtuFooJpZe37OgudVGtQ==";

/// The script to put into a page under test, from the user's cache or, the first time, from the npm registry.
pub fn ensure() -> Result<PathBuf> {
    let home = cache()?.join(format!("axe-core-{VERSION}"));
    let script = home.join("package/axe.min.js");
    if script.is_file() {
        return Ok(script);
    }
    if program("npm").is_none() {
        install_packages(&["npm"], "fetching axe-core")?;
    }
    say(format!("fetching axe-core {VERSION} into {}", home.display()));
    let fresh = home.with_extension("new");
    let _ = fs::remove_dir_all(&fresh);
    fs::create_dir_all(&fresh)?;
    run(Command::new("npm").args(["pack", "--silent", &format!("axe-core@{VERSION}")]).current_dir(&fresh))?;
    let package = fresh.join(format!("axe-core-{VERSION}.tgz"));
    let found = BASE64_STANDARD.encode(Sha512::digest(fs::read(&package)?));
    ensure!(found == INTEGRITY, "axe-core {VERSION} has another content than expected: sha512 {found}");
    run(Command::new("tar").arg("-xzf").arg(&package).arg("-C").arg(&fresh))?;
    let _ = fs::remove_dir_all(&home);
    fs::rename(&fresh, &home)?;
    Ok(script)
}
