//! The page in a real browser, and proof that the harness sees what it is there to see.

mod builds;
mod built;
mod calculator;
mod check;
mod entry;
mod faults;
mod handover;
mod jobs;
mod judged;
mod layout;
mod links;
mod offline;
mod page;
mod play;
mod room;
mod second;
mod setout;
mod states;
mod survey;
mod swift;
mod update;
mod versions;
