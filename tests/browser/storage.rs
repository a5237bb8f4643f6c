//! Storage that never answers, or late: it is told, everything computes on, and nothing kept is lost.

use pintle_tests::harness::{Result, Site, in_browser, setting};
use serde_json::json;

use crate::jobs::{before_the_page, jobs, keep, open, says, says_so_and_offers_the_file};
use crate::page::{READY, type_into};

#[tokio::test]
async fn storage_that_never_answers_is_told_and_it_computes_on() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        before_the_page(&browser, "IDBFactory.prototype.open = () => ({});").await?;
        open(&browser, &site.address).await?;
        says_so_and_offers_the_file(&browser, "does not answer").await?;
        browser.wait_for(&says("not kept")).await?;
        // A new job, and a reload with what was typed last: neither waits for what does not come.
        type_into(&browser, "leaf.mass_kg", "222").await?;
        browser.reload().await?;
        browser.wait_for(READY).await?;
        browser.wait_for("document.querySelector('pintle-calculator').job.leaf.mass_kg === 222").await
    })
    .await
}

/// Holds back that the database is open until `window.answer()` is called.
const LATE: &str = "
    const open = IDBFactory.prototype.open;
    IDBFactory.prototype.open = function (...args) {
        const request = open.apply(this, args);
        let told = () => {};
        Object.defineProperty(request, 'onsuccess', { set(listener) { told = listener; } });
        request.addEventListener('success', () => { window.answer = () => { told(); return true; }; });
        return request;
    };";

#[tokio::test]
async fn storage_that_answers_late_brings_the_job_and_keeps_what_was_typed() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        open(&browser, &site.address).await?;
        keep(&browser, "210").await?;
        browser.open("about:blank").await?;
        // A tab of its own: nothing is held in it.
        let tab = browser.driver.new_tab().await?;
        browser.driver.switch_to_window(tab).await?;
        before_the_page(&browser, LATE).await?;
        let mass = "document.querySelector('pintle-calculator').job.leaf.mass_kg";

        // Nothing was typed meanwhile: the job of last time comes on show.
        open(&browser, &site.address).await?;
        assert_eq!(browser.value(mass).await?, json!(160));
        browser.wait_for(&format!("{}.textContent.includes('does not answer')", jobs(".error"))).await?;
        browser.value("window.answer()").await?;
        browser.wait_for(&format!("{mass} === 210")).await?;
        browser.wait_for(&says("kept on this device")).await?;

        // Something was: it stays on show, and is kept beside the other.
        browser.value("sessionStorage.clear() ?? true").await?;
        browser.driver.execute("window.addEventListener('pagehide', (event) => event.stopImmediatePropagation(), true)", Vec::new()).await?;
        browser.reload().await?;
        browser.wait_for(READY).await?;
        type_into(&browser, "leaf.mass_kg", "222").await?;
        browser.wait_for("typeof window.answer === 'function'").await?;
        browser.value("window.answer()").await?;
        browser.wait_for(&says("kept on this device")).await?;
        assert_eq!(browser.value(mass).await?, json!(222));
        browser
            .wait_for("document.querySelector('pintle-jobs').shadowRoot.querySelectorAll('.job-list:first-child li').length === 2")
            .await
    })
    .await
}
