//! Building the page with Trunk.

use std::env;
use std::ffi::OsString;
use std::path::PathBuf;
use std::process::Command;

use anyhow::Result;

use crate::setup::{bindgen, targets, trunk};
use crate::shell::{run, say};
use crate::{place, setup};

/// Sets up and builds the page into `dist/`.
pub fn build() -> Result<()> {
    let mut command = build_command()?;
    say("building the page into dist/ with Trunk");
    run(&mut command)
}

/// Sets up and returns the command that builds the page.
pub fn build_command() -> Result<Command> {
    let mut command = trunk_command()?;
    // Everything is at hand: a download from here on would be a mistake.
    command.args(["build", "--release", "--offline"]);
    // Trunk reads this as a yes-or-no of its own and stops at any other word.
    command.env_remove("NO_COLOR");
    Ok(command)
}

/// Sets up and runs Trunk with arguments of its own.
pub fn trunk(arguments: &[String]) -> Result<()> {
    run(trunk_command()?.args(arguments))
}

fn trunk_command() -> Result<Command> {
    setup::targets::ensure(targets::WASM)?;
    let trunk = trunk::ensure()?;
    let tools = bindgen::ensure()?;
    // `--offline` reaches Cargo too, so what it needs is fetched first.
    run(Command::new("cargo").args(["fetch", "--quiet", "--locked"]).current_dir(place::root()))?;
    let mut command = Command::new(trunk);
    command.current_dir(place::root()).env("PATH", path_with([tools])?);
    Ok(command)
}

/// What `PATH` is with folders before all others.
pub fn path_with(folders: impl IntoIterator<Item = PathBuf>) -> Result<OsString> {
    let rest = env::var_os("PATH").unwrap_or_default();
    Ok(env::join_paths(folders.into_iter().chain(env::split_paths(&rest)))?)
}
