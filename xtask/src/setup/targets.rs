//! The compiler's targets.

use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result};

use crate::shell::{read, run, say};

/// What the page runs on.
pub const WASM: &str = "wasm32-unknown-unknown";
/// A microcontroller without an operating system: building for it proves that the core needs none.
pub const BARE_METAL: &str = "thumbv7em-none-eabihf";

/// Adds a target's standard library to the active toolchain if it is not there.
pub fn ensure(target: &str) -> Result<()> {
    let sysroot = read(Command::new("rustc").args(["--print", "sysroot"]))?;
    if PathBuf::from(sysroot.trim()).join("lib/rustlib").join(target).join("lib").is_dir() {
        return Ok(());
    }
    say(format!("adding the compiler target {target}"));
    run(Command::new("rustup").args(["target", "add", target]))
        .with_context(|| format!("the toolchain lacks {target}; without rustup, install its standard library by hand"))
}
