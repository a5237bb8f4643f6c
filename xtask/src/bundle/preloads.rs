//! Lines of the page that ask ahead for what it runs: without them each file would wait for the one that names it.

use std::path::Path;

use anyhow::{Context, Result, ensure};

use super::assets::Names;
use super::fill;
use super::scripts::{CALCULATOR, Chunk, FETCHED, needed};

/// The line of the page that is replaced.
const LINE: &str = "    <!-- Preloads: the build writes them here. -->\n";
/// What the page begins with.
const FIRST: &str = "app/boot";

/// Writes the lines into the page of a folder.
pub fn run(folder: &Path, chunks: &[Chunk], names: &Names) -> Result<()> {
    let mut lines = String::new();
    for name in FETCHED {
        let travels = names.get(name).with_context(|| format!("there is no {name} among the built files"))?;
        let kind = if name.ends_with(".wasm") { " type=\"application/wasm\"" } else { "" };
        lines += &format!("    <link rel=\"preload\" href=\"{travels}\" as=\"fetch\"{kind} crossorigin>\n");
    }
    // The calculator is asked for in a function, so that its failure can be told, and run at once all the same.
    let mut run = needed(chunks, FIRST)?;
    let first = chunks.iter().find(|chunk| run.contains(&chunk.name) && chunk.name.starts_with(&format!("{FIRST}-")));
    ensure!(first.is_some_and(|first| run.remove(&first.name)), "no script {FIRST}");
    run.extend(needed(chunks, CALCULATOR.0)?);
    for name in run {
        lines += &format!("    <link rel=\"modulepreload\" href=\"{name}\">\n");
    }
    fill(&folder.join("index.html"), LINE, &lines)
}

#[cfg(test)]
mod tests {
    use std::fs;

    use super::*;

    fn chunk(name: &str, imports: &[&str]) -> Chunk {
        let hashed = |name: &&str| format!("app/{name}-0123456789.js");
        Chunk { name: hashed(&name), imports: imports.iter().map(hashed).collect() }
    }

    fn chunks() -> Vec<Chunk> {
        vec![
            chunk("boot", &["words", "jobs"]),
            chunk("jobs", &["words"]),
            chunk("pintle-calculator", &["words", "core"]),
            chunk("words", &[]),
            chunk("core", &["words"]),
            chunk("late", &["core"]),
        ]
    }

    #[test]
    fn what_the_page_runs_is_asked_for_ahead_and_nothing_else() {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join("index.html"), format!("<head>\n{LINE}</head>\n")).unwrap();
        let mut names = Names::new();
        assert!(run(folder.path(), &chunks(), &names).is_err(), "without what it names it is not written");
        for name in FETCHED {
            names.insert(name.to_owned(), format!("hashed/{name}"));
        }
        run(folder.path(), &chunks(), &names).unwrap();
        let page = fs::read_to_string(folder.path().join("index.html")).unwrap();
        let named: Vec<_> =
            page.split("modulepreload\" href=\"").skip(1).filter_map(|rest| rest.split("-0").next()).collect();
        assert_eq!(named, ["app/core", "app/jobs", "app/pintle-calculator", "app/words"]);
        assert!(
            page.contains("href=\"hashed/pintle-web_bg.wasm\" as=\"fetch\" type=\"application/wasm\" crossorigin>")
        );
        assert!(run(folder.path(), &chunks(), &names).is_err(), "once");
    }

    #[test]
    fn a_page_that_does_not_start_the_calculator_is_a_fault() {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join("index.html"), LINE).unwrap();
        let names = FETCHED.iter().map(|name| ((*name).to_owned(), (*name).to_owned())).collect();
        assert!(run(folder.path(), &chunks()[1..], &names).is_err());
        assert!(run(folder.path(), &[chunk("boot", &[])], &names).is_err());
    }
}
