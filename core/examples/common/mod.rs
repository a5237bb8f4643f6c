//! What the examples share: a job from a file or standard input, an answer or its faults as JSON, an exit code that says which.

use pintle_core::{Document, fault::Invalid, job::CheckedJob};
use std::io::Read;
use std::process::ExitCode;

/// Exit codes: the file cannot be read, the job is invalid, nothing keeps the limits.
pub const UNREADABLE: u8 = 1;
pub const INVALID: u8 = 2;

/// Reads the job the command line names, answers it, prints the answer. `code` says what an answer's exit code is.
pub fn run<A: serde::Serialize>(
    name: &str,
    answer: impl Fn(&CheckedJob) -> Result<A, Invalid>,
    code: impl Fn(&A) -> u8,
) -> ExitCode {
    run_on(name, |document| {
        let answer = CheckedJob::read(document).and_then(|job| answer(&job))?;
        Ok((json(&answer), code(&answer)))
    })
}

/// Reads the document the command line names, and prints what is told of it: beside an exit code of [`INVALID`] on standard error.
pub fn run_on(name: &str, told: impl Fn(&Document) -> Result<(String, u8), Invalid>) -> ExitCode {
    let Some(path) = std::env::args().nth(1) else {
        eprintln!("usage: {name} FILE.json, or - for standard input");
        return ExitCode::from(UNREADABLE);
    };
    let bytes = match read_bytes(&path) {
        Ok(bytes) => bytes,
        Err(error) => {
            eprintln!("{path}: {error}");
            return ExitCode::from(UNREADABLE);
        }
    };
    let document = serde_json::from_slice(&bytes).map_err(|error| Invalid::not_json(error.to_string()));
    match document.and_then(|document| told(&document)) {
        Ok((text, INVALID)) => {
            eprintln!("{text}");
            ExitCode::from(INVALID)
        }
        Ok((text, code)) => {
            println!("{text}");
            ExitCode::from(code)
        }
        Err(invalid) => {
            eprintln!("{}", json(&invalid));
            ExitCode::from(INVALID)
        }
    }
}

fn read_bytes(path: &str) -> std::io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    match path {
        "-" => std::io::stdin().read_to_end(&mut bytes)?,
        path => std::fs::File::open(path)?.read_to_end(&mut bytes)?,
    };
    Ok(bytes)
}

fn json(value: &impl serde::Serialize) -> String {
    serde_json::to_string_pretty(value).expect("answers and faults hold only finite numbers and text")
}
