//! A gate's arm that three multibody engines agreed on.

use super::check::{Check, Provenance::*, check};
use super::linkage::{degrees, pose, ratio};
use kurbo::Vec2;
use pintle_core::arm::Pose;
use pintle_tests::gate_arm;

const ENGINES: (&str, &str) = (
    "MuJoCo 4.0.0, exudyn 1.13.6, rapier2d-f64 0.22.0",
    "static torque of the closed loop; dθ/dφ = a sin(φ-ψ)/(r sin(θ-ψ))",
);

fn gate(leaf_deg: f64) -> Pose {
    pose(gate_arm(), leaf_deg)
}

fn gate_crank_deg(pose: Pose) -> f64 {
    degrees(pose.elbow.to_vec2() - Vec2::new(-0.25, 0.35))
}

fn gate_link_deg(pose: Pose) -> f64 {
    degrees(pose.bracket - pose.elbow)
}

/// One leaf angle of the gate's arm: crank and link direction, leaf turned per crank turned, link force under 100 N·m.
macro_rules! gate_rows {
    ($($leaf:literal: $crank:literal, $link:literal, $ratio:literal, $force:literal;)*) => {
        [$([
            check(concat!("1.5 φ ", $leaf), concat!("gate arm, leaf at ", $leaf, "°: direction of the crank, °"), ENGINES, Derived,
                $crank, || gate_crank_deg(gate($leaf as f64))),
            check(concat!("1.5 ψ ", $leaf), concat!("gate arm, leaf at ", $leaf, "°: direction of the link, °"), ENGINES, Derived,
                $link, || gate_link_deg(gate($leaf as f64))),
            check(concat!("1.5 dθ/dφ ", $leaf), concat!("gate arm, leaf at ", $leaf, "°: leaf turned per crank turned"), ENGINES, Derived,
                $ratio, || 1.0 / ratio(gate($leaf as f64))),
            check(concat!("1.5 F ", $leaf), concat!("gate arm, leaf at ", $leaf, "°: link force under 100 N·m, N"), ENGINES, Derived,
                $force, || gate($leaf as f64).link_force_n(100.0).abs()),
        ]),*]
    };
}

const GATE: [[Check; 4]; 8] = gate_rows! {
    0: "2.6625", "-29.8437", "0.599938", "223.278";
    10: "18.4867", "-28.0134", "0.654362", "180.420";
    20: "33.5481", "-25.1296", "0.669654", "156.781";
    30: "48.4838", "-21.4596", "0.667200", "142.055";
    45: "71.3189", "-14.4587", "0.643296", "129.009";
    60: "95.3796", "-5.2307", "0.601383", "122.369";
    75: "121.5029", "7.1251", "0.546247", "119.943";
    90: "150.5708", "23.9393", "0.487789", "121.569";
};

const TRAVEL: &[Check] =
    &[check("1.5 travel", "gate arm, leaf 0 to 90°: shaft travel, °", ENGINES, Derived, "147.9083", || {
        (gate(90.0).crank_rad - gate(0.0).crank_rad).to_degrees().abs()
    })];

pub const CHECKS: &[&[Check]] = &[GATE.as_flattened(), TRAVEL];
