//! The set-out search against outside opinions: a global optimiser from a general library, every limit checked by dense sampling, a small
//! lattice walked whole.

mod aims;
mod answers;
mod around;
mod body;
mod check;
mod errors;
mod map;
mod marks;
mod near;
mod nearly_straight;
mod places;
mod proof;
mod room;
mod rule;
mod short;
mod sweep;
mod tape;
mod thumb;
mod tubes;

use pintle_core::{
    Document,
    arm::Limit,
    job::{Aim, Arm, Job, SetOut},
    plan::{TorqueSweep, pareto_front, plan, set_out},
};
use std::path::PathBuf;

/// Excess that counts as rounding, in metres, radians or plain numbers.
const ROUNDING: f64 = 1e-9;

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("setout")
}

fn document(path: PathBuf) -> serde_json::Value {
    let text = std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    serde_json::from_str(&text).expect("fixtures are JSON")
}

fn read(value: &serde_json::Value) -> Job {
    let document: Document = serde_json::from_str(&value.to_string()).expect("any JSON is a document");
    Job::read(&document).expect("the site is valid")
}

fn site(name: &str) -> Job {
    read(&document(folder().join("sites").join(name)))
}

fn block(job: &Job) -> &SetOut {
    job.setout.as_ref().expect("every site has a set-out block")
}

/// SciPy's answers as `oracle.py --fixture` wrote them, with the versions it names.
fn oracle() -> Vec<(String, f64)> {
    let fixture = document(folder().join("oracle.json"));
    assert!(fixture["made_by"].as_str().is_some_and(|by| by.starts_with("SciPy ")), "the fixture names its engine");
    let answers = fixture["answers"].as_array().expect("a list of answers");
    let answer = |answer: &serde_json::Value| {
        let name = answer["site"].as_str().expect("a file name").to_string();
        // The optimiser samples the swing, so its arm may cut a corner by a trace; more than that is no answer to compare with.
        assert!(answer["excess"].as_f64().expect("an excess") < 1e-5, "{name}: the oracle's arm exceeds a limit");
        (name, answer["torque_n_m"].as_f64().expect("a torque"))
    };
    answers.iter().map(answer).collect()
}

#[test]
fn torque_is_within_a_thousandth_of_differential_evolution() {
    let oracle = oracle();
    assert!(oracle.len() >= 6);
    for (name, torque_n_m) in oracle {
        let best = set_out(&site(&name)).expect("a valid job").best.unwrap_or_else(|| panic!("{name}: none found"));
        assert!(
            best.shaft_torque_n_m <= 1.001 * torque_n_m,
            "{name}: {} N·m, differential evolution {torque_n_m} N·m",
            best.shaft_torque_n_m
        );
    }
}

#[test]
fn every_limit_is_kept_and_the_torque_is_the_plan_s() {
    for (name, _) in oracle() {
        let job = site(&name);
        let best = set_out(&job).expect("a valid job").best.expect("every site of the fixture has one");
        let broken = check::exceeded(&job, block(&job), &best.arm, ROUNDING);
        assert!(broken.is_empty(), "{name}: {broken:?}");
        let planned = plan(&pintle_tests::changed!(job.clone(), arm: Some(best.arm))).expect("the arm works");
        assert_eq!(planned.peak.shaft_torque_n_m, best.shaft_torque_n_m, "{name}");
    }
}

/// The check itself has to be able to fail: an arm moved out of each limit is found out.
#[test]
fn the_check_sees_what_is_broken() {
    let job = site("posts_and_kerb.json");
    let arm = set_out(&job).expect("a valid job").best.expect("one exists").arm;
    let setout = block(&job);
    let moved = |arm: Arm| !check::exceeded(&job, setout, &arm, ROUNDING).is_empty();
    assert!(moved(pintle_tests::changed!(arm, shaft_x_m: setout.shaft_x_m[1] + 1e-6)));
    assert!(moved(pintle_tests::changed!(arm, crank_m: arm.crank_m * 0.9)));
    assert!(moved(pintle_tests::changed!(arm, link_m: arm.link_m * 1.2)));
    let through = pintle_core::job::Obstacle::builder()
        .x_m([arm.shaft_x_m - 0.01, arm.shaft_x_m + 0.01])
        .y_m([arm.shaft_y_m - 0.01, arm.shaft_y_m + 0.01])
        .build();
    let walled = pintle_tests::changed!(job.clone(), obstacles: Some(vec![through]));
    assert!(!check::exceeded(&walled, setout, &arm, ROUNDING).is_empty());
}

/// A lattice of 50 mm is small enough to try every arm on it.
#[test]
fn a_small_lattice_is_searched_whole() {
    let mut job = site("yard.json");
    let step = 0.05;
    let setout = pintle_tests::changed!(block(&job).clone(), step_m: Some(step));
    job.setout = Some(setout.clone());
    let range = |[least, most]: [f64; 2]| {
        let first = (least / step - 1e-9).ceil() as i32;
        (first..=(most / step + 1e-9).floor() as i32).map(move |index| f64::from(index) * step)
    };
    let sweep = TorqueSweep::new(&job, 721).expect("a valid job");
    let mut least = f64::MAX;
    for shaft_x_m in range(setout.shaft_x_m) {
        for shaft_y_m in range(setout.shaft_y_m) {
            for bracket_u_m in range(setout.bracket_u_m) {
                for crank_m in range(setout.crank_m) {
                    for link_m in range(setout.link_m) {
                        for &elbow in setout.elbows() {
                            let bracket_v_m = setout.bracket_v_m;
                            let arm = Arm::builder()
                                .shaft_x_m(shaft_x_m)
                                .shaft_y_m(shaft_y_m)
                                .bracket_u_m(bracket_u_m)
                                .bracket_v_m(bracket_v_m)
                                .crank_m(crank_m)
                                .link_m(link_m)
                                .elbow(elbow)
                                .build();
                            let closed = (bracket_u_m - shaft_x_m).hypot(bracket_v_m - shaft_y_m);
                            let [loose, straight] = setout.straightness();
                            let straightness = closed / (crank_m + link_m);
                            // Straightness alone dismisses most, the torque most of the rest, before the dense check is asked.
                            if straightness < loose - 1e-9 || straightness > straight + 1e-9 {
                                continue;
                            }
                            let torque = sweep.largest_n_m(&arm);
                            if torque < least && check::exceeded(&job, &setout, &arm, ROUNDING).is_empty() {
                                least = torque;
                            }
                        }
                    }
                }
            }
        }
    }
    let best = set_out(&job).expect("a valid job").best.expect("the lattice has an arm");
    assert!(check::exceeded(&job, &setout, &best.arm, ROUNDING).is_empty());
    // The sweep looks at 721 angles, the plan at all: they differ by the square of a quarter of a degree.
    assert!((best.shaft_torque_n_m / least - 1.0).abs() < 1e-5, "{} against {least}", best.shaft_torque_n_m);
}

#[test]
fn what_is_in_the_way_is_named_and_its_least_change_suffices() {
    let mut job = site("yard.json");
    let setout = pintle_tests::changed!(block(&job).clone(), shaft_travel_deg: Some(60.0));
    job.setout = Some(setout.clone());
    let answer = set_out(&job).expect("a valid job");
    assert!(answer.best.is_none());
    let nearest = answer.nearest.expect("where there is no best there is a nearest");
    let broken = check::exceeded(&job, &setout, &nearest.arm, ROUNDING);
    assert!(!broken.is_empty() && nearest.by > 0.0);
    let travel =
        nearest.changes.iter().find(|change| change.limit == Limit::ShaftTravelDeg).expect("travel alone would do");
    let with = |degrees: f64| {
        let setout = pintle_tests::changed!(setout.clone(), shaft_travel_deg: Some(60.0 + degrees));
        set_out(&pintle_tests::changed!(job.clone(), setout: Some(setout))).expect("a valid job").best
    };
    assert!(with(travel.by + 1e-3).is_some(), "the change named makes a set-out exist");
    assert!(with(0.98 * travel.by).is_none(), "a smaller one does not");
}

#[test]
fn a_block_comes_back_as_it_went_in() {
    for (name, _) in oracle() {
        let job = site(&name);
        let again = read(&serde_json::to_value(&job).expect("a job is JSON"));
        assert_eq!(job, again, "{name}");
    }
}

#[test]
fn every_fault_of_a_block_is_reported_at_once() {
    let mut value = document(folder().join("sites").join("yard.json"));
    let block = &mut value["setout"];
    block["aim"] = "least_effort".into();
    block["crank_m"] = serde_json::json!([0.9, 0.35]);
    block["link_m"] = serde_json::json!([0.001, 0.9]);
    block["square_deg"] = serde_json::json!(91);
    value["obstacles"] =
        serde_json::json!([{ "x_m": [0, 1], "y_m": [0, "far"] }, { "x_m": [0, 1], "y_m": [0, 1], "z_m": 2 }]);
    let document: Document = serde_json::from_str(&value.to_string()).expect("a document");
    let errors = Job::read(&document).expect_err("it is faulty").errors;
    let paths: Vec<&str> = errors.iter().map(|fault| fault.path.as_str()).collect();
    for path in ["setout.aim", "setout.link_m.0", "setout.square_deg", "obstacles.0.y_m.1", "obstacles.1.z_m"] {
        assert!(paths.contains(&path), "{path} in {paths:?}");
    }
    // A range the wrong way round is told once everything can be read.
    let mut value = self::document(folder().join("sites").join("yard.json"));
    value["setout"]["crank_m"] = serde_json::json!([0.9, 0.35]);
    let document: Document = serde_json::from_str(&value.to_string()).expect("a document");
    let errors = Job::read(&document).expect_err("it is faulty").errors;
    assert_eq!(errors.iter().map(|fault| fault.path.as_str()).collect::<Vec<_>>(), ["setout.crank_m.1"]);
}

/// Along the front the torque rises and the travel falls, every point keeps the limits, and the ends are the two optima.
#[test]
fn the_front_gives_one_for_the_other() {
    let job = site("yard.json");
    let points = pareto_front(&job, Aim::LeastShaftTravel, 6).expect("a valid job");
    assert!(points.len() >= 4, "{} points", points.len());
    for pair in points.windows(2) {
        assert!(pair[0].shaft_torque_n_m < pair[1].shaft_torque_n_m);
        assert!(pair[0].shaft_travel_deg > pair[1].shaft_travel_deg);
    }
    for point in &points {
        assert!(check::exceeded(&job, block(&job), &point.arm, ROUNDING).is_empty());
    }
    let best = set_out(&job).expect("a valid job").best.expect("one exists");
    assert_eq!(points[0], best);
}
