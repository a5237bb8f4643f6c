//! Running programs, and saying what is done before it is done.

use std::fmt::Display;
use std::process::Command;

use anyhow::{Context, Result, ensure};

/// Says a step of the set-up on its own line.
pub fn say(what: impl Display) {
    println!("== {what}");
}

/// Runs a command with its output on the terminal; an error unless it succeeds.
pub fn run(command: &mut Command) -> Result<()> {
    let status = command.status().with_context(|| format!("could not start {}", line(command)))?;
    ensure!(status.success(), "{} ended with {status}", line(command));
    Ok(())
}

/// Runs a command and returns what it wrote to standard output; an error unless it succeeds.
pub fn read(command: &mut Command) -> Result<String> {
    let output = command.output().with_context(|| format!("could not start {}", line(command)))?;
    let said = String::from_utf8_lossy(&output.stderr);
    ensure!(output.status.success(), "{} ended with {}\n{said}", line(command), output.status);
    Ok(String::from_utf8_lossy(&output.stdout).into_owned())
}

/// The command as one would type it.
pub fn line(command: &Command) -> String {
    let words = std::iter::once(command.get_program()).chain(command.get_args());
    words.map(|word| word.to_string_lossy()).collect::<Vec<_>>().join(" ")
}
