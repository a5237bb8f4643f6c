//! What a set-out costs: one optimum, a map of ten thousand places, one leaf angle of the inner loop against a bare loop.
//!
//! `cargo bench -p pintle-core --bench setout`

use divan::{Bencher, black_box, counter::ItemsCount};
use pintle_core::{
    Document,
    job::Job,
    plan::{PadMap, TorqueSweep, set_out},
};

fn main() {
    divan::main();
}

/// An invented site, the one the contract prints.
fn job() -> Job {
    let text = include_str!("site.json");
    let document: Document = serde_json::from_str(text).expect("the site is JSON");
    Job::read(&document).expect("the site is valid")
}

#[divan::bench]
fn optimum(bencher: Bencher) {
    let job = job();
    bencher.bench(|| set_out(black_box(&job)));
}

#[divan::bench(sample_count = 10)]
fn optimum_on_a_lattice_of_5_mm(bencher: Bencher) {
    let mut job = job();
    if let Some(setout) = &mut job.setout {
        setout.step_m = Some(0.005);
    }
    bencher.bench(|| set_out(black_box(&job)));
}

#[divan::bench(sample_count = 10)]
fn map_of_10000_places(bencher: Bencher) {
    let job = job();
    bencher.counter(ItemsCount::new(10_000_usize)).bench(|| {
        let mut map = PadMap::new(black_box(&job), 100, 100).expect("the site is valid");
        while map.step(1000) {}
        map
    });
}

#[divan::bench]
fn torque_at_2001_leaf_angles(bencher: Bencher) {
    let job = job();
    let arm = set_out(&job).ok().and_then(|answer| answer.best).expect("the site has a set-out").arm;
    let sweep = TorqueSweep::new(&job, 2001).expect("the job is valid");
    bencher.counter(ItemsCount::new(2001_usize)).bench_local(|| black_box(&sweep).largest_n_m(black_box(&arm)));
}

/// The same number of square roots and divisions, and nothing else: what the machine asks for them.
#[divan::bench]
fn bare_root_and_division_2001_times(bencher: Bencher) {
    let numbers: Vec<f64> = (0..2001).map(|index| 1.0 + f64::from(index)).collect();
    bencher.counter(ItemsCount::new(2001_usize)).bench_local(|| {
        black_box(&numbers).iter().fold(f64::MAX, |least, &number| least.min(number.sqrt() / (number + 1.0)))
    });
}
