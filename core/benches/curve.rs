//! What one curve costs: `cargo bench -p pintle-core`.
//!
//! `bare_ratio` is the loop nobody could do without: the ratio by the law of cosines with the sines of the leaf angles tabulated. The
//! other rows of the group do the same swing of 91 angles with all that a plan needs. Compare rows of one run; times of different
//! machines say nothing.

use divan::{Bencher, black_box};
use pintle_core::{Document, Job, Model, Operator};

const SAMPLES: u32 = 91;

fn main() {
    divan::main();
}

fn job() -> Job {
    let text = include_str!("../../www/data/starting-job.json");
    let document: Document = serde_json::from_str(text).expect("the starting job is JSON");
    Job::read(&document).expect("the starting job is valid")
}

/// Crank per leaf at 91 angles by plain scalars, sine and cosine tabulated.
#[divan::bench]
fn bare_ratio(bencher: Bencher) {
    let job = job();
    let arm = job.arm.expect("the starting job has an arm");
    let angles: Vec<(f64, f64)> =
        (0..SAMPLES).map(|index| (job.open_rad() * f64::from(index) / f64::from(SAMPLES - 1)).sin_cos()).collect();
    let (a, b) = (arm.crank_m, arm.link_m);
    bencher.bench_local(|| {
        let mut sum = 0.0;
        for &(sine, cosine) in black_box(&angles) {
            let px = cosine * arm.bracket_u_m - sine * arm.bracket_v_m;
            let py = sine * arm.bracket_u_m + cosine * arm.bracket_v_m;
            let (dx, dy) = (px - arm.shaft_x_m, py - arm.shaft_y_m);
            let square = dx * dx + dy * dy;
            let x = (a * a - b * b + square) / (2.0 * square);
            let h = (a * a / square - x * x).sqrt();
            let (lx, ly) = ((1.0 - x) * dx + h * dy, (1.0 - x) * dy - h * dx);
            sum += (lx * py - ly * px) / (square * h);
        }
        sum
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
    bencher.bench_local(|| pintle_core::plan(black_box(&job)));
}

/// Five hundred operators of a list rated in the place of the job's own, their arms of a dozen efficiencies.
#[divan::bench]
fn rate_500_operators(bencher: Bencher) {
    let model = Model::new(&job()).expect("valid");
    let operators: Vec<Operator> = (0..500)
        .map(|index| Operator {
            rated_torque_n_m: 100.0 + 2.0 * f64::from(index),
            peak_torque_n_m: None,
            shaft_speed_deg_s: None,
            arm_efficiency: Some(0.85 + 0.01 * f64::from(index % 12)),
        })
        .collect();
    bencher.bench_local(|| model.rate(black_box(&operators)));
}
