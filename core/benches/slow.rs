//! The slowest jobs a random search finds: `cargo bench -p pintle-core --bench slow -- [plan|search] [seconds] [seed] [folder]`, or
//! `… -- [plan|search] FILES…` for what jobs in files take.
//!
//! Wild jobs are planned (or searched), the slowest kept and changed further, as long as the time goes; the slowest ten are printed, the
//! seed that made each beside it, and written to the folder where one is named. What is printed is the processor time of this thread, the least of
//! many runs; who else runs on the machine still takes of its caches and its clock, so beside it stands how many plans of the demonstration
//! job, timed in turns with it, that comes to. Nothing is asserted: a busy machine is no fault of the code.

mod wild;

use pintle_core::{
    job::Job,
    plan::{plan, set_out},
};
use serde_json::Value;
use std::hint::black_box;
use std::time::Instant;
use wild::Dice;

/// Slow jobs that are kept to climb from, and those that are printed.
const KEPT: usize = 40;
const PRINTED: usize = 10;
/// Runs of what is printed.
const RUNS: usize = 15;

struct Slow {
    ms: f64,
    seed: u64,
    value: Value,
}

/// Processor time of this thread so far, ms. The clock of the thread itself: what a file system tells of it is counted in ticks on some systems.
#[cfg(unix)]
fn now_ms() -> f64 {
    let now = rustix::time::clock_gettime(rustix::time::ClockId::ThreadCPUTime);
    1e3 * now.tv_sec as f64 + 1e-6 * now.tv_nsec as f64
}

/// Where no such clock is known, the one on the wall.
#[cfg(not(unix))]
fn now_ms() -> f64 {
    static BEGAN: std::sync::LazyLock<Instant> = std::sync::LazyLock::new(Instant::now);
    1e3 * BEGAN.elapsed().as_secs_f64()
}

/// One run, ms; the mean of as many as a millisecond needs.
fn cost_ms(job: &Job, run: fn(&Job)) -> f64 {
    let before = now_ms();
    let mut runs = 0;
    loop {
        run(black_box(job));
        runs += 1;
        let ms = now_ms() - before;
        if ms > 1.0 {
            return ms / f64::from(runs);
        }
    }
}

/// The least of many runs, ms, and what the demonstration job's plan takes on the same machine at the same time.
fn least_ms(job: &Job, run: fn(&Job)) -> (f64, f64) {
    let demonstration = wild::read(&wild::kept()[0]).expect("the demonstration job is valid");
    let (mut least, mut usual, mut spent) = (f64::MAX, f64::MAX, 0.0);
    for count in 0..RUNS {
        let ms = cost_ms(job, run);
        (least, usual, spent) = (least.min(ms), usual.min(cost_ms(&demonstration, KINDS[0].run)), spent + ms);
        if count >= 2 && spent > 1e3 {
            break;
        }
    }
    (least, usual)
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

fn print(ms: f64, usual_ms: f64, name: &str) {
    println!("  {ms:8.2} = {:7.1} demonstrations  {name}", ms / usual_ms);
}

fn main() {
    let words: Vec<String> = std::env::args().skip(1).filter(|word| !word.starts_with("--")).collect();
    let word = |index: usize| words.get(index).map(String::as_str);
    let files: Vec<&String> = words.iter().filter(|word| word.ends_with(".json")).collect();
    let seconds = word(1).and_then(|word| word.parse().ok()).unwrap_or(5.0);
    let seed = word(2).and_then(|word| word.parse().ok()).unwrap_or(1);
    for kind in KINDS {
        let Kind { name, run, wanted } = kind;
        if word(0).is_some_and(|word| KINDS.iter().any(|kind| kind.name == word) && word != name) {
            continue;
        }
        if !files.is_empty() {
            println!("{name}, ms");
            for path in &files {
                let value = std::fs::read(path).ok().and_then(|text| serde_json::from_slice(&text).ok());
                match value.as_ref().and_then(wild::read) {
                    Some(job) if wanted(&job) => {
                        let (ms, usual_ms) = least_ms(&job, run);
                        print(ms, usual_ms, path);
                    }
                    Some(_) => {}
                    None => eprintln!("{path}: no job"),
                }
            }
            continue;
        }
        let mut slowest: Vec<(f64, f64, Slow)> = Vec::new();
        for slow in hunt(kind, seconds, seed).into_iter().take(2 * PRINTED) {
            let job = wild::read(&slow.value).expect("it was read before");
            let (ms, usual_ms) = least_ms(&job, run);
            slowest.push((ms, usual_ms, slow));
        }
        slowest.sort_by(|one, other| other.0.total_cmp(&one.0));
        for (rank, (ms, usual_ms, slow)) in slowest.iter().take(PRINTED).enumerate() {
            print(*ms, *usual_ms, &format!("seed {}", slow.seed));
            if let Some(folder) = word(3) {
                let path = format!("{folder}/{name}-{rank}.json");
                std::fs::write(&path, slow.value.to_string()).unwrap_or_else(|error| eprintln!("{path}: {error}"));
            }
        }
    }
}
