//! Prints the plan of a job: `cargo run --release -p pintle-core --example plan -- job.json`, or `-` for standard input.
//!
//! Exit code 0 with the plan on standard output, 2 with the faults as JSON on standard error, 1 if the file cannot be read.

mod common;

fn main() -> std::process::ExitCode {
    common::run("plan", pintle_core::plan::plan, |_| 0)
}
