//! Small pages with the project's own service worker, in as many versions as a test needs.

use std::fs;
use std::path::Path;
use std::process::Command;

use pintle_tests::harness::{Context, Result, setting};

/// Lays version `number` of a small kept page into a folder, over what is there, as a build would: the service worker and the
/// page's part of it are the project's, the list of files is written by the task runner.
pub fn lay(folder: &Path, number: u32) -> Result<()> {
    let fixtures = Path::new(env!("CARGO_MANIFEST_DIR")).join("browser/fixtures/kept");
    let www = Path::new(env!("CARGO_MANIFEST_DIR")).join("../www");
    fs::create_dir_all(folder.join("app"))?;
    fs::copy(fixtures.join("kept.js"), folder.join("kept.js"))?;
    fs::copy(www.join("app/offline.js"), folder.join("app/offline.js"))?;
    fs::copy(www.join("sw.js"), folder.join("sw.js"))?;
    let page = fs::read_to_string(fixtures.join("index.html"))?;
    fs::write(folder.join("index.html"), page.replace("version 1", &format!("version {number}")))?;
    let filled = Command::new(setting::host()?).arg("precache").env("TRUNK_STAGING_DIR", folder).status()?;
    filled.success().then_some(()).context("the task runner could not write the list of files")
}

/// The version shown by the page, as JavaScript.
pub const SHOWN: &str = "document.getElementById('version').textContent";

/// JavaScript that is true once the page has been told that it is kept.
pub const READY: &str = "window.told?.includes('ready') ?? false";

/// JavaScript that is true once the page has been told of a newer version.
pub const UPDATE: &str = "window.told?.includes('update') ?? false";
