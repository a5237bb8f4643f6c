//! The search's own module: what the worker calculates with, compiled for speed, beside the page's own, compiled for size.

use std::ffi::OsString;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result};

use crate::place;
use crate::setup::{bindgen, targets};
use crate::shell;

/// What its files begin with.
const NAME: &str = "pintle-search";

/// Builds it, and lays it beside the page's own in a folder.
pub fn run(folder: &Path) -> Result<()> {
    let mut cargo = Command::new("cargo");
    cargo.args(["build", "--release", "--offline", "--target", targets::WASM, "--package", "pintle-web", "--lib"]);
    cargo.args(["--no-default-features", "--features", "search"]).current_dir(place::root());
    shell::run(&mut cargo)?;
    let built = place::target().join(targets::WASM).join("release").join("pintle_web.wasm");
    let out: [OsString; 6] =
        ["--target".into(), "web".into(), "--out-name".into(), NAME.into(), "--out-dir".into(), folder.into()];
    bindgen::run(out.into_iter().chain([built.into()])).context("the bindgen step of the search's module failed")
}
