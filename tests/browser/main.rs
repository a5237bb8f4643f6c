//! The page in a real browser, and proof that the harness sees what it is there to see.

mod builds;
mod built;
mod calculator;
mod check;
mod entry;
mod faults;
mod handover;
mod jobs;
mod layout;
mod links;
mod offline;
mod page;
mod play;
mod setout;
mod survey;
mod update;
mod versions;
