//! The driven run against an integration of its own, along the arm's own path.

use crate::bench::{INERTIA, WIND, bench, near, on_an_arm};
use crate::jobs::{job, planned};
use crate::motor::{Bench, edge};
use pintle_core::{
    arm::ShaftPath,
    drive::{DrivenRun, DrivenState, Motor},
    job::MotorFacts,
    plan::{Driven, Model},
};
use serde_json::{Value, json};

/// A ramp of 2 s to 10°/s, one of 1.6 s from it; before the limits 8° at 4°/s.
fn driven(value: &Value, stall: f64, no_load_deg_s: f64, run_up_s: f64) -> Value {
    let mut value = value.clone();
    value["motion"] = json!({ "ramp_up_s": 2, "ramp_down_s": 1.6, "slow_open_deg": 8, "slow_close_deg": 8,
        "slow_speed_deg_s": 4, "motor": { "stall_torque_n_m": stall, "no_load_speed_deg_s": no_load_deg_s,
            "rated_v": 24, "run_up_s": run_up_s } });
    value
}

fn runs(value: &Value) -> Driven {
    planned(value).motion.expect("motion").driven.expect("a motor")
}

/// How well both integrations know a switch of the controller.
const CLOSE: f64 = 5e-4;

/// Holds a run that arrives to the integration: every row, its end, where its energy went.
fn check(model: &Model, motor: &Motor, run: &DrivenRun, sign: f64, wind: f64) {
    let down_s = model.job().motion.as_ref().expect("motion").ramp_down();
    let bench = Bench {
        path: ShaftPath::new(model.linkage()),
        stall: motor.stall_torque_n_m,
        no_load: motor.no_load_rad_s,
        shaft_inertia: motor.inertia_kg_m2,
        sign,
        wind,
        down_s,
    };
    let (travel, turn) = (bench.path.travel_rad(), bench.path.sign());
    assert_eq!(run.state, DrivenState::Arrives);
    let (last, mut state, mut fastest) = (run.curve.len() - 1, [0.0; 7], 0.0f64);
    for (index, row) in run.curve.iter().enumerate() {
        if index > 0 {
            let (next, speed) = bench.after(&state, run.time_s / last as f64);
            (state, fastest) = (next, fastest.max(speed));
        }
        let progress = if sign > 0.0 { state[0] } else { travel - state[0] };
        near(row.time_s, run.time_s * index as f64 / last as f64, 1e-12);
        near(row.shaft_deg, turn * progress.to_degrees(), CLOSE);
        near(row.leaf_deg, bench.station(state[0]).leaf_rad.to_degrees(), CLOSE);
        near(row.shaft_speed_deg_s, turn * sign * state[1].to_degrees(), CLOSE);
        near(row.edge_speed_m_s, edge(&bench, &state), CLOSE);
        // A row may fall close to a corner of the profile, where what is asked for steps.
        let corner = (bench.asked(state[0] - 1e-4).1 - bench.asked(state[0] + 1e-4).1).abs() > 1e-9;
        let torque = bench.torque(state[0], state[1]);
        assert!(corner || (row.shaft_torque_n_m - turn * sign * torque).abs() < 0.1, "{row:?} {torque}");
    }
    // It is there, and was not before.
    near(state[0], travel, CLOSE);
    near(run.arrival_edge_speed_m_s, edge(&bench, &state), CLOSE);
    near(run.leaf_deg, if sign > 0.0 { bench.station(travel).leaf_rad.to_degrees() } else { 0.0 }, 1e-6);
    // It is told of the steps taken, and those are not as fine.
    assert!((run.edge_speed_m_s / fastest - 1.0).abs() < 2e-3, "{fastest}");
    let gain = bench.station(state[0]).gain;
    let kinetic = (bench.shaft_inertia + INERTIA * gain * gain) * state[1] * state[1] / 2.0;
    let [.., motor_j, wind_j, gravity_j, friction_j, arm_j] = state;
    for (found, wanted) in [
        (run.energy.motor_j, motor_j),
        (run.energy.wind_j, wind_j),
        (run.energy.gravity_j, gravity_j),
        (run.energy.friction_j, friction_j),
        (run.energy.arm_loss_j, arm_j),
        (run.energy.kinetic_j, kinetic),
    ] {
        near(found, wanted, CLOSE);
    }
    assert!(run.energy.error < 1e-6, "{:?}", run.energy);
}

fn check_all(value: &Value) {
    let (model, driven) = (Model::new(&job(value)).expect("valid"), runs(value));
    check(&model, &driven.motor, &driven.opening, 1.0, WIND);
    check(&model, &driven.motor, &driven.closing, -1.0, WIND);
    check(&model, &driven.motor, &driven.opening_following, 1.0, -WIND);
    check(&model, &driven.motor, &driven.closing_following, -1.0, -WIND);
}

/// Torque to spare: the controller has its way.
#[test]
fn a_strong_motor_on_an_arm_of_ratio_one() {
    check_all(&driven(&bench(), 600.0, 30.0, 0.01));
}

/// No-load speed just above what is asked for: the line decides most of the way, and the leaf is late for its slow zone.
#[test]
fn a_weak_motor_on_an_arm_of_ratio_one() {
    check_all(&driven(&bench(), 150.0, 11.0, 0.005));
}

#[test]
fn a_motor_on_an_arm_whose_ratio_changes() {
    check_all(&driven(&on_an_arm(), 120.0, 16.0, 0.02));
}

/// Heavy beside the leaf and asked to brake at once, the motor brakes while the leaf still has to be driven: what drives what is decided by
/// both their inertias.
#[test]
fn a_heavy_motor_brakes_and_drives_the_leaf_all_the_same() {
    let mut value = driven(&on_an_arm(), 120.0, 16.0, 0.5);
    value["motion"]["ramp_down_s"] = json!(0.2);
    check_all(&value);
}

/// Both ends of the line go with the voltage; the gear divides the speed, multiplies the torque and takes its share. `J = T_s·t/ω_n` at the
/// rated voltage: a motor alone comes to 63 % of its speed in that time.
#[test]
fn a_motor_behind_a_gear_at_half_its_voltage() {
    let facts = MotorFacts::builder()
        .stall_torque_n_m(2.0)
        .no_load_speed_deg_s(1800.0)
        .rated_v(24.0)
        .supply_v(12.0)
        .gear_ratio(150.0)
        .gear_efficiency(0.6)
        .run_up_s(0.25)
        .build();
    let motor = Motor::of(&facts).expect("a line");
    near(motor.stall_torque_n_m, 90.0, 1e-12);
    near(motor.no_load_rad_s, 6f64.to_radians(), 1e-12);
    near(motor.inertia_kg_m2, 180.0 * 0.25 / 12f64.to_radians(), 1e-12);
    near(motor.torque_n_m(3f64.to_radians()), 45.0, 1e-12);
    near(motor.torque_n_m(12f64.to_radians()), -90.0, 1e-12);
    near(motor.within_line_n_m(10.0, 3f64.to_radians()), 10.0, 1e-12);
    near(motor.within_line_n_m(100.0, 3f64.to_radians()), 45.0, 1e-12);
    near(motor.within_line_n_m(-100.0, 3f64.to_radians()), -45.0, 1e-12);
}

/// A motor at a source whose voltage sags, by its circuit: `V_0 = (R_m + R)·I + k·ω`, `T = k·I`, with `k = V_r/ω_n` and `R_m` from what the rated
/// motor draws at standstill, `I_s = T_s/k`. At each speed the sagged voltage `V_0 − I·R` at the terminals of the motor alone gives the same torque.
#[test]
fn a_supply_that_sags_by_the_motors_current() {
    let (rated_v, source_v, stall, no_load_deg) = (24.0, 25.2, 2.0, 18_000.0_f64);
    for (resistance, ratio, efficiency) in [(0.0, 1.0, 1.0), (0.3, 1.0, 1.0), (0.15, 150.0, 0.6), (20.0, 40.0, 0.8)] {
        let mut value = driven(&on_an_arm(), 120.0, 16.0, 0.5);
        value["motion"]["supply_resistance_ohm"] = json!(resistance);
        value["motion"]["motor"] = json!({ "stall_torque_n_m": stall, "no_load_speed_deg_s": no_load_deg, "rated_v": rated_v,
            "supply_v": source_v, "gear_ratio": ratio, "gear_efficiency": efficiency });
        let facts = job(&value).motion.expect("said");
        let motor = facts.motor_at_shaft().expect("said");
        let constant = rated_v / no_load_deg.to_radians();
        let own = rated_v / (stall / constant);
        for share in [-0.2, 0.0, 0.25, 0.5, 0.9, 1.0, 1.3] {
            let speed = share * no_load_deg.to_radians();
            let current = (source_v - constant * speed) / (own + resistance);
            let torque = constant * current * ratio * efficiency;
            near(motor.torque_n_m(speed / ratio), torque, 1e-9 * stall * ratio);
            // The motor alone at the voltage left at its terminals; a voltage below nothing is none a job can say.
            let terminal_v = source_v - current * resistance;
            if terminal_v >= 1.0 {
                let own = facts.motor.clone().expect("said");
                let alone = Motor::of(&pintle_tests::changed!(own, supply_v: Some(terminal_v))).expect("a line");
                near(motor.torque_n_m(speed / ratio), alone.torque_n_m(speed / ratio), 1e-9 * stall * ratio);
            }
        }
    }
}

/// Nothing said of it is a supply that does not sag, to the bit; one that does never gives more torque.
#[test]
fn a_stiff_supply_is_assumed() {
    let silent = driven(&on_an_arm(), 120.0, 16.0, 0.5);
    let with = |ohm: f64| {
        let mut value = silent.clone();
        value["motion"]["supply_resistance_ohm"] = json!(ohm);
        job(&value).motion.expect("said").motor_at_shaft().expect("said")
    };
    let stiff = job(&silent).motion.expect("said").motor_at_shaft().expect("said");
    assert_eq!(with(0.0), stiff);
    assert!(
        with(0.1).stall_torque_n_m < stiff.stall_torque_n_m && with(0.2).stall_torque_n_m < with(0.1).stall_torque_n_m
    );
    assert_eq!((with(0.2).no_load_rad_s, with(0.2).inertia_kg_m2), (stiff.no_load_rad_s, stiff.inertia_kg_m2));
}
