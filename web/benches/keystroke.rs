//! What a keystroke costs, stage by stage: `cargo bench -p pintle-web`.
//!
//! `bare` is the yardstick: a sine, a cosine, two roots and an arctangent at 91 leaf angles. Compare rows of one run. In the browser the plan is
//! handed over as a tree of values; natively JSON stands for that.

use divan::{Bencher, black_box};
use pintle_core::{Document, job::Job, plan::Model};
use pintle_web::drawing::{View, curve_svg, plan_view_svg};

fn main() {
    divan::main();
}

fn document(text: &str) -> Document {
    serde_json::from_str(text).expect("it is JSON")
}

const JOB: &str = include_str!("../../www/data/starting-job.json");

fn job() -> Job {
    Job::read(&document(JOB)).expect("the starting job is valid")
}

fn view() -> View {
    View::read(&document(include_str!("../tests/common/view.json"))).expect("it is a view")
}

#[divan::bench]
fn bare(bencher: Bencher) {
    let open = job().open_rad();
    bencher.bench_local(|| {
        (0..91).fold(0.0, |sum, index| {
            let leaf_rad = black_box(open) * f64::from(index) / 90.0;
            let (sine, cosine) = leaf_rad.sin_cos();
            let reach = (1.6 - 1.2 * cosine).sqrt();
            sum + (2.0 - reach * reach + sine).sqrt().atan2(reach)
        })
    });
}

#[divan::bench]
fn read(bencher: Bencher) {
    let document = document(JOB);
    bencher.bench_local(|| Job::read(black_box(&document)));
}

#[divan::bench]
fn plan(bencher: Bencher) {
    let job = job();
    bencher.bench_local(|| pintle_core::plan::plan(black_box(&job)));
}

#[divan::bench]
fn encode(bencher: Bencher) {
    let plan = pintle_core::plan::plan(&job()).expect("the starting job has a plan");
    bencher.bench_local(|| serde_json::to_string(black_box(&plan)));
}

#[divan::bench]
fn draw(bencher: Bencher) {
    let (model, view) = (Model::new(&job()).expect("valid"), view());
    let plan = model.plan();
    bencher.bench_local(|| (curve_svg(&model, &plan, &view), plan_view_svg(&model, &plan, black_box(&view))));
}
