//! Form: layout of the code and the compiler's advice.

use std::process::Command;

use anyhow::Result;

use super::{Log, Step};
use crate::setup::targets;

pub const STEPS: &[Step] = &[
    Step { name: "format", after: None, shown: false, run: format },
    Step { name: "lints", after: None, shown: false, run: lints },
    Step { name: "lints for wasm", after: None, shown: false, run: wasm_lints },
    Step { name: "documentation", after: None, shown: false, run: documentation },
];

fn format(log: &mut Log) -> Result<()> {
    log.run(Command::new("cargo").args(["fmt", "--all", "--check"]))
}

fn lints(log: &mut Log) -> Result<()> {
    log.run(Command::new("cargo").args([
        "clippy",
        "--workspace",
        "--all-targets",
        "--all-features",
        "--",
        "--deny",
        "warnings",
    ]))
}

/// The binding has code that only this target compiles. Its benchmark is a native one.
fn wasm_lints(log: &mut Log) -> Result<()> {
    targets::ensure(targets::WASM)?;
    log.run(Command::new("cargo").args([
        "clippy",
        "--package",
        "pintle-web",
        "--lib",
        "--tests",
        "--target",
        targets::WASM,
        "--",
        "--deny",
        "warnings",
    ]))
}

/// The core's documentation, without a link that leads nowhere.
fn documentation(log: &mut Log) -> Result<()> {
    log.run(
        Command::new("cargo")
            .args(["doc", "--package", "pintle-core", "--no-deps"])
            .env("RUSTDOCFLAGS", "--deny warnings"),
    )
}
