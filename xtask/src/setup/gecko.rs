//! A second engine: Firefox, and the driver that speaks WebDriver for it.

use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result};
use serde_json::{Value, json};

use super::install_packages;
use crate::place::{cache, program};
use crate::shell::{run, say};

/// Debian packages the browser and not its driver; the driver is built from its crate.
const VERSION: &str = "0.37.1";

/// Firefox and its driver.
pub struct Gecko {
    /// Firefox.
    pub browser: PathBuf,
    /// GeckoDriver.
    pub driver: PathBuf,
}

impl Gecko {
    /// What a WebDriver session is asked for. The driver gives each session a new, empty profile.
    pub fn capabilities(&self) -> Value {
        json!({ "browserName": "firefox", "moz:firefoxOptions": { "binary": self.browser, "args": ["-headless"] } })
    }
}

/// Finds both programs, installing Debian's Firefox where this process may and building the driver into the user's cache once.
pub fn ensure() -> Result<Gecko> {
    let find = || program("firefox-esr").or_else(|| program("firefox"));
    if find().is_none() {
        install_packages(&["firefox-esr"], "the run in a second browser")?;
    }
    let browser = find().context("neither firefox-esr nor firefox is on PATH")?;
    if let Some(driver) = program("geckodriver") {
        return Ok(Gecko { browser, driver });
    }
    let home = cache()?.join(format!("geckodriver-{VERSION}"));
    let driver = home.join("bin").join(format!("geckodriver{}", std::env::consts::EXE_SUFFIX));
    if !driver.is_file() {
        say(format!("installing geckodriver {VERSION} into {} (once, some minutes)", home.display()));
        run(Command::new("cargo")
            .args(["install", "geckodriver", "--version", VERSION, "--locked", "--debug", "--root"])
            .arg(&home)
            .arg("--target-dir")
            .arg(home.join("build"))
            .env("CARGO_PROFILE_DEV_DEBUG", "0")
            .env_remove("CARGO_TARGET_DIR"))?;
        std::fs::remove_dir_all(home.join("build"))?;
    }
    Ok(Gecko { browser, driver })
}
