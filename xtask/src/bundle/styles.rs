//! The style sheets, bundled by Lightning CSS.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result, anyhow};
use lightningcss::bundler::{Bundler, FileProvider};
use lightningcss::printer::PrinterOptions;
use lightningcss::stylesheet::{MinifyOptions, ParserOptions};
use parcel_sourcemap::SourceMap;

use crate::precache::loaded;

/// Sheets that a page or a script asks for. All others are parts of them.
const SHEETS: [&str; 4] = ["style/element.css", "style/print.css", "page.css", "embed.css"];

/// Makes each sheet of a page one file, with its source map beside, and removes the parts.
pub fn run(folder: &Path) -> Result<()> {
    let folder = folder.canonicalize()?;
    let made =
        SHEETS.map(|name| Ok((name, bundle(&folder, name).with_context(|| format!("{name} could not be bundled"))?)));
    let made = made.into_iter().collect::<Result<Vec<_>>>()?;
    for (name, path) in loaded(&folder)? {
        if name.ends_with(".css") {
            fs::remove_file(path)?;
        }
    }
    for (name, (text, map)) in made {
        fs::write(folder.join(name), text)?;
        fs::write(folder.join(format!("{name}.map")), map)?;
    }
    Ok(())
}

fn bundle(folder: &Path, name: &str) -> Result<(String, String)> {
    let files = FileProvider::new();
    let mut map = SourceMap::new(
        folder.join(name).parent().context("a sheet lies in a folder")?.to_str().context("a folder's name")?,
    );
    let mut bundler = Bundler::new(&files, Some(&mut map), ParserOptions::default());
    let failed = |error: &dyn std::fmt::Display| anyhow!("{error}");
    let mut sheet = bundler.bundle(&folder.join(name)).map_err(|error| failed(&error))?;
    sheet.minify(MinifyOptions::default()).map_err(|error| failed(&error))?;
    let options = PrinterOptions { minify: true, source_map: Some(&mut map), ..PrinterOptions::default() };
    let text = sheet.to_css(options).map_err(|error| failed(&error))?.code;
    Ok((text, map.to_json(None).map_err(|error| failed(&error))?))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn page(part: &str) -> tempfile::TempDir {
        let folder = tempfile::tempdir().unwrap();
        fs::create_dir(folder.path().join("style")).unwrap();
        for (name, text) in [
            ("style/element.css", "@import \"first.css\";\n@import \"second.css\";\n"),
            ("style/first.css", ":host {\n  /* said */ color: var(--ink); }\n"),
            ("style/second.css", part),
            ("style/print.css", "@page { margin: 0; }"),
            ("page.css", "body { margin: 0 }"),
            ("embed.css", "body { margin: 0 }"),
        ] {
            fs::write(folder.path().join(name), text).unwrap();
        }
        folder
    }

    #[test]
    fn the_elements_sheet_has_its_parts_in_their_order() {
        let page = page(".field { color: var(--faint) }");
        run(page.path()).unwrap();
        let names: Vec<String> = loaded(page.path()).unwrap().into_iter().map(|(name, _)| name).collect();
        assert_eq!(names, ["embed.css", "page.css", "style/element.css", "style/print.css"]);
        let text = fs::read_to_string(page.path().join("style/element.css")).unwrap();
        let (first, second) = (text.find(":host{color:var(--ink)}"), text.find(".field{color:var(--faint)}"));
        assert!(first.is_some() && first < second && !text.contains("said"), "{text}");
        let map = fs::read_to_string(page.path().join("style/element.css.map")).unwrap();
        assert!(map.contains("\"first.css\"") && map.contains("said"), "{map}");
    }

    #[test]
    fn a_sheet_that_is_none_and_a_part_that_is_missing_are_faults() {
        assert!(run(page("} .field {").path()).is_err());
        let missing = page("");
        fs::remove_file(missing.path().join("style/second.css")).unwrap();
        assert!(run(missing.path()).is_err());
    }
}
