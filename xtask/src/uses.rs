//! What each use of a built page loads, followed through the files as they travel.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result};

use crate::precache::loaded;

/// The use that the page itself is for.
pub const PAGE: &str = "the page, until its first verdict";

/// Fetched by whatever calculates, in one language.
const CALCULATES: [&str; 4] = ["pintle-web_bg.wasm", "style/element.css", "strings/en.json", "data/starting-job.json"];

/// Files by use: its name, and what it loads.
pub fn uses(dist: &Path) -> Result<Vec<(&'static str, BTreeSet<String>)>> {
    let started = || CALCULATES.map(str::to_owned);
    let mut page = scripts(dist, "app/boot.js")?;
    page.extend(started());
    page.extend(["index.html", "page.css", "app/guard.js", "data/operators.json"].map(str::to_owned));
    let mut element = scripts(dist, "app/define.js")?;
    element.extend(started());
    let all = loaded(dist)?.into_iter().map(|(name, _)| name).collect();
    Ok(vec![
        (PAGE, page),
        ("the element in a host's page, until its first verdict", element),
        ("everything, for use without a network", all),
    ])
}

/// A script, those it imports, and those that the registration of the element asks for at once.
fn scripts(dist: &Path, first: &str) -> Result<BTreeSet<String>> {
    let mut found = BTreeSet::new();
    let mut ahead = vec![first.to_owned()];
    while let Some(name) = ahead.pop() {
        if !found.insert(name.clone()) {
            continue;
        }
        let text = fs::read_to_string(dist.join(&name)).with_context(|| format!("no script {name}"))?;
        let folder = name.rsplit_once('/').map_or("", |(folder, _)| folder);
        let asked: &[&str] = if name == "app/define.js" { &["import(`", "import(\""] } else { &[] };
        for mark in ["from\"", "import\""].iter().chain(asked) {
            let named = text.split(mark).skip(1).filter_map(|rest| rest.split(['"', '`']).next());
            ahead.extend(named.filter_map(|path| below(folder, path)));
        }
    }
    Ok(found)
}

/// A relative address as a name below the page's folder.
fn below(folder: &str, path: &str) -> Option<String> {
    match path.strip_prefix("./") {
        Some(beside) => Some(format!("{folder}/{beside}")),
        None => Some(format!("{}/{}", folder.rsplit_once('/')?.0, path.strip_prefix("../")?)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scripts_are_followed_and_what_is_asked_for_later_is_not() {
        let folder = tempfile::tempdir().unwrap();
        fs::create_dir_all(folder.path().join("app/jobs")).unwrap();
        for (name, text) in [
            ("app/boot.js", "import{a}from\"./words.js\";import\"./define.js\";import\"./jobs/define.js\";a();"),
            ("app/define.js", "import(`./calculator.js`).then(a=>a);"),
            ("app/calculator.js", "import{a}from\"./words.js\";a(()=>import(`./late.js`));"),
            ("app/words.js", "export{a};"),
            ("app/late.js", ""),
            ("app/jobs/define.js", "import{a}from\"../core.js\";export{a as Jobs};"),
            ("app/core.js", ""),
        ] {
            fs::write(folder.path().join(name), text).unwrap();
        }
        let page =
            ["app/boot.js", "app/calculator.js", "app/core.js", "app/define.js", "app/jobs/define.js", "app/words.js"];
        assert_eq!(scripts(folder.path(), "app/boot.js").unwrap(), BTreeSet::from(page.map(str::to_owned)));
        let element = ["app/calculator.js", "app/define.js", "app/words.js"];
        assert_eq!(scripts(folder.path(), "app/define.js").unwrap(), BTreeSet::from(element.map(str::to_owned)));
        assert!(scripts(folder.path(), "app/missing.js").is_err());
    }
}
