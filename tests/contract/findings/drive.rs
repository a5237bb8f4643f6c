//! Motion, motor, duty.

use super::{LESS, MORE, found, job, measured, planned, silent, tells};
use pintle_core::{
    drive::DrivenState,
    plan::{FindingCode as Code, Severity},
    terms::Direction,
};
use serde_json::{Value, json};

/// Short ramps.
fn moving(lean: Value) -> Value {
    let mut job = job();
    job["lean"] = lean;
    job["motion"] = json!({ "ramp_up_s": 0.2, "ramp_down_s": 0.2 });
    job
}

#[test]
fn start_and_inertia_against_the_ratings() {
    let mut harder = Vec::new();
    // Mirrored at the half-open leaf the arm opens as it closed: shaft (x, y) becomes (y, x), the bracket goes to the other face.
    let mirrored = json!({ "shaft_x_m": 0.45, "shaft_y_m": -0.25, "bracket_u_m": 1.2, "bracket_v_m": -0.06, "crank_m": 0.8728,
        "link_m": 0.6363, "elbow": "right" });
    for arm in [mirrored, job()["arm"].clone()] {
        let mut job = moving(Value::Null);
        job["arm"] = arm;
        let plan = planned(&job);
        let motion = plan.motion.expect("described");
        let (opening, closing) = (motion.opening.peak, motion.closing.peak);
        harder.push(opening.shaft_torque_n_m > closing.shaft_torque_n_m);
        let most = if harder[harder.len() - 1] { opening } else { closing };
        let (torque, angle) = (most.shaft_torque_n_m, most.leaf_deg);
        let steady = plan.peak.shaft_torque_n_m;
        assert!(torque > steady * 1.001);
        let mut rate = |rated: f64, peak: Option<f64>| {
            job["operator"]["rated_torque_n_m"] = json!(rated);
            job["operator"]["peak_torque_n_m"] = json!(peak);
            job.clone()
        };
        let values = |limit: f64| [("torque", torque), ("limit", limit), ("leaf_angle", angle)];
        let over = rate(steady, Some(torque * LESS));
        tells(&over, Code::MotionOverPeak, Severity::Error, &values(torque * LESS));
        silent(&over, Code::MotionOverRated);
        for peak in [Some(torque), Some(torque * MORE), None] {
            let job = rate(torque * LESS, peak);
            silent(&job, Code::MotionOverPeak);
            tells(&job, Code::MotionOverRated, Severity::Warning, &values(torque * LESS));
        }
        silent(&rate(torque, None), Code::MotionOverRated);
        // Where the steady demand is over the rating already, that is what is told.
        tells(&rate(steady, None), Code::MotionOverRated, Severity::Warning, &values(steady));
        let job = rate(steady * LESS, None);
        silent(&job, Code::MotionOverRated);
        assert!(found(&job, Code::DemandOverRated).is_some());
    }
    assert_eq!(harder, [true, false], "each way is the harder one once");
}

/// Two even ramps of T cover speed·T; over a longer way than the travel the shaft only reaches √(speed/T·travel).
#[test]
fn ramps_longer_than_the_way() {
    let mut job = job();
    let travel = planned(&job).shaft_travel_deg;
    let mut ramps = |seconds: f64| {
        job["operator"]["shaft_speed_deg_s"] = json!(20);
        job["motion"] = json!({ "ramp_up_s": seconds, "ramp_down_s": seconds });
        job.clone()
    };
    let just = travel / 20.0;
    silent(&ramps(just * (1.0 - 1e-6)), Code::RampsTooLong);
    for seconds in [just * (1.0 + 1e-6), 2.0 * just] {
        let values = [("speed", (20.0 / seconds * travel).sqrt()), ("limit", 20.0)];
        tells(&ramps(seconds), Code::RampsTooLong, Severity::Info, &values);
    }
}

/// In calm air a leaf that leans towards open runs on opening, and is stopped closing, where its hinges resist less than the lean pulls.
#[test]
fn a_leaf_let_go_runs_on() {
    let mut job = job();
    job["wind"]["speed_m_s"] = json!(0);
    job["motion"] = json!({});
    for (pull, angle, downhill, told) in
        [(5.0, 3.0, 90.0, true), (5.0, 3.0, 0.0, true), (500.0, 3.0, 90.0, false), (5.0, 0.0, 0.0, false)]
    {
        job["hinges"] = measured(pull, pull);
        job["lean"] = json!({ "angle_deg": angle, "downhill_deg": downhill });
        match told {
            true => tells(&job, Code::CoastRunsOn, Severity::Warning, &[]),
            false => silent(&job, Code::CoastRunsOn),
        }
    }
}

/// Pulls of 225 N at 2 m resist by 450 N·m: 150 N at the edge, 3 m out (EN 12604, from memory).
#[test]
fn by_hand_the_leaf_is_heavy() {
    let mut job = job();
    job["leaf"]["length_m"] = json!(3.0);
    job["motion"] = json!({});
    job["hinges"] = measured(225.0, 225.0);
    silent(&job, Code::HandForceHigh);
    job["hinges"] = measured(225.0 * MORE, 225.0 * MORE);
    tells(
        &job,
        Code::HandForceHigh,
        Severity::Warning,
        &[("force", 150.0 * MORE), ("limit", 150.0), ("leaf_angle", 0.0)],
    );
}

/// Whatever becomes of a driven run, it is told by its own name and where and when.
#[test]
fn a_motor_that_does_not_arrive() {
    let mut seen = Vec::new();
    for downhill in [0.0, 90.0] {
        for stall in [4.0, 60.0, 110.0, 150.0, 200.0, 900.0] {
            let mut job = moving(json!({ "angle_deg": 4, "downhill_deg": downhill }));
            // Stiff hinges stand still where loose ones are pushed back.
            if stall != 60.0 {
                job["hinges"] = measured(200.0, 200.0);
            }
            job["motion"]["motor"] = json!({ "stall_torque_n_m": stall, "no_load_speed_deg_s": 12, "rated_v": 24 });
            let driven = planned(&job).motion.and_then(|motion| motion.driven).expect("a motor");
            for (direction, run) in [(Direction::Open, &driven.opening), (Direction::Close, &driven.closing)] {
                let all = match direction {
                    Direction::Open => [Code::OpeningStalls, Code::OpeningDrivenBack, Code::OpeningCreeps],
                    Direction::Close => [Code::ClosingStalls, Code::ClosingDrivenBack, Code::ClosingCreeps],
                };
                let place = match run.state {
                    DrivenState::Arrives => None,
                    DrivenState::DrivenBack => Some(1),
                    DrivenState::Creeps => Some(2),
                    _ => Some(0),
                };
                for (index, code) in all.into_iter().enumerate() {
                    if place == Some(index) {
                        let values = [("leaf_angle", run.leaf_deg), ("time", run.time_s)];
                        tells(&job, code, Severity::Error, &values);
                        seen.push(code);
                    } else {
                        silent(&job, code);
                    }
                }
            }
        }
    }
    for code in [Code::OpeningStalls, Code::ClosingStalls, Code::OpeningDrivenBack, Code::ClosingDrivenBack] {
        assert!(seen.contains(&code), "{code:?} in {seen:?}");
    }
}

#[test]
fn cycles_against_the_rating() {
    let mut job = moving(Value::Null);
    let mut duty = |duty: Value| {
        job["motion"]["duty"] = duty;
        job.clone()
    };
    let asked = |hour: u32, day: u32| json!({ "cycles_per_hour": hour, "rated_cycles_per_hour": 20, "cycles_per_day": day, "rated_cycles_per_day": 100 });
    silent(&duty(asked(20, 100)), Code::DutyExceeded);
    for (hour, day, share) in [(21, 100, 1.05), (20, 101, 1.01), (22, 130, 1.3), (30, 130, 1.5)] {
        tells(&duty(asked(hour, day)), Code::DutyExceeded, Severity::Warning, &[("share", share)]);
    }
    tells(
        &duty(json!({ "cycles_per_day": 3, "rated_cycles_per_day": 2 })),
        Code::DutyExceeded,
        Severity::Warning,
        &[("share", 1.5)],
    );
    silent(&duty(json!({ "cycles_per_day": 300 })), Code::DutyExceeded);
    // As many cycles as an hour has room for, and one more.
    let motion = planned(&duty(json!({}))).motion.expect("described");
    let cycle_s = motion.opening.time_s + motion.closing.time_s;
    let room = (3600.0 / cycle_s).floor();
    silent(&duty(json!({ "cycles_per_hour": room })), Code::DutyNoTime);
    let values = [("share", (room + 1.0) * cycle_s / 3600.0)];
    tells(&duty(json!({ "cycles_per_hour": room + 1.0 })), Code::DutyNoTime, Severity::Error, &values);
}
