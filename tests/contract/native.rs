//! The native example as a person runs it: standard output, standard error, exit codes.

use super::{answer, job, with};
use serde_json::{Value, json};
use std::io::Write;
use std::process::{Command, Output, Stdio};

/// Runs the example on a text given on standard input.
fn run(text: &str) -> Output {
    run_example("plan", text)
}

fn run_example(name: &str, text: &str) -> Output {
    let mut child = Command::new(env!("CARGO"))
        .args(["run", "--quiet", "--package", "pintle-core", "--example", name, "--", "-"])
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

#[test]
fn a_list_of_operators_is_judged_with_the_same_exit_codes() {
    let judged = |text: &str| {
        let output = run_example("operators", text);
        let side = if output.status.code() == Some(0) { &output.stdout } else { &output.stderr };
        (output.status.code(), serde_json::from_slice::<Value>(side).expect("JSON"))
    };
    let (code, told) = judged(include_str!("../../www/data/operators.json"));
    assert_eq!((code, &told["usable"], &told["warnings"]), (Some(0), &json!(6), &json!([])));
    let (code, told) = judged(
        r#"{ "operators": [{ "id": "a", "name": "A", "rated_torque_n_m": 0.4 },
            { "id": "b", "name": "B", "rated_torque_n_m": 300, "colour": "green" }] }"#,
    );
    assert_eq!((code, &told["usable"]), (Some(2), &json!(1)));
    let fault = &told["left_out"][0]["faults"][0];
    assert_eq!((&fault["path"], &fault["found"]), (&json!("operators.0.rated_torque_n_m"), &json!("0.4")));
    assert_eq!((&fault["code"], &fault["example"]), (&json!("meant_kilonewton_metres"), &json!(400.0)));
    assert_eq!(told["warnings"][0]["path"], json!("operators.1.colour"));
    let (code, told) = judged("{ not json");
    assert_eq!((code, &told["errors"][0]["code"]), (Some(2), &json!("not_json")));
}
