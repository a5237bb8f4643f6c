//! Mechanics of a swing gate driven by a crank-and-link arm.
//!
//! [`plan::plan`] is the whole of it: what a person says about a leaf, its hinges, the wind, the arm and
//! the operator goes in; torques at the operator's shaft through the swing, the reserve, the wind limit and findings come out.
//! It is pure: no I/O, no clock, no randomness, no text for people.
//!
//! ```
//! use pintle_core::{job::*, plan::plan};
//!
//! let job = Job::builder()
//!     .schema(SCHEMA)
//!     .leaf(Leaf::builder().mass_kg(160.0).length_m(3.2).wind_area_m2(1.9).build())
//!     .hinges(Hinges::Plain(
//!         PlainHinges::builder()
//!             .spacing_m(1.3).pin_radius_m(0.012).thrust_outer_radius_m(0.02).thrust_inner_radius_m(0.012)
//!             .friction_coefficient(0.2)
//!             .build(),
//!     ))
//!     .lean(Lean::default()) // plumb
//!     .wind(Wind::builder().speed_m_s(12.0).force_coefficient(1.4).build())
//!     .swing(Swing::builder().open_deg(90.0).build())
//!     .arm(Arm::builder()
//!         .shaft_x_m(-0.25).shaft_y_m(0.45).bracket_u_m(1.2).bracket_v_m(0.06)
//!         .crank_m(0.8728).link_m(0.6363).elbow(Elbow::Left)
//!         .build())
//!     .operator(Operator::builder().rated_torque_n_m(400.0).build())
//!     .build();
//! let plan = plan(&job)?;
//! assert!(plan.peak.shaft_torque_n_m < 400.0);
//! assert!(plan.curve.iter().all(|point| point.leaf_torque_open_n_m >= point.leaf_torque_close_n_m));
//! # Ok::<(), pintle_core::fault::Invalid>(())
//! ```
//!
//! # Conventions, stated once
//! - SI units inside; angles are radians in code and degrees in documents (`_deg`). Names carry their unit where they leave the crate.
//! - Frame: plan view, origin on the hinge axis, `+x` along the closed leaf from hinge to latch edge, `+y` the side the leaf opens
//!   towards, angles counter-clockwise. The leaf angle runs from 0 (closed) to `open`, always positive.
//! - A moment on the leaf is positive when it opens; a shaft torque is signed like the crank angle; a link force is positive in compression.
//! - `hand` changes words and drawings, never a number.
//! - `g` is standard gravity, [`STANDARD_GRAVITY_M_S2`].
//!
//! # Direction of flow
//! numerics → words and units → single elements → job → operators → leaf (loads) → arm → drive (demand, rating) → safety → plan. Nothing flows back, which a
//! test of the imports holds.
// Deriving the descriptions needs std's prelude; everything else does without.
#![cfg_attr(not(feature = "describe"), no_std)]
#![warn(clippy::must_use_candidate, clippy::return_self_not_must_use)]
extern crate alloc;
#[cfg(all(feature = "std", not(feature = "describe")))]
extern crate std;

pub mod arm;
#[cfg(feature = "describe")]
pub mod describe;
mod document;
pub mod drive;
pub mod elements;
pub mod fault;
pub mod job;
pub mod leaf;
mod numerics;
pub mod operators;
mod order;
pub mod packed;
pub mod plan;
mod real;
pub mod safety;
pub mod terms;
pub mod units;

pub use document::Document;

/// Standard gravity, m/s². Source: 3rd CGPM (1901), ISO 80000-3.
pub const STANDARD_GRAVITY_M_S2: f64 = 9.80665;

// The README's example is compiled with the documentation's.
#[cfg(doctest)]
#[doc = include_str!("../../README.md")]
struct Readme;
