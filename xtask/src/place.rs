//! Where things are.

use std::env;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

/// The folder of the workspace.
pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("the task runner lies in the workspace").to_path_buf()
}

/// The built page.
pub fn dist() -> PathBuf {
    root().join("dist")
}

/// Cargo's target folder of this workspace: `CARGO_TARGET_DIR`, else `target` beside the workspace's manifest.
pub fn target() -> PathBuf {
    match env::var_os("CARGO_TARGET_DIR") {
        Some(folder) => root().join(folder),
        None => root().join("target"),
    }
}

/// The user's cache folder for what the commands install: `$XDG_CACHE_HOME/pintle`, else `.cache/pintle` in the home folder.
pub fn cache() -> Result<PathBuf> {
    let parent = match env::var_os("XDG_CACHE_HOME").filter(|folder| Path::new(folder).is_absolute()) {
        Some(folder) => PathBuf::from(folder),
        None => env::home_dir().context("no home folder: set XDG_CACHE_HOME")?.join(".cache"),
    };
    Ok(parent.join("pintle"))
}

/// The file of a program on `PATH`.
pub fn program(name: &str) -> Option<PathBuf> {
    let file = format!("{name}{}", env::consts::EXE_SUFFIX);
    env::split_paths(&env::var_os("PATH")?).map(|folder| folder.join(&file)).find(|path| path.is_file())
}
