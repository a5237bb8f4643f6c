//! What one curve costs: `cargo bench -p pintle-core`.
//!
//! `bare` is the loop nobody could do without: a sine, a cosine, two roots and an arctangent at each of 91 leaf angles, by the functions the
//! core uses. The other rows of the group do the same swing with all that a plan needs. Compare rows of one run; times of different
//! machines say nothing.

use divan::{Bencher, black_box};
use pintle_core::{
    Document,
    job::{Job, Operator},
    plan::Model,
};

const SAMPLES: u32 = 91;

fn main() {
    divan::main();
}

fn job() -> Job {
    let text = include_str!("../../www/data/starting-job.json");
    let document: Document = serde_json::from_str(text).expect("the starting job is JSON");
    Job::read(&document).expect("the starting job is valid")
}

/// Sine, cosine, two roots and an arctangent an angle.
#[divan::bench]
fn bare(bencher: Bencher) {
    let open = job().open_rad();
    bencher.bench_local(|| {
        (0..SAMPLES).fold(0.0, |sum, index| {
            let leaf_rad = black_box(open) * f64::from(index) / f64::from(SAMPLES - 1);
            let (sine, cosine) = (libm::sin(leaf_rad), libm::cos(leaf_rad));
            let reach = (1.6 - 1.2 * cosine).sqrt();
            let height = (2.0 - reach * reach + sine).sqrt();
            sum + libm::atan2(height, reach)
        })
    });
}

/// The same angles as poses: positions, derivatives, unwrapped crank angle.
#[divan::bench]
fn poses(bencher: Bencher) {
    let model = Model::new(&job()).expect("valid");
    let open = model.linkage().open_rad;
    bencher.bench_local(|| {
        (0..SAMPLES)
            .map(|index| model.linkage().pose(open * f64::from(index) / f64::from(SAMPLES - 1)).ratio.unwrap_or(0.0))
            .sum::<f64>()
    });
}

/// The curve of the plan: both directions, both winds, forces.
#[divan::bench]
fn curve(bencher: Bencher) {
    let model = Model::new(&job()).expect("valid");
    bencher.bench_local(|| model.curve());
}

/// Everything a keystroke asks for: checks, curve, peak, wind limit, overrun, findings.
#[divan::bench]
fn plan(bencher: Bencher) {
    let job = job();
    bencher.bench_local(|| pintle_core::plan::plan(black_box(&job)));
}

/// Five hundred operators of a list rated in the place of the job's own, their arms of a dozen efficiencies.
#[divan::bench]
fn rate_500_operators(bencher: Bencher) {
    let model = Model::new(&job()).expect("valid");
    let operators: Vec<Operator> = (0..500)
        .map(|index| {
            let torque_n_m = 100.0 + 2.0 * f64::from(index);
            Operator::builder().rated_torque_n_m(torque_n_m).arm_efficiency(0.85 + 0.01 * f64::from(index % 12)).build()
        })
        .collect();
    bencher.bench_local(|| model.rate(black_box(&operators)));
}
