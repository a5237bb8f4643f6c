//! What scripts and pages fetch and does not fetch anything itself: given names that hold its hash.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use anyhow::Result;

use crate::names::hashed;
use crate::precache::loaded;

/// Names as they are written, and as they travel.
pub type Names = BTreeMap<String, String>;

/// Renames the core, the sheets and the words of a page, with what lies beside them for developers; says how.
pub fn run(folder: &Path) -> Result<Names> {
    let mut names = Names::new();
    for (name, path) in loaded(folder)? {
        let is_one = [".wasm", ".css"].iter().any(|end| name.ends_with(end)) || name.starts_with("strings/");
        if !is_one {
            continue;
        }
        let content = fs::read(&path)?;
        let new = hashed(&name, &content);
        if name.ends_with(".css") {
            let map = format!("{new}.map");
            fs::rename(path.with_extension("css.map"), folder.join(&map))?;
            let text = String::from_utf8(content)?;
            let short = map.rsplit('/').next().unwrap_or(&map);
            fs::write(folder.join(&new), format!("{text}\n/*# sourceMappingURL={short} */\n"))?;
            fs::remove_file(path)?;
        } else {
            fs::rename(path, folder.join(&new))?;
        }
        names.insert(name, new);
    }
    Ok(names)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_fetched_has_its_hash_in_its_name() {
        let folder = tempfile::tempdir().unwrap();
        for (name, text) in [
            ("core.wasm", "abc"),
            ("style/part.css", "abc"),
            ("style/part.css.map", "{}"),
            ("strings/en.json", "abc"),
            ("data/list.json", "abc"),
            ("index.html", "abc"),
        ] {
            let path = folder.path().join(name);
            fs::create_dir_all(path.parent().unwrap()).unwrap();
            fs::write(path, text).unwrap();
        }
        let names = run(folder.path()).unwrap();
        // The hash of "abc": FIPS 180-4.
        assert_eq!(names["core.wasm"], "core-ba7816bf8f.wasm");
        assert_eq!(names["style/part.css"], "style/part-ba7816bf8f.css");
        assert_eq!(names["strings/en.json"], "strings/en-ba7816bf8f.json");
        assert_eq!(names.len(), 3, "data and pages stay where they are");
        let found: Vec<String> = loaded(folder.path()).unwrap().into_iter().map(|(name, _)| name).collect();
        assert_eq!(
            found,
            [
                "core-ba7816bf8f.wasm",
                "data/list.json",
                "index.html",
                "strings/en-ba7816bf8f.json",
                "style/part-ba7816bf8f.css"
            ]
        );
        assert!(folder.path().join("style/part-ba7816bf8f.css.map").is_file());
        let sheet = fs::read_to_string(folder.path().join("style/part-ba7816bf8f.css")).unwrap();
        assert!(sheet.contains("sourceMappingURL=part-ba7816bf8f.css.map"), "{sheet}");
    }
}
