//! Identities that hold for every job, tried on random ones.

mod additions;
mod arm;
mod ground;
mod jobs;
mod loads;
mod members;
mod motion;
mod packed;
mod passages;
mod path;
mod plan;
mod runs;
mod safety;
mod sensitivity;
mod wind;
