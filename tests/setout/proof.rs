//! Set-outs that every tape error has to leave working: against a global optimiser under the same rule, at the corners, and where only the tape is in the way.

use crate::{ROUNDING, block, check, document, folder, read, site};
use pintle_core::{
    arm::{Limit, Linkage},
    job::{Aim, Arm, Job},
    plan::{PadMap, SetOutAnswer, pareto_front, plan, set_out},
};
use serde_json::{Value, json};

/// The jobs of the list with their names: changes to sites, each with the proof asked for.
fn jobs() -> Vec<(String, Value)> {
    let list = document(folder().join("proof_jobs.json"));
    let job = |change: &Value| {
        let mut job = document(folder().join("sites").join(change["site"].as_str().expect("a file name")));
        job["tape"] = change["tape"].clone();
        for (key, value) in change["setout"].as_object().into_iter().flatten() {
            job["setout"][key] = value.clone();
        }
        job["setout"]["tape_proof"] = json!(true);
        (change["name"].as_str().expect("a name").to_owned(), job)
    };
    list["jobs"].as_array().expect("a list").iter().map(job).collect()
}

fn named(name: &str) -> Value {
    jobs().into_iter().find(|(one, _)| one == name).unwrap_or_else(|| panic!("{name}")).1
}

fn errors_m(job: &Value) -> [f64; 6] {
    let error = job["tape"]["error_m"].as_f64().expect("an error");
    let link = job["tape"]["link_error_m"].as_f64().unwrap_or(error);
    [error, error, error, error, error, link]
}

/// The arm at every corner of its errors.
pub fn corners(arm: &Arm, errors_m: [f64; 6]) -> impl Iterator<Item = Arm> {
    let own_m = arm.lengths_m();
    (0..64).map(move |corner| {
        let sign = |i: usize| if corner >> i & 1 == 1 { 1.0 } else { -1.0 };
        Arm::of_lengths_m(std::array::from_fn(|i| own_m[i] + sign(i) * errors_m[i]), arm.elbow)
    })
}

/// What arms at the corners break of what is kept there; ranges, straightness, angle and torque are opened for them.
fn broken(job: &Job, arm: &Arm, errors_m: [f64; 6]) -> Vec<String> {
    let open = pintle_tests::changed!(block(job).clone(),
        shaft_x_m: [-10.0, 10.0], shaft_y_m: [-10.0, 10.0], bracket_u_m: [-10.0, 10.0], crank_m: [0.02, 10.0],
        link_m: [0.02, 10.0], straightness: None, square_deg: None, most_shaft_torque_n_m: None, step_m: None);
    let at = |arm: Arm| {
        let mut wrong: Vec<String> =
            Linkage::new(&arm, job.open_rad()).defect().iter().map(ToString::to_string).collect();
        // The bracket's depth is no choice of the block, but the tape's.
        let block = pintle_tests::changed!(open.clone(), bracket_v_m: arm.bracket_v_m);
        wrong.extend(check::exceeded(job, &block, &arm, ROUNDING));
        wrong
    };
    corners(arm, errors_m).flat_map(at).collect()
}

fn answered(job: &Value) -> SetOutAnswer {
    set_out(&read(job)).expect("a valid job")
}

#[test]
fn torque_is_within_half_a_percent_of_differential_evolution_under_the_same_rule() {
    let fixture = document(folder().join("proof.json"));
    assert!(fixture["made_by"].as_str().is_some_and(|by| by.starts_with("SciPy ")), "the fixture names its engine");
    let answers = fixture["answers"].as_array().expect("a list of answers");
    assert_eq!(answers.len(), jobs().len(), "every job is answered");
    for answer in answers {
        let name = answer["site"].as_str().expect("a name");
        let (excess, torque) = (answer["excess"].as_f64(), answer["torque_n_m"].as_f64());
        assert!(excess.expect("an excess") < 1e-4, "{name}: the oracle's arm exceeds a limit");
        let best = answered(&named(name)).best.unwrap_or_else(|| panic!("{name}: none found"));
        let torque = torque.expect("a torque");
        assert!(best.shaft_torque_n_m <= 1.005 * torque, "{name}: {} N·m, {torque} N·m", best.shaft_torque_n_m);
    }
}

#[test]
fn every_answer_works_at_all_corners_and_says_what_that_costs() {
    for (name, value) in jobs() {
        let job = read(&value);
        let answer = answered(&value);
        let best = answer.best.unwrap_or_else(|| panic!("{name}: none found"));
        for stand in std::iter::once(&best).chain(&answer.others) {
            let planned = check::exceeded(&job, block(&job), &stand.arm, ROUNDING);
            let broken = broken(&job, &stand.arm, errors_m(&value));
            assert!(planned.is_empty() && broken.is_empty(), "{name}: {planned:?} {broken:?}");
        }
        let mut without = value.clone();
        without["setout"]["tape_proof"] = json!(false);
        let without = answered(&without);
        assert_eq!(answer.without_proof, Some(without.best), "{name}");
        assert!(without.best.expect("one").shaft_torque_n_m <= best.shaft_torque_n_m * (1.0 + 1e-9), "{name}");
        assert_eq!((without.without_proof, without.best.expect("one").worst_reserve), (None, None));
        // What the plan says of the tape it says of the same corners.
        let planned = plan(&pintle_tests::changed!(job, arm: Some(best.arm))).expect("the arm works");
        let (worst, told) = (planned.tape.expect("asked for").worst, best.at_corners.expect("told"));
        assert_eq!(worst.broken, 0, "{name}");
        let reserve = worst.reserve.expect("something is demanded");
        assert!((best.worst_reserve.expect("told").expect("a number") / reserve - 1.0).abs() < 1e-6, "{name}");
        for end in 0..2 {
            assert!((told.straightness[end] - worst.straightness[end]).abs() < 1e-9, "{name}");
            assert!((told.off_square_deg[end] - worst.off_square_deg[end]).abs() < 1e-6, "{name}");
        }
    }
}

/// A straight arm is torn by any error of the tape: then the limit is said, and by how much, and that an arm exists without.
#[test]
fn what_only_the_tape_is_in_the_way_of_is_said() {
    let mut value = named("straight when closed");
    value["setout"]["straightness"] = json!([1, 1]);
    let answer = answered(&value);
    assert!(answer.best.is_none() && answer.without_proof.expect("asked for").is_some());
    let nearest = answer.nearest.expect("something is in the way");
    // Shaft and bracket apart by all four errors in the arm's direction, crank and link short by both.
    let [error, ..] = errors_m(&value);
    let arm = nearest.arm;
    let (dx, dy) = ((arm.bracket_u_m - arm.shaft_x_m).abs(), (arm.bracket_v_m - arm.shaft_y_m).abs());
    let short = (dx + 2.0 * error).hypot(dy + 2.0 * error) - dx.hypot(dy) + 2.0 * error;
    assert_eq!(nearest.limit, Limit::TapeArm);
    assert!((nearest.by - short).abs() < 1e-6, "{} {short}", nearest.by);
    assert!(check::exceeded(&read(&value), block(&read(&value)), &arm, 1e-6).is_empty());
    // A lever asked for at more than the corners of any arm have.
    let mut value = named("yard");
    let job = read(&value);
    let most = |lever: f64, proof: bool| {
        let mut value = value.clone();
        value["setout"]["least_lever_m"] = json!(lever);
        value["setout"]["tape_proof"] = json!(proof);
        answered(&value).best.is_some()
    };
    let (mut from, mut to) = (0.9, 1.6);
    for _ in 0..12 {
        let middle = 0.5 * (from + to);
        *if most(middle, false) { &mut from } else { &mut to } = middle;
    }
    assert!(!most(from, true), "a lever that no arm has to spare");
    value["setout"]["least_lever_m"] = json!(from);
    let nearest = answered(&value).nearest.expect("the tape is in the way");
    assert!(nearest.exceeded.iter().all(|change| change.by > 0.0) && nearest.by > 0.0);
    let lever = nearest.exceeded.iter().find(|change| change.limit == Limit::TapeLeastLeverM).expect("the lever");
    assert!(lever.by < 0.05 && block(&job).least_lever_m.is_some());
}

/// A link that is set last errs by less, so that the proof costs less.
#[test]
fn a_link_set_last_costs_less() {
    let torque = |name: &str| answered(&named(name)).best.expect("one").shaft_torque_n_m;
    let (cut, last) = (torque("yard"), torque("yard, link set last"));
    let without = answered(&named("yard")).without_proof.expect("asked for").expect("one").shaft_torque_n_m;
    assert!(without < last && last < cut, "{without} {last} {cut}");
    let mut value = named("yard, link set last");
    value["tape"].as_object_mut().expect("an object").remove("link_error_m");
    let document = serde_json::from_str(&value.to_string()).expect("a document");
    let faults = Job::read(&document).expect_err("the link's own error is not said").errors;
    assert_eq!(faults.iter().map(|fault| fault.path.as_str()).collect::<Vec<_>>(), ["tape.link_error_m"]);
}

/// Every point of a front, every place of a map that is taken: the place on the tape's step, the arm too, and working at the corners.
#[test]
fn the_front_and_a_place_that_is_taken_keep_to_the_tape() {
    let mut value = named("yard");
    let job = read(&value);
    let points = pareto_front(&job, Aim::LeastShaftTravel, 3).expect("a valid job");
    assert!(points.len() >= 2);
    for point in &points {
        assert!(broken(&job, &point.arm, errors_m(&value)).is_empty());
    }
    value["setout"]["step_m"] = json!(0.005);
    let job = read(&value);
    let mut map = PadMap::new(&job, 7, 7).expect("a valid job");
    while map.step(100) {}
    let mut taken = 0;
    for (column, row) in (0..7).flat_map(|column| [(column, 1), (column, 3), (column, 5)]) {
        let pad = map.pad(column, row).expect("the map is done");
        if pad.ruled_out.is_some() {
            continue;
        }
        taken += 1;
        let arm = pad.arm;
        let lengths_m = [arm.shaft_x_m, arm.shaft_y_m, arm.bracket_u_m, arm.crank_m, arm.link_m];
        assert!(lengths_m.iter().all(|length| (length / 0.005 - (length / 0.005).round()).abs() < 1e-6), "{arm:?}");
        let (x, y) = map.place_m(column, row);
        assert!((arm.shaft_x_m - x).abs() < 0.005 && (arm.shaft_y_m - y).abs() < 0.005);
        let wrong = (check::exceeded(&job, block(&job), &arm, ROUNDING), broken(&job, &arm, errors_m(&value)));
        assert!(wrong.0.is_empty() && wrong.1.is_empty(), "{wrong:?}");
        let planned = plan(&pintle_tests::changed!(job.clone(), arm: Some(arm))).expect("it works");
        assert!((pad.shaft_torque_n_m.expect("works") / planned.peak.shaft_torque_n_m - 1.0).abs() < 1e-6);
    }
    assert!(taken >= 6, "{taken}");
}

/// Where the planned optimum passes the check already, the proof changes nothing.
#[test]
fn a_proof_that_costs_nothing_changes_nothing() {
    let mut value = serde_json::to_value(site("pad_poured.json")).expect("JSON");
    value["tape"] = json!({ "error_m": 0.002 });
    let without = answered(&value).best.expect("one");
    value["setout"]["tape_proof"] = json!(true);
    let best = answered(&value).best.expect("one");
    assert_eq!(best.arm, without.arm);
    assert_eq!(best.shaft_torque_n_m, without.shaft_torque_n_m);
}
