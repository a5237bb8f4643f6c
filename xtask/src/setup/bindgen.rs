//! The bindgen step and the test runner for wasm: this program under their names.

use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::{env, fs};

use anyhow::{Context, Result};

use super::browser;
use crate::place::target;
use crate::shell;

/// The name under which Trunk looks for the bindgen step.
pub const BINDGEN: &str = "wasm-bindgen";
/// The name of the runner that executes wasm test modules.
pub const TEST_RUNNER: &str = "wasm-bindgen-test-runner";

/// A folder, to be put on `PATH`, in which both names point at this program.
pub fn ensure() -> Result<PathBuf> {
    let folder = target().join("tools");
    fs::create_dir_all(&folder)?;
    for name in [BINDGEN, TEST_RUNNER] {
        lay(&folder, name).with_context(|| format!("could not lay {name} in {}", folder.display()))?;
    }
    Ok(folder)
}

/// The bindgen step with arguments of its own. Function names are a tenth of what the page would load, and nobody reads them there.
pub fn run(arguments: impl IntoIterator<Item = OsString>) -> Result<()> {
    let arguments = [BINDGEN.into()].into_iter().chain(arguments).chain(["--remove-name-section".into()]);
    wasm_bindgen_cli::wasm_bindgen::run_cli_with_args(arguments)
}

/// Runs a wasm test module in headless Chromium; the arguments are those Cargo gives to a runner.
pub fn run_tests(arguments: &[String]) -> Result<()> {
    let tools = ensure()?;
    let browser = browser::ensure()?;
    let capabilities = tools.join("webdriver.json");
    fs::write(&capabilities, browser.capabilities().to_string())?;
    shell::run(
        Command::new(tools.join(TEST_RUNNER))
            .args(arguments)
            .env("CHROMEDRIVER", &browser.driver)
            .env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", &capabilities)
            .env("WASM_BINDGEN_USE_BROWSER", "1")
            // A busy machine may take long to start a browser; the tests themselves are short.
            .env("WASM_BINDGEN_TEST_DRIVER_TIMEOUT", "60")
            .env("WASM_BINDGEN_TEST_TIMEOUT", "180"),
    )
}

/// Replaces a link in one step, so that a process that reads it at the same time finds the old or the new one.
#[cfg(unix)]
pub(super) fn lay(folder: &Path, name: &str) -> Result<()> {
    let fresh = folder.join(format!("{name}.{}", std::process::id()));
    std::os::unix::fs::symlink(env::current_exe()?, &fresh)?;
    Ok(fs::rename(&fresh, folder.join(name))?)
}

/// Without links that need no privilege, a copy.
#[cfg(not(unix))]
pub(super) fn lay(folder: &Path, name: &str) -> Result<()> {
    fs::copy(env::current_exe()?, folder.join(format!("{name}{}", env::consts::EXE_SUFFIX)))?;
    Ok(())
}
