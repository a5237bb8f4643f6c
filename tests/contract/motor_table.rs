//! A motor's table of speed and torque: what is refused, how it is told, and what stands beside it.

use super::{answer, faults, job};
use pintle_core::{
    fault::{Allowed, Example, Fault, FaultCode},
    units::Quantity,
};
use serde_json::{Value, json};

/// The job with a motor of these points, and what else is said of motor and movement.
fn tabled(points: Value, motor: Value, motion: Value) -> Value {
    let mut job = job();
    job["motion"] = motion;
    job["motion"]["motor"] = json!({ "curve": points, "rated_v": 230 });
    let own = job["motion"]["motor"].as_object_mut().expect("a block");
    own.extend(motor.as_object().expect("facts").clone());
    job
}

fn point(speed: f64, torque: f64) -> Value {
    json!({ "speed_deg_s": speed, "torque_n_m": torque })
}

fn good() -> Value {
    json!([point(0.0, 500.0), point(9.0, 900.0), point(12.0, 0.0)])
}

fn told(points: Value) -> Vec<Fault> {
    answer(&tabled(points, json!({}), json!({}))).expect_err("a fault").errors
}

fn range(least: f64, most: f64, quantity: Quantity) -> Option<Allowed> {
    Some(Allowed::Range { least: Some(least), most: Some(most), quantity })
}

#[test]
fn a_table_stands_for_a_line() {
    let plan = answer(&tabled(good(), json!({ "supply_v": 230 }), json!({}))).expect("valid");
    let motor = plan.motion.and_then(|motion| motion.driven).expect("a motor").motor;
    assert_eq!((motor.stall_torque_n_m, motor.no_load_rad_s), (500.0, 12f64.to_radians()));
    assert!(motor.table.is_some());
    let line = tabled(Value::Null, json!({ "stall_torque_n_m": 500, "no_load_speed_deg_s": 12 }), json!({}));
    let motor = answer(&line).expect("valid").motion.and_then(|motion| motion.driven).expect("a motor").motor;
    assert!(motor.table.is_none());
    assert_eq!(
        faults(&tabled(Value::Null, json!({}), json!({}))),
        [
            ("motion.motor.stall_torque_n_m".into(), FaultCode::Missing),
            ("motion.motor.no_load_speed_deg_s".into(), FaultCode::Missing),
        ]
    );
}

#[test]
fn a_line_beside_a_table_is_said_twice() {
    let both = tabled(good(), json!({ "stall_torque_n_m": 500, "no_load_speed_deg_s": 12 }), json!({}));
    assert_eq!(
        faults(&both),
        [
            ("motion.motor.stall_torque_n_m".into(), FaultCode::SaidTwice),
            ("motion.motor.no_load_speed_deg_s".into(), FaultCode::SaidTwice),
        ]
    );
}

#[test]
fn one_point_is_no_line_and_sixty_are_enough() {
    for points in [json!([]), json!([point(0.0, 5.0)])] {
        let errors = told(points);
        assert_eq!((&*errors[0].path, errors[0].code), ("motion.motor.curve", FaultCode::TooFewPoints));
        assert_eq!(errors[0].allowed, range(2.0, 60.0, Quantity::Count));
    }
    let many: Vec<Value> = (0..61).map(|index| point(f64::from(index), f64::from(60 - index))).collect();
    assert_eq!(told(json!(many))[0].code, FaultCode::OutOfRange);
    assert!(
        answer(&tabled(
            json!(
                many[1..]
                    .iter()
                    .enumerate()
                    .map(|(index, row)| { point(index as f64, row["torque_n_m"].as_f64().expect("a number")) })
                    .collect::<Vec<_>>()
            ),
            json!({}),
            json!({})
        ))
        .is_ok()
    );
}

#[test]
fn points_rise_from_standstill_to_no_torque() {
    let errors = told(json!([point(1.0, 500.0), point(9.0, 0.0), point(9.0, 700.0), point(8.0, 2.0)]));
    let all: Vec<(&str, FaultCode, Option<&str>)> =
        errors.iter().map(|fault| (&*fault.path, fault.code, fault.found.as_deref())).collect();
    assert_eq!(
        all,
        [
            ("motion.motor.curve.0.speed_deg_s", FaultCode::NoMotorCurve, Some("1")),
            ("motion.motor.curve.1.torque_n_m", FaultCode::NoMotorCurve, Some("0")),
            ("motion.motor.curve.2.speed_deg_s", FaultCode::NotRising, Some("9")),
            ("motion.motor.curve.3.speed_deg_s", FaultCode::NotRising, Some("8")),
            ("motion.motor.curve.3.torque_n_m", FaultCode::NoMotorCurve, Some("2")),
        ]
    );
    let allowed: Vec<Option<Allowed>> = errors.iter().map(|fault| fault.allowed.clone()).collect();
    assert_eq!(
        allowed,
        [
            range(0.0, 0.0, Quantity::AngularSpeed),
            range(0.01, 50_000.0, Quantity::Torque),
            range(9.0, 100_000.0, Quantity::AngularSpeed),
            range(9.0, 100_000.0, Quantity::AngularSpeed),
            range(0.0, 0.0, Quantity::Torque),
        ]
    );
    let examples: Vec<Option<Example>> = errors.iter().map(|fault| fault.example).collect();
    assert_eq!(examples, [0.0, 900.0, 10.0, 10.0, 0.0].map(|value| Some(Example::Number(value))));
}

/// No current is known, so no voltage falls by it: a resistance is refused, none is no fault.
#[test]
fn a_table_has_no_current_to_sag_by() {
    let with = |ohm: f64| tabled(good(), json!({}), json!({ "supply_resistance_ohm": ohm }));
    assert!(answer(&with(0.0)).is_ok());
    let errors = answer(&with(0.2)).expect_err("a fault").errors;
    assert_eq!((&*errors[0].path, errors[0].code), ("motion.supply_resistance_ohm", FaultCode::NoCurrentKnown));
    assert_eq!(errors[0].allowed, range(0.0, 0.0, Quantity::Resistance));
    assert_eq!(errors[0].example, Some(Example::Number(0.0)));
}
