//! The aims beside the torque, and the ends of the front, against differential evolution.

use crate::{ROUNDING, block, check, document, folder, read};
use pintle_core::{
    job::{Aim, Job},
    plan::{Candidate, pareto_front, set_out},
};

/// One answer of `oracle.py --aims`: a site with an aim, and the least SciPy found.
struct Answer {
    name: String,
    aim: Aim,
    job: Job,
    least: f64,
}

fn answers() -> Vec<Answer> {
    let fixture = document(folder().join("aims.json"));
    assert!(fixture["made_by"].as_str().is_some_and(|by| by.starts_with("SciPy ")), "the fixture names its engine");
    let answers = fixture["answers"].as_array().expect("a list of answers");
    let answer = |answer: &serde_json::Value| {
        let name = answer["site"].as_str().expect("a file name");
        assert!(answer["excess"].as_f64().expect("an excess") < 1e-5, "{name}: the oracle's arm exceeds a limit");
        let mut site = document(folder().join("sites").join(name));
        for key in ["aim", "storm_speed_m_s", "place"] {
            if !answer[key].is_null() {
                site["setout"][key] = answer[key].clone();
            }
        }
        let job = read(&site);
        let aim = block(&job).aim();
        Answer { name: format!("{name}, {aim:?}"), aim, job, least: answer["least"].as_f64().expect("a number") }
    };
    answers.iter().map(answer).collect()
}

/// What an aim makes small.
fn aimed_at(job: &Job, aim: Aim, candidate: &Candidate) -> f64 {
    match aim {
        Aim::LeastShaftTorque => candidate.shaft_torque_n_m,
        Aim::LeastLinkForce => candidate.link_force_n,
        Aim::LeastShaftTravel => candidate.shaft_travel_deg,
        Aim::NearestPlace => {
            let place = block(job).place.expect("the aim has a place");
            (candidate.arm.shaft_x_m - place.x_m).hypot(candidate.arm.shaft_y_m - place.y_m)
        }
    }
}

#[test]
fn every_aim_is_within_a_thousandth_of_differential_evolution() {
    let answers = answers();
    assert!(answers.len() >= 9);
    for Answer { name, aim, job, least } in answers {
        let best = set_out(&job).expect("a valid job").best.unwrap_or_else(|| panic!("{name}: none found"));
        let found = aimed_at(&job, aim, &best);
        assert!(found <= 1.001 * least + 1e-4, "{name}: {found}, differential evolution {least}");
        let broken = check::exceeded(&job, block(&job), &best.arm, ROUNDING);
        assert!(broken.is_empty(), "{name}: {broken:?}");
    }
}

/// One end of a front is the least torque, the other the least of what it is traded for, each as differential evolution has it.
#[test]
fn the_front_ends_at_both_optima() {
    let torques = crate::oracle();
    for Answer { name, aim, job, least } in answers().into_iter().take(6) {
        let torque = torques.iter().find(|(site, _)| name.starts_with(site.as_str())).expect("the same sites").1;
        let points = pareto_front(&job, aim, 3).expect("a valid job");
        let (first, last) = (points.first().expect("a front"), points.last().expect("a front"));
        assert!(first.shaft_torque_n_m <= 1.001 * torque, "{name}: {} N·m, {torque} N·m", first.shaft_torque_n_m);
        let found = aimed_at(&job, aim, last);
        assert!(found <= 1.001 * least + 1e-4, "{name}: {found}, differential evolution {least}");
    }
}
