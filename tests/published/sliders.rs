//! The arm as a slider-crank, a ram and a toggle: the bracket moves square to the leaf, so at one instant it is a slider on the line through
//! the shaft that stands square to the leaf.

use super::check::{Check, Provenance::*, check};
use super::solve::{slope, solve};
use kurbo::Vec2;
use pintle_core::{
    arm::{Linkage, Pose},
    job::{Arm, Elbow},
};
use std::f64::consts::TAU;

const MACHINES: &str = "Bevan, Theory of Machines (FOSSEE/Python-Textbook-Companions)";
const L9: (&str, &str) = (MACHINES, "ch3 ex 4, measured on a drawing");
const L10: (&str, &str) = (MACHINES, "ch3 ex 3, measured on a drawing");
const HIBBELER: &str = "Hibbeler and Gupta, Engineering Mechanics (FOSSEE/Python-Textbook-Companions)";
const L2: (&str, &str) = (HIBBELER, "Chapter_16 ex 16.5: s² = 5 − 4 cos θ");
const L11: (&str, &str) = (HIBBELER, "Chapter_11 ex 11.3: x² − 1.2·x·cos 45° − .13 = 0");
const L12: (&str, &str) = ("monroeengineering.com/info-toggle-clamps-functions.php", "force multiplier ½·cot α");

const CUT: &str = "Printed without the digits behind the point, not rounded.";

/// Hinge to bracket; the results do not depend on it.
const LEAF: f64 = 40.0;

/// A crank and a rod whose slider stands some distance from the crank's centre.
fn slider_at(distance: f64, crank: f64, rod: f64) -> Pose {
    let arm = Arm::builder()
        .shaft_x_m(LEAF)
        .shaft_y_m(-distance)
        .bracket_u_m(LEAF)
        .bracket_v_m(0.0)
        .crank_m(crank)
        .link_m(rod)
        .elbow(Elbow::Right)
        .build();
    Linkage::new(&arm, 1.0).pose(0.0)
}

/// The crank of such a pose.
fn crank(pose: &Pose, distance: f64) -> Vec2 {
    pose.elbow.to_vec2() - Vec2::new(LEAF, -distance)
}

/// Distance of the slider at which the crank stands at an angle to the line from its centre to the slider.
fn distance(radius: f64, rod: f64, crank_rad: f64) -> f64 {
    let angle = |distance: f64| {
        let crank = crank(&slider_at(distance, radius, rod), distance);
        crank.x.atan2(crank.y)
    };
    solve(crank_rad, (rod - radius).abs() + 1e-6, rod + radius - 1e-6, angle)
}

fn slider(radius: f64, rod: f64, crank_rad: f64) -> Pose {
    slider_at(distance(radius, rod, crank_rad), radius, rod)
}

/// Slider's way for the crank's angle, and the rod's angle for the crank's.
fn gains(pose: Pose) -> (f64, f64) {
    let ratio = pose.ratio.expect("no dead point here");
    (LEAF / ratio.abs(), pose.link_rate.expect("no dead point here") / ratio)
}

/// Angular acceleration of the rod, r 9, l 36 in, 40°, 240 rpm, the crank's own acceleration beside it.
fn rod_rad_s2(crank_rad_s2: f64) -> f64 {
    let rate = |crank_rad: f64| gains(slider(9.0, 36.0, crank_rad)).1;
    let (speed, angle) = (240.0 * TAU / 60.0, 40f64.to_radians());
    (speed * speed * slope(angle, 1e-3, rate) + crank_rad_s2 * rate(angle)).abs()
}

/// A strut from a point 2 m from the hinge to one on the leaf, 1 m from it: its length.
fn strut_m(leaf_rad: f64) -> f64 {
    let bracket = strut(1.0, leaf_rad).bracket;
    (bracket.to_vec2() - Vec2::new(2.0, 0.0)).hypot()
}

/// The strut as a straight arm of that length, half of it crank and half link.
fn strut(length_m: f64, leaf_rad: f64) -> Pose {
    let half = length_m / 2.0;
    let arm = Arm::builder()
        .shaft_x_m(2.0)
        .shaft_y_m(0.0)
        .bracket_u_m(1.0)
        .bracket_v_m(0.0)
        .crank_m(half)
        .link_m(half)
        .elbow(Elbow::Left)
        .build();
    Linkage::new(&arm, 3.0).pose(leaf_rad)
}

/// Speed of the leaf while the strut gets longer by .5 m/s.
fn leaf_rad_s(leaf_rad: f64) -> f64 {
    0.5 / strut(strut_m(leaf_rad), leaf_rad).lever_m()
}

/// Force of the slider over a force that pushes the elbow square to the line, crank and rod at one angle to it.
fn toggle(angle_deg: f64) -> f64 {
    let distance = distance(1.0, 1.0, angle_deg.to_radians());
    let pose = slider_at(distance, 1.0, 1.0);
    crank(&pose, distance).y / gains(pose).0
}

pub const CHECKS: &[Check] = &[
    check(
        "L2 length",
        "leaf pushed by a strut, ends 1 and 2 m from the hinge, 30°: length, m",
        L2,
        Seen,
        "1.239",
        || strut_m(30f64.to_radians()),
    ),
    check("L2 speed", "the same, the strut .5 m/s: leaf, rad/s", L2, Seen, "0.62", || leaf_rad_s(30f64.to_radians())),
    check("L2 acceleration", "the same: leaf, rad/s²", L2, Seen, "-0.416", || {
        let angle = 30f64.to_radians();
        leaf_rad_s(angle) * slope(angle, 1e-4, leaf_rad_s)
    })
    .within(0.001, "The source goes on with its speed rounded to .62: 0.2 % high."),
    check("L9 steady", "r 9, l 36 in, 40°, 240 rpm: α of the rod, rad/s²", L9, Seen, "98.7", || rod_rad_s2(0.0))
        .within(0.3, "Accelerations measured on a drawing: 0.3 % off."),
    check("L9 speeding", "the same, the crank 100 rad/s²: α of the rod, rad/s²", L9, Seen, "79.3", || {
        rod_rad_s2(100.0)
    })
    .within(0.3, "Accelerations measured on a drawing: 0.3 % off."),
    check("L10 piston", "r 6, l 24 in, 45°, 240 rpm: piston, ft/s", L10, Seen, "10.57", || {
        240.0 * TAU / 60.0 * gains(slider(6.0, 24.0, 45f64.to_radians())).0 / 12.0
    })
    .within(0.09, "Velocities measured on a drawing: 0.8 % off."),
    check("L11 slider", "links .6 and .7 m, the first at 45°: slider's distance, m", L11, Seen, "0.981", || {
        distance(0.6, 0.7, 45f64.to_radians())
    }),
    check("L12 2°", "toggle, both links at 2°: force multiplier", L12, Seen, "14", || toggle(2.0)),
    check("L12 1°", "toggle at 1°", L12, Seen, "28", || toggle(1.0)).within(1.0, CUT),
    check("L12 .5°", "toggle at .5°", L12, Seen, "57", || toggle(0.5)),
    check("L12 .25°", "toggle at .25°", L12, Seen, "114", || toggle(0.25)).within(1.0, CUT),
];
