//! A folder on a static host.

use std::collections::BTreeMap;
use std::path::Path;
use std::process::Command;

use anyhow::{Result, ensure};

use super::process::Process;
use super::setting;

/// A host that serves a folder; dropping it is the network going away: open connections break, new ones are refused.
pub struct Site {
    /// Where the folder appears; ends with a slash.
    pub address: String,
    process: Process,
}

impl Site {
    /// Serves on a free port.
    ///
    /// # Errors
    /// If the host does not start.
    pub fn start(folder: &Path, base: &str) -> Result<Self> {
        Self::start_at(folder, base, 0)
    }

    /// Serves on a port of one's own choice: the same port again is the same origin to a browser.
    ///
    /// # Errors
    /// If the host does not start, such as when the port is taken.
    pub fn start_at(folder: &Path, base: &str, port: u16) -> Result<Self> {
        Self::start_with(folder, base, port, &[])
    }

    /// Serves on a free port, every file packed: what a slow network is measured with.
    ///
    /// # Errors
    /// If the host does not start.
    pub fn start_packed(folder: &Path, base: &str) -> Result<Self> {
        Self::start_with(folder, base, 0, &["--packed"])
    }

    fn start_with(folder: &Path, base: &str, port: u16, more: &[&str]) -> Result<Self> {
        let mut command = Command::new(setting::host()?);
        command.arg("host").arg(folder).args(["--base", base, "--port", &port.to_string()]).args(more);
        let (process, address) =
            Process::start(&mut command, |line| line.starts_with("http://").then(|| line.to_owned()))?;
        Ok(Self { address, process })
    }

    /// Puts trouble in the way of the next requests, in the words of the host: `delay 300`, `fail app/dom.js 1`, `fail-each`, `die-after 20`, `calm`.
    ///
    /// # Errors
    /// If the host knows no such trouble.
    pub fn trouble(&self, line: &str) -> Result<()> {
        let answer = self.process.ask(line)?;
        ensure!(answer == "done", "{line}: {answer}");
        Ok(())
    }

    /// How often each address was asked for so far.
    ///
    /// # Errors
    /// If the host does not answer.
    pub fn asked(&self) -> Result<BTreeMap<String, usize>> {
        Ok(serde_json::from_str(&self.process.ask("asked")?)?)
    }

    /// The port it serves on.
    ///
    /// # Panics
    /// If the address has none, which no address of [`Site::start`] does.
    pub fn port(&self) -> u16 {
        let authority = self.address.split('/').nth(2).expect("an address has a host");
        authority.rsplit(':').next().and_then(|port| port.parse().ok()).expect("the host's address has a port")
    }
}
