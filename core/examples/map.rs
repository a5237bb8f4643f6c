//! Maps where an operator may stand: `cargo run --release -p pintle-core --example map -- job.json COLUMNS ROWS [CHECKED]`.
//!
//! Prints the time and the torque of every place as JSON. With CHECKED the search for one place is asked at so many places of the map, evenly
//! spread, and how far the map is from it is printed too: the map's error, as its documentation states it.

use pintle_core::{
    Document,
    job::Job,
    plan::{PadMap, set_out},
};
use serde_json::{Value, json};
use std::time::Instant;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let [path, columns, rows, rest @ ..] = &words[..] else {
        return Err("usage: map JOB.json COLUMNS ROWS [CHECKED]".into());
    };
    let (columns, rows): (usize, usize) = (columns.parse()?, rows.parse()?);
    let document: Document = serde_json::from_slice(&std::fs::read(path)?)?;
    let job = Job::read(&document).map_err(|invalid| format!("{invalid:?}"))?;
    let began = Instant::now();
    let mut map = PadMap::new(&job, columns, rows).map_err(|invalid| format!("{invalid:?}"))?;
    while map.step(1000) {}
    let seconds = began.elapsed().as_secs_f64();
    let mut answer = json!({ "columns": columns, "rows": rows, "seconds": seconds });
    match rest.first() {
        Some(count) => answer["error"] = error(&job, &map, columns, columns * rows, count.parse()?),
        None => answer["torques_n_m"] = json!(map.torques_n_m()),
    }
    println!("{answer}");
    Ok(())
}

/// The map against the search for one place.
fn error(job: &Job, map: &PadMap, columns: usize, places: usize, count: usize) -> Value {
    let torques = map.torques_n_m();
    let (mut errors, mut missed, mut wrongly) = (Vec::new(), 0, 0);
    for index in 0..count {
        let place = (2 * index + 1) * places / (2 * count);
        let (x, y) = map.place_m(place % columns, place / columns);
        let mut here = job.clone();
        let Some(setout) = &mut here.setout else { continue };
        (setout.shaft_x_m, setout.shaft_y_m, setout.step_m, setout.aim) = ([x, x], [y, y], None, None);
        let best = set_out(&here).ok().and_then(|answer| answer.best);
        match (best, torques[place]) {
            (Some(best), Some(torque)) => errors.push(torque / best.shaft_torque_n_m - 1.0),
            (Some(_), None) => missed += 1,
            (None, Some(_)) => wrongly += 1,
            (None, None) => {}
        }
    }
    errors.sort_by(f64::total_cmp);
    let at = |share: f64| errors.get((share * errors.len() as f64) as usize).copied();
    json!({ "checked": count, "compared": errors.len(), "median": at(0.5), "nine_in_ten": at(0.9), "worst": errors.last(),
        "least": errors.first(), "missed": missed, "none_but_mapped": wrongly })
}
