//! The closed leaf in the storm and what holds it: three forces on a leaf at rest, and the shaft's torque by virtual work.

use crate::bench::{Arm, EFFICIENCY, gravity, near, on_an_arm};
use crate::jobs::planned;
use pintle_core::{
    drive::{HoldingVerdict, blocked_moment_n_m, slipping_moment_n_m},
    plan::HoldingLimit,
};
use serde_json::{Value, json};

/// ½·1.25·32²·1.5·1 m² = 960 N at 1.2 m.
const STORM: (f64, f64) = (960.0, 1152.0);

fn stormy(holding: Value) -> Value {
    let mut value = on_an_arm();
    value["leaf"]["wind_centroid_m"] = json!(1.2);
    value["storm"] = json!({ "speed_m_s": 32, "force_coefficient": 1.5, "air_density_kg_m3": 1.25 });
    value["holding"] = holding;
    value
}

#[test]
fn the_forces_on_the_closed_leaf_keep_it_at_rest() {
    let value = stormy(json!({}));
    let storm = planned(&value).storm.expect("a storm");
    let stand = Arm::of(&value).at(0.0);
    near(storm.wind_n, STORM.0, 1e-12);
    near(storm.wind_n_m, STORM.1, 1e-12);
    // The link's force along itself has the moment against the wind's; along the closed leaf is x.
    let link = -STORM.1 / stand.lever;
    let length = 0.6363;
    let (x, y) =
        ((stand.bracket[0] - stand.elbow[0]) / length * link, (stand.bracket[1] - stand.elbow[1]) / length * link);
    near(storm.link_force_n, link.abs(), 1e-9);
    near(storm.bracket_along_n, x.abs(), 1e-9);
    near(storm.bracket_across_n, y.abs(), 1e-9);
    near(storm.hinge_n, x.hypot(STORM.0 + y), 1e-9);
    near(storm.shaft_torque_n_m, STORM.1 * EFFICIENCY / stand.ratio.abs(), 1e-9);
}

/// By a standard's shape the resultant stands off the middle: the hinges take the force itself, the link the moment. ASCE 7 case B on a wall twice
/// as long as high (C_f 1.40): 640 Pa on 1 m² are 896 N, which 0.7/0.5 of at the centre would have the moment.
#[test]
fn the_force_of_a_storm_is_told_apart_from_what_has_its_moment() {
    let mut value = stormy(json!({}));
    value["leaf"]["height_m"] = json!(1);
    value["storm"] =
        json!({ "speed_m_s": 32, "air_density_kg_m3": 1.25, "shape": { "kind": "asce7_wall", "solidity": 1 } });
    let storm = planned(&value).storm.expect("a storm");
    let stand = Arm::of(&value).at(0.0);
    near(storm.force_n, 896.0, 1e-12);
    near(storm.wind_n, 896.0 * 0.7 / 0.5, 1e-12);
    near(storm.wind_n_m, 896.0 * 0.7 / 0.5 * 1.2, 1e-12);
    let link = -storm.wind_n_m / stand.lever;
    let (x, y) =
        ((stand.bracket[0] - stand.elbow[0]) / 0.6363 * link, (stand.bracket[1] - stand.elbow[1]) / 0.6363 * link);
    near(storm.hinge_n, x.hypot(896.0 + y), 1e-9);
    // Zones of EN 1991-1-4 Table 7.9, l/h = 2: 0.3 m of 2.3 at the end, 1.4 behind; within 1 m of the end no shelter.
    value["storm"]["shape"] = json!({ "kind": "en1991_wall", "solidity": 1, "shelter_factor": 0.5 });
    let storm = planned(&value).storm.expect("a storm");
    near(storm.force_n, 640.0 * (0.3 * 2.3 + 0.7 * 1.4 + 0.5 * 1.4) / 2.0, 1e-12);
    let moment = 2.3 * (4.0 - 1.7 * 1.7) + 1.4 * (1.7 * 1.7 - 1.0) + 0.5 * 1.4;
    near(storm.wind_n, 640.0 * moment / 4.0, 1e-12);
    // What was typed is one force.
    let plain = planned(&stormy(json!({}))).storm.expect("a storm");
    assert_eq!((plain.force_n, plain.sources.len()), (plain.wind_n, 0));
    assert!(storm.sources[0].name.starts_with("EN 1991-1-4:2005 + A1:2010"), "{:?}", storm.sources);
}

/// The storm's moment and the lean's: the storm may come from the side the leaf leans to. Friction is not counted on.
fn held(leaf_rad: f64) -> f64 {
    STORM.1 + gravity(leaf_rad).abs()
}

/// Within the play the torque is looked at finely: it is largest where the ratio is least.
#[test]
fn holding_is_the_most_within_the_play() {
    for play_deg in [0.0f64, 0.5, 8.0] {
        let value = stormy(json!({ "play_deg": play_deg }));
        let holding = planned(&value).holding.expect("asked for");
        let arm = Arm::of(&value);
        let angles = (0..=640).map(|index| play_deg.to_radians() * f64::from(index) / 640.0);
        let (torque, link) = angles.fold((0.0f64, 0.0f64), |(torque, link), leaf_rad| {
            let (held, stand) = (held(leaf_rad), arm.at(leaf_rad));
            (torque.max(held * EFFICIENCY / stand.ratio.abs()), link.max(held / stand.lever.abs()))
        });
        near(holding.play_leaf_deg, play_deg, 1e-12);
        near(holding.closed_torque_n_m, held(0.0) * EFFICIENCY / arm.at(0.0).ratio.abs(), 1e-9);
        near(holding.torque_n_m, torque, 1e-6);
        near(holding.link_force_n, link, 1e-6);
        assert_eq!((holding.limit_n_m, holding.verdict), (None, HoldingVerdict::Unknown));
    }
    // Play is no more than the whole swing.
    let mut narrow = stormy(json!({ "play_deg": 10 }));
    narrow["swing"]["open_deg"] = json!(5);
    near(planned(&narrow).holding.expect("asked for").play_leaf_deg, 5.0, 1e-12);
}

/// Each limit lets go by itself, a thousandth above what it stands and not a thousandth below; only a known shaft holds.
#[test]
fn every_limit_gives_way_by_itself() {
    let asked = planned(&stormy(json!({ "play_deg": 1 }))).holding.expect("asked for");
    let verdict = |shaft: Option<f64>, link: Option<f64>, bracket: Option<f64>| {
        let facts =
            json!({ "play_deg": 1, "shaft_torque_n_m": shaft, "link_force_n": link, "bracket_force_n": bracket });
        let holding = planned(&stormy(facts)).holding.expect("asked for");
        assert_eq!(holding.lock_needed, holding.verdict != HoldingVerdict::Holds);
        assert_eq!(holding.limit_n_m, shaft);
        holding.verdict
    };
    use HoldingVerdict::{GivesWay, Holds, Unknown};
    let [torque, force] =
        [asked.torque_n_m, asked.link_force_n].map(|value| [0.999, 1.001].map(|share| Some(share * value)));
    assert_eq!(verdict(torque[0], None, None), GivesWay);
    assert_eq!(verdict(torque[1], None, None), Holds);
    // What is just reached is not exceeded.
    assert_eq!(verdict(Some(asked.torque_n_m), None, None), Holds);
    assert_eq!(verdict(torque[1], force[0], None), GivesWay);
    assert_eq!(verdict(torque[1], force[1], None), Holds);
    assert_eq!(verdict(torque[1], None, force[0]), GivesWay);
    assert_eq!(verdict(torque[1], force[1], force[1]), Holds);
    assert_eq!(verdict(None, force[1], force[1]), Unknown);
    assert_eq!(verdict(None, force[0], None), GivesWay);
}

/// A clutch set lower than the drive holds slips first; one that would hold does not make an unknown drive known.
#[test]
fn the_lesser_of_drive_and_clutch_holds() {
    let needed = planned(&stormy(json!({ "play_deg": 1 }))).holding.expect("asked for").torque_n_m;
    let holding = |drive: Option<f64>, clutch: f64| {
        let mut value = stormy(json!({ "play_deg": 1, "shaft_torque_n_m": drive.map(|share| share * needed) }));
        value["breakaway"] = json!({ "slip_torque_n_m": clutch * needed });
        let holding = planned(&value).holding.expect("asked for");
        (holding.verdict, holding.limit_by, (holding.limit_n_m.expect("known") / needed * 100.0).round())
    };
    use HoldingVerdict::{GivesWay, Holds, Unknown};
    assert_eq!(holding(Some(1.5), 0.98), (GivesWay, Some(HoldingLimit::Clutch), 98.0));
    assert_eq!(holding(Some(1.5), 1.02), (Holds, Some(HoldingLimit::Clutch), 102.0));
    assert_eq!(holding(Some(1.2), 1.3), (Holds, Some(HoldingLimit::Drive), 120.0));
    assert_eq!(holding(Some(0.9), 1.3), (GivesWay, Some(HoldingLimit::Drive), 90.0));
    assert_eq!(holding(None, 1.3), (Unknown, Some(HoldingLimit::Clutch), 130.0));
    assert_eq!(holding(None, 0.9), (GivesWay, Some(HoldingLimit::Clutch), 90.0));
}

/// A ramp's weight has to be held besides the storm: m·g·rise over the swing.
#[test]
fn a_ramp_adds_to_the_storm() {
    let mut value = stormy(json!({ "play_deg": 0 }));
    value["lean"] = json!({});
    value["leaf"]["mass_centroid_m"] = json!(0);
    value["hinges"] = json!({ "kind": "rising", "spacing_m": 1, "pin_radius_m": 0.012, "thrust_outer_radius_m": 0.02,
        "thrust_inner_radius_m": 0.012, "friction_coefficient": 0.1, "rise_m": 0.05 });
    let rise = 100.0 * 9.80665 * 0.05 / 90f64.to_radians();
    let holding = planned(&value).holding.expect("asked for");
    near(holding.closed_torque_n_m, (STORM.1 + rise) * EFFICIENCY / Arm::of(&value).at(0.0).ratio.abs(), 1e-9);
}

/// Losses help a clutch that is turned by the leaf, and cost one that turns it: `T·|n|/η` and `T·|n|·η`.
#[test]
fn a_clutch_is_helped_by_losses_only_from_the_leaf() {
    let model = pintle_core::plan::Model::new(&crate::jobs::job(&on_an_arm())).expect("valid");
    let pose = model.linkage().pose(0.4);
    let ratio = Arm::of(&on_an_arm()).at(0.4).ratio.abs();
    near(slipping_moment_n_m(100.0, &pose, 0.8).expect("no dead point"), 125.0 * ratio, 1e-12);
    near(blocked_moment_n_m(100.0, &pose, 0.8).expect("no dead point"), 80.0 * ratio, 1e-12);
}
