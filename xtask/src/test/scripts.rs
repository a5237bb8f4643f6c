//! The page's scripts: their types against the contract's and the binding's, lints, and the modules that need no browser.

use std::fs;
use std::process::Command;

use anyhow::Result;

use super::{Log, Step};
use crate::place::root;
use crate::setup::packages;

pub const STEPS: &[Step] = &[
    Step { name: "scripts' lints", after: None, shown: false, run: lints },
    Step { name: "scripts' units", after: None, shown: false, run: units },
    // The build writes what the binding declares.
    Step { name: "scripts' types", after: Some("page build"), shown: false, run: types },
];

fn lints(log: &mut Log) -> Result<()> {
    check(log, "lints")
}

fn types(log: &mut Log) -> Result<()> {
    check(log, "types")
}

fn check(log: &mut Log, what: &str) -> Result<()> {
    let tools = packages::ensure(FOLDER, WHAT_FOR)?;
    log.run(Command::new("node").arg(format!("{FOLDER}/check.mjs")).arg(tools).arg(what))
}

fn units(log: &mut Log) -> Result<()> {
    // Only for the program that runs them.
    packages::ensure(FOLDER, WHAT_FOR)?;
    let mut files =
        fs::read_dir(root().join(FOLDER).join("units"))?.map(|entry| Ok(entry?.path())).collect::<Result<Vec<_>>>()?;
    files.sort();
    log.run_tests(Command::new("node").args(["--test", "--test-reporter=tap"]).args(files))
}

const FOLDER: &str = "tests/scripts";
const WHAT_FOR: &str = "checking the page's scripts";
