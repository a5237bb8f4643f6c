//! The task runner: one cargo alias that sets up, builds, serves and tests.
//!
//! `cargo xtask --help` lists what it does. Everything that it installs is pinned, said before it is done, and kept in the
//! user's cache ([`place::cache`]) or in Cargo's target folder.

mod bundle;
mod host;
mod names;
mod operators;
mod page;
mod place;
mod precache;
mod release;
mod sent;
mod serve;
mod setup;
mod shell;
mod sizes;
mod test;
mod trouble;
mod uses;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use anyhow::Result;
use clap::{Parser, Subcommand};

/// Pintle's task runner.
#[derive(Parser)]
#[command(bin_name = "cargo xtask")]
struct Cli {
    #[command(subcommand)]
    task: Task,
}

#[derive(Subcommand)]
enum Task {
    /// Set up, build the page and serve it on this machine.
    Serve {
        /// Port to listen on; 0 takes a free one.
        #[arg(long, default_value_t = 8080)]
        port: u16,
        /// Folder of the address the page appears under, such as /a/b/.
        #[arg(long, default_value = "/")]
        base: host::Base,
        /// Open the address in a browser.
        #[arg(long)]
        open: bool,
    },
    /// Set up and build the page into dist/.
    Build,
    /// Set up and run every test, or those steps whose names contain one of the given words.
    Test {
        /// Parts of step names.
        only: Vec<String>,
    },
    /// Check a list of operators: what would be left out and what is warned of, as JSON. Exits with 2 where something is left out.
    CheckOperators {
        /// The list, or - for standard input.
        file: PathBuf,
    },
    /// Print the compressed size of everything the page loads; fails over budget.
    Sizes,
    /// Build and pack the page for a release, and say what was done: version, text of the tag, artefacts.
    Release {
        /// Of a version that is not final.
        #[arg(long)]
        rehearsal: bool,
    },
    /// Run Trunk with the tools it needs on its PATH: `cargo xtask trunk serve`.
    Trunk {
        /// Trunk's own arguments.
        #[arg(trailing_var_arg = true, allow_hyphen_values = true)]
        arguments: Vec<String>,
    },
    /// Serve a folder as it is, say the address on the first line, and stop when standard input closes; lines on it ask for trouble.
    Host {
        /// The folder.
        folder: PathBuf,
        /// Port to listen on; 0 takes a free one.
        #[arg(long, default_value_t = 0)]
        port: u16,
        /// Folder of the address the files appear under.
        #[arg(long, default_value = "/")]
        base: host::Base,
        /// Send files packed (brotli).
        #[arg(long)]
        packed: bool,
    },
    /// Bundle scripts and styles, then do what `precache` does (Trunk calls this after each build).
    Bundle,
    /// Write the list of files and their hashes into the service worker.
    Precache,
    /// Run wasm tests in headless Chromium (Cargo calls this as the runner of the wasm target).
    WasmTest {
        /// The test module and the test arguments.
        #[arg(trailing_var_arg = true, allow_hyphen_values = true)]
        arguments: Vec<String>,
    },
}

fn main() -> ExitCode {
    match run() {
        Ok(code) => code,
        Err(error) => {
            eprintln!("error: {error:#}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<ExitCode> {
    if let Some(result) = run_as_tool() {
        return result.map(|()| ExitCode::SUCCESS);
    }
    let done = match Cli::parse().task {
        Task::CheckOperators { file } => return operators::check(&file),
        Task::Serve { port, base, open } => serve::serve(port, &base, open),
        Task::Build => page::build(),
        Task::Test { only } => test::run(&only),
        Task::Sizes => sizes::print(&place::dist()),
        Task::Release { rehearsal } => release::release(rehearsal),
        Task::Trunk { arguments } => page::trunk(&arguments),
        Task::Host { folder, port, base, packed } => host::run(&folder, port, &base, packed),
        Task::Bundle => bundle::run(),
        Task::Precache => precache::run(),
        Task::WasmTest { arguments } => setup::bindgen::run_tests(&arguments),
    };
    done.map(|()| ExitCode::SUCCESS)
}

/// This program under another name is the tool of that name: the links that [`setup::bindgen`] lays point here.
fn run_as_tool() -> Option<Result<()>> {
    let arguments = std::env::args_os();
    let called = std::env::args_os().next()?;
    match Path::new(&called).file_stem()?.to_str()? {
        setup::bindgen::BINDGEN => Some(setup::bindgen::run(arguments.skip(1))),
        name if setup::barred::NAMES.contains(&name) => Some(setup::barred::refuse(name)),
        setup::bindgen::TEST_RUNNER => Some(wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(arguments)),
        _ => None,
    }
}
