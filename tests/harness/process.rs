//! A program that runs beside a test and ends with it.

use std::io::{BufRead, BufReader, Write};
use std::process::{Child, Command, Stdio};
use std::sync::mpsc::{Receiver, channel};
use std::thread;
use std::time::Duration;

use anyhow::{Context, Result};

/// How long a program may take to answer a line. Long, since it only delays a failure.
const PATIENCE: Duration = Duration::from_secs(30);

/// A running program; dropping it ends it.
pub struct Process {
    child: Child,
    /// What it says once it is ready.
    lines: Receiver<String>,
}

impl Process {
    /// Starts a program and waits for what `ready` finds in a line of its output.
    ///
    /// # Errors
    /// If it does not start, or ends before it is ready.
    pub fn start<T>(command: &mut Command, ready: impl Fn(&str) -> Option<T>) -> Result<(Self, T)> {
        let mut child = command.stdin(Stdio::piped()).stdout(Stdio::piped()).stderr(Stdio::null()).spawn()?;
        let mut lines = BufReader::new(child.stdout.take().context("standard output is piped")?).lines();
        let (said, heard) = channel();
        let process = Self { child, lines: heard };
        let found = lines.by_ref().map_while(Result::ok).find_map(|line| ready(&line));
        // Read on whether somebody listens or not: a program must not stall on a full pipe.
        thread::spawn(move || lines.map_while(Result::ok).try_for_each(|line| said.send(line)));
        Ok((process, found.with_context(|| format!("{:?} ended before it was ready", command.get_program()))?))
    }

    /// Gives it a line on its standard input and waits for the line it answers.
    ///
    /// # Errors
    /// If it ended, or answers nothing.
    pub fn ask(&self, line: &str) -> Result<String> {
        writeln!(self.child.stdin.as_ref().context("standard input is piped")?, "{line}")?;
        self.lines.recv_timeout(PATIENCE).with_context(|| format!("no answer to {line:?}"))
    }
}

impl Drop for Process {
    fn drop(&mut self) {
        // It may have ended by itself.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
