//! Identities that hold for every job, tried on random ones.

mod arm;
mod jobs;
mod plan;
