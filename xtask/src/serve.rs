//! Building the page and serving it on this machine.

use std::process::Command;

use anyhow::Result;

use crate::host::{Base, Host};
use crate::shell::{run, say};
use crate::{page, place};

/// Builds, serves until interrupted, and says the address; opens it in a browser only when asked.
pub fn serve(port: u16, base: &Base, open: bool) -> Result<()> {
    page::build()?;
    let host = Host::start(&place::dist(), port, base)?;
    say(format!("serving at {}  (Ctrl-C stops it)", host.address));
    if open {
        run(Command::new(opener()).arg(&host.address))?;
    }
    host.wait()
}

/// The program of the system that opens an address in the user's browser.
fn opener() -> &'static str {
    match std::env::consts::OS {
        "macos" => "open",
        "windows" => "explorer",
        _ => "xdg-open",
    }
}
