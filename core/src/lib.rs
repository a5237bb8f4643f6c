//! Mechanics of a swing gate driven by a crank-and-link arm.
//!
//! `plan(&Job) -> Result<Plan, Invalid>` is the whole of it: what a person says about a leaf, its hinges, the wind, the arm and
//! the operator goes in; torques at the operator's shaft through the swing, the reserve, the wind limit and findings come out.
//! It is pure: no I/O, no clock, no randomness, no text for people.
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
//! numerics → words and units → single elements → job → leaf (loads) → arm → drive (demand, rating) → safety → plan. Nothing flows back, which a
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
