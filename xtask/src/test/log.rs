//! What a step says: kept for a failure, with its last line on the terminal while it runs.

use std::io::{BufRead, BufReader, IsTerminal, Read, Write, stdout};
use std::process::{Command, Stdio};
use std::sync::mpsc::{RecvTimeoutError, Sender, channel};
use std::thread;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, ensure};

use super::count;
use crate::place::root;
use crate::shell::line;

/// Without a terminal, a running step says at this interval that it is still at it.
const SIGN_OF_LIFE: Duration = Duration::from_secs(60);

/// The output of one step.
pub struct Log {
    step: &'static str,
    start: Instant,
    said: Instant,
    text: String,
    is_terminal: bool,
}

impl Log {
    /// Announces a step.
    pub fn start(step: &'static str) -> Self {
        let is_terminal = stdout().is_terminal();
        if !is_terminal {
            println!("        {step} …");
        }
        let now = Instant::now();
        Self { step, start: now, said: now, text: String::new(), is_terminal }
    }

    /// Adds to the output.
    pub fn add(&mut self, text: &str) {
        self.text.push_str(text);
    }

    /// Runs a command in the workspace's folder; an error unless it succeeds.
    pub fn run(&mut self, command: &mut Command) -> Result<()> {
        self.add(&format!("$ {}\n", line(command)));
        command.current_dir(root()).stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::piped());
        // A test's error says what went wrong; the stack below it is the test framework's.
        command.env("RUST_LIB_BACKTRACE", "0");
        if self.is_terminal {
            command.env("CARGO_TERM_COLOR", "always");
        }
        let mut child = command.spawn().with_context(|| format!("could not start {}", line(command)))?;
        let (sender, lines) = channel();
        forward(child.stdout.take().context("standard output is piped")?, sender.clone());
        forward(child.stderr.take().context("standard error is piped")?, sender);
        loop {
            match lines.recv_timeout(Duration::from_secs(1)) {
                Ok(text) => {
                    self.show(&text);
                    self.add(&text);
                    self.add("\n");
                }
                Err(RecvTimeoutError::Timeout) => self.show(""),
                Err(RecvTimeoutError::Disconnected) => break,
            }
        }
        let status = child.wait()?;
        ensure!(status.success(), "{} ended with {status}", line(command));
        Ok(())
    }

    /// Runs a command that runs tests; an error as well if it ran none.
    pub fn run_tests(&mut self, command: &mut Command) -> Result<()> {
        let before = self.text.len();
        self.run(command)?;
        ensure!(count(&self.text[before..]) > 0, "{} ran no test", line(command));
        Ok(())
    }

    /// Clears the terminal's line and gives back the output.
    pub fn end(self) -> String {
        if self.is_terminal {
            print!("\r\x1b[2K");
        }
        self.text
    }

    fn show(&mut self, text: &str) {
        let seconds = self.start.elapsed().as_secs();
        if self.is_terminal {
            let text: String = text.trim().chars().filter(|c| !c.is_control()).take(60).collect();
            print!("\r\x1b[2K        {:<28} {seconds:>6} s  {text}\x1b[0m", self.step);
            let _ = stdout().flush();
        } else if self.said.elapsed() > SIGN_OF_LIFE {
            println!("        {} … {seconds} s", self.step);
            self.said = Instant::now();
        }
    }
}

/// Sends what a program writes, line by line; bytes that are no text are shown as such.
fn forward(from: impl Read + Send + 'static, to: Sender<String>) {
    thread::spawn(move || {
        for bytes in BufReader::new(from).split(b'\n').map_while(Result::ok) {
            if to.send(String::from_utf8_lossy(&bytes).into_owned()).is_err() {
                return;
            }
        }
    });
}
