//! The leaf driving the shaft: with an efficiency of its own, and behind a gear that does not back-drive.

use crate::bench::{FRICTION, INERTIA, WIND, bench, demand, gravity, on_an_arm};
use crate::jobs::{planned, valid};
use pintle_core::{
    drive::{CoastState, DrivenState, HoldingVerdict},
    elements::{helix_lowering_n_m, helix_raising_n_m},
    plan::{FindingCode as Code, Plan},
};
use proptest::prelude::*;
use serde_json::{Value, json};

fn codes(plan: &Plan) -> Vec<Code> {
    plan.findings.iter().map(|finding| finding.code).collect()
}

fn operator(mut value: Value, facts: &Value) -> Value {
    value["operator"].as_object_mut().expect("a block").extend(facts.as_object().expect("facts").clone());
    value
}

fn storms(mut value: Value) -> Value {
    value["storm"] = json!({ "speed_m_s": 25, "force_coefficient": 1.2 });
    value["holding"] = json!({});
    value
}

/// Virtual work on the bench, whose shaft turns as fast as its leaf: in a wind from behind the shaft holds `η_b·(τ_w + M_g − τ_f)`, and nothing that
/// the shaft drives the leaf with depends on η_b.
#[test]
fn the_overrun_takes_the_efficiency_of_the_leaf_driving() {
    for back in [0.1, 0.35, 0.8, 1.0] {
        let plan = planned(&operator(bench(), &json!({ "back_efficiency": back })));
        let most = plan.curve.iter().map(|row| -demand(row.leaf_deg.to_radians(), 1.0, -WIND)).fold(0.0, f64::max);
        let found = plan.curve.iter().map(|row| row.overrun_open_n_m.abs()).fold(0.0, f64::max);
        assert!((found - back * most).abs() < 1e-9 * most, "{found} {back} {most}");
        let still = plan.curve[0].holding_n_m;
        assert!((still - back * (WIND + gravity(0.0).abs())).abs() < 1e-9, "{still}");
        let plain = planned(&bench());
        assert_eq!(plan.curve[0].shaft_torque_open_n_m, plain.curve[0].shaft_torque_open_n_m);
        assert_eq!(plan.peak, plain.peak);
    }
}

/// Nothing said, and what was assumed said, are alike to the bit.
#[test]
fn the_arm_s_efficiency_is_assumed_both_ways() {
    let silent = storms(operator(on_an_arm(), &json!({})));
    let said = operator(silent.clone(), &json!({ "back_efficiency": 0.8, "back_drives": true }));
    let [silent, said] = [silent, said].map(|value| planned(&value));
    assert_eq!((silent.curve, silent.holding, silent.storm), (said.curve, said.holding, said.storm));
    assert_eq!((silent.peak, silent.overrun, silent.findings), (said.peak, said.overrun, said.findings));
}

/// The weak motor of a leaf that its lean pushes back comes to a stand and stays; the leaf that would run on stops with its gear; and the wind from
/// behind is nothing the motor is told of.
#[test]
fn nothing_runs_back_through_a_gear_that_does_not_back_drive() {
    let mut value: Value = serde_json::from_str(include_str!("../../www/data/starting-job.json")).expect("JSON");
    value["lean"] = json!({ "angle_deg": 4, "downhill_deg": 0 });
    value["motion"] = json!({ "ramp_up_s": 0.2, "ramp_down_s": 0.2,
        "motor": { "stall_torque_n_m": 60, "no_load_speed_deg_s": 12, "rated_v": 24 } });
    let told = [Code::CoastRunsOn, Code::LeafDrivesShaft, Code::OpeningDrivenBack];
    let plan = planned(&value);
    assert!(told.iter().all(|code| codes(&plan).contains(code)), "{:?}", codes(&plan));
    assert_eq!(
        plan.motion.as_ref().and_then(|motion| motion.driven.as_ref()).expect("a motor").opening.state,
        DrivenState::DrivenBack
    );

    let held = planned(&operator(value, &json!({ "back_drives": false })));
    assert!(!told.iter().any(|code| codes(&held).contains(code)), "{:?}", codes(&held));
    assert!(codes(&held).contains(&Code::OpeningStalls));
    let motion = held.motion.expect("motion");
    assert_eq!(motion.driven.expect("a motor").opening.state, DrivenState::Stalls);
    for coast in [motion.coast_open, motion.coast_close] {
        assert_eq!((coast.calm, coast.following), (CoastState::GearHolds, CoastState::GearHolds));
        assert_eq!((coast.calm_leaf_deg, coast.following_leaf_deg), (None, None));
    }
    // What the gear carries at its shaft stays as it is: it is what slips a clutch.
    assert_eq!((held.overrun, motion.held_back), (plan.overrun, plan.motion.expect("motion").held_back));
}

/// A clutch is all that lets go of a gear that does not back-drive; of one that may be driven back it says nothing. Neither known, neither is held.
#[test]
fn a_clutch_says_what_such_a_gear_holds() {
    let verdict = |slip: Option<f64>, drives: bool| {
        let mut value = storms(operator(bench(), &json!({ "back_drives": drives })));
        value["breakaway"] = json!({ "slip_torque_n_m": slip });
        planned(&value).holding.expect("asked for").verdict
    };
    let needed = planned(&storms(bench())).holding.expect("asked for").torque_n_m;
    assert_eq!(verdict(Some(1.01 * needed), true), HoldingVerdict::Unknown);
    assert_eq!(verdict(Some(1.01 * needed), false), HoldingVerdict::Holds);
    assert_eq!(verdict(Some(0.99 * needed), false), HoldingVerdict::GivesWay);
    assert_eq!(verdict(None, false), HoldingVerdict::Unknown);
}

/// A motor that gets nothing of the wind from behind does the work of its own rotor only: from rest to rest none, against what losses take.
#[test]
fn a_motor_behind_such_a_gear_neither_helps_nor_is_helped() {
    let mut value = bench();
    value["lean"] = Value::Null;
    value["wind"]["speed_m_s"] = json!(20);
    value["motion"] =
        json!({ "motor": { "stall_torque_n_m": 60, "no_load_speed_deg_s": 16, "rated_v": 24, "run_up_s": 0.1 } });
    let driven =
        planned(&operator(value, &json!({ "back_drives": false }))).motion.expect("motion").driven.expect("a motor");
    let run = &driven.opening_following;
    assert_eq!(run.state, DrivenState::Arrives);
    // Wind of 250 N·m less 20 N·m of friction drives the leaf all the way: what the wind does ends in hinges and gear, but for the leaf's own energy.
    let (energy, end) = (&run.energy, run.curve.last().expect("rows"));
    let leaf_j = 0.5 * INERTIA * end.shaft_speed_deg_s.to_radians().powi(2);
    assert!((energy.friction_j - FRICTION * 60f64.to_radians()).abs() < 1e-3);
    assert!(
        (energy.wind_j - energy.friction_j - leaf_j - energy.arm_loss_j).abs() < 1e-3 * energy.wind_j,
        "{energy:?}"
    );
    let rotor_j = energy.kinetic_j - leaf_j;
    assert!((energy.motor_j - rotor_j).abs() < 1e-3 * energy.wind_j, "{energy:?}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// `forward = tan λ/tan(λ + φ)`, `back = tan(λ − φ)/tan λ`: of the screw's own moments, and back-driving stops where tan λ is μ.
    #[test]
    fn a_screw_drives_back_as_far_as_its_lead_is_steeper_than_its_friction(lead in 0.02..0.6f64, friction in 0.02..0.6f64) {
        let (radius, load) = (0.02, 1000.0);
        let rise = radius * lead;
        let lowering = helix_lowering_n_m(load, radius, rise, friction);
        let ideal = load * rise;
        let (angle, slip) = (lead.atan(), friction.atan());
        // The moment that holds the load on the thread, over that without friction; negative where it has to be turned down.
        let back = (angle - slip).tan() / lead;
        prop_assert!((-lowering / ideal - back).abs() < 1e-9 * (1.0 + back.abs()), "{lowering} {back}");
        prop_assert_eq!(lowering < 0.0, lead > friction);
        if let Some(raising) = helix_raising_n_m(load, radius, rise, friction) {
            let forward = lead / (angle + slip).tan();
            prop_assert!((ideal / raising - forward).abs() < 1e-9);
            // What does not drive back has less than half forward: (1 − μ²)/2 where the lead is as steep as the friction.
            prop_assert!(back > 0.0 || forward < 0.5);
        }
    }

    /// Losses help whoever is driven: more of the leaf's work at the shaft is never less to hold, and nothing else moves.
    #[test]
    fn more_that_passes_back_is_more_to_hold(value in valid(), low in 0.1..1.0f64, more in 0.0..1.0f64) {
        let of = |back: f64| planned(&operator(value.clone(), &json!({ "back_efficiency": back })));
        let (less, more) = (of(low), of(low + more * (1.0 - low)));
        for (one, other) in less.curve.iter().zip(&more.curve) {
            prop_assert!(one.holding_n_m <= other.holding_n_m * (1.0 + 1e-12));
            prop_assert!(one.overrun_open_n_m.abs() <= other.overrun_open_n_m.abs() * (1.0 + 1e-12));
            prop_assert_eq!(one.leaf_torque_open_n_m, other.leaf_torque_open_n_m);
        }
        prop_assert!(less.peak.shaft_torque_n_m <= more.peak.shaft_torque_n_m * (1.0 + 1e-12));
    }
}
