//! A browser and its driver.

use std::path::PathBuf;

use anyhow::{Context, Result};
use serde_json::{Value, json};

use super::{install_packages, is_root};
use crate::place::program;

/// Chromium and the driver that speaks WebDriver for it.
pub struct Browser {
    /// Chromium.
    pub browser: PathBuf,
    /// ChromeDriver of the same version.
    pub driver: PathBuf,
    /// What Chromium is started with.
    pub arguments: Vec<&'static str>,
}

impl Browser {
    /// What a WebDriver session is asked for. The driver itself gives each session a new, empty profile.
    pub fn capabilities(&self) -> Value {
        json!({ "goog:chromeOptions": { "binary": self.browser, "args": self.arguments } })
    }
}

/// Finds both programs on `PATH`, installing Debian's packages where this process may.
pub fn ensure() -> Result<Browser> {
    if find().is_none() {
        install_packages(&["chromium", "chromium-driver"], "tests in a browser")?;
    }
    let (browser, driver) = find().context("chromium and chromedriver are not on PATH")?;
    Ok(Browser { browser, driver, arguments: arguments() })
}

fn find() -> Option<(PathBuf, PathBuf)> {
    Some((program("chromium").or_else(|| program("chromium-browser"))?, program("chromedriver")?))
}

fn arguments() -> Vec<&'static str> {
    let mut arguments = vec![
        "--headless",
        "--disable-gpu",
        "--no-first-run",
        // Nothing but the page under test may use the network.
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--disable-quic",
    ];
    if is_root() {
        // Chromium's sandbox refuses to run as root.
        arguments.push("--no-sandbox");
    }
    arguments
}
