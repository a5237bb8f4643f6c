//! The page: its wasm, its build, its size, and itself in a browser.

use std::env;
use std::process::Command;

use anyhow::Result;

use super::{Log, Step};
use crate::setup::{axe, barred, bindgen, browser, gecko, packages, python, targets};
use crate::{page, place, sizes};

pub const STEPS: &[Step] = &[
    Step { name: "markup", after: None, shown: false, run: validators },
    Step { name: "wasm in the browser", after: None, shown: false, run: wasm_tests },
    Step { name: "page build", after: None, shown: false, run: build },
    Step { name: "sizes", after: Some("page build"), shown: true, run: budget },
    Step { name: "page in the browser", after: Some("page build"), shown: false, run: page_tests },
];

/// HTML and CSS by validators that know nothing of this page.
fn validators(log: &mut Log) -> Result<()> {
    let tools = packages::ensure("tests/markup", "validating HTML and CSS")?;
    log.run(Command::new("node").arg("tests/markup/check.mjs").arg(tools).arg("www"))
}

fn wasm_tests(log: &mut Log) -> Result<()> {
    targets::ensure(targets::WASM)?;
    browser::ensure()?;
    log.run_tests(Command::new("cargo").args([
        "test",
        "--package",
        "pintle-web",
        "--target",
        targets::WASM,
        "--no-fail-fast",
    ]))
}

/// As from a fresh clone on a machine without npm and node: whoever called one would fail.
fn build(log: &mut Log) -> Result<()> {
    let path = page::path_with([barred::ensure()?, bindgen::ensure()?])?;
    log.run(page::build_command()?.env("PATH", path))
}

fn budget(log: &mut Log) -> Result<()> {
    let (table, verdict) = sizes::table(&place::dist())?;
    log.add(&table);
    verdict
}

/// The tests find what they need in the environment: see the harness in `tests/`.
fn page_tests(log: &mut Log) -> Result<()> {
    let browser = browser::ensure()?;
    let axe = axe::ensure()?;
    let gecko = gecko::ensure()?;
    log.run_tests(
        Command::new("cargo")
            .args(["test", "--package", "pintle-tests", "--features", "browser", "--test", "browser"])
            // Two browsers at a time are as many as two cores carry.
            .args(["--", "--test-threads", "2"])
            .env("PINTLE_DIST", place::dist())
            .env("PINTLE_HOST", env::current_exe()?)
            .env("PINTLE_AXE", axe)
            .env("PINTLE_PYTHON", python::ensure()?)
            .env("PINTLE_DRIVER", &browser.driver)
            .env("PINTLE_BROWSER", browser.capabilities().to_string())
            .env("PINTLE_GECKO_DRIVER", &gecko.driver)
            .env("PINTLE_GECKO", gecko.capabilities().to_string()),
    )
}
