//! The four-bar: Norton's and Nikravesh's examples.
//!
//! A textbook's four-bar has the ground `d`, the input crank `a` at the origin, the coupler `b` and the rocker `c` at `(d, 0)`. Here the input
//! crank is the leaf, the coupler the link (walked from bracket to elbow) and the rocker the operator's crank. Seen along the line from shaft to
//! bracket, the textbook's open circuit has its elbow at the right and the crossed one at the left.

use super::check::{Check, Provenance::*, check};
use kurbo::Vec2;
use pintle_core::{
    arm::{Linkage, Pose},
    job::{Arm, Elbow},
};

/// An arm with its leaf at an angle.
pub fn pose(arm: Arm, leaf_deg: f64) -> Pose {
    Linkage::new(&arm, 179f64.to_radians()).pose(leaf_deg.to_radians())
}

fn four_bar([d, a, b, c]: [f64; 4], elbow: Elbow) -> Arm {
    Arm::builder().shaft_x_m(d).shaft_y_m(0.0).bracket_u_m(a).bracket_v_m(0.0).crank_m(c).link_m(b).elbow(elbow).build()
}

/// Such a four-bar with its ground, input crank, coupler and rocker, the input crank at an angle.
pub fn four_bar_pose(lengths: [f64; 4], elbow: Elbow, crank_deg: f64) -> Pose {
    pose(four_bar(lengths, elbow), crank_deg)
}

fn norton(elbow: Elbow) -> Pose {
    pose(four_bar([1.0, 0.4, 1.2, 0.8], elbow), 40.0)
}

fn nikravesh(elbow: Elbow) -> Pose {
    pose(four_bar([0.2, 0.1, 0.3, 0.22], elbow), 45.0)
}

/// Direction of a vector.
pub fn degrees(vector: Vec2) -> f64 {
    vector.y.atan2(vector.x).to_degrees()
}

/// θ3: direction of the coupler from the input crank's end to the rocker's.
fn coupler_deg(pose: Pose) -> f64 {
    degrees(pose.elbow - pose.bracket)
}

/// θ4: direction of the rocker from its ground pivot, which is the shaft.
fn rocker_deg(pose: Pose, shaft_x: f64) -> f64 {
    degrees(pose.elbow.to_vec2() - Vec2::new(shaft_x, 0.0))
}

/// Crank turned per leaf turned.
pub fn ratio(pose: Pose) -> f64 {
    pose.ratio.expect("no dead point here")
}

fn link_rate(pose: Pose) -> f64 {
    pose.link_rate.expect("no dead point here")
}

const NORTON: (&str, &str) = ("Norton, Design of Machinery", "Ex. 4-1; eqs 4.8-4.13");
const NORTON_RATE: (&str, &str) = ("Norton, Design of Machinery", "eqs 6.13, 6.18 on Ex. 4-1");
const NIKRAVESH: (&str, &str) = ("Nikravesh, Planar Multibody Dynamics (four-bar example file)", "Ex. 5.2/6.5");

pub const CHECKS: &[Check] = &[
    check("1.1 open θ3", "a 40, b 120, c 80, d 100, θ2 40°, open: θ3, °", NORTON, FromMemory, "20.298", || {
        coupler_deg(norton(Elbow::Right))
    }),
    check("1.1 open θ4", "the same: θ4, °", NORTON, FromMemory, "57.325", || rocker_deg(norton(Elbow::Right), 1.0)),
    check("1.1 crossed θ3", "the same, crossed: θ3, °", NORTON, FromMemory, "-60.98", || {
        coupler_deg(norton(Elbow::Left))
    }),
    check("1.1 crossed θ4", "the same, crossed: θ4, °", NORTON, FromMemory, "-98.01", || {
        rocker_deg(norton(Elbow::Left), 1.0)
    })
    .within(0.0051, "Printed from -98.005 by rounding a second time; the exact -98.00496 rounds to -98.00 (errata)."),
    check("1.1 open θ3 fine", "open: θ3, °", NORTON, Derived, "20.2979", || coupler_deg(norton(Elbow::Right))),
    check("1.1 open θ4 fine", "open: θ4, °", NORTON, Derived, "57.3249", || rocker_deg(norton(Elbow::Right), 1.0)),
    check("1.1 crossed θ3 fine", "crossed: θ3, °", NORTON, Derived, "-60.9780", || coupler_deg(norton(Elbow::Left))),
    check("1.1 crossed θ4 fine", "crossed: θ4, °", NORTON, Derived, "-98.0050", || {
        rocker_deg(norton(Elbow::Left), 1.0)
    }),
    check("1.1 open ω4/ω2", "open: rocker turned per crank turned", NORTON_RATE, Derived, "0.279919", || {
        ratio(norton(Elbow::Right))
    }),
    check("1.1 open T4/T2", "open: torque ratio ω2/ω4", NORTON_RATE, Derived, "3.57246", || {
        1.0 / ratio(norton(Elbow::Right))
    }),
    check("1.1 crossed ω4/ω2", "crossed: rocker turned per crank turned", NORTON_RATE, Derived, "-0.815107", || {
        ratio(norton(Elbow::Left))
    }),
    check("1.3 open θ3", "d .2, a .1, b .3, c .22 m, θ 45°, open: θ3, °", NIKRAVESH, Derived, "15.5916", || {
        coupler_deg(nikravesh(Elbow::Right))
    }),
    check("1.3 open θ3 rad", "the same, rad", NIKRAVESH, Derived, "0.272125", || {
        coupler_deg(nikravesh(Elbow::Right)).to_radians()
    }),
    check("1.3 open θ4", "open: θ4, °", NIKRAVESH, Derived, "43.4664", || rocker_deg(nikravesh(Elbow::Right), 0.2)),
    check("1.3 open θ4 rad", "the same, rad", NIKRAVESH, Derived, "0.758631", || {
        rocker_deg(nikravesh(Elbow::Right), 0.2).to_radians()
    }),
    check("1.3 open ω3", "open, ω 1.5 rad/s: ω3, rad/s", NIKRAVESH, Derived, "0.028622", || {
        1.5 * link_rate(nikravesh(Elbow::Right))
    }),
    check("1.3 open ω4", "open, ω 1.5 rad/s: ω4, rad/s", NIKRAVESH, Derived, "0.716076", || {
        1.5 * ratio(nikravesh(Elbow::Right))
    }),
    check("1.3 crossed θ3", "crossed: θ3, °", NIKRAVESH, Derived, "-72.9417", || {
        coupler_deg(nikravesh(Elbow::Left))
    }),
    check("1.3 crossed θ4", "crossed: θ4, °", NIKRAVESH, Derived, "-100.8165", || {
        rocker_deg(nikravesh(Elbow::Left), 0.2)
    }),
    check("1.3 crossed ω3", "crossed, ω 1.5 rad/s: ω3, rad/s", NIKRAVESH, Derived, "-0.600853", || {
        1.5 * link_rate(nikravesh(Elbow::Left))
    }),
    check("1.3 crossed ω4", "crossed, ω 1.5 rad/s: ω4, rad/s", NIKRAVESH, Derived, "-1.288306", || {
        1.5 * ratio(nikravesh(Elbow::Left))
    }),
];
