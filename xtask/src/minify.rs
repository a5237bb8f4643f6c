//! The page's scripts without what only people read.
//!
//! Comments, types in comments and long local names are half of what the scripts weigh on the line. Each module stays a file of its own
//! under its own name, so that hosts import what the documentation says.

use std::fs;
use std::path::Path;

use anyhow::{Result, ensure};
use oxc_allocator::Allocator;
use oxc_codegen::{Codegen, CodegenOptions};
use oxc_minifier::{Minifier, MinifierOptions};
use oxc_parser::Parser;
use oxc_span::SourceType;

use crate::precache::{WORKER, loaded};

/// Minifies the modules below a folder, in place. The service worker is left: its lines are still to be filled.
pub fn run(folder: &Path) -> Result<()> {
    for (name, path) in loaded(folder)? {
        if name.ends_with(".js") && name != WORKER {
            fs::write(&path, module(&name, &fs::read_to_string(&path)?)?)?;
        }
    }
    Ok(())
}

/// A module that does the same.
fn module(name: &str, text: &str) -> Result<String> {
    let allocator = Allocator::default();
    let parsed = Parser::new(&allocator, text, SourceType::mjs()).parse();
    ensure!(!parsed.panicked && parsed.errors.is_empty(), "{name} is no module: {:?}", parsed.errors);
    let mut program = parsed.program;
    let minified = Minifier::new(MinifierOptions::default()).minify(&allocator, &mut program);
    let writer = Codegen::new().with_options(CodegenOptions::minify()).with_scoping(minified.scoping);
    Ok(writer.build(&program).code)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_others_import_keeps_its_name_and_comments_go() {
        let text =
            "/** Says it. @param {string} word */\nexport function say(word) {\n  // aloud\n  return `${word}!`;\n}\n";
        let short = module("say.js", text).unwrap();
        assert!(
            short.contains("export function say(") && !short.contains("aloud") && !short.contains("word"),
            "{short}"
        );
    }

    #[test]
    fn what_is_no_module_is_a_fault() {
        assert!(module("broken.js", "export const = 1;").is_err());
    }

    #[test]
    fn a_folder_is_minified_but_for_its_worker() {
        let folder = tempfile::tempdir().unwrap();
        let put = |name: &str, text: &str| fs::write(folder.path().join(name), text).unwrap();
        put("a.js", "export const one = 1; // one\n");
        put(WORKER, "// kept\n");
        run(folder.path()).unwrap();
        let read = |name: &str| fs::read_to_string(folder.path().join(name)).unwrap();
        assert!(!read("a.js").contains("//") && read("a.js").contains("one"));
        assert_eq!(read(WORKER), "// kept\n");
    }
}
