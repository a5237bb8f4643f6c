//! Operators of a list, rated in the place of a job's own without planning anew.

use super::{answer, job};
use pintle_core::{
    Document,
    drive::Rating,
    fault::FaultCode,
    job::{CheckedJob, Operator},
    plan::Model,
};
use serde_json::{Value, json};

fn model(job: &Value) -> Model {
    let document: Document = serde_json::from_value(job.clone()).expect("a document");
    CheckedJob::read(&document).and_then(Model::of).unwrap_or_else(|invalid| panic!("{invalid}"))
}

fn operator(rated_torque_n_m: f64, peak_torque_n_m: Option<f64>, arm_efficiency: Option<f64>) -> Operator {
    Operator::builder()
        .rated_torque_n_m(rated_torque_n_m)
        .maybe_peak_torque_n_m(peak_torque_n_m)
        .maybe_arm_efficiency(arm_efficiency)
        .build()
}

/// The plan of the job with the operator in it says the same, to the bit.
#[test]
fn a_listed_operator_is_rated_as_its_plan_would() {
    let mut jobs = [job(), job(), job()];
    jobs[1]["lean"] = json!({ "angle_deg": 4, "downhill_deg": -60 });
    jobs[1]["wind"]["speed_m_s"] = json!(3);
    jobs[2]["drag"] = json!({ "latch_n_m": 300, "latch_deg": 3 });
    jobs[2]["required_reserve"] = json!(1.1);
    let list: Vec<Operator> = [Some(0.7), None, Some(0.95), Some(1.0)]
        .into_iter()
        .flat_map(|efficiency| {
            [(250.0, None), (400.0, Some(650.0))].map(|(rated, peak)| operator(rated, peak, efficiency))
        })
        .collect();
    for job in jobs {
        let rated = model(&job).rate(&list);
        assert_eq!(rated.len(), list.len());
        for (operator, rated) in list.iter().zip(rated) {
            let mut job = job.clone();
            job["operator"] = serde_json::to_value(operator).expect("serialises");
            let planned: Rating = answer(&job).expect("valid").rating;
            assert_eq!(rated.expect("in range"), planned, "{operator:?}");
        }
    }
}

#[test]
fn a_faulty_operator_is_told_and_the_others_are_rated() {
    let list = [operator(400.0, None, None), operator(0.0, None, None), operator(400.0, None, Some(2.0))];
    let [good, weak, perpetual] = model(&job()).rate(&list).try_into().expect("one each");
    assert!(good.is_ok());
    for (rated, path) in [(weak, "rated_torque_n_m"), (perpetual, "arm_efficiency")] {
        let errors = rated.expect_err("out of range").errors;
        assert_eq!((errors[0].path.as_str(), errors[0].code, errors.len()), (path, FaultCode::OutOfRange, 1));
    }
}
