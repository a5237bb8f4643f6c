//! Every test in one run.
//!
//! A step is a name and a function; the groups below list theirs, one file each, and [`groups`] puts them in order. A step that
//! fails does not stop the ones that do not build on it.

mod log;
mod native;
mod page;
mod scripts;
mod speed;
mod style;

use std::time::{Duration, Instant};

use anyhow::{Result, bail, ensure};

use log::Log;

/// One part of the test run.
pub struct Step {
    /// Its name, unique.
    pub name: &'static str,
    /// The step it builds on: it is not run unless that one passed in this run.
    pub after: Option<&'static str>,
    /// Whether its output is worth reading when it passes.
    pub shown: bool,
    /// What it does; everything it runs writes to the log.
    pub run: fn(&mut Log) -> Result<()>,
}

fn groups() -> Vec<&'static Step> {
    [style::STEPS, native::STEPS, page::STEPS, scripts::STEPS, speed::STEPS].into_iter().flatten().collect()
}

/// Runs the steps whose names contain one of the given words, and those they build on; all of them for no word. An error
/// unless all passed.
pub fn run(only: &[String]) -> Result<()> {
    let steps = choose(&groups(), only);
    ensure!(!steps.is_empty(), "no step has such a name; there are: {}", names(&groups()));
    let start = Instant::now();
    let mut passed = Vec::new();
    let mut failed = Vec::new();
    for step in &steps {
        if attempt(step, &passed) { passed.push(step.name) } else { failed.push(step.name) }
    }
    println!("\nin all {}", time(start.elapsed()));
    if !failed.is_empty() {
        println!("failed: {}", failed.join(", "));
    }
    println!("{} passed, {} failed", passed.len(), failed.len());
    if failed.is_empty() { Ok(()) } else { bail!("{} of {} steps failed", failed.len(), steps.len()) }
}

fn choose(all: &[&'static Step], only: &[String]) -> Vec<&'static Step> {
    let named = |step: &Step| only.is_empty() || only.iter().any(|word| step.name.contains(word.as_str()));
    let mut chosen: Vec<&str> = all.iter().filter(|step| named(step)).map(|step| step.name).collect();
    // What a step builds on comes before it, so that one pass from the end finds all of it.
    for step in all.iter().rev().filter(|step| step.after.is_some()) {
        if chosen.contains(&step.name) {
            chosen.extend(step.after);
        }
    }
    all.iter().copied().filter(|step| chosen.contains(&step.name)).collect()
}

fn attempt(step: &Step, passed: &[&str]) -> bool {
    if let Some(before) = step.after.filter(|before| !passed.contains(before)) {
        println!("FAILED  {:<28} not run: {before} failed", step.name);
        return false;
    }
    let start = Instant::now();
    let mut log = Log::start(step.name);
    let result = (step.run)(&mut log);
    let took = time(start.elapsed());
    let output = log.end();
    match &result {
        Ok(()) => println!("passed  {:<28} {took:>8}{}", step.name, tests_in(&output)),
        Err(error) => println!("FAILED  {:<28} {took:>8}\n{output}{error:#}\n", step.name),
    }
    if result.is_ok() && step.shown {
        println!("{output}");
    }
    result.is_ok()
}

/// How many tests the output of Cargo's test runners, or of node's, counts as passed.
fn count(output: &str) -> usize {
    let passed = |line: &str| {
        if let Some(counted) = line.strip_prefix("# pass ") {
            return counted.trim().parse::<usize>().ok();
        }
        let (_, result) = line.split_once("test result: ")?;
        let (_, counts) = result.split_once(". ")?;
        counts.split_once(" passed")?.0.parse::<usize>().ok()
    };
    output.lines().filter_map(passed).sum()
}

fn tests_in(output: &str) -> String {
    match count(output) {
        0 => String::new(),
        tests => format!("  {tests} tests"),
    }
}

fn time(duration: Duration) -> String {
    let seconds = duration.as_secs_f64();
    if seconds < 60.0 {
        format!("{seconds:.1} s")
    } else {
        format!("{:.0} min {:02.0} s", (seconds / 60.0).floor(), seconds % 60.0)
    }
}

fn names(steps: &[&Step]) -> String {
    steps.iter().map(|step| step.name).collect::<Vec<_>>().join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn counts_what_the_runners_print() {
        let output = "running 3 tests\ntest result: ok. 3 passed; 0 failed; 0 ignored\n\n\
                      test result: ok. 12 passed; 0 failed; 0 ignored; 0 filtered out; finished in 0.10s\n";
        assert_eq!(count(output), 15);
        assert_eq!(count("TAP version 13\nok 1 - a\n1..1\n# tests 1\n# pass 1\n# fail 0\n"), 1);
        assert_eq!(count("no tests to run!"), 0);
    }

    #[test]
    fn names_are_unique_and_foundations_come_first() {
        let steps = groups();
        for (at, step) in steps.iter().enumerate() {
            assert!(steps[..at].iter().all(|other| other.name != step.name), "{} twice", step.name);
            if let Some(before) = step.after {
                assert!(steps[..at].iter().any(|other| other.name == before), "{} before {before}", step.name);
            }
        }
    }

    #[test]
    fn a_chosen_step_brings_what_it_builds_on() {
        let chosen = choose(&groups(), &["page in".to_owned()]);
        assert_eq!(names(&chosen), "page build, page in the browser");
        assert_eq!(choose(&groups(), &[]).len(), groups().len());
        assert!(choose(&groups(), &["no such step".to_owned()]).is_empty());
    }
}
