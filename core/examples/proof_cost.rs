//! What it costs that every tape error has to leave an arm working: `cargo run --release -p pintle-core --example proof_cost -- job.json ...`.
//!
//! For each job with a `setout` block a line: the search and the map of 65 × 65 places with the proof over without, the least of some runs that take turns.
//! Where no arm keeps to the proof, the search goes on to say what is in the way, as it does without the proof where there is no arm at all.

use pintle_core::{
    Document,
    job::Job,
    plan::{PadMap, set_out},
};
use std::time::Instant;

/// Runs of each, the least of which counts.
const RUNS: usize = 5;
/// Least time of a run, s.
const LEAST_S: f64 = 0.3;
/// Places along each side of the map.
const SIDE: usize = 65;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    for path in std::env::args().skip(1) {
        let document: Document = serde_json::from_slice(&std::fs::read(&path)?)?;
        let mut job = Job::read(&document).map_err(|invalid| format!("{path}: {invalid:?}"))?;
        let mut asked = |proof: bool| {
            if let Some(setout) = &mut job.setout {
                setout.tape_proof = Some(proof);
            }
            job.clone()
        };
        let jobs = [asked(false), asked(true)];
        let none = set_out(&jobs[1]).is_ok_and(|answer| answer.best.is_none());
        let search = least_seconds(&jobs, |job| set_out(job).is_ok());
        let map = least_seconds(&jobs, |job| {
            let Ok(mut map) = PadMap::new(job, SIDE, SIDE) else { return false };
            while map.step(1000) {}
            true
        });
        let told = |[without, with]: [f64; 2]| {
            format!("{:.1} ms, with the proof {:.1} ms, {:.2} times", 1e3 * without, 1e3 * with, with / without)
        };
        let none = if none { " (none found)" } else { "" };
        println!("{path}: search {}{none}; map {}", told(search), told(map));
    }
    Ok(())
}

/// Least time of each job, the jobs taking turns; what is short runs again and again, for a processor's time is told in whole ticks.
fn least_seconds(jobs: &[Job; 2], run: impl Fn(&Job) -> bool) -> [f64; 2] {
    let mut least = [f64::MAX; 2];
    for _ in 0..RUNS {
        for (job, least) in jobs.iter().zip(&mut least) {
            let (began, worked) = (Instant::now(), worked_seconds());
            let mut runs = 0.0;
            while runs == 0.0 || began.elapsed().as_secs_f64() < LEAST_S {
                std::hint::black_box(run(job));
                runs += 1.0;
            }
            let worked = worked.zip(worked_seconds()).map(|(from, to)| to - from);
            *least = least.min(worked.unwrap_or(began.elapsed().as_secs_f64()) / runs);
        }
    }
    least
}

/// Seconds that this process has had of a processor, where the system says so: other work on the machine does not count.
fn worked_seconds() -> Option<f64> {
    let told = std::fs::read_to_string("/proc/self/schedstat").ok()?;
    Some(told.split(' ').next()?.parse::<f64>().ok()? * 1e-9)
}
