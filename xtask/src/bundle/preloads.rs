//! Lines of the page that ask ahead for what it runs: without them each file would wait for the one that names it.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};

use super::scripts::Chunk;

/// The line of the page that is replaced.
const LINE: &str = "    <!-- Preloads: the build writes them here. -->\n";
/// What the page begins with.
const FIRST: &str = "app/boot.js";
/// The script whose import stands in a function, so that its failure can be told, and that is run at once all the same.
const STARTED: &str = "app/define.js";
/// What scripts fetch as soon as they run.
const FETCHED: [(&str, &str); 2] = [("pintle-web_bg.wasm", " type=\"application/wasm\""), ("style/element.css", "")];

/// Writes the lines into the page of a folder.
pub fn run(folder: &Path, chunks: &[Chunk]) -> Result<()> {
    let page = folder.join("index.html");
    let text = fs::read_to_string(&page).context("no index.html among the built files")?;
    ensure!(text.matches(LINE).count() == 1, "index.html must have the line `{}` exactly once", LINE.trim());
    let mut lines = String::new();
    for (name, kind) in FETCHED {
        ensure!(folder.join(name).is_file(), "there is no {name} among the built files");
        lines += &format!("    <link rel=\"preload\" href=\"{name}\" as=\"fetch\"{kind} crossorigin>\n");
    }
    for name in run_at_once(chunks)? {
        lines += &format!("    <link rel=\"modulepreload\" href=\"{name}\">\n");
    }
    Ok(fs::write(page, text.replacen(LINE, &lines, 1))?)
}

/// Scripts that the page runs at its start, but for the one that it names itself.
fn run_at_once(chunks: &[Chunk]) -> Result<BTreeSet<String>> {
    let mut found = BTreeSet::new();
    let mut ahead = vec![FIRST.to_owned()];
    while let Some(name) = ahead.pop() {
        let chunk = chunks.iter().find(|chunk| chunk.name == name).with_context(|| format!("no script {name}"))?;
        if found.insert(name) {
            ahead.extend(chunk.imports.iter().cloned());
            ahead.extend(chunk.asks.iter().filter(|_| chunk.name == STARTED).cloned());
        }
    }
    ensure!(found.contains(STARTED), "{FIRST} does not lead to {STARTED}");
    found.remove(FIRST);
    Ok(found)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn chunk(name: &str, imports: &[&str], asks: &[&str]) -> Chunk {
        let owned = |names: &[&str]| names.iter().map(ToString::to_string).collect();
        Chunk { name: name.to_owned(), imports: owned(imports), asks: owned(asks) }
    }

    fn chunks() -> Vec<Chunk> {
        vec![
            chunk("app/boot.js", &["app/words.js", "app/define.js"], &["app/late.js"]),
            chunk("app/define.js", &[], &["app/calculator.js"]),
            chunk("app/calculator.js", &["app/words.js", "app/core.js"], &["app/late.js"]),
            chunk("app/words.js", &[], &[]),
            chunk("app/core.js", &["app/words.js"], &[]),
            chunk("app/late.js", &["app/core.js"], &[]),
            chunk("app/worker.js", &["app/core.js"], &[]),
        ]
    }

    #[test]
    fn what_the_page_runs_is_asked_for_ahead_and_nothing_else() {
        let found: Vec<String> = run_at_once(&chunks()).unwrap().into_iter().collect();
        assert_eq!(found, ["app/calculator.js", "app/core.js", "app/define.js", "app/words.js"]);
    }

    #[test]
    fn lines_stand_in_the_page() {
        let folder = tempfile::tempdir().unwrap();
        let put = |name: &str, text: &str| {
            fs::create_dir_all(folder.path().join(name).parent().unwrap()).unwrap();
            fs::write(folder.path().join(name), text).unwrap();
        };
        put("index.html", &format!("<head>\n{LINE}</head>\n"));
        assert!(run(folder.path(), &chunks()).is_err(), "without what it names it is not written");
        for (name, _) in FETCHED {
            put(name, "");
        }
        run(folder.path(), &chunks()).unwrap();
        let page = fs::read_to_string(folder.path().join("index.html")).unwrap();
        assert_eq!(page.matches("<link rel=\"modulepreload\"").count(), 4, "{page}");
        assert!(page.contains("href=\"pintle-web_bg.wasm\" as=\"fetch\" type=\"application/wasm\" crossorigin>"));
        assert!(run(folder.path(), &chunks()).is_err(), "once");
    }

    #[test]
    fn a_page_that_does_not_start_the_element_is_a_fault() {
        assert!(run_at_once(&chunks()[1..]).is_err());
        assert!(run_at_once(&[chunk("app/boot.js", &[], &[])]).is_err());
    }
}
