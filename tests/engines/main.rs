//! The arm against an independent engine: a planar rigid-body simulation with joints.
//!
//! The engine knows nothing of levers or ratios. It is given four bodies, four pins and a torque on the leaf, and asked for the shaft torque
//! that leaves the leaf at rest. Its own accuracy on this arm is a few parts in a million (impulses solved by iteration), so 1e-4 is
//! asked of the comparison.

mod bodies;

use bodies::Bodies;
use kurbo::{Point, Vec2};
use pintle_core::{
    arm::Linkage,
    job::{Arm, Elbow},
};
use pintle_tests::gate_arm;

/// Torque on the leaf, N·m.
const LEAF_N_M: f64 = 100.0;

const AGREES: f64 = 1e-4;

/// The gate's arm of the published values, and one with the elbow at the other side and the bracket proud of the leaf.
fn arms() -> [Arm; 2] {
    [
        gate_arm(),
        Arm::builder()
            .shaft_x_m(-0.3)
            .shaft_y_m(-0.4)
            .bracket_u_m(1.1)
            .bracket_v_m(-0.1)
            .crank_m(0.9)
            .link_m(0.8)
            .elbow(Elbow::Right)
            .build(),
    ]
}

/// Where the elbow is, by the law of cosines; not the product's construction.
fn elbow(arm: &Arm, bracket: Point) -> Point {
    let shaft = Point::new(arm.shaft_x_m, arm.shaft_y_m);
    let reach = bracket - shaft;
    let d = reach.hypot();
    let angle = ((arm.crank_m.powi(2) + d * d - arm.link_m.powi(2)) / (2.0 * arm.crank_m * d)).acos();
    let side = if arm.elbow == Elbow::Left { 1.0 } else { -1.0 };
    shaft + Vec2::from_angle(reach.atan2() + side * angle) * arm.crank_m
}

#[test]
fn the_engine_needs_the_same_shaft_torque() {
    let mut compared = 0;
    for arm in &arms() {
        let linkage = Linkage::new(arm, 100f64.to_radians());
        for degrees in (0..=90).step_by(10) {
            let leaf = f64::from(degrees).to_radians();
            let bracket = (Vec2::from_angle(leaf) * arm.bracket_u_m
                + Vec2::from_angle(leaf + std::f64::consts::FRAC_PI_2) * arm.bracket_v_m)
                .to_point();
            let elbow = elbow(arm, bracket);
            if (elbow - bracket).cross(elbow - Point::new(arm.shaft_x_m, arm.shaft_y_m)).abs() < 0.05 {
                // Near straight the engine's soft joints decide, not the geometry.
                continue;
            }
            let engine = balance(&Bodies { arm, leaf_rad: leaf, bracket, elbow });
            let ours = LEAF_N_M / linkage.pose(leaf).ratio.expect("no dead point here");
            assert!(
                (engine - ours).abs() <= AGREES * ours.abs(),
                "leaf at {degrees}°: engine {engine}, computed {ours}"
            );
            compared += 1;
        }
    }
    assert!(compared >= 15, "only {compared} poses compared");
}

/// The shaft torque that leaves the leaf at rest while −100 N·m act on it: the speed is linear in the torque over so short a time, so two
/// tries make a line and a third confirms it.
fn balance(bodies: &Bodies) -> f64 {
    let speed = |shaft_n_m: f64| bodies.leaf_speed_rad_s(-LEAF_N_M, shaft_n_m);
    let (mut low, mut high) = (-LEAF_N_M, LEAF_N_M);
    let (mut at_low, mut at_high) = (speed(low), speed(high));
    for _ in 0..3 {
        let between = high - at_high * (high - low) / (at_high - at_low);
        (low, at_low) = (high, at_high);
        (high, at_high) = (between, speed(between));
        if at_high.abs() < 1e-13 || at_high == at_low {
            break;
        }
    }
    high
}
