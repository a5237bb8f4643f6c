//! The page in a real browser, and proof that the harness sees what it is there to see.

mod built;
mod calculator;
mod faults;
mod offline;
mod setout;
mod update;
mod versions;
