//! The view is built once, whatever the browser's language and whatever is kept.

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::json;

use crate::jobs::{before_the_page, open, says};
use crate::page::{READY, type_into};

/// Counts the views that are put into a calculator's tree, and the tables of words that are fetched.
const COUNT: &str = "
    window.built = [];
    const attach = Element.prototype.attachShadow;
    Element.prototype.attachShadow = function (...args) {
        const tree = attach.apply(this, args);
        if (this.localName.startsWith('pintle-')) new MutationObserver((records) => {
            for (const { addedNodes } of records) for (const node of addedNodes) if (node.localName !== 'slot') built.push(this.localName);
        }).observe(tree, { childList: true });
        return tree;
    };";

async fn speaks(browser: &Browser, languages: &str) -> Result<()> {
    let agent = browser.value("navigator.userAgent").await?;
    let asked = json!({ "userAgent": agent, "acceptLanguage": languages });
    browser.driver.cdp().send_raw("Emulation.setUserAgentOverride", asked).await?;
    Ok(())
}

/// Views of the calculator and of the list of jobs, once everything stands.
async fn built_once(browser: &Browser, when: &str) -> Result<()> {
    browser.wait_for("navigator.serviceWorker.ready.then(() => true)").await?;
    browser.value("new Promise((done) => setTimeout(done, 1500, true))").await?;
    let built = browser.value("[...window.built].sort()").await?;
    assert_eq!(built, json!(["pintle-calculator", "pintle-jobs"]), "{when}");
    Ok(())
}

async fn in_language(tag: &str, table: &str) -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        speaks(&browser, tag).await?;
        before_the_page(&browser, COUNT).await?;
        open(&browser, &site.address).await?;
        assert_eq!(browser.value("navigator.language").await?, json!(tag));
        assert_eq!(browser.value("document.documentElement.lang").await?, json!(tag));
        built_once(&browser, "a first visit").await?;
        let tables: Vec<String> =
            browser.requests().await?.into_iter().filter(|url| url.contains("/strings/")).collect();
        // The worker's copy of all files is no request of the page.
        assert!(tables.iter().any(|url| url.contains(&format!("/strings/{table}-"))), "{tables:?}");

        type_into(&browser, "leaf.mass_kg", "210").await?;
        let kept = if table == "es" { "guardado en este dispositivo" } else { "kept on this device" };
        browser.wait_for(&says(kept)).await?;
        for (when, units) in [("a kept job", "metric"), ("a kept job in other units", "us")] {
            browser
                .value(&format!("document.querySelector('pintle-calculator').setAttribute('units', '{units}') ?? true"))
                .await?;
            browser.open("about:blank").await?;
            open(&browser, &site.address).await?;
            browser.wait_for("document.querySelector('pintle-calculator').job.leaf.mass_kg === 210").await?;
            built_once(&browser, when).await?;
        }
        // In a new tab, where nothing is held.
        let tab = browser.driver.new_tab().await?;
        browser.driver.switch_to_window(tab).await?;
        before_the_page(&browser, COUNT).await?;
        speaks(&browser, tag).await?;
        open(&browser, &site.address).await?;
        browser.wait_for("document.querySelector('pintle-calculator').job.leaf.mass_kg === 210").await?;
        built_once(&browser, "a kept job in a new tab").await?;
        browser.wait_for(READY).await
    })
    .await
}

#[tokio::test]
async fn the_view_is_built_once_in_american_english() -> Result<()> {
    in_language("en-US", "en").await
}

#[tokio::test]
async fn the_view_is_built_once_in_mexican_spanish() -> Result<()> {
    in_language("es-MX", "es").await
}
