//! What the page uses of others' scripts: kept beside the task runner as its package has it, so that a page is built without npm. The step that
//! checks the scripts holds it to the package that its lock file pins.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::place::root;

/// A script of others: where the page has it, and what the notices say of it.
pub struct Vendored {
    /// Its place among the page's files.
    pub name: &'static str,
    /// Its folder below `xtask/vendor`.
    folder: &'static str,
    /// Package, version and licence.
    pub package: &'static str,
}

pub const VENDORED: [Vendored; 1] =
    [Vendored { name: "app/lit-html.js", folder: "lit-html", package: "lit-html 3.3.3 (BSD-3-Clause)" }];

impl Vendored {
    fn path(&self, file: &str) -> PathBuf {
        root().join("xtask/vendor").join(self.folder).join(file)
    }

    /// Text of its licence.
    pub fn licence(&self) -> Result<String> {
        fs::read_to_string(self.path("LICENSE")).with_context(|| format!("no licence of {}", self.package))
    }
}

/// Lays them where the page's own modules import them from.
pub fn run(folder: &Path) -> Result<()> {
    for vendored in &VENDORED {
        let file = vendored.name.rsplit('/').next().unwrap_or(vendored.name);
        let text = fs::read_to_string(vendored.path(file)).with_context(|| format!("no {}", vendored.package))?;
        // Its own source map is not in the package's part that is kept here.
        let code: Vec<&str> = text.lines().filter(|line| !line.starts_with("//# sourceMappingURL")).collect();
        fs::write(folder.join(vendored.name), code.join("\n") + "\n")?;
    }
    Ok(())
}
