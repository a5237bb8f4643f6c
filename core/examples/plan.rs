//! Prints the plan of a job: `cargo run --release -p pintle-core --example plan -- job.json`, or `-` for standard input.
//!
//! Exit code 0 with the plan on standard output, 2 with the faults as JSON on standard error, 1 if the file cannot be read.

use pintle_core::{Document, Invalid, Job, Plan, plan};
use std::io::Read;
use std::process::ExitCode;

fn main() -> ExitCode {
    let Some(path) = std::env::args().nth(1) else {
        eprintln!("usage: plan JOB.json, or - for standard input");
        return ExitCode::from(1);
    };
    match read_text(&path) {
        Err(error) => {
            eprintln!("{path}: {error}");
            ExitCode::from(1)
        }
        Ok(bytes) => match answer(&bytes) {
            Ok(plan) => {
                println!("{}", json(&plan));
                ExitCode::SUCCESS
            }
            Err(invalid) => {
                eprintln!("{}", json(&invalid));
                ExitCode::from(2)
            }
        },
    }
}

fn read_text(path: &str) -> std::io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    match path {
        "-" => std::io::stdin().read_to_end(&mut bytes)?,
        path => std::fs::File::open(path)?.read_to_end(&mut bytes)?,
    };
    Ok(bytes)
}

fn answer(bytes: &[u8]) -> Result<Plan, Invalid> {
    let document: Document = serde_json::from_slice(bytes).map_err(|error| Invalid::not_json(error.to_string()))?;
    plan(&Job::read(&document)?)
}

fn json(value: &impl serde::Serialize) -> String {
    serde_json::to_string_pretty(value).expect("plans and faults hold only finite numbers and text")
}
