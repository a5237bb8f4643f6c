//! Checks a list of operators: `cargo run --release -p pintle-core --example operators -- operators.json`, or `-` for standard input.
//!
//! Prints as JSON how many can be used, what is left out and what is warned of. Exit code 0 on standard output where nothing is left out, 2 on
//! standard error where something is, 1 if the file cannot be read.

#[allow(dead_code)] // A list is no job.
mod common;

use pintle_core::operators::{ReadOperators, read};

fn main() -> std::process::ExitCode {
    common::run_on("operators", |document| {
        let ReadOperators { title, operators, left_out, warnings, .. } = read(document);
        let told = serde_json::json!({ "title": title, "usable": operators.len(), "left_out": left_out, "warnings": warnings });
        Ok((format!("{told:#}"), if left_out.is_empty() { 0 } else { common::INVALID }))
    })
}
