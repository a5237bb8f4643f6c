//! A program that runs beside a test and ends with it.

use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};
use std::thread;

use anyhow::{Context, Result};

/// A running program; dropping it ends it.
pub struct Process(Child);

impl Process {
    /// Starts a program and waits for what `ready` finds in a line of its output.
    ///
    /// # Errors
    /// If it does not start, or ends before it is ready.
    pub fn start<T>(command: &mut Command, ready: impl Fn(&str) -> Option<T>) -> Result<(Self, T)> {
        let mut child = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::null()).spawn()?;
        let mut lines = BufReader::new(child.stdout.take().context("standard output is piped")?).lines();
        let process = Self(child);
        let found = lines.by_ref().map_while(Result::ok).find_map(|line| ready(&line));
        // Nobody reads on, but a program must not stall on a full pipe.
        thread::spawn(move || lines.map_while(Result::ok).for_each(drop));
        Ok((process, found.with_context(|| format!("{:?} ended before it was ready", command.get_program()))?))
    }
}

impl Drop for Process {
    fn drop(&mut self) {
        // It may have ended by itself.
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}
