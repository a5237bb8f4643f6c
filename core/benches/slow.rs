//! The slowest jobs a random search finds: `cargo bench -p pintle-core --bench slow -- [plan|search] [seconds] [seed] [folder]`.
//!
//! Wild jobs are planned (or searched), the slowest kept and changed further, as long as the time goes; the slowest ten are printed, the
//! seed that made each beside it, and written to the folder where one is named. Processor time of this thread, the least of three runs. Nothing
//! is asserted: a busy machine is no fault of the code.

mod wild;

use pintle_core::{Job, plan, set_out};
use serde_json::Value;
use std::hint::black_box;
use std::time::Instant;
use wild::Dice;

/// Slow jobs that are kept to climb from, and those that are printed.
const KEPT: usize = 40;
const PRINTED: usize = 10;

struct Slow {
    ms: f64,
    seed: u64,
    value: Value,
}

/// Processor time of this thread, ms, where the system tells it; else the clock on the wall.
fn now_ms(began: &Instant) -> f64 {
    let told = std::fs::read_to_string("/proc/thread-self/schedstat").ok();
    let ns = told.and_then(|text| text.split_whitespace().next()?.parse::<f64>().ok());
    ns.map_or_else(|| 1e3 * began.elapsed().as_secs_f64(), |ns| ns / 1e6)
}

fn cost_ms(job: &Job, run: fn(&Job)) -> f64 {
    let began = Instant::now();
    let before = now_ms(&began);
    run(black_box(job));
    now_ms(&began) - before
}

/// What is asked of a job, and of which.
struct Kind {
    name: &'static str,
    run: fn(&Job),
    wanted: fn(&Job) -> bool,
}

const KINDS: [Kind; 2] = [
    Kind { name: "plan", run: |job| drop(black_box(plan(job))), wanted: wild::is_planned },
    Kind { name: "search", run: |job| drop(black_box(set_out(job))), wanted: |job| job.setout.is_some() },
];

fn hunt(Kind { name, run, wanted }: Kind, seconds: f64, seed: u64) -> Vec<Slow> {
    let kept = wild::kept();
    let mut slow: Vec<Slow> = Vec::new();
    let note = |slow: &mut Vec<Slow>, seed: u64, value: Value, job: &Job| {
        let mut ms = cost_ms(job, run);
        let bar = if slow.len() < KEPT { 0.0 } else { slow[KEPT - 1].ms };
        // What is slow by chance is not slow three times.
        for _ in 0..2 {
            if ms > bar {
                ms = ms.min(cost_ms(job, run));
            }
        }
        if ms > bar {
            slow.push(Slow { ms, seed, value });
            slow.sort_by(|one, other| other.ms.total_cmp(&one.ms));
            slow.truncate(KEPT);
        }
    };
    for value in &kept {
        if let Some(job) = wild::read(value).filter(wanted) {
            note(&mut slow, 0, value.clone(), &job);
        }
    }
    let began = Instant::now();
    let (mut seed, mut tried) = (seed, 0);
    while began.elapsed().as_secs_f64() < seconds {
        (seed, tried) = (seed + 1, tried + 1);
        let dice = &mut Dice(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15));
        // By turns somewhere new, and on from one of the slow ones; the slowest most often.
        let found = if tried % 3 == 0 {
            Some(wild::drawn(dice, &kept, wanted))
        } else {
            let share = dice.share();
            let base = slow[(share * share * slow.len() as f64) as usize].value.clone();
            let changes = 1 + dice.below(3);
            wild::changed(dice, base, &kept, changes).filter(|(_, job)| wanted(job))
        };
        if let Some((value, job)) = found {
            note(&mut slow, seed, value, &job);
        }
    }
    println!("{name}: the slowest of {tried} jobs, ms");
    slow
}

fn main() {
    let words: Vec<String> = std::env::args().skip(1).filter(|word| !word.starts_with("--")).collect();
    let word = |index: usize| words.get(index).map(String::as_str);
    let seconds = word(1).and_then(|word| word.parse().ok()).unwrap_or(5.0);
    let seed = word(2).and_then(|word| word.parse().ok()).unwrap_or(1);
    for kind in KINDS {
        let name = kind.name;
        if word(0).is_some_and(|word| word != name && word != "both") {
            continue;
        }
        for (rank, slow) in hunt(kind, seconds, seed).iter().take(PRINTED).enumerate() {
            println!("  {:8.2}  seed {}", slow.ms, slow.seed);
            if let Some(folder) = word(3) {
                let path = format!("{folder}/{name}-{rank}.json");
                std::fs::write(&path, slow.value.to_string()).unwrap_or_else(|error| eprintln!("{path}: {error}"));
            }
        }
    }
}
