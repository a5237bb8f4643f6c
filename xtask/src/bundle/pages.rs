//! The pages: what they name has the names it travels under.

use std::fs;
use std::path::Path;

use anyhow::{Result, ensure};

use super::assets::Names;
use crate::precache::loaded;

/// Puts the names into the `src` and `href` of every page of a folder.
pub fn run(folder: &Path, names: &Names) -> Result<()> {
    for (page, path) in loaded(folder)? {
        if !page.ends_with(".html") {
            continue;
        }
        let mut text = fs::read_to_string(&path)?;
        for (name, new) in names {
            for attribute in ["src", "href"] {
                text = text.replace(&format!("{attribute}=\"{name}\""), &format!("{attribute}=\"{new}\""));
            }
        }
        for named in addresses(&text) {
            ensure!(folder.join(named).is_file(), "{page} names {named}, which is not there");
        }
        fs::write(path, text)?;
    }
    Ok(())
}

/// Addresses of files that a page names.
fn addresses(page: &str) -> impl Iterator<Item = &str> {
    let named = ["src=\"", "href=\""].into_iter().flat_map(|mark| page.split(mark).skip(1));
    named.filter_map(|rest| rest.split('"').next()).filter(|name| !name.ends_with('/') && !name.starts_with("../"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_names_what_is_there() {
        let folder = tempfile::tempdir().unwrap();
        let page = folder.path().join("index.html");
        let names = Names::from([("app/boot.js".to_owned(), "app/boot-ba7816bf8f.js".to_owned())]);
        fs::write(&page, "<link href=\"./\"><script src=\"app/boot.js\"></script>").unwrap();
        assert!(run(folder.path(), &names).is_err(), "the script is not there");
        fs::create_dir(folder.path().join("app")).unwrap();
        fs::write(folder.path().join("app/boot-ba7816bf8f.js"), "").unwrap();
        run(folder.path(), &names).unwrap();
        let text = fs::read_to_string(page).unwrap();
        assert_eq!(text, "<link href=\"./\"><script src=\"app/boot-ba7816bf8f.js\"></script>");
    }
}
