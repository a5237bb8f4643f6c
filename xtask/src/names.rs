//! Names that never change meaning: a file's name holds a hash of what is in it, so that a browser may keep it for ever.
//!
//! `app/boot.js` travels as `app/boot-0123456789.js`. What a host or a person writes down, and what a browser asks for by itself, has no
//! hash and is asked about each time.

use std::path::Path;

use anyhow::{Context, Result};
use sha2::{Digest, Sha256};

use crate::precache::loaded;

/// Characters of the hash in a name: sixteen to the tenth names for one file.
pub const LENGTH: usize = 10;

/// A name with the hash of a content.
pub fn hashed(name: &str, content: &[u8]) -> String {
    let hash: String = Sha256::digest(content).iter().take(LENGTH / 2).map(|byte| format!("{byte:02x}")).collect();
    match name.rsplit_once('.') {
        Some((stem, end)) => format!("{stem}-{hash}.{end}"),
        None => format!("{name}-{hash}"),
    }
}

/// A name without its hash; `None` where it has none.
pub fn plain(name: &str) -> Option<String> {
    let (stem, end) = name.rsplit_once('.')?;
    let (plain, hash) = stem.rsplit_once('-')?;
    let is_hash = hash.len() == LENGTH && hash.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'));
    is_hash.then(|| format!("{plain}.{end}"))
}

/// The name under which a file of a built page travels.
pub fn travels_as(folder: &Path, name: &str) -> Result<String> {
    let mut names = loaded(folder)?.into_iter().map(|(found, _)| found);
    names
        .find(|found| found == name || plain(found).as_deref() == Some(name))
        .with_context(|| format!("there is no {name} among the built files"))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The hash of "abc" is the first example of FIPS 180-4 as published by NIST ("SHA-256 examples"): BA7816BF 8F01CFEA …
    #[test]
    fn a_name_holds_the_hash_of_the_content() {
        assert_eq!(hashed("app/part.js", b"abc"), "app/part-ba7816bf8f.js");
        assert_eq!(hashed("style/a.b.css", b"abc"), "style/a.b-ba7816bf8f.css");
        assert_eq!(hashed("LICENCE", b"abc"), "LICENCE-ba7816bf8f");
    }

    #[test]
    fn a_name_without_a_hash_is_told_from_one_that_has_it() {
        assert_eq!(plain("app/part-ba7816bf8f.js").as_deref(), Some("app/part.js"));
        for name in [
            "app/part.js",
            "app/pintle-calculator.js",
            "icons/pintle-192.png",
            "a-ba7816bf8.js",
            "a-BA7816BF8F.js",
            "a",
        ] {
            assert_eq!(plain(name), None, "{name}");
        }
    }

    #[test]
    fn a_file_is_found_by_its_plain_name() {
        let folder = tempfile::tempdir().unwrap();
        std::fs::create_dir(folder.path().join("app")).unwrap();
        for name in ["index.html", "app/part-ba7816bf8f.js"] {
            std::fs::write(folder.path().join(name), "").unwrap();
        }
        assert_eq!(travels_as(folder.path(), "app/part.js").unwrap(), "app/part-ba7816bf8f.js");
        assert_eq!(travels_as(folder.path(), "index.html").unwrap(), "index.html");
        assert!(travels_as(folder.path(), "app/other.js").is_err());
    }
}
