//! The notices of what a page is made of: whoever serves the page has to hand them on.
//!
//! The scripts are this project's own but for what binds them to the core, which comes from one of the packages in it (`wasm-bindgen`), and what is
//! kept beside the task runner ([`super::vendored`]). The packages are those that Cargo compiles into the core, and the standard library.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, ensure};
use cargo_metadata::{CargoOpt, DependencyKind, Metadata, MetadataCommand, Package, PackageId};

use super::vendored::VENDORED;
use crate::place::root;
use crate::setup::targets::WASM;

/// The file beside the page.
pub const FILE: &str = "notices.txt";
/// The package that the core is built of.
const CORE: &str = "pintle-web";
/// What the standard library says of itself, in the words of its repository (`library/std/Cargo.toml`, `COPYRIGHT`).
const STANDARD: &str = "The Rust standard library, with its allocator dlmalloc and libm: Copyright (c) The Rust Project Contributors and others.\n\
    MIT OR Apache-2.0, https://www.rust-lang.org/policies/licenses";

/// Writes them beside the page.
pub fn run(folder: &Path) -> Result<()> {
    Ok(fs::write(folder.join(FILE), text()?)?)
}

/// All of them as one text: each licence once, after the packages that it is of.
fn text() -> Result<String> {
    let metadata = metadata()?;
    let mut by_text = BTreeMap::<String, BTreeSet<String>>::new();
    for package in compiled_in(&metadata)? {
        let licence = package.license.as_deref().with_context(|| format!("{} names no licence", package.name))?;
        let line = format!("{} {} ({licence})", package.name, package.version);
        by_text.entry(licence_text(package)?).or_default().insert(line);
    }
    ensure!(!by_text.is_empty(), "the core is built of nothing");
    for vendored in &VENDORED {
        by_text.entry(vendored.licence()?.trim().to_owned()).or_default().insert(vendored.package.to_owned());
    }
    let mut text =
        format!("Pintle is MIT OR Apache-2.0. Its page and its element contain the following.\n\n{STANDARD}\n");
    for (licence, packages) in by_text {
        let packages: Vec<String> = packages.into_iter().collect();
        text += &format!("\n{}\n{}\n\n{licence}\n", "-".repeat(80), packages.join("\n"));
    }
    Ok(text)
}

fn metadata() -> Result<Metadata> {
    let mut command = MetadataCommand::new();
    command.manifest_path(root().join("Cargo.toml")).features(CargoOpt::SomeFeatures(Vec::new()));
    command.other_options(["--locked", "--filter-platform", WASM].map(str::to_owned));
    command.exec().context("Cargo could not list the packages of the core")
}

/// The packages of others that end up in the core: not what runs while it is compiled.
fn compiled_in(metadata: &Metadata) -> Result<Vec<&Package>> {
    let resolved = metadata.resolve.as_ref().context("Cargo resolved nothing")?;
    let own: BTreeSet<&PackageId> = metadata.workspace_members.iter().collect();
    let first =
        metadata.packages.iter().find(|package| package.name.as_str() == CORE).context("no package of the core")?;
    let (mut found, mut ahead) = (BTreeSet::new(), vec![&first.id]);
    while let Some(id) = ahead.pop() {
        let package = &metadata[id];
        let runs_while_compiling = package.targets.iter().any(|target| target.is_proc_macro());
        if runs_while_compiling || !found.insert(id) {
            continue;
        }
        let node = resolved.nodes.iter().find(|node| node.id == *id).context("a package that is not resolved")?;
        let is_normal =
            |kinds: &[cargo_metadata::DepKindInfo]| kinds.iter().any(|kind| kind.kind == DependencyKind::Normal);
        ahead.extend(
            node.deps.iter().filter(|dependency| is_normal(&dependency.dep_kinds)).map(|dependency| &dependency.pkg),
        );
    }
    Ok(found.into_iter().filter(|id| !own.contains(id)).map(|id| &metadata[id]).collect())
}

/// The text of the licence that is taken: MIT where the package leaves the choice.
fn licence_text(package: &Package) -> Result<String> {
    let folder = package.manifest_path.parent().context("a package lies in a folder")?;
    let mut texts = Vec::new();
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        let name = path.file_name().and_then(|name| name.to_str()).unwrap_or_default().to_uppercase();
        if path.is_file() && ["LICENSE", "LICENCE", "COPYING"].iter().any(|start| name.starts_with(start)) {
            texts.push((!name.contains("MIT"), name, fs::read_to_string(path)?));
        }
    }
    texts.sort();
    match texts.into_iter().next() {
        Some((_, _, text)) => Ok(text.trim().replace("\r\n", "\n")),
        // What is published without one has the licence that it names, and these for its authors.
        None => {
            let licence = package.license.as_deref().unwrap_or_default();
            ensure!(licence.contains("MIT"), "{} comes without the text of its licence {licence}", package.name);
            let own = package.authors.join(", ");
            Ok(format!("Copyright (c) {}\n\n{MIT}", if own.is_empty() { package.name.to_string() } else { own }))
        }
    }
}

/// The MIT licence's permission and disclaimer.
const MIT: &str = include_str!("mit.txt");

#[cfg(test)]
mod tests {
    use std::process::Command;

    use super::*;
    use crate::shell::read;

    /// Cargo's own tree of what is compiled into the core, against what is listed.
    #[test]
    fn everything_that_is_compiled_in_is_listed_and_nothing_else() {
        let mut command = Command::new("cargo");
        command.args([
            "tree",
            "--package",
            CORE,
            "--target",
            WASM,
            "--edges",
            "normal,no-proc-macro",
            "--prefix",
            "none",
        ]);
        let tree = read(command.args(["--locked", "--format", "{p}"]).current_dir(root())).unwrap();
        let wanted: BTreeSet<String> = tree
            .lines()
            .filter(|line| !line.trim().is_empty() && !line.starts_with("pintle-"))
            .filter_map(|line| Some(line.split_once(" v")?.0.to_owned()))
            .collect();
        let metadata = metadata().unwrap();
        let listed: BTreeSet<String> =
            compiled_in(&metadata).unwrap().iter().map(|package| package.name.to_string()).collect();
        assert!(listed.len() > 10, "{listed:?}");
        assert_eq!(wanted.difference(&listed).collect::<Vec<_>>(), Vec::<&String>::new(), "not listed");
        let text = text().unwrap();
        for name in &listed {
            assert!(text.contains(&format!("\n{name} ")), "{name} has no notice");
        }
        assert!(text.contains("THE SOFTWARE IS PROVIDED \"AS IS\""), "{text}");
    }
}
