//! The native example as a person runs it: standard output, standard error, exit codes.

use super::{answer, job, with};
use serde_json::{Value, json};
use std::io::Write;
use std::process::{Command, Output, Stdio};

/// Runs the example on a text given on standard input.
fn run(text: &str) -> Output {
    let mut child = Command::new(env!("CARGO"))
        .args(["run", "--quiet", "--package", "pintle-core", "--example", "plan", "--", "-"])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("cargo runs");
    child.stdin.take().expect("a pipe").write_all(text.as_bytes()).expect("the example reads");
    child.wait_with_output().expect("the example ends")
}

#[test]
fn a_plan_goes_to_standard_output() {
    let output = run(&job().to_string());
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    let printed: Value = serde_json::from_slice(&output.stdout).expect("JSON");
    let computed = serde_json::to_value(answer(&job()).expect("valid")).expect("serialises");
    assert_eq!(printed, computed);
}

#[test]
fn faults_go_to_standard_error_with_exit_code_two() {
    for (text, code) in [
        (with("/leaf/mass_kg", json!(0)).to_string(), "out_of_range"),
        (with("/schema", json!(9)).to_string(), "newer_schema"),
        ("{ not json".to_string(), "not_json"),
        (String::new(), "not_json"),
    ] {
        let output = run(&text);
        assert_eq!(output.status.code(), Some(2), "{text}");
        assert!(output.stdout.is_empty());
        let faults: Value = serde_json::from_slice(&output.stderr).expect("JSON");
        assert_eq!(faults["errors"][0]["code"], code);
    }
}
