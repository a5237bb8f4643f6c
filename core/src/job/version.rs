//! The version of the job document.

/// The schema this version of the crate writes, and the newest it reads.
pub const SCHEMA: u32 = 2;
