//! What a ranking costs: `cargo run --release -p pintle-core --example rank -- JOB.json OPERATORS KITS [WORK]`.
//!
//! Invents a list of so many operators with so many kits between them, ranks it for the job, and prints times as JSON: of all of it, of the longest
//! step of WORK units (default 10), and of the same again with another reserve asked for, when every place is known.

use pintle_core::{
    Document,
    job::Job,
    operators::{self, ListEntry},
    plan::{RankAsked, Ranking},
};
use serde_json::json;
use std::time::Instant;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let [path, count, kits, rest @ ..] = &words[..] else {
        return Err("usage: rank JOB.json OPERATORS KITS [WORK]".into());
    };
    let (count, kits): (usize, usize) = (count.parse()?, kits.parse()?);
    let work = rest.first().map_or(Ok(10), |work| work.parse())?;
    let document: Document = serde_json::from_slice(&std::fs::read(path)?)?;
    let mut job = Job::read(&document).map_err(|invalid| invalid.to_string())?;
    let entries = invented(count, kits)?;
    let mut ranking = Ranking::new(&job, &entries, RankAsked::default()).map_err(|invalid| invalid.to_string())?;
    let (seconds, longest_step_s) = run(&mut ranking, work);
    let answer = ranking.answer();
    let doing = answer.operators.iter().filter(|one| one.does).count();
    let searches = ranking.progress().searches;
    job.required_reserve = Some(1.2);
    ranking.renew(&job, &entries, RankAsked::default()).map_err(|invalid| invalid.to_string())?;
    let (again_s, _) = run(&mut ranking, work);
    println!(
        "{}",
        json!({ "operators": count, "kits": kits, "searches": searches, "doing": doing, "seconds": seconds, "work": work,
            "longest_step_s": longest_step_s, "again_s": again_s, "searches_again": ranking.progress().searches - searches })
    );
    Ok(())
}

/// Seconds in all, and of the longest step.
fn run(ranking: &mut Ranking, work: usize) -> (f64, f64) {
    let (began, mut longest) = (Instant::now(), 0.0_f64);
    loop {
        let step = Instant::now();
        let more = ranking.step(work);
        longest = longest.max(step.elapsed().as_secs_f64());
        if !more {
            return (began.elapsed().as_secs_f64(), longest);
        }
    }
}

/// An invented list: torques from 100 N·m on, kits a little longer each.
fn invented(count: usize, kits: usize) -> Result<Vec<ListEntry>, Box<dyn std::error::Error>> {
    let one = |index: usize| {
        let longer = 0.3 * (index % kits) as f64 / kits as f64;
        let rated = 100.0 + 3.0 * index as f64;
        json!({ "id": format!("invented-{index}"), "name": "Invented", "rated_torque_n_m": rated, "peak_torque_n_m": 1.6 * rated,
            "shaft_speed_deg_s": 9, "arm_efficiency": 0.95, "kit": { "crank_m": [0.35, 0.7 + longer], "link_m": [0.35, 0.7 + longer] } })
    };
    let list = json!({ "operators": (0..count).map(one).collect::<Vec<_>>() });
    Ok(operators::read(&serde_json::from_value(list)?).operators)
}
