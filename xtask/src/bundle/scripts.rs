//! The scripts, bundled by rolldown.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;
use std::sync::Arc;

use anyhow::{Context, Result, anyhow, ensure};
use rolldown::{
    Bundler, BundlerOptions, CodeSplittingMode, InputItem, OutputFormat, PreserveEntrySignatures, SourceMapType,
};
use rolldown_common::{ManualCodeSplittingOptions, MatchGroup, MatchGroupName, MatchGroupTest, Output, OutputChunk};

use crate::precache::{WORKER, loaded};

/// What is asked for by name, without its ending, and the module it begins with. Addresses inside the scripts are relative to `app/`, where
/// every module lies that has one: so do all files that are made of them.
const ENTRIES: [(&str, &str); 5] = [
    ("app/boot", "app/boot.js"),
    ("app/define", "app/define.js"),
    ("app/embed", "app/embed.js"),
    ("app/jobs/define", "app/jobs/define.js"),
    ("app/worker", "app/setout/worker.js"),
];

/// A plain script, no part of the modules: it is there for the day when one of them is missing.
const PLAIN: (&str, &str) = ("app/guard", "app/guard.js");

/// What several of the uses need, in as few files as there are reasons to part it: the words for a file that does not come need nothing else,
/// and the worker needs the core and nothing of the page. Name, how many have to need a module, and which it is; the first that fits. The
/// page begins with what two of the others begin with, so that it takes three to share.
const SHARED: [(&str, u32, &[&str]); 3] =
    [("failed", 1, &["/app/failed.js"]), ("core", 1, &["/app/core.js", "/pintle-web.js"]), ("shared", 3, &[".js"])];

/// A script as it travels.
pub struct Chunk {
    /// Its file's name below the page's folder.
    pub name: String,
    /// Scripts that it does not run without.
    pub imports: Vec<String>,
    /// Scripts that it asks for by itself, sooner or later.
    pub asks: Vec<String>,
}

/// Replaces the modules of a page by a few files, with their source maps beside; says what they are.
pub fn run(folder: &Path) -> Result<Vec<Chunk>> {
    let mut made = bundle(folder, &ENTRIES, OutputFormat::Esm)?;
    made.extend(bundle(folder, &[PLAIN], OutputFormat::Iife)?);
    for (name, path) in loaded(folder)? {
        if name.ends_with(".js") && name != WORKER {
            fs::remove_file(path)?;
        }
    }
    remove_empty(&folder.join("app"))?;
    for file in &made {
        let path = folder.join(file.filename());
        fs::create_dir_all(path.parent().context("a file lies in a folder")?)?;
        fs::write(path, file.content_as_bytes())?;
    }
    Ok(made
        .iter()
        .filter_map(|file| if let Output::Chunk(chunk) = file { Some(described(chunk)) } else { None })
        .collect())
}

fn bundle(folder: &Path, entries: &[(&str, &str)], format: OutputFormat) -> Result<Vec<Output>> {
    let input =
        |&(name, import): &(&str, &str)| InputItem { name: Some(name.to_owned()), import: format!("./{import}") };
    let options = BundlerOptions {
        input: Some(entries.iter().map(input).collect()),
        cwd: Some(folder.canonicalize()?),
        dir: Some(".".to_owned()),
        format: Some(format),
        entry_filenames: Some("[name].js".to_owned().into()),
        chunk_filenames: Some("app/[name].js".to_owned().into()),
        code_splitting: matches!(format, OutputFormat::Esm).then(groups),
        // A use that another one begins with is not parted from its own file for it.
        preserve_entry_signatures: Some(PreserveEntrySignatures::AllowExtension),
        sourcemap: Some(SourceMapType::File),
        minify: Some(true.into()),
        ..BundlerOptions::default()
    };
    let failed = |error: &dyn std::fmt::Debug| anyhow!("the scripts could not be bundled: {error:?}");
    let mut bundler = Bundler::new(options).map_err(|error| failed(&error))?;
    let runtime = tokio::runtime::Runtime::new()?;
    let made = runtime.block_on(bundler.generate()).map_err(|error| failed(&error))?;
    let warnings: Vec<String> = made.warnings.iter().map(|warning| format!("{warning:?}")).collect();
    ensure!(warnings.is_empty(), "the bundler warns: {}", warnings.join("\n"));
    Ok(made.assets)
}

fn groups() -> CodeSplittingMode {
    let group = |(place, &(name, needed, ends)): (usize, &(&str, u32, &'static [&str]))| {
        let is_one = move |id: &str| ends.iter().any(|end| id.ends_with(end));
        MatchGroup {
            name: MatchGroupName::Static(name.to_owned()),
            test: Some(MatchGroupTest::Function(Arc::new(move |id: &str| {
                let found = is_one(id);
                Box::pin(async move { Ok(Some(found)) })
            }))),
            min_share_count: Some(needed),
            // The greatest is asked first.
            priority: u32::try_from(SHARED.len() - place).ok(),
            ..MatchGroup::default()
        }
    };
    CodeSplittingMode::Advanced(ManualCodeSplittingOptions {
        groups: Some(SHARED.iter().enumerate().map(group).collect()),
        include_dependencies_recursively: Some(false),
        ..ManualCodeSplittingOptions::default()
    })
}

fn described(chunk: &OutputChunk) -> Chunk {
    let names = |all: &[_]| all.iter().map(ToString::to_string).collect::<BTreeSet<String>>().into_iter().collect();
    Chunk { name: chunk.filename.to_string(), imports: names(&chunk.imports), asks: names(&chunk.dynamic_imports) }
}

/// Removes the folders below one, and itself, that hold no file.
fn remove_empty(folder: &Path) -> Result<()> {
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            remove_empty(&path)?;
        }
    }
    if fs::read_dir(folder)?.next().is_none() {
        fs::remove_dir(folder)?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A small page with every entry, in which two need one module and one asks for another later.
    fn page() -> tempfile::TempDir {
        let folder = tempfile::tempdir().unwrap();
        for (name, text) in [
            (
                "app/boot.js",
                "import { word } from \"./words.js\";\nimport \"./define.js\";\ndocument.title = word; // said\n",
            ),
            ("app/define.js", "import(\"./calculator.js\").then(({ Calculator }) => new Calculator());"),
            ("app/calculator.js", "import { word } from \"./words.js\";\nexport class Calculator { name = word; }"),
            (
                "app/words.js",
                "/** Says it. */\nexport const word = `said at ${new URL(\"../words\", import.meta.url)}`;",
            ),
            ("app/embed.js", "document.title = \"shop\";"),
            ("app/jobs/define.js", "export class Jobs {}"),
            ("app/setout/worker.js", "import { word } from \"../words.js\";\npostMessage(word);"),
            (
                "app/guard.js",
                "(() => { let failed = false; addEventListener(\"error\", () => (failed = !failed)); })();",
            ),
            ("app/contract.d.ts", "export type Job = {};"),
            (WORKER, "// kept\n"),
        ] {
            let path = folder.path().join(name);
            fs::create_dir_all(path.parent().unwrap()).unwrap();
            fs::write(path, text).unwrap();
        }
        folder
    }

    #[test]
    fn a_use_is_one_file_and_what_many_need_is_there_once() {
        let page = page();
        let chunks = run(page.path()).unwrap();
        let names: Vec<String> = loaded(page.path()).unwrap().into_iter().map(|(name, _)| name).collect();
        let wanted = [
            "app/boot.js",
            "app/calculator.js",
            "app/define.js",
            "app/embed.js",
            "app/guard.js",
            "app/jobs/define.js",
            "app/shared.js",
            "app/worker.js",
            WORKER,
        ];
        assert_eq!(names, wanted);
        let find = |name: &str| chunks.iter().find(|chunk| chunk.name == name).unwrap();
        assert!(find("app/boot.js").imports.contains(&"app/shared.js".to_owned()));
        assert_eq!(find("app/define.js").asks, ["app/calculator.js"]);
        let read = |name: &str| fs::read_to_string(page.path().join(name)).unwrap();
        let all: String = wanted.into_iter().map(read).collect();
        assert_eq!(all.matches("said at").count(), 1, "{all}");
        assert!(!all.contains("Says it") && read(WORKER) == "// kept\n");
        assert!(read("app/jobs/define.js").contains("as Jobs"), "what a host imports keeps its name");
    }

    #[test]
    fn maps_lie_beside_and_lead_to_the_modules() {
        let page = page();
        run(page.path()).unwrap();
        let map = fs::read_to_string(page.path().join("app/worker.js.map")).unwrap();
        assert!(map.contains("setout/worker.js"), "{map}");
        assert!(
            fs::read_to_string(page.path().join("app/worker.js")).unwrap().contains("sourceMappingURL=worker.js.map")
        );
    }

    #[test]
    fn what_is_no_module_is_a_fault() {
        let page = page();
        fs::write(page.path().join("app/words.js"), "export const = 1;").unwrap();
        assert!(run(page.path()).is_err());
        fs::remove_file(page.path().join("app/words.js")).unwrap();
        assert!(run(page.path()).is_err());
    }
}
