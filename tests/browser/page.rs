//! What the tests of the calculator do to it, and the native plan they hold it to.

use pintle_core::{
    Document,
    job::{Job, SCHEMA},
    plan::{Plan, plan},
};
use pintle_tests::harness::{Browser, Result};
use serde_json::{Value, json};
use thirtyfour::WebElement;
use thirtyfour::error::WebDriverErrorInner;

/// JavaScript for a part inside the calculator.
pub fn part(selector: &str) -> String {
    format!("document.querySelector('pintle-calculator').shadowRoot.querySelector(`{selector}`)")
}

/// A version of the job's document that no core knows yet.
pub const NEWER: u32 = SCHEMA + 1;

/// JavaScript that is true once a result stands.
pub const READY: &str = "document.querySelector('pintle-calculator')?.plan != null";

/// A part inside the calculator, to be typed into or clicked as a person does.
pub async fn element(browser: &Browser, selector: &str) -> Result<WebElement> {
    let found = browser.driver.execute(format!("return {}", part(selector)), Vec::new()).await?;
    Ok(found.element()?)
}

/// The text of a part inside the calculator.
pub async fn text(browser: &Browser, selector: &str) -> Result<String> {
    let text = browser.value(&format!("{}.textContent", part(selector))).await?;
    Ok(text.as_str().unwrap_or_default().to_owned())
}

/// Blocks and groups of a step by the step's name, as the page asks for them.
const STEPS: [(&str, &[&str]); 7] = [
    (
        "survey",
        &[
            "hand",
            "leaf",
            "hinges",
            "lean",
            "wind",
            "swing",
            "ground",
            "drag",
            "ice",
            "obstacles",
            "room",
            "arm_half_width_m",
        ],
    ),
    ("operator", &["operator", "required_reserve", "uncertainty", "requirement", "body"]),
    ("place", &["arm", "setout", "tape"]),
    ("mark_out", &["marks", "as_built"]),
    ("movement", &["motion"]),
    ("protection", &["site", "contact", "breakaway", "storm", "holding"]),
    ("hand_over", &["record", "settings", "measured", "tried"]),
];

/// Goes to a step as its address does, and waits until it is in view.
pub async fn at_step(browser: &Browser, name: &str) -> Result<()> {
    let there = part(&format!(".step[data-step={name}]:not([hidden])"));
    if browser.value(&format!("{there} !== null")).await? != true {
        browser
            .value(&format!("document.querySelector('pintle-calculator').setAttribute('step', '{name}') ?? true"))
            .await?;
        browser.wait_for(&format!("{there} !== null")).await?;
    }
    computed(browser).await
}

/// Goes to the step that asks for a path of the job or has a group.
pub async fn at_step_of(browser: &Browser, path: &str) -> Result<()> {
    let block = path.split('.').next().unwrap_or(path);
    let found = STEPS.iter().find(|(_, blocks)| blocks.contains(&block));
    let (name, _) = found.unwrap_or_else(|| panic!("no step asks for {path}"));
    at_step(browser, name).await
}

/// Steps of the job, in the order of the work.
pub fn steps() -> impl Iterator<Item = &'static str> {
    STEPS.iter().map(|(name, _)| *name)
}

/// Types a number into its field, over what stands there, and waits until the page has answered it.
pub async fn type_into(browser: &Browser, path: &str, typed: &str) -> Result<()> {
    at_step_of(browser, path).await?;
    let field = format!("#field-{}", path.replace('.', "-"));
    press(browser, &field).await?;
    let input = element(browser, &field).await?;
    // What stands there is marked, so that typing replaces it.
    browser.driver.execute("arguments[0].select()", vec![input.to_json()?]).await?;
    // By keyboard actions: the driver's own typing would first put the caret behind the text of an input in a shadow tree.
    browser.driver.action_chain().send_keys(typed).perform().await?;
    let stands = input.value().await?.unwrap_or_default();
    assert_eq!(stands, typed, "typed into {path}");
    computed(browser).await
}

/// Waits until what is shown is of what was said: the page computes once a frame.
pub async fn computed(browser: &Browser) -> Result<()> {
    browser
        .value("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))")
        .await?;
    Ok(())
}

/// Clicks a part, brought to the middle of the screen first, clear of the verdict that sticks to its edge. One that is drawn anew between being found
/// and clicked is looked for again.
pub async fn press(browser: &Browser, selector: &str) -> Result<()> {
    for _ in 0..3 {
        browser.value(&format!("{}.scrollIntoView({{ block: 'center' }})", part(selector))).await?;
        match element(browser, selector).await?.click().await {
            Err(error) if matches!(error.as_inner(), WebDriverErrorInner::StaleElementReference(_)) => {}
            clicked => {
                clicked?;
                break;
            }
        }
    }
    computed(browser).await
}

/// Takes an option of a choice.
pub async fn choose(browser: &Browser, path: &str, option: &str) -> Result<()> {
    at_step_of(browser, path).await?;
    press(browser, &format!("input[name=\"{path}\"][value=\"{option}\"]")).await
}

/// Takes an operator of the list.
pub async fn take_operator(browser: &Browser, id: &str) -> Result<()> {
    at_step(browser, "operator").await?;
    press(browser, &format!("input[name=operator][value=\"{id}\"]")).await
}

/// Opens a group of fields.
pub async fn open_group(browser: &Browser, name: &str) -> Result<()> {
    at_step_of(browser, name).await?;
    browser.value(&format!("{}.open = true", part(&format!("[data-group={name}]")))).await?;
    computed(browser).await
}

/// The job the page starts with.
pub fn starting_job() -> Value {
    serde_json::from_str(include_str!("../../www/data/starting-job.json")).expect("JSON")
}

/// A job planned natively, with the body of the operator that the page would find by its ratings.
pub fn planned(job: &Value) -> (Job, Plan) {
    let document: Document = serde_json::from_value(as_listed(job)).expect("a document");
    let job = Job::read(&document).expect("valid");
    let plan = plan(&job).expect("valid");
    (job, plan)
}

/// The job with what the page's own list knows besides the ratings.
fn as_listed(job: &Value) -> Value {
    let list: Document = serde_json::from_str(include_str!("../../www/data/operators.json")).expect("JSON");
    let read = pintle_core::operators::read(&list).operators;
    let listed = read.iter().find(|entry| {
        let listed = entry.operator();
        let own = |rating: &str| job["operator"][rating].as_f64();
        own("rated_torque_n_m") == Some(listed.rated_torque_n_m)
            && own("peak_torque_n_m") == listed.peak_torque_n_m
            && own("shaft_speed_deg_s") == listed.shaft_speed_deg_s
    });
    let mut job = job.clone();
    if let (Some(outline), true) =
        (listed.and_then(pintle_core::operators::ListEntry::outline), job["operator"]["body"].is_null())
    {
        job["operator"]["body"] = serde_json::to_value(outline).expect("a value");
    }
    job
}

/// Holds the page's plan to a native one, bit for bit.
pub async fn is_the_plan(browser: &Browser, plan: &Plan) -> Result<()> {
    // As the browser writes it: the driver's own way of handing numbers over is not exact. Read as documents, in which 1 and 1.0 are
    // one number, as they are to a browser.
    let given = browser.value("JSON.stringify(document.querySelector('pintle-calculator').plan)").await?;
    let given: Document = serde_json::from_str(given.as_str().unwrap_or_default())?;
    let native: Document = serde_json::from_str(&serde_json::to_string(plan)?)?;
    if given != native {
        let lines = |document: &Document| serde_json::to_string_pretty(document).unwrap_or_default();
        let (given, native) = (lines(&given), lines(&native));
        let first = given.lines().zip(native.lines()).find(|(here, there)| here != there);
        panic!("not bit for bit the native plan, first (browser, native): {first:?}");
    }
    Ok(())
}

/// A browser that has no workers, as under a policy that allows none.
pub async fn refuse_workers(browser: &Browser) -> Result<()> {
    let source = "globalThis.Worker = class { constructor() { throw new DOMException('refused', 'SecurityError'); } };";
    browser.driver.cdp().send_raw("Page.addScriptToEvaluateOnNewDocument", json!({ "source": source })).await?;
    Ok(())
}
