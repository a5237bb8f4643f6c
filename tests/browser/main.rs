//! The page in a real browser, and proof that the harness sees what it is there to see.

mod built;
mod calculator;
mod entry;
mod faults;
mod layout;
mod offline;
mod page;
mod play;
mod second;
mod setout;
mod states;
mod survey;
mod swift;
mod update;
mod versions;
