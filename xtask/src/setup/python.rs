//! A Python with the engines that the native example is held to, in a virtual environment of its own.

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result};
use sha2::{Digest, Sha256};

use super::install_packages;
use crate::place::{cache, program, root};
use crate::shell::{read, run, say};

/// What the pinned packages ask for.
const OLDEST: (u32, u32) = (3, 11);

/// The environment's Python, from the user's cache or, the first time, made with what `tests/python/requirements.txt` pins. The
/// folder is named by that file's hash, so that a changed pin makes a new one.
pub fn ensure() -> Result<PathBuf> {
    let pins = root().join("tests/python/requirements.txt");
    let hash = Sha256::digest(fs::read(&pins)?);
    let name: String = hash.iter().take(6).map(|byte| format!("{byte:02x}")).collect();
    let home = cache()?.join(format!("python-{name}"));
    let python = home.join("bin/python");
    let done = home.join("complete");
    if done.is_file() {
        return Ok(python);
    }
    let base = match find() {
        Some(base) => base,
        None => {
            install_packages(&["python3", "python3-venv"], "the independent engines")?;
            find().with_context(|| format!("the independent engines need Python {}.{} or newer", OLDEST.0, OLDEST.1))?
        }
    };
    say(format!("installing the packages of tests/python/requirements.txt into {}", home.display()));
    let _ = fs::remove_dir_all(&home);
    run(Command::new(&base).args(["-m", "venv"]).arg(&home))?;
    run(Command::new(&python)
        .args(["-m", "pip", "install", "--quiet", "--disable-pip-version-check", "-r"])
        .arg(&pins))?;
    fs::write(done, "")?;
    Ok(python)
}

/// A Python that is new enough and can make virtual environments.
fn find() -> Option<PathBuf> {
    ["python3", "python3.14", "python3.13", "python3.12", "python3.11"].into_iter().filter_map(program).find(|python| {
        let (major, minor) = OLDEST;
        let question = format!("import ensurepip, sys; sys.exit(sys.version_info < ({major}, {minor}))");
        read(Command::new(python).args(["-c", &question])).is_ok()
    })
}
