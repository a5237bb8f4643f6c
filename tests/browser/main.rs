//! The page in a real browser, and proof that the harness sees what it is there to see.

mod built;
mod calculator;
mod entry;
mod faults;
mod offline;
mod page;
mod play;
mod setout;
mod survey;
mod update;
mod versions;
