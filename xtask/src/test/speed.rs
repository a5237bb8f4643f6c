//! How fast it is: printed, never asserted, since a busy machine is no fault of the code.

use std::process::Command;

use anyhow::Result;

use super::{Log, Step};

pub const STEPS: &[Step] = &[Step { name: "speed", after: None, shown: true, run: benches }];

fn benches(log: &mut Log) -> Result<()> {
    log.run(Command::new("cargo").args([
        "bench",
        "--quiet",
        "--package",
        "pintle-core",
        "--package",
        "pintle-web",
        "--bench",
        "*",
    ]))
}
