//! Tests without a browser.

use std::process::Command;

use anyhow::Result;

use super::{Log, Step};
use crate::place::target;
use crate::setup::{python, targets};

pub const STEPS: &[Step] = &[
    Step { name: "native tests", after: None, shown: false, run: tests },
    Step { name: "task runner's tests", after: None, shown: false, run: own_tests },
    Step { name: "independent engines", after: None, shown: false, run: engines },
    Step { name: "global optimiser", after: None, shown: true, run: optimiser },
    Step { name: "proof against the tape", after: None, shown: false, run: tape_proof },
    Step { name: "bare-metal build", after: None, shown: false, run: bare_metal },
    Step { name: "package of the core", after: None, shown: false, run: package },
];

/// Without the task runner: its bindgen library would switch on features of shared crates, and all would be built twice.
fn tests(log: &mut Log) -> Result<()> {
    log.run_tests(
        Command::new("cargo")
            .args(["test", "--workspace", "--exclude", "xtask", "--no-fail-fast"])
            // The same random jobs every time: a landing must not hang on a draw. Plain `cargo test` draws anew.
            .env("PROPTEST_RNG_SEED", "1"),
    )
}

fn own_tests(log: &mut Log) -> Result<()> {
    log.run_tests(Command::new("cargo").args(["test", "--package", "xtask"]))
}

/// Section tables and an equilibrium solver in Python against the native example.
fn engines(log: &mut Log) -> Result<()> {
    let python = python::ensure()?;
    log.run(Command::new("cargo").args(["build", "--package", "pintle-core", "--example", "plan"]))?;
    let example = target().join("debug/examples").join(format!("plan{}", std::env::consts::EXE_SUFFIX));
    log.run(Command::new(python).arg("tests/python/run.py").arg(example))
}

/// SciPy's differential evolution and a plain NumPy map against the search, on one site; what they cost beside ours is printed.
fn optimiser(log: &mut Log) -> Result<()> {
    let python = python::ensure()?;
    log.run(Command::new("cargo").args([
        "build",
        "--package",
        "pintle-core",
        "--example",
        "setout",
        "--example",
        "map",
    ]))?;
    let example = |name: &str| target().join("debug/examples").join(format!("{name}{}", std::env::consts::EXE_SUFFIX));
    log.run(Command::new(python).arg("tests/python/setout.py").args([example("setout"), example("map")]))
}

/// Every answer that tape errors have to leave working, set at all 64 corners of them by the oracle's mechanics.
fn tape_proof(log: &mut Log) -> Result<()> {
    let python = python::ensure()?;
    log.run(Command::new("cargo").args(["build", "--package", "pintle-core", "--example", "setout"]))?;
    let example = target().join("debug/examples").join(format!("setout{}", std::env::consts::EXE_SUFFIX));
    log.run(Command::new(python).arg("tests/python/proof.py").arg(example))
}

/// Proves that the core stands without an operating system and without the standard library.
fn bare_metal(log: &mut Log) -> Result<()> {
    targets::ensure(targets::BARE_METAL)?;
    log.run(Command::new("cargo").args([
        "build",
        "--package",
        "pintle-core",
        "--no-default-features",
        "--target",
        targets::BARE_METAL,
    ]))
}

/// Packs the core as a registry would take it, and builds what was packed.
fn package(log: &mut Log) -> Result<()> {
    // A person tries this before the last commit, too; what is packed is the tree as it stands.
    log.run(Command::new("cargo").args(["package", "--package", "pintle-core", "--allow-dirty"]))
}
