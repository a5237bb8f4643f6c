//! Writing the list of files into the service worker, once they are as they travel.
//!
//! The worker keeps exactly the files of one build: each is listed with its hash, and the hash of the list is the version. A
//! build with the same contents has the same version, so a visitor is asked about an update only when something changed.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, ensure};
use base64::{Engine, prelude::BASE64_STANDARD};
use serde_json::{Map, Value};
use sha2::{Digest, Sha256};

/// The worker's file, which is never in its own list.
pub const WORKER: &str = "sw.js";
/// The lines of the template that are replaced.
const VERSION_LINE: &str = "const VERSION = 'unbuilt';";
const FILES_LINE: &str = "const FILES = {};";

/// Lists the folder that Trunk names.
pub fn run() -> Result<()> {
    fill(&staging()?)
}

/// The folder in which Trunk puts a page together.
pub fn staging() -> Result<PathBuf> {
    let folder =
        std::env::var_os("TRUNK_STAGING_DIR").context("TRUNK_STAGING_DIR is not set: Trunk calls this task")?;
    Ok(folder.into())
}

/// Fills the template in a folder with the folder's other files.
pub fn fill(folder: &Path) -> Result<()> {
    let mut files = Map::new();
    let mut all = Sha256::new();
    for (name, path) in loaded(folder)? {
        if name == WORKER {
            continue;
        }
        let hash = format!("sha256-{}", BASE64_STANDARD.encode(Sha256::digest(fs::read(&path)?)));
        all.update(format!("{name} {hash}\n"));
        // The page is kept under the address it is opened by, so that what was fetched by a visit is not fetched again.
        let address = if name == "index.html" { "./".to_owned() } else { name };
        files.insert(address, Value::String(hash));
    }
    let worker = folder.join(WORKER);
    let template = fs::read_to_string(&worker).with_context(|| format!("no {WORKER} among the built files"))?;
    // The worker's own text belongs to the version: a mended worker is a new one.
    all.update(&template);
    let version: String = all.finalize().iter().take(6).map(|byte| format!("{byte:02x}")).collect();
    let text = replace(&template, VERSION_LINE, &format!("const VERSION = '{version}';"))?;
    let text = replace(&text, FILES_LINE, &format!("const FILES = {};", serde_json::to_string_pretty(&files)?))?;
    Ok(fs::write(&worker, text)?)
}

fn replace(text: &str, line: &str, by: &str) -> Result<String> {
    ensure!(text.matches(line).count() == 1, "{WORKER} must have the line `{line}` exactly once");
    Ok(text.replacen(line, by, 1))
}

/// The files of a built page that a browser loads, by their names, in order: not the type descriptions, source maps and
/// descriptions, which are there for developers, nor what Trunk hides in `.stage` while it builds.
pub fn loaded(folder: &Path) -> Result<Vec<(String, PathBuf)>> {
    let named = files_below(folder)?.into_iter().map(|path| Ok((name_below(folder, &path)?, path)));
    let mut files = named.collect::<Result<Vec<_>>>()?;
    files.retain(|(name, _)| ![".d.ts", ".map", ".md"].iter().any(|end| name.ends_with(end)) && !name.starts_with('.'));
    files.sort();
    Ok(files)
}

fn files_below(folder: &Path) -> Result<Vec<PathBuf>> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).with_context(|| format!("cannot list {}", folder.display()))? {
        let path = entry?.path();
        if path.is_dir() { found.extend(files_below(&path)?) } else { found.push(path) }
    }
    Ok(found)
}

/// A file's name as an address below the folder: with slashes, whatever the system uses.
fn name_below(folder: &Path, file: &Path) -> Result<String> {
    let parts = file.strip_prefix(folder)?.components().map(|part| part.as_os_str().to_str());
    Ok(parts.collect::<Option<Vec<_>>>().context("a built file's name is not Unicode")?.join("/"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn build(files: &[(&str, &str)]) -> tempfile::TempDir {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join(WORKER), format!("{VERSION_LINE}\n{FILES_LINE}\n")).unwrap();
        for (name, text) in files {
            let path = folder.path().join(name);
            fs::create_dir_all(path.parent().unwrap()).unwrap();
            fs::write(path, text).unwrap();
        }
        folder
    }

    fn filled(files: &[(&str, &str)]) -> String {
        let folder = build(files);
        fill(folder.path()).unwrap();
        fs::read_to_string(folder.path().join(WORKER)).unwrap()
    }

    /// The hash of "abc" is the first example of FIPS 180-4 as published by NIST ("SHA-256 examples").
    #[test]
    fn lists_each_file_with_its_hash() {
        let text = filled(&[("app/part.js", "abc")]);
        assert!(text.contains(r#""app/part.js": "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=""#), "{text}");
        assert!(!text.contains(r#""sw.js""#));
        assert_eq!(
            text,
            filled(&[
                ("app/part.js", "abc"),
                ("app/part.d.ts", "export {};"),
                ("app/part.js.map", "{}"),
                (".stage/x.js", "")
            ])
        );
    }

    #[test]
    fn version_follows_contents_and_names_only() {
        let first = filled(&[("a.js", "1"), ("b.js", "2")]);
        assert_eq!(first, filled(&[("b.js", "2"), ("a.js", "1")]));
        for other in [[("a.js", "1"), ("b.js", "3")], [("a.js", "1"), ("c.js", "2")]] {
            assert_ne!(first.lines().next(), filled(&other).lines().next());
        }
    }

    #[test]
    fn a_worker_without_the_lines_is_an_error() {
        let folder = build(&[]);
        fs::write(folder.path().join(WORKER), "self.addEventListener('fetch', () => {});").unwrap();
        assert!(fill(folder.path()).is_err());
    }
}
