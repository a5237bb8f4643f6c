//! Searches where to stand the operator: `cargo run --release -p pintle-core --example setout -- job.json`, or `-` for standard input.
//!
//! Exit code 0 with the set-out on standard output; 3 where none keeps every limit, with the nearest and what is in the way; 2 with the
//! faults as JSON on standard error; 1 if the file cannot be read.

mod common;

/// Nothing keeps every limit.
const NONE: u8 = 3;

fn main() -> std::process::ExitCode {
    common::run("setout", pintle_core::plan::set_out, |answer| if answer.best.is_some() { 0 } else { NONE })
}
