//! Identities that hold for every job, tried on random ones.

mod additions;
mod arm;
mod jobs;
mod motion;
mod packed;
mod plan;
mod runs;
mod safety;
