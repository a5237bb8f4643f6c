//! What the page would say of a list of operators, without the page.

use std::path::Path;
use std::process::{Command, ExitCode};

use anyhow::{Context, Result};

/// Hands the list to the native example, whose exit code and words are the answer.
///
/// Run and not linked: a package of the task runner switches on a way of reading numbers that the core does not know.
pub fn check(file: &Path) -> Result<ExitCode> {
    let mut command = Command::new("cargo");
    command.args(["run", "--quiet", "--package", "pintle-core", "--example", "operators", "--"]).arg(file);
    let status = command.status().context("could not start cargo")?;
    Ok(ExitCode::from(status.code().and_then(|code| u8::try_from(code).ok()).unwrap_or(1)))
}
