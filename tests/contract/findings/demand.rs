//! Torque against the ratings, dead points, transmission, the band of friction.

use super::{LESS, MORE, job, planned, silent, straight, tells};
use pintle_core::plan::{FindingCode as Code, Severity};
use serde_json::{Value, json};

fn rated(rated: f64, peak: f64) -> Value {
    let mut job = job();
    job["operator"]["rated_torque_n_m"] = json!(rated);
    job["operator"]["peak_torque_n_m"] = json!(peak);
    job
}

/// Rated for less than the demand is too little, for the demand itself is tight, for one and a half times as much is what is asked for.
#[test]
fn demand_against_the_rating() {
    let peak = planned(&job()).peak;
    let (demand, angle) = (peak.shaft_torque_n_m, peak.leaf_deg);
    let over = rated(demand * LESS, 5000.0);
    let values = [("torque", demand), ("limit", demand * LESS), ("leaf_angle", angle)];
    tells(&over, Code::DemandOverRated, Severity::Error, &values);
    silent(&over, Code::ReserveBelowRequired);
    let tight = rated(demand, 5000.0);
    silent(&tight, Code::DemandOverRated);
    let values = [("reserve", 1.0), ("limit", 1.5), ("leaf_angle", angle)];
    tells(&tight, Code::ReserveBelowRequired, Severity::Warning, &values);
    let values = [("reserve", 1.5 * LESS), ("limit", 1.5), ("leaf_angle", angle)];
    tells(&rated(1.5 * demand * LESS, 5000.0), Code::ReserveBelowRequired, Severity::Warning, &values);
    silent(&rated(1.5 * demand * MORE, 5000.0), Code::ReserveBelowRequired);
}

#[test]
fn demand_against_the_peak_torque() {
    let peak = planned(&job()).peak;
    let (demand, angle) = (peak.shaft_torque_n_m, peak.leaf_deg);
    let values = [("torque", demand), ("limit", demand * LESS), ("leaf_angle", angle)];
    tells(&rated(400.0, demand * LESS), Code::DemandOverPeak, Severity::Error, &values);
    silent(&rated(400.0, demand), Code::DemandOverPeak);
    silent(&rated(400.0, demand * MORE), Code::DemandOverPeak);
}

/// Mirrored at the half-open leaf, closed and open change places: shaft (x, y) becomes (y, x), the bracket goes to the leaf's other face.
#[test]
fn dead_points_at_either_end() {
    let closed = straight();
    tells(&closed, Code::DeadPointClosed, Severity::Info, &[]);
    silent(&closed, Code::DeadPointOpen);
    let mut open = closed.clone();
    open["arm"] = json!({ "shaft_x_m": 0.43, "shaft_y_m": -0.3, "bracket_u_m": 0.9, "bracket_v_m": -0.08, "crank_m": 0.75,
        "link_m": 0.5, "elbow": "right" });
    tells(&open, Code::DeadPointOpen, Severity::Warning, &[]);
    silent(&open, Code::DeadPointClosed);
    for code in [Code::DeadPointClosed, Code::DeadPointOpen] {
        silent(&job(), code);
    }
}

/// The lever of the link is the bracket's radius times the sine of the transmission angle; 30° is the least.
#[test]
fn transmission_below_thirty_degrees() {
    let mut told = 0;
    for shaft_y in [0.3, 0.45, 0.6, 0.75] {
        for link in [0.6363, 0.7, 0.9, 1.2, 1.4] {
            let mut job = job();
            job["arm"]["shaft_y_m"] = json!(shaft_y);
            job["arm"]["link_m"] = json!(link);
            job["arm"]["crank_m"] = json!(1.5 - 0.4 * link);
            let Ok(plan) = super::answer(&job) else { continue };
            let transmission = (plan.least_lever_m / 1.2_f64.hypot(0.06)).asin().to_degrees();
            if transmission >= 30.0 {
                silent(&job, Code::TransmissionLow);
                continue;
            }
            told += 1;
            let finding = super::found(&job, Code::TransmissionLow).expect("below thirty");
            assert_eq!(finding.severity, Severity::Warning);
            let value = |index: usize| (finding.values[index].name, finding.values[index].value);
            assert_eq!((value(0).0, value(1), value(2).0), ("transmission", ("limit", 30.0), "leaf_angle"));
            assert!((value(0).1 - transmission).abs() < 1e-6, "{} {transmission}", value(0).1);
            // From a tenth of the swing on.
            assert!((9.0..=90.0).contains(&value(2).1), "{}", value(2).1);
        }
    }
    assert!((2..10).contains(&told), "{told} are told");
}

/// A leaf in calm air on a plumb axis is never driven; the wind behind it drives it.
#[test]
fn the_leaf_drives_the_shaft() {
    let overrun = planned(&job()).overrun.expect("the wind drives it");
    let values = [("torque", overrun.shaft_torque_n_m), ("leaf_angle", overrun.leaf_deg)];
    tells(&job(), Code::LeafDrivesShaft, Severity::Info, &values);
    let mut calm = job();
    calm["wind"]["speed_m_s"] = json!(0);
    assert!(planned(&calm).overrun.is_none());
    silent(&calm, Code::LeafDrivesShaft);
}

/// Rated between the demand with likely and with high friction.
#[test]
fn only_high_friction_is_too_much() {
    let mut job = job();
    job["hinges"]["friction_low"] = json!(0.1);
    job["hinges"]["friction_high"] = json!(0.6);
    let band = planned(&job).band.expect("a range is said").peak_n_m;
    assert!(band.likely < band.high * 0.99);
    job["operator"]["peak_torque_n_m"] = Value::Null;
    for (rated, code) in [
        (band.high * MORE, None),
        (band.high * LESS, Some(Code::BandOverRated)),
        (band.likely * MORE, Some(Code::BandOverRated)),
        (band.likely * LESS, Some(Code::DemandOverRated)),
    ] {
        job["operator"]["rated_torque_n_m"] = json!(rated);
        match code {
            Some(Code::BandOverRated) => {
                let values = [("torque", band.high), ("limit", rated)];
                tells(&job, Code::BandOverRated, Severity::Warning, &values);
                silent(&job, Code::DemandOverRated);
            }
            Some(_) => {
                silent(&job, Code::BandOverRated);
                assert!(super::found(&job, Code::DemandOverRated).is_some());
            }
            None => silent(&job, Code::BandOverRated),
        }
    }
}
