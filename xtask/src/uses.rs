//! What each use of a built page loads, followed through the files as they travel.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result};

use crate::names::travels_as;
use crate::precache::loaded;

/// The use that the page itself is for.
pub const PAGE: &str = "the page, until its first verdict";
/// The use that a shop's page is for.
pub const ELEMENT: &str = "the element in a host's page, until its first verdict";

/// Fetched by whatever calculates, in one language.
const CALCULATES: [&str; 5] = [
    "app/pintle-calculator.js",
    "pintle-web_bg.wasm",
    "style/element.css",
    "strings/en.json",
    "data/starting-job.json",
];
/// Fetched by the page besides.
const PAGES_OWN: [&str; 5] = ["index.html", "page.css", "app/guard.js", "app/boot.js", "data/operators.json"];

/// Files by use: its name, and what it loads.
pub fn uses(dist: &Path) -> Result<Vec<(&'static str, BTreeSet<String>)>> {
    let mut page = followed(dist, &CALCULATES)?;
    page.extend(followed(dist, &PAGES_OWN)?);
    let mut element = followed(dist, &CALCULATES)?;
    element.extend(followed(dist, &["app/define.js"])?);
    let all = loaded(dist)?.into_iter().map(|(name, _)| name).collect();
    Ok(vec![(PAGE, page), (ELEMENT, element), ("everything, for use without a network", all)])
}

/// Files by the names they are written under, and scripts that these import.
fn followed(dist: &Path, first: &[&str]) -> Result<BTreeSet<String>> {
    let mut found = BTreeSet::new();
    let mut ahead = first.iter().map(|name| travels_as(dist, name)).collect::<Result<Vec<String>>>()?;
    while let Some(name) = ahead.pop() {
        if !found.insert(name.clone()) || !name.ends_with(".js") {
            continue;
        }
        let text = fs::read_to_string(dist.join(&name)).with_context(|| format!("no script {name}"))?;
        let folder = name.rsplit_once('/').map_or("", |(folder, _)| folder);
        for mark in ["from\"", "import\""] {
            let named = text.split(mark).skip(1).filter_map(|rest| rest.split('"').next());
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
            ("app/boot-0123456789.js", "import{a}from\"./words-0123456789.js\";import\"./jobs/define.js\";a();"),
            ("app/words-0123456789.js", "export{a};a(()=>import(`./late.js`));"),
            ("app/late.js", ""),
            ("app/jobs/define.js", "import{a}from\"../core.js\";export{a as Jobs};"),
            ("app/core.js", ""),
            ("page.css", "import\"none\""),
        ] {
            fs::write(folder.path().join(name), text).unwrap();
        }
        let found = followed(folder.path(), &["app/boot.js", "page.css"]).unwrap();
        let wanted =
            ["app/boot-0123456789.js", "app/core.js", "app/jobs/define.js", "app/words-0123456789.js", "page.css"];
        assert_eq!(found, BTreeSet::from(wanted.map(str::to_owned)));
        assert!(followed(folder.path(), &["app/missing.js"]).is_err());
    }
}
