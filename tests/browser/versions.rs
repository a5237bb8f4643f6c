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

/// The version the core of the built page says.
pub const CORE: &str = env!("CARGO_PKG_VERSION");

/// One of the same length, as a later build might say.
pub fn newer() -> String {
    format!("{}x", &CORE[..CORE.len() - 1])
}

/// Lays a whole build of the real page into a folder, over what is there: the built one, with a core of another version and a service
/// worker that `worker` may have changed.
pub fn lay_page(folder: &Path, version: &str, worker: impl FnOnce(String) -> String) -> Result<()> {
    if folder.is_dir() {
        fs::remove_dir_all(folder)?;
    }
    copy(&setting::dist()?, folder)?;
    let www = Path::new(env!("CARGO_MANIFEST_DIR")).join("../www");
    fs::write(folder.join("sw.js"), worker(fs::read_to_string(www.join("sw.js"))?))?;
    let wasm = folder.join(setting::travels_as("pintle-web_bg.wasm")?);
    let mut bytes = fs::read(&wasm)?;
    let places: Vec<usize> = (0..bytes.len()).filter(|&at| bytes[at..].starts_with(CORE.as_bytes())).collect();
    (!places.is_empty() && version.len() == CORE.len()).then_some(()).context("no version in the core to replace")?;
    places.into_iter().for_each(|at| bytes[at..at + version.len()].copy_from_slice(version.as_bytes()));
    fs::write(&wasm, bytes)?;
    if version != CORE {
        rename_changed(folder)?;
    }
    let filled = Command::new(setting::host()?).arg("precache").env("TRUNK_STAGING_DIR", folder).status()?;
    filled.success().then_some(()).context("the task runner could not write the list of files")
}

/// Another core has another hash in its name, and so has every script that leads to it: the words and styles stay as they are.
fn rename_changed(folder: &Path) -> Result<()> {
    let mut names = Vec::new();
    for part in [folder.to_owned(), folder.join("app")] {
        for entry in fs::read_dir(part)? {
            let path = entry?.path();
            let name = path.file_name().and_then(|name| name.to_str()).context("a name")?.to_owned();
            let hash =
                name.split('.').next().and_then(|stem| stem.rsplit_once('-')).map_or("", |(_, hash)| hash).to_owned();
            let is_changed = [".js", ".wasm", ".js.map"].iter().any(|end| name.ends_with(end));
            if is_changed && hash.len() == 10 && hash.bytes().all(|byte| byte.is_ascii_hexdigit()) {
                let other: String = hash.chars().rev().collect();
                let other = if other == hash { hash.replace(|_| true, "0") } else { other };
                fs::rename(&path, path.with_file_name(name.replace(&hash, &other)))?;
                names.push((hash, other));
            }
        }
    }
    for part in [folder.to_owned(), folder.join("app"), folder.join("app/jobs")] {
        for entry in fs::read_dir(part)? {
            let path = entry?.path();
            if [".js", ".html"].iter().any(|end| path.to_string_lossy().ends_with(end)) {
                let text = fs::read_to_string(&path)?;
                fs::write(&path, names.iter().fold(text, |text, (hash, other)| text.replace(hash, other)))?;
            }
        }
    }
    Ok(())
}

fn copy(from: &Path, to: &Path) -> Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy(&entry.path(), &target)?;
        } else {
            fs::copy(entry.path(), &target)?;
        }
    }
    Ok(())
}

/// The version shown by the page, as JavaScript.
pub const SHOWN: &str = "document.getElementById('version').textContent";

/// JavaScript that is true once the page has been told that it is kept.
pub const READY: &str = "window.told?.includes('ready') ?? false";

/// JavaScript that is true once the page has been told of a newer version.
pub const UPDATE: &str = "window.told?.includes('update') ?? false";
