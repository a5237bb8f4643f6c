//! Answers to random jobs and to files, one a line, to be compared before and after a change:
//! `cargo run -p pintle-tests --example answers -- COUNT WILD FILES… > answers.txt`.
//!
//! COUNT jobs of the property tests, WILD ones of the benchmarks' search for slow jobs; FILES are planned, and set out where they have a
//! block for it. A line is a name, a hash of the answer's JSON, and the JSON itself: every number to its last bit.

#[path = "../properties/jobs.rs"]
#[allow(dead_code)]
mod jobs;
#[path = "../../core/benches/wild/mod.rs"]
#[allow(dead_code)]
mod wild;

use pintle_core::{
    Document,
    job::Job,
    plan::{plan, set_out},
};
use proptest::strategy::{Strategy, ValueTree};
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use std::io::{BufWriter, Write};

/// Fowler, Noll and Vo's hash, 1a, 64 bits.
fn hash(text: &str) -> u64 {
    text.bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3))
}

/// An answer or its faults as JSON.
macro_rules! json {
    ($answer:expr) => {
        match &$answer {
            Ok(answer) => serde_json::to_string(answer),
            Err(invalid) => serde_json::to_string(invalid),
        }
        .expect("answers are JSON")
    };
}

fn line(out: &mut impl Write, name: &str, text: &str) {
    writeln!(out, "{name}\t{:016x}\t{text}", hash(text)).expect("the output takes it");
}

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let number = |index: usize| words.get(index).and_then(|word| word.parse().ok()).unwrap_or(0_usize);
    let out = &mut BufWriter::new(std::io::stdout().lock());
    let random = TestRng::from_seed(RngAlgorithm::ChaCha, &[7; 32]);
    let mut runner = TestRunner::new_with_rng(Config { max_global_rejects: u32::MAX, ..Config::default() }, random);
    let (plain, loaded) = (jobs::valid().boxed(), jobs::loaded().boxed());
    for index in 0..number(0) {
        let drawn = if index % 4 == 0 { &plain } else { &loaded }.new_tree(&mut runner);
        let job = jobs::job(&drawn.expect("a job is drawn").current());
        line(out, &format!("job {index}"), &json!(plan(&job)));
    }
    let (kept, dice) = (wild::kept(), &mut wild::Dice(11));
    for index in 0..number(1) {
        let (_, job) = wild::drawn(dice, &kept, wild::is_planned);
        line(out, &format!("wild {index}"), &json!(plan(&job)));
    }
    for path in words.iter().skip(2) {
        let text = std::fs::read_to_string(path).unwrap_or_else(|error| panic!("{path}: {error}"));
        let Ok(document) = serde_json::from_str::<Document>(&text) else { continue };
        let name = path.rsplit('/').next().unwrap_or(path);
        line(out, &format!("plan {name}"), &json!(Job::read(&document).and_then(|job| plan(&job))));
        if let Ok(job) = Job::read(&document)
            && job.setout.is_some()
        {
            line(out, &format!("set-out {name}"), &json!(set_out(&job)));
        }
    }
}
