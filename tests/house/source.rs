//! A crate's files and which of them takes what from which other.
//!
//! Paths are followed through re-exports to the file that defines a name, so that a room's door (`mod.rs`) is no arrow of its own. What a
//! file takes is what its `use` lines and its absolute paths name; of a glob, the names that the file mentions. Test modules are left out.

use proc_macro2::{TokenStream, TokenTree};
use quote::ToTokens;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};
use syn::{Attribute, File, Item, ItemMod, UseTree, Visibility};

/// A module's address: the names from the crate's root down.
type Address = Vec<String>;

/// One module that is a file.
struct Module {
    file: String,
    /// What it defines: types first, then the rest.
    types: BTreeSet<String>,
    defines: BTreeSet<String>,
    children: BTreeSet<String>,
    /// Every `use`: whole path, the name it gets here (`*` for a glob), whether it is passed on.
    uses: Vec<(Address, String, bool)>,
    /// Absolute paths elsewhere in the file.
    paths: BTreeSet<Address>,
    /// How often each word stands in the file outside of `use` lines.
    words: BTreeMap<String, usize>,
}

/// A crate as its files.
pub struct Crate {
    modules: BTreeMap<Address, Module>,
    arrows: BTreeMap<(String, String), BTreeSet<String>>,
}

impl Crate {
    /// Reads all of it; `folder` from the project's root.
    pub fn read(folder: &str) -> Crate {
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(folder);
        let mut house = Crate { modules: BTreeMap::new(), arrows: BTreeMap::new() };
        house.enter(&root, &root.join("lib.rs"), Vec::new());
        house.draw();
        house
    }

    /// Its files, relative to the folder.
    pub fn files(&self) -> impl Iterator<Item = &str> {
        self.modules.values().map(|module| module.file.as_str())
    }

    /// Every type with its file.
    pub fn types(&self) -> impl Iterator<Item = (&str, &str)> {
        self.modules.values().flat_map(|module| module.types.iter().map(|name| (module.file.as_str(), name.as_str())))
    }

    /// Who takes what from whom.
    pub fn arrows(&self) -> impl Iterator<Item = (&str, &str, String)> {
        self.arrows.iter().map(|((from, to), names)| {
            (from.as_str(), to.as_str(), names.iter().cloned().collect::<Vec<_>>().join(", "))
        })
    }

    fn enter(&mut self, root: &Path, path: &Path, address: Address) {
        let text = fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        let parsed = syn::parse_file(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        let file = path.strip_prefix(root).expect("inside its crate").to_string_lossy().replace('\\', "/");
        let module = Module::read(file, &parsed, &address);
        let folder = if path.ends_with("mod.rs") || path.ends_with("lib.rs") {
            path.parent().expect("a file lies in a folder").to_owned()
        } else {
            path.with_extension("")
        };
        let children: Vec<String> = module.children.iter().cloned().collect();
        self.modules.insert(address.clone(), module);
        for child in children {
            let beside: [PathBuf; 2] = [folder.join(format!("{child}.rs")), folder.join(&child).join("mod.rs")];
            let Some(path) = beside.iter().find(|path| path.exists()) else { panic!("no file of module {child}") };
            self.enter(root, path, [address.clone(), vec![child]].concat());
        }
    }

    fn draw(&mut self) {
        let mut arrows: BTreeMap<(String, String), BTreeSet<String>> = BTreeMap::new();
        for (address, module) in &self.modules {
            let mut take = |path: &Address| {
                for (file, name) in self.defined(path, 0) {
                    if file != module.file {
                        arrows.entry((module.file.clone(), file)).or_default().insert(name);
                    }
                }
            };
            for (path, name, passed_on) in &module.uses {
                if name == "*" {
                    if *passed_on || path == address || !self.modules.contains_key(path) {
                        continue;
                    }
                    for word in self.offered(path, 0).iter().filter(|word| module.words.contains_key(*word)) {
                        take(&[path.clone(), vec![word.clone()]].concat());
                    }
                } else if !passed_on || module.words.contains_key(name) {
                    take(path);
                }
            }
            module.paths.iter().for_each(&mut take);
        }
        self.arrows = arrows;
    }

    /// Every name that a glob of a module brings, globs passed on included.
    fn offered(&self, path: &Address, depth: usize) -> BTreeSet<String> {
        let Some(module) = self.modules.get(path).filter(|_| depth < 8) else { return BTreeSet::new() };
        let mut names = module.defines.clone();
        for (target, name, passed_on) in &module.uses {
            match name.as_str() {
                "*" if *passed_on => names.extend(self.offered(target, depth + 1)),
                "*" => {}
                _ => {
                    names.insert(name.clone());
                }
            }
        }
        names
    }

    /// The file that defines what a path names, through re-exports, and the name.
    fn defined(&self, path: &[String], depth: usize) -> Vec<(String, String)> {
        if depth > 8 {
            return Vec::new();
        }
        if let Some(module) = self.modules.get(path) {
            return vec![(module.file.clone(), path.last().cloned().unwrap_or_default())];
        }
        // The longest beginning that is a module, and the first name behind it: what comes after is inside a type.
        let Some(module_at) = (0..path.len()).rev().find(|&end| self.modules.contains_key(&path[..end])) else {
            return Vec::new();
        };
        let (module, name) = (&self.modules[&path[..module_at]], &path[module_at]);
        if module.defines.contains(name) {
            return vec![(module.file.clone(), name.clone())];
        }
        if let Some((target, _, _)) = module.uses.iter().find(|(target, own, _)| own == name && target != path) {
            return self.defined(target, depth + 1);
        }
        let globs = module.uses.iter().filter(|(target, own, _)| own == "*" && target.as_slice() != path);
        globs
            .filter(|(target, _, passed_on)| *passed_on && self.modules.contains_key(target))
            .flat_map(|(target, _, _)| self.defined(&[target.clone(), vec![name.clone()]].concat(), depth + 1))
            .collect()
    }
}

fn only_for_tests(attributes: &[Attribute]) -> bool {
    attributes
        .iter()
        .any(|attribute| attribute.path().is_ident("cfg") && attribute.to_token_stream().to_string().contains("test"))
}

impl Module {
    fn read(file: String, parsed: &File, address: &Address) -> Module {
        let mut module = Module {
            file,
            types: BTreeSet::new(),
            defines: BTreeSet::new(),
            children: BTreeSet::new(),
            uses: Vec::new(),
            paths: BTreeSet::new(),
            words: BTreeMap::new(),
        };
        for item in &parsed.items {
            module.note(item, address);
        }
        module
    }

    fn note(&mut self, item: &Item, address: &Address) {
        let (name, is_type) = match item {
            Item::Use(item) => {
                let passed_on = !matches!(item.vis, Visibility::Inherited);
                if !only_for_tests(&item.attrs) {
                    self.branch(&item.tree, Vec::new(), passed_on, address);
                }
                return;
            }
            Item::Mod(ItemMod { ident, content: None, attrs, .. }) if !only_for_tests(attrs) => {
                self.children.insert(ident.to_string());
                return;
            }
            Item::Mod(_) => return,
            Item::Struct(item) => (Some(&item.ident), true),
            Item::Enum(item) => (Some(&item.ident), true),
            Item::Union(item) => (Some(&item.ident), true),
            Item::Trait(item) => (Some(&item.ident), true),
            Item::Type(item) => (Some(&item.ident), false),
            Item::Fn(item) => (Some(&item.sig.ident), false),
            Item::Const(item) => (Some(&item.ident), false),
            Item::Static(item) => (Some(&item.ident), false),
            Item::Macro(item) => {
                self.types.extend(declared(item.mac.tokens.clone()));
                self.defines.extend(declared(item.mac.tokens.clone()));
                (item.ident.as_ref(), false)
            }
            _ => (None, false),
        };
        if let Some(name) = name {
            self.defines.insert(name.to_string());
            if is_type {
                self.types.insert(name.to_string());
            }
        }
        count(item.to_token_stream(), &mut self.words);
        absolute_paths(item.to_token_stream(), address, &mut self.paths);
    }

    fn branch(&mut self, tree: &UseTree, before: Address, passed_on: bool, address: &Address) {
        let with = |name: &str| [before.clone(), vec![name.to_owned()]].concat();
        match tree {
            UseTree::Path(path) => self.branch(&path.tree, with(&path.ident.to_string()), passed_on, address),
            UseTree::Group(group) => {
                group.items.iter().for_each(|tree| self.branch(tree, before.clone(), passed_on, address))
            }
            UseTree::Name(name) => self.taken(with(&name.ident.to_string()), None, passed_on, address),
            UseTree::Rename(name) => {
                let own = name.rename.to_string();
                self.taken(with(&name.ident.to_string()), Some(own), passed_on, address);
            }
            UseTree::Glob(_) => self.taken(before, Some("*".to_owned()), passed_on, address),
        }
    }

    fn taken(&mut self, mut path: Address, own: Option<String>, passed_on: bool, address: &Address) {
        // `use a::{self}` names `a`.
        if path.len() > 1 && path.last().is_some_and(|last| last == "self") {
            path.pop();
        }
        let name = own.unwrap_or_else(|| path.last().cloned().unwrap_or_default());
        let path = absolute(path, address, &self.children);
        self.uses.push((path, name, passed_on));
    }
}

/// The path from the crate's root; one into another crate stays as it is and is found nowhere.
fn absolute(path: Address, address: &Address, children: &BTreeSet<String>) -> Address {
    let mut base = address.clone();
    let mut rest = path.as_slice();
    match path.first().map(String::as_str) {
        Some("crate") => return path[1..].to_vec(),
        Some("self") => rest = &rest[1..],
        Some("super") => {
            while rest.first().is_some_and(|name| name == "super") {
                base.pop();
                rest = &rest[1..];
            }
        }
        Some(first) if children.contains(first) => {}
        _ => return path,
    }
    [base.as_slice(), rest].concat()
}

/// Absolute paths anywhere in the tokens, those inside macros too, as far as they go by single names.
fn absolute_paths(tokens: TokenStream, address: &Address, found: &mut BTreeSet<Address>) {
    let tokens: Vec<TokenTree> = tokens.into_iter().collect();
    let name = |index: usize| match tokens.get(index) {
        Some(TokenTree::Ident(ident)) => Some(ident.to_string()),
        _ => None,
    };
    let mark = |index: usize| matches!(tokens.get(index), Some(TokenTree::Punct(punct)) if punct.as_char() == ':');
    let mut index = 0;
    while let Some(token) = tokens.get(index) {
        if let TokenTree::Group(group) = token {
            absolute_paths(group.stream(), address, found);
        }
        let behind_a_path = index > 0 && mark(index - 1);
        let begins = name(index).is_some_and(|name| matches!(name.as_str(), "crate" | "super" | "self"));
        let mut names: Address = Vec::new();
        if begins && !behind_a_path {
            names.extend(name(index));
            while mark(index + 1) && mark(index + 2) && name(index + 3).is_some() {
                names.extend(name(index + 3));
                index += 3;
            }
        }
        if names.len() > 1 {
            found.insert(absolute(names, address, &BTreeSet::new()));
        }
        index += 1;
    }
}

/// Types that the tables of the house declare: `words! { … pub enum Name { … } }` and its like.
fn declared(tokens: TokenStream) -> Vec<String> {
    let tokens: Vec<String> = tokens.into_iter().map(|token| token.to_string()).collect();
    let declares = |before: &[String]| before[0] == "pub" && matches!(before[1].as_str(), "struct" | "enum");
    tokens.windows(3).filter(|part| declares(part)).map(|part| part[2].clone()).collect()
}

fn count(tokens: TokenStream, words: &mut BTreeMap<String, usize>) {
    for token in tokens {
        match token {
            TokenTree::Ident(ident) => *words.entry(ident.to_string()).or_default() += 1,
            TokenTree::Group(group) => count(group.stream(), words),
            _ => {}
        }
    }
}
