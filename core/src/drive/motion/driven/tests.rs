//! What a run costs, in steps: bounded whatever the motor.

use super::{DrivenState, drive};
use crate::Document;
use crate::arm::{Linkage, ShaftPath};
use crate::drive::{Motor, Moving, Profile};
use crate::job::Job;
use crate::leaf::LeafLoads;
use crate::terms::{Direction, WindCase};
use alloc::vec::Vec;

/// A kept job with some of its numbers replaced, by JSON pointer. All invented.
fn job(text: &str, changes: &[(&str, f64)]) -> Job {
    let mut value: serde_json::Value = serde_json::from_str(text).expect("JSON");
    for (pointer, number) in changes {
        let (outer, key) = pointer.rsplit_once('/').expect("a pointer");
        value.pointer_mut(outer).expect("a block")[key] = serde_json::json!(number);
    }
    let document: Document = serde_json::from_value(value).expect("a document");
    Job::read(&document).unwrap_or_else(|invalid| panic!("{invalid:?}"))
}

const FAST: [&str; 2] = [
    include_str!("../../../../../tests/fixtures/slow/plan.json"),
    include_str!("../../../../../tests/fixtures/slow/plan-2.json"),
];

/// State and steps of all four runs of a job, and how well their energies balance.
fn runs(job: &Job) -> Vec<(DrivenState, usize, f64)> {
    let linkage = Linkage::new(job.arm.as_ref().expect("an arm"), job.open_rad());
    let (loads, facts) = (LeafLoads::new(job), job.motion.as_ref().expect("motion"));
    let moving = Moving {
        path: ShaftPath::new(&linkage),
        loads: &loads,
        efficiency: job.operator.efficiencies(),
        length_m: job.leaf.length_m,
    };
    let motor = Motor::of(facts.motor.as_ref().expect("a motor")).expect("a line");
    let speed = job.operator.shaft_speed_deg_s.expect("a speed").to_radians();
    let travel = moving.path.travel_rad();
    let profile = Profile::with_slow_end(travel, speed, speed, speed, 0.1 * travel, speed / 3.0);
    let winds = [WindCase::Against, WindCase::Following];
    let ways = Direction::BOTH.into_iter().flat_map(|direction| winds.map(|wind| (direction, wind)));
    ways.map(|(direction, wind)| {
        let (run, track) = drive(&moving, &motor, &profile, direction, wind, 2);
        (run.state, track.steps.len() - 1, run.energy.error)
    })
    .collect()
}

/// A motor ten thousand times as fast as its operator: the way decides how many steps there are, not the motor's no-load speed, which would take
/// tens of thousands.
#[test]
fn a_fast_motor_takes_no_more_steps_than_its_way() {
    for text in FAST {
        for (state, steps, error) in runs(&job(text, &[])) {
            assert_eq!(state, DrivenState::Arrives);
            assert!(steps < 4000, "{steps}");
            assert!(error < 1e-6, "{error}");
        }
    }
}

/// Half an hour on the line of a motor that comes to its speed within milliseconds: the explicit pair would take a hundred thousand steps, and
/// ends after [`super::MOST_STEPS`] without having come to the half hour.
#[test]
fn a_creeping_leaf_takes_no_more_steps_for_a_quick_motor() {
    for run_up_s in [0.005, 0.05] {
        let changes = [
            ("/motion/motor/no_load_speed_deg_s", 12.0),
            ("/motion/motor/gear_ratio", 400.0),
            ("/motion/motor/run_up_s", run_up_s),
        ];
        for (state, steps, error) in runs(&job(FAST[0], &changes)) {
            assert_eq!(state, DrivenState::Creeps, "{run_up_s}");
            assert!(steps < 2000, "{run_up_s}: {steps}");
            assert!(error < 1e-6, "{error}");
        }
    }
}
