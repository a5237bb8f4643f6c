//! One browser with an empty profile, for one test.

use std::process::Command;
use std::time::Duration;

use anyhow::{Context, Result, anyhow, bail};
use serde_json::{Value, json};
use thirtyfour::session::handle::SessionHandle;
use thirtyfour::{Capabilities, WebDriver, WebDriverRunError};

use super::process::Process;
use super::{axe, setting};

/// How long a page may take to come to an expected state. Long, since it only delays a failure.
const PATIENCE: Duration = Duration::from_secs(30);

/// A browser's session. Everything WebDriver can do is at [`Browser::driver`]; what the tests do often is here.
#[derive(Clone)]
pub struct Browser {
    /// The session.
    pub driver: WebDriver,
}

/// Runs a test in a browser of its own, and closes the browser however the test ends.
///
/// # Errors
/// Those of the test, and if the browser does not start.
pub async fn in_browser<T>(test: impl AsyncFnOnce(Browser) -> Result<T>) -> Result<T> {
    let (process, port) = Process::start(Command::new(setting::driver()?).arg("--port=0"), port_in)?;
    in_session(process, port, capabilities()?, test).await
}

/// The same in Firefox, which knows nothing of Chromium's own commands: no size, no log, no throttling.
///
/// # Errors
/// Those of the test, and if the browser does not start.
pub async fn in_firefox<T>(test: impl AsyncFnOnce(Browser) -> Result<T>) -> Result<T> {
    let (driver, asked) = setting::gecko()?;
    let (process, port) = Process::start(Command::new(driver).args(["--port", "0"]), gecko_port_in)?;
    in_session(process, port, serde_json::from_value(asked)?, test).await
}

async fn in_session<T>(
    _process: Process,
    port: u16,
    asked: Capabilities,
    test: impl AsyncFnOnce(Browser) -> Result<T>,
) -> Result<T> {
    let driver = WebDriver::new(format!("http://127.0.0.1:{port}"), asked).await?;
    driver.set_script_timeout(PATIENCE).await?;
    driver.run_and_quit(async |driver| test(Browser { driver }).await).await.map_err(|error| match error {
        WebDriverRunError::Body(error) => error,
        WebDriverRunError::Cleanup(error) => anyhow!(error),
        WebDriverRunError::BodyAndCleanup { body, .. } => body,
        other => anyhow!("{other:?}"),
    })
}

/// The driver says in a line of its output which free port it took.
fn port_in(line: &str) -> Option<u16> {
    line.split_once("started successfully on port ")?.1.trim_end_matches('.').parse().ok()
}

/// So does the other one.
fn gecko_port_in(line: &str) -> Option<u16> {
    line.split_once("Listening on 127.0.0.1:")?.1.trim().parse().ok()
}

fn capabilities() -> Result<Capabilities> {
    let mut asked: Capabilities = serde_json::from_value(setting::capabilities()?)?;
    // The log has what the page is refused or fails at, and every request it makes.
    asked.set("goog:loggingPrefs", json!({ "browser": "ALL", "performance": "ALL" }))?;
    Ok(asked)
}

impl Browser {
    /// Loads an address and waits for the page's load event.
    ///
    /// # Errors
    /// If there is no answer.
    pub async fn open(&self, address: &str) -> Result<()> {
        self.driver.goto(address).await.with_context(|| format!("could not open {address}"))
    }

    /// Loads the page again, as a user does.
    ///
    /// # Errors
    /// If there is no answer.
    pub async fn reload(&self) -> Result<()> {
        Ok(self.driver.refresh().await?)
    }

    /// The value of a JavaScript expression in the page; a promise is waited for.
    ///
    /// # Errors
    /// If the expression throws or its promise is rejected.
    pub async fn value(&self, expression: &str) -> Result<Value> {
        // Chromium waits for a promise that a script returns (WebDriver, "execute a function body").
        let found = self.session().execute(format!("return ({expression})"), Vec::new()).await;
        Ok(found.with_context(|| format!("in the page: {expression}"))?.json().clone())
    }

    /// Waits until an expression in the page is true.
    ///
    /// # Errors
    /// If it is still not after a generous time.
    pub async fn wait_for(&self, expression: &str) -> Result<()> {
        let start = std::time::Instant::now();
        while start.elapsed() < PATIENCE {
            // While a page is being replaced there is nothing to ask; the next look finds the new one.
            if self.value(expression).await.is_ok_and(|value| value == json!(true)) {
                return Ok(());
            }
            tokio::time::sleep(Duration::from_millis(50)).await;
        }
        bail!("never came true in the page: {expression}")
    }

    /// Keeps no file from one start to the next, so that every start asks the host for all of them.
    ///
    /// # Errors
    /// If the browser refuses.
    pub async fn keep_no_files(&self) -> Result<()> {
        self.driver.cdp().send_raw("Network.enable", json!({})).await?;
        self.driver.cdp().send_raw("Network.setCacheDisabled", json!({ "cacheDisabled": true })).await?;
        Ok(())
    }

    /// Sets the size of the page's viewport in CSS pixels, and how many device pixels one of them has.
    ///
    /// # Errors
    /// If the browser refuses.
    pub async fn resize(&self, width: u32, height: u32, pixel_ratio: f64) -> Result<()> {
        let metrics = json!({ "width": width, "height": height, "deviceScaleFactor": pixel_ratio, "mobile": false });
        self.driver.cdp().send_raw("Emulation.setDeviceMetricsOverride", metrics).await?;
        Ok(())
    }

    /// What the browser has complained of since the last time this was asked: refused by the page's policy, failed to load,
    /// thrown and not caught.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub async fn complaints(&self) -> Result<Vec<String>> {
        let entries = self.driver.browser_log().await?;
        Ok(entries.into_iter().filter(|entry| entry.level == "SEVERE").map(|entry| entry.message).collect())
    }

    /// The addresses the page has requested since the last time this was asked, in order, answered or not.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub async fn requests(&self) -> Result<Vec<String>> {
        let mut found = Vec::new();
        for entry in self.driver.get_log("performance").await? {
            let event: Value = serde_json::from_str(&entry.message)?;
            let event = &event["message"];
            if event["method"] == "Network.requestWillBeSent" {
                found.extend(event["params"]["request"]["url"].as_str().map(str::to_owned));
            }
        }
        Ok(found)
    }

    /// The accessibility faults of the page as it stands, by axe-core: WCAG 2.2 A and AA, one line for each element.
    ///
    /// # Errors
    /// If axe-core fails to run.
    pub async fn accessibility_faults(&self) -> Result<Vec<String>> {
        axe::faults(self).await
    }

    /// Text with less contrast than the 7:1 of WCAG's level AAA, by axe-core.
    ///
    /// # Errors
    /// If axe-core fails to run.
    pub async fn faint_text(&self) -> Result<Vec<String>> {
        axe::faint(self).await
    }

    /// Both in one run, which takes little longer than either: the faults, and text under 7:1.
    ///
    /// # Errors
    /// If axe-core fails to run.
    pub async fn strict_faults(&self) -> Result<Vec<String>> {
        axe::strict_faults(self).await
    }

    /// What the person's system prefers, such as `("prefers-color-scheme", "dark")`.
    ///
    /// # Errors
    /// If the browser refuses.
    pub async fn prefer(&self, features: &[(&str, &str)]) -> Result<()> {
        let features: Vec<_> = features.iter().map(|(name, value)| json!({ "name": name, "value": value })).collect();
        self.driver.cdp().send_raw("Emulation.setEmulatedMedia", json!({ "features": features })).await?;
        Ok(())
    }

    /// The session's own handle, which runs scripts.
    pub(super) fn session(&self) -> &std::sync::Arc<SessionHandle> {
        self.driver.handle()
    }
}
