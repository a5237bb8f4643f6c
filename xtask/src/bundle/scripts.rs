//! The scripts, bundled by rolldown.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use anyhow::{Context, Result, anyhow, ensure};
use rolldown::{
    Bundler, BundlerOptions, CodeSplittingMode, InputItem, IsExternal, OutputFormat, PreserveEntrySignatures,
    SourceMapType,
};
use rolldown_common::{
    HashCharacters, ManualCodeSplittingOptions, MatchGroup, MatchGroupName, MatchGroupTest, Output, OutputChunk,
};

use super::assets::Names;
use super::fill;
use crate::names::{LENGTH, plain};
use crate::precache::{WORKER, loaded};

/// What is loaded by itself, without its ending, and the module it begins with. Addresses inside the scripts are relative to `app/`, where
/// all files lie that are made of modules.
const ENTRIES: [(&str, &str); 4] =
    [("app/boot", "app/boot.js"), CALCULATOR, ("app/jobs", JOBS), ("app/embed", "app/embed.js")];
/// The calculator, for which an element's registration asks.
pub const CALCULATOR: (&str, &str) = ("app/pintle-calculator", "app/pintle-calculator.js");
/// The list of jobs, under an address for hosts.
const JOBS: &str = "app/jobs/define.js";
/// The search, in a thread of its own: nothing of it is shared.
const SEARCH: (&str, &str) = ("app/worker", "app/setout/worker.js");
/// What hosts write down. It has everything that it needs, so that what it asks for is asked for at once.
const DEFINE: (&str, &str) = ("app/define", "app/define.js");
/// A plain script, no part of the modules: it is there for the day when one of them is missing.
const PLAIN: (&str, &str) = ("app/guard", "app/guard.js");

/// The line of the scripts that takes the names as they travel, and that of the element's start.
const NAMES: (&str, &str) = ("app/files.js", "const NAMES = {};");
const AHEAD: (&str, &str) = ("app/ahead.js", "const AHEAD = { scripts: [], fetched: [] };");
/// What an element's start fetches besides scripts, words and documents.
pub const FETCHED: [&str; 2] = ["pintle-web_bg.wasm", "style/element.css"];

/// A script as it travels.
pub struct Chunk {
    /// Its file's name below the page's folder.
    pub name: String,
    /// Scripts that it does not run without.
    pub imports: Vec<String>,
}

/// Replaces the modules of a page by a few files, with their source maps beside; says what they are, and adds their names to those known.
pub fn run(folder: &Path, names: &mut Names) -> Result<Vec<Chunk>> {
    let search = bundle(folder, names, &[SEARCH], &Kind::Alone)?;
    names.extend(search.iter().filter_map(named(&[SEARCH])));
    let page = bundle(folder, names, &ENTRIES, &Kind::Shared)?;
    let plain = bundle(folder, names, &[PLAIN], &Kind::Plain)?;
    names.extend(page.iter().chain(&plain).filter_map(named(&[&ENTRIES[..], &[PLAIN]].concat())));
    let chunks: Vec<Chunk> = chunks(&page).map(described).collect();
    let scripts: Vec<_> = needed(&chunks, CALCULATOR.0)?.into_iter().collect();
    let foreign = scripts.iter().find(|name| ["app/boot", "app/jobs"].contains(&stem(name).as_str()));
    ensure!(foreign.is_none(), "the calculator needs {foreign:?}, which is the page's own");
    let ahead = serde_json::json!({ "scripts": scripts, "fetched": FETCHED });
    let template = fs::read_to_string(folder.join(AHEAD.0))?;
    fill(&folder.join(AHEAD.0), AHEAD.1, &format!("const AHEAD = {ahead};"))?;
    let mut define = bundle(folder, names, &[DEFINE], &Kind::Stable)?;
    fs::write(folder.join(AHEAD.0), template)?;
    let calculator = &names[CALCULATOR.1];
    // The bundler takes an address that it is not to follow for one below the folder of all.
    lead(&mut define, &format!("../{}", file(CALCULATOR.1)), &format!("./{}", file(calculator)))?;

    for (name, path) in loaded(folder)? {
        if name.ends_with(".js") && name != WORKER {
            fs::remove_file(path)?;
        }
    }
    remove_empty(&folder.join("app"))?;
    for made in search.iter().chain(&page).chain(&plain).chain(&define) {
        put(folder, made.filename(), made.content_as_bytes())?;
    }
    let jobs = format!("export * from \"../{}\";\n", file(&names[JOBS]));
    put(folder, JOBS, jobs.as_bytes())?;
    Ok(chunks)
}

/// All scripts that one of a name needs, itself too.
pub fn needed(chunks: &[Chunk], first: &str) -> Result<BTreeSet<String>> {
    let find = |name: &str| chunks.iter().find(|chunk| chunk.name == name || stem(&chunk.name) == name);
    let mut found = BTreeSet::new();
    let mut ahead = vec![first.to_owned()];
    while let Some(name) = ahead.pop() {
        let chunk = find(&name).with_context(|| format!("no script {name}"))?;
        if found.insert(chunk.name.clone()) {
            ahead.extend(chunk.imports.iter().cloned());
        }
    }
    Ok(found)
}

/// A name without its hash and ending.
fn stem(name: &str) -> String {
    let plain = plain(name).unwrap_or_else(|| name.to_owned());
    plain.strip_suffix(".js").unwrap_or(&plain).to_owned()
}

/// A name without its folders.
fn file(name: &str) -> &str {
    name.rsplit('/').next().unwrap_or(name)
}

/// Where each entry's module is found.
fn named(entries: &[(&str, &str)]) -> impl Fn(&Output) -> Option<(String, String)> {
    move |made| {
        let name = made.filename().to_string();
        let (_, module) = entries.iter().find(|(entry, _)| name.ends_with(".js") && stem(&name) == *entry)?;
        Some(((*module).to_owned(), name))
    }
}

/// Puts the name of a script that was left to be asked for into the one that asks.
fn lead(made: &mut [Output], from: &str, to: &str) -> Result<()> {
    for output in made {
        if let Output::Chunk(chunk) = output {
            ensure!(chunk.code.matches(from).count() == 1, "{} must ask for {from} once", chunk.filename);
            *chunk = Arc::new(OutputChunk { code: chunk.code.replace(from, to), ..(**chunk).clone() });
        }
    }
    Ok(())
}

fn put(folder: &Path, name: &str, content: &[u8]) -> Result<()> {
    let path = folder.join(name);
    fs::create_dir_all(path.parent().context("a file lies in a folder")?)?;
    Ok(fs::write(path, content)?)
}

/// How scripts are bundled.
#[derive(PartialEq)]
enum Kind {
    /// Several, with what they share apart.
    Shared,
    /// One, with all that it needs.
    Alone,
    /// One with all that it needs, under an address that stays; the calculator is left to be asked for.
    Stable,
    /// One that is no module.
    Plain,
}

fn bundle(folder: &Path, names: &Names, entries: &[(&str, &str)], kind: &Kind) -> Result<Vec<Output>> {
    let template = fs::read_to_string(folder.join(NAMES.0)).context("the scripts have no table of names")?;
    let table = serde_json::to_string(names)?;
    fill(&folder.join(NAMES.0), NAMES.1, &format!("const NAMES = {table};"))?;
    let made = bundled(folder, entries, kind);
    fs::write(folder.join(NAMES.0), template)?;
    made
}

fn bundled(folder: &Path, entries: &[(&str, &str)], kind: &Kind) -> Result<Vec<Output>> {
    let input =
        |&(name, import): &(&str, &str)| InputItem { name: Some(name.to_owned()), import: format!("./{import}") };
    let hashed = |name: &str| format!("{name}-[hash:{LENGTH}].js");
    let entry = if *kind == Kind::Stable { "[name].js".to_owned() } else { hashed("[name]") };
    let left = (*kind == Kind::Stable).then(|| IsExternal::from(vec![format!("./{}", file(CALCULATOR.1))]));
    let options = BundlerOptions {
        input: Some(entries.iter().map(input).collect()),
        cwd: Some(folder.canonicalize()?),
        dir: Some(".".to_owned()),
        format: Some(if *kind == Kind::Plain { OutputFormat::Iife } else { OutputFormat::Esm }),
        external: left,
        entry_filenames: Some(entry.into()),
        chunk_filenames: Some(hashed("app/[name]").into()),
        hash_characters: Some(HashCharacters::Hex),
        code_splitting: (*kind == Kind::Shared).then(|| reached(folder, entries).map(groups)).transpose()?,
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

/// What several of the page's scripts need is there once: what a first verdict needs apart from what only steps need that are opened later. The page
/// begins with the list of jobs, which is nobody else's.
fn groups(first: BTreeSet<PathBuf>) -> CodeSplittingMode {
    let first = Arc::new(first);
    let group = |name: &'static str, at_first: bool| {
        let first = first.clone();
        let is_one = move |id: &str| {
            let is_one = !id.contains("/app/jobs/") && first.contains(Path::new(id)) == at_first;
            Box::pin(async move { Ok(Some(is_one)) }) as _
        };
        MatchGroup {
            name: MatchGroupName::Static(name.to_owned()),
            test: Some(MatchGroupTest::Function(Arc::new(is_one))),
            min_share_count: Some(2),
            ..MatchGroup::default()
        }
    };
    CodeSplittingMode::Advanced(ManualCodeSplittingOptions {
        groups: Some(vec![group("shared", true), group("later", false)]),
        include_dependencies_recursively: Some(false),
        ..ManualCodeSplittingOptions::default()
    })
}

/// The modules of entries and all that they import at once: what a function imports comes later.
fn reached(folder: &Path, entries: &[(&str, &str)]) -> Result<BTreeSet<PathBuf>> {
    let mut found = BTreeSet::new();
    let first = entries.iter().map(|(_, module)| folder.join(module).canonicalize());
    let mut ahead = first.collect::<std::io::Result<Vec<_>>>()?;
    while let Some(path) = ahead.pop() {
        if !found.insert(path.clone()) {
            continue;
        }
        let text = fs::read_to_string(&path).with_context(|| format!("no module {}", path.display()))?;
        let beside = path.parent().context("a module lies in a folder")?;
        let code = text.lines().filter(|line| !line.trim_start().starts_with('*'));
        let named = code.filter_map(|line| {
            let import = line.starts_with("import ") || line.starts_with("export ") || line.starts_with("} from ");
            let (_, rest) = line.split_once("from \"").or_else(|| line.split_once("import \"")).filter(|_| import)?;
            rest.split_once('"').map(|(name, _)| name)
        });
        for name in named.filter(|name| name.starts_with('.')) {
            // What the build makes beside the modules is no module of these.
            let module = beside.join(name);
            if module.is_file() {
                ahead.push(module.canonicalize()?);
            }
        }
    }
    Ok(found)
}

fn chunks(made: &[Output]) -> impl Iterator<Item = &OutputChunk> {
    made.iter().filter_map(|file| if let Output::Chunk(chunk) = file { Some(&**chunk) } else { None })
}

fn described(chunk: &OutputChunk) -> Chunk {
    let imports: BTreeSet<String> = chunk.imports.iter().map(ToString::to_string).collect();
    Chunk { name: chunk.filename.to_string(), imports: imports.into_iter().collect() }
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

    /// A small page with every entry, in which several need one module and one asks for another later.
    fn page() -> tempfile::TempDir {
        let folder = tempfile::tempdir().unwrap();
        for (name, text) in [
            (
                "app/boot.js",
                "import { word } from \"./words.js\";\nimport { register } from \"./register.js\";\nimport \"./jobs/define.js\";\nregister(word); // said\n",
            ),
            (
                "app/register.js",
                "export function register() { import(\"./pintle-calculator.js\").then(({ Calculator }) => new Calculator()); }",
            ),
            (
                "app/define.js",
                "import { ask } from \"./ahead.js\";\nimport { register } from \"./register.js\";\nask();\nregister();",
            ),
            (
                "app/ahead.js",
                "const AHEAD = { scripts: [], fetched: [] };\nexport const ask = () => AHEAD.scripts.concat(AHEAD.fetched).forEach((name) => fetch(name));",
            ),
            (
                "app/files.js",
                "const NAMES = {};\nexport const fileAt = (name) => new URL(`../${NAMES[name] ?? name}`, import.meta.url);",
            ),
            (
                "app/pintle-calculator.js",
                "import { word } from \"./words.js\";\nimport { fileAt } from \"./files.js\";\nexport class Calculator { name = word; late = () => import(\"./late.js\"); work = () => new Worker(fileAt(\"app/setout/worker.js\")); }",
            ),
            ("app/late.js", "import { word } from \"./words.js\";\nexport const late = `late ${word}`;"),
            ("app/words.js", "/** Says it. */\nexport const word = `said at ${document.title}`;"),
            ("app/embed.js", "document.title = \"shop\";"),
            ("app/jobs/define.js", "export class Jobs {}"),
            ("app/setout/worker.js", "import { fileAt } from \"../files.js\";\npostMessage(fileAt(\"core.wasm\"));"),
            (
                "app/guard.js",
                "(() => { let failed = false; addEventListener(\"error\", () => (failed = !failed)); })();",
            ),
            ("app/contract.d.ts", "export type Job = {};"),
            (WORKER, "// kept\n"),
        ] {
            put(folder.path(), name, text.as_bytes()).unwrap();
        }
        folder
    }

    fn bundled_page() -> (tempfile::TempDir, Vec<Chunk>, Names) {
        let page = page();
        let mut names = Names::from([("core.wasm".to_owned(), "core-ba7816bf8f.wasm".to_owned())]);
        let chunks = run(page.path(), &mut names).unwrap();
        (page, chunks, names)
    }

    #[test]
    fn a_use_is_one_file_and_what_many_need_is_there_once() {
        let (page, chunks, names) = bundled_page();
        let found: Vec<String> = loaded(page.path()).unwrap().into_iter().map(|(name, _)| name).collect();
        let without: Vec<String> = found.iter().map(|name| plain(name).unwrap_or_else(|| name.clone())).collect();
        let wanted = [
            "app/boot.js",
            "app/define.js",
            "app/embed.js",
            "app/guard.js",
            "app/jobs.js",
            "app/jobs/define.js",
            "app/late.js",
            "app/pintle-calculator.js",
            "app/shared.js",
            "app/worker.js",
            WORKER,
        ];
        assert_eq!(without, wanted);
        let stable: Vec<&str> = found.iter().filter(|name| plain(name).is_none()).map(String::as_str).collect();
        assert_eq!(stable, ["app/define.js", "app/jobs/define.js", WORKER], "addresses that stay");
        let read = |name: &str| fs::read_to_string(page.path().join(name)).unwrap();
        let all: String = found.iter().map(|name| read(name)).collect();
        assert_eq!(all.matches("said at").count(), 1, "{all}");
        assert!(!all.contains("Says it") && read(WORKER) == "// kept\n");
        let words = needed(&chunks, "app/boot").unwrap();
        assert!(words.iter().any(|name| name.starts_with("app/shared-")), "{words:?}");
        assert!(!words.iter().any(|name| name.starts_with("app/late-")), "{words:?}");
        assert!(read(&names[JOBS]).contains("as Jobs"), "what a host imports keeps its name");
    }

    #[test]
    fn stable_addresses_lead_to_names_that_are_there() {
        let (page, chunks, names) = bundled_page();
        let read = |name: &str| fs::read_to_string(page.path().join(name)).unwrap();
        assert_eq!(read(JOBS), format!("export * from \"../{}\";\n", file(&names[JOBS])));
        let define = read("app/define.js");
        assert!(define.contains(&format!("import(`./{}`)", file(&names[CALCULATOR.1]))), "{define}");
        for name in needed(&chunks, CALCULATOR.0).unwrap().iter().map(String::as_str).chain(FETCHED) {
            assert!(define.contains(name), "{name} is asked for ahead: {define}");
        }
        assert!(!define.contains("said at"), "it brings nothing of the calculator along");
        assert!(read(&names[CALCULATOR.1]).contains(&names[SEARCH.1]), "the search is found");
        assert!(read(&names[SEARCH.1]).contains("core-ba7816bf8f.wasm"), "so is the core");
    }

    /// What is in a file is in its name, and what is in the files that it names.
    #[test]
    fn names_follow_what_is_in_the_files() {
        let made = |change: Option<(&str, &str)>| {
            let page = page();
            if let Some((name, text)) = change {
                put(page.path(), name, text.as_bytes()).unwrap();
            }
            let mut names = Names::new();
            run(page.path(), &mut names).unwrap();
            names
        };
        let first = made(None);
        assert_eq!(first, made(None));
        let other = made(Some(("app/words.js", "export const word = `told at ${document.title}`;")));
        let differ: Vec<&str> =
            first.iter().filter(|(name, travels)| other[*name] != **travels).map(|(name, _)| name.as_str()).collect();
        assert_eq!(differ, ["app/boot.js", "app/pintle-calculator.js"]);
    }

    #[test]
    fn maps_lie_beside_and_lead_to_the_modules() {
        let (page, _, names) = bundled_page();
        let search = &names[SEARCH.1];
        let map = fs::read_to_string(page.path().join(format!("{search}.map"))).unwrap();
        assert!(map.contains("setout/worker.js"), "{map}");
        let text = fs::read_to_string(page.path().join(search)).unwrap();
        assert!(text.contains(&format!("sourceMappingURL={}.map", file(search))));
    }

    #[test]
    fn what_is_no_module_is_a_fault() {
        let page = page();
        fs::write(page.path().join("app/words.js"), "export const = 1;").unwrap();
        assert!(run(page.path(), &mut Names::new()).is_err());
        fs::remove_file(page.path().join("app/words.js")).unwrap();
        assert!(run(page.path(), &mut Names::new()).is_err());
    }
}
