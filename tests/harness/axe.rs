//! Accessibility faults by axe-core (Deque's open-source rules for the Web Content Accessibility Guidelines).

use std::fs;

use anyhow::{Context, Result};
use serde::Deserialize;

use super::{Browser, setting};

/// What axe-core is asked for: every rule of WCAG 2.2 up to AA; the size of touch targets is off unless asked for.
const RUN: &str = "
    const done = arguments[arguments.length - 1];
    axe.run(document, {
        resultTypes: ['violations'],
        runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
        rules: { 'target-size': { enabled: true } },
    }).then((found) => done({ violations: found.violations }), (error) => done({ error: String(error) }));";

#[derive(Deserialize)]
struct Answer {
    error: Option<String>,
    #[serde(default)]
    violations: Vec<Violation>,
}

#[derive(Deserialize)]
struct Violation {
    id: String,
    help: String,
    nodes: Vec<Node>,
}

#[derive(Deserialize)]
struct Node {
    html: String,
}

/// The stricter contrast of WCAG's level AAA alone: 7:1, large text 4.5:1.
const RUN_CONTRAST: &str = "
    const done = arguments[arguments.length - 1];
    axe.run(document, { resultTypes: ['violations'], runOnly: { type: 'rule', values: ['color-contrast-enhanced'] } })
        .then((found) => done({ violations: found.violations }), (error) => done({ error: String(error) }));";

/// Text with less contrast than 7:1.
pub async fn faint(browser: &Browser) -> Result<Vec<String>> {
    run(browser, RUN_CONTRAST).await
}

/// Both at once: what stands on the page is looked through once.
const RUN_STRICT: &str = "
    const done = arguments[arguments.length - 1];
    axe.run(document, {
        resultTypes: ['violations'],
        runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
        rules: { 'target-size': { enabled: true }, 'color-contrast': { enabled: false }, 'color-contrast-enhanced': { enabled: true } },
    }).then((found) => done({ violations: found.violations }), (error) => done({ error: String(error) }));";

/// The faults, with the stricter contrast in place of the usual one, which it includes.
pub async fn strict_faults(browser: &Browser) -> Result<Vec<String>> {
    run(browser, RUN_STRICT).await
}

/// Puts axe-core into the page and runs it. Scripts of WebDriver are not subject to the page's policy.
pub async fn faults(browser: &Browser) -> Result<Vec<String>> {
    run(browser, RUN).await
}

/// Brings what sticks to an edge of the screen to rest in its own place, where it covers nothing: half a target under it is no target of that
/// size to axe-core, and scrolling is what brings it out. Gives where the page was scrolled to.
const TO_REST: &str = "(() => {
    const bar = document.querySelector('pintle-calculator')?.shadowRoot?.querySelector('[part=verdict]');
    const at = [scrollX, scrollY];
    if (bar) bar.closest('.sheet').scrollIntoView({ block: getComputedStyle(bar).bottom === 'auto' ? 'start' : 'end', behavior: 'instant' });
    return at;
})()";

async fn run(browser: &Browser, what: &str) -> Result<Vec<String>> {
    let at = browser.value(TO_REST).await?;
    let found = run_here(browser, what).await;
    browser.value(&format!("scrollTo(...{at}) ?? true")).await?;
    found
}

async fn run_here(browser: &Browser, what: &str) -> Result<Vec<String>> {
    // Half a megabyte: given once to each page.
    if browser.value("'axe' in window").await? == serde_json::json!(false) {
        let script = fs::read_to_string(setting::axe()?).context("axe-core is not where the task runner put it")?;
        browser.session().execute(script, Vec::new()).await?;
    }
    let answer: Answer = browser.session().execute_async(what, Vec::new()).await?.convert()?;
    match answer.error {
        Some(error) => anyhow::bail!("axe-core failed: {error}"),
        None => Ok(answer.violations.iter().flat_map(lines).collect()),
    }
}

fn lines(violation: &Violation) -> impl Iterator<Item = String> + '_ {
    violation.nodes.iter().map(|node| format!("{}: {}: {}", violation.id, violation.help, node.html))
}
