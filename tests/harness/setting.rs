//! What the task runner says through the environment. Nothing here has a default: a test that looked at another page or
//! another browser than the one meant would be worth nothing.

use std::env;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use serde_json::Value;

/// The built page.
pub fn dist() -> Result<PathBuf> {
    path("PINTLE_DIST")
}

/// The page as it was before its scripts were bundled, for tests that ask a module for something: the task runner leaves it beside itself.
pub fn modules() -> Result<PathBuf> {
    let host = host()?;
    let target = host.parent().and_then(Path::parent).context("the task runner lies in a target folder")?;
    Ok(target.join("modules"))
}

/// The name under which a file of the built page travels: `app/worker.js` as `app/worker-0123456789.js`.
///
/// # Errors
/// If there is no such file.
pub fn travels_as(name: &str) -> Result<String> {
    let (stem, end) = name.rsplit_once('.').context("a file's name has an ending")?;
    let (folder, stem) = stem.rsplit_once('/').unwrap_or(("", stem));
    for entry in std::fs::read_dir(dist()?.join(folder))? {
        let found = entry?.file_name().into_string().ok().context("a built file's name is not Unicode")?;
        let hash =
            found.strip_prefix(stem).and_then(|rest| rest.strip_suffix(end)).map(|hash| hash.trim_end_matches('.'));
        if hash.is_some_and(|hash| hash.is_empty() || (hash.starts_with('-') && hash.len() == 11)) {
            return Ok(if folder.is_empty() { found } else { format!("{folder}/{found}") });
        }
    }
    anyhow::bail!("there is no {name} in the built page")
}

/// The program whose task `host` serves a folder.
pub fn host() -> Result<PathBuf> {
    path("PINTLE_HOST")
}

/// The script of axe-core.
pub fn axe() -> Result<PathBuf> {
    path("PINTLE_AXE")
}

/// The Python that reads what was printed.
pub fn python() -> Result<PathBuf> {
    path("PINTLE_PYTHON")
}

/// The program that speaks WebDriver.
pub fn driver() -> Result<PathBuf> {
    path("PINTLE_DRIVER")
}

/// The capabilities that a session asks the driver for: where the browser is and what it is started with.
pub fn capabilities() -> Result<Value> {
    Ok(serde_json::from_str(&text("PINTLE_BROWSER")?)?)
}

/// The program that speaks WebDriver for the second engine, and its capabilities.
pub fn gecko() -> Result<(PathBuf, Value)> {
    Ok((path("PINTLE_GECKO_DRIVER")?, serde_json::from_str(&text("PINTLE_GECKO")?)?))
}

fn path(name: &str) -> Result<PathBuf> {
    Ok(text(name)?.into())
}

fn text(name: &str) -> Result<String> {
    env::var(name).with_context(|| format!("{name} is not set: `cargo xtask test page` runs these tests"))
}
