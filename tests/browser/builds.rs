//! Two builds of the whole page in one browser: nothing happens under the person's hands, nothing typed is lost, the version shown is
//! the running one, and a worker that is stuck can be got rid of.

use pintle_tests::harness::{Browser, Result, Site, in_browser};
use serde_json::Value;
use std::path::Path;
use thirtyfour::Key;

use super::versions::{CORE, SHOWN, lay_page, newer};
use crate::jobs::open;
use crate::page::{READY, at_step, choose, element, open_group, part, press, take_operator, type_into};

const RECORD: &str = "document.querySelector('pintle-calculator').record";
const NOTICE: &str = "document.getElementById('notice').hidden === false";

/// Opens the first build, and waits until it is kept.
async fn first_build(browser: &Browser, folder: &Path) -> Result<Site> {
    lay_page(folder, CORE, |worker| worker)?;
    let site = Site::start(folder, "/a/b/")?;
    open(browser, &site.address).await?;
    controlled(browser).await?;
    browser.wait_for(&format!("{SHOWN}.includes('{}')", CORE)).await?;
    Ok(site)
}

/// A page is in the hands of its worker from the second visit on; only then does a newer worker have to wait.
async fn controlled(browser: &Browser) -> Result<()> {
    browser.wait_for("navigator.serviceWorker.ready.then(() => true)").await?;
    browser.reload().await?;
    browser.wait_for(READY).await?;
    browser.wait_for("navigator.serviceWorker.controller !== null").await
}

/// Types all sorts of things, the last of them not to its end; says what the record then is.
async fn type_much(browser: &Browser) -> Result<Value> {
    browser.value("(window.mark = 'not reloaded') && true").await?;
    type_into(browser, "leaf.mass_kg", "210,5").await?;
    browser.value("document.querySelector('pintle-calculator').setAttribute('units', 'us') ?? true").await?;
    type_into(browser, "leaf.wind_area_m2", "20 1/2").await?;
    open_group(browser, "hinges").await?;
    choose(browser, "hinges.kind", "measured").await?;
    type_into(browser, "hinges.pull_open_n", "no idea").await?;
    take_operator(browser, "demo-c").await?;
    type_into(browser, "leaf.length_m", "10' 6").await?;
    browser.value(&format!("JSON.parse(JSON.stringify({RECORD}))")).await
}

async fn look_for_an_update(browser: &Browser) -> Result<()> {
    browser.value("navigator.serviceWorker.getRegistration().then((found) => found.update()).then(() => true)").await?;
    browser.wait_for(NOTICE).await
}

/// Waits for the second build and holds it to the record.
async fn second_build_has(browser: &Browser, record: &Value) -> Result<()> {
    browser.wait_for(&format!("({SHOWN}).includes('{}')", newer())).await?;
    assert_eq!(browser.value("window.mark ?? null").await?, Value::Null, "a page loaded anew");
    browser.wait_for(&format!("{}?.value === \"10' 6\"", part("#field-leaf-length_m"))).await?;
    assert_eq!(browser.value(&format!("JSON.parse(JSON.stringify({RECORD}))")).await?, *record);
    let core = browser.value("document.querySelector('pintle-calculator').version").await?;
    assert_eq!(core, newer(), "the version shown is that of the core that runs");
    Ok(())
}

#[tokio::test]
async fn an_update_waits_while_somebody_types_and_keeps_every_field() -> Result<()> {
    in_browser(async |browser| {
        let folder = tempfile::tempdir()?;
        let _site = first_build(&browser, folder.path()).await?;
        let record = type_much(&browser).await?;
        lay_page(folder.path(), &newer(), |worker| worker)?;
        look_for_an_update(&browser).await?;
        // In the middle of a number: the caret stays where it was, and the next key goes on with it.
        assert_eq!(browser.value("window.mark").await?, "not reloaded");
        browser.driver.action_chain().send_keys("\"").send_keys(Key::Backspace + "").perform().await?;
        assert_eq!(browser.value(&format!("{}.value", part("#field-leaf-length_m"))).await?, "10' 6");
        let focus = "document.querySelector('pintle-calculator').shadowRoot.activeElement.id";
        assert_eq!(browser.value(focus).await?, "field-leaf-length_m");
        assert!(browser.value(SHOWN).await?.as_str().is_some_and(|shown| shown.contains(CORE)), "the old one runs");
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        browser.value("document.getElementById('update').click() ?? true").await?;
        second_build_has(&browser, &record).await
    })
    .await
}

/// A worker that never answers: the page says so, and the person has it fetched anew; what was typed is there.
#[tokio::test]
async fn a_stuck_worker_can_be_got_rid_of() -> Result<()> {
    in_browser(async |browser| {
        let folder = tempfile::tempdir()?;
        let _site = first_build(&browser, folder.path()).await?;
        let record = type_much(&browser).await?;
        lay_page(folder.path(), &newer(), |worker| worker.replace("own.skipWaiting()", "undefined"))?;
        look_for_an_update(&browser).await?;
        let text = "document.getElementById('notice-text').textContent";
        browser.value("document.getElementById('update').click() ?? true").await?;
        browser.wait_for(&format!("{text}.includes('does not answer')")).await?;
        assert_eq!(browser.value("window.mark").await?, "not reloaded");
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        browser.value("document.getElementById('update').click() ?? true").await?;
        second_build_has(&browser, &record).await
    })
    .await
}

/// A worker that answers no request any more: what is not loaded yet never comes. The person has the page fetched anew, and it goes.
#[tokio::test]
async fn a_worker_that_answers_nothing_can_be_got_rid_of() -> Result<()> {
    in_browser(async |browser| {
        let folder = tempfile::tempdir()?;
        // Sound until it is told to fall silent, as a worker does whose storage hangs.
        let falls_silent = |worker: String| {
            let answers = "async function answer(request) {";
            let hangs = worker.replace(answers, &format!("{answers} if (self.hung) await new Promise(() => {{}});"));
            assert_ne!(hangs, worker);
            format!("addEventListener('message', ({{ data }}) => {{ self.hung ||= data === 'hang'; }});\n{hangs}")
        };
        lay_page(folder.path(), CORE, falls_silent)?;
        let site = Site::start(folder.path(), "/a/b/")?;
        open(&browser, &site.address).await?;
        controlled(&browser).await?;
        let record = type_much(&browser).await?;
        browser.value("navigator.serviceWorker.controller.postMessage('hang') ?? true").await?;
        let waited = "Promise.race([fetch('manifest.webmanifest').then(() => 'answered'), new Promise((done) => setTimeout(done, 2000, 'silent'))])";
        browser.wait_for(&format!("({waited}).then((word) => word === 'silent')")).await?;

        lay_page(folder.path(), &newer(), |worker| worker)?;
        browser.value("document.getElementById('afresh').click() ?? true").await?;
        browser.wait_for(NOTICE).await?;
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        browser.value("document.getElementById('update').click() ?? true").await?;
        second_build_has(&browser, &record).await
    })
    .await
}

/// Without a network the copy is all there is: it is not thrown away.
#[tokio::test]
async fn without_a_network_the_copy_stays() -> Result<()> {
    in_browser(async |browser| {
        let folder = tempfile::tempdir()?;
        let site = first_build(&browser, folder.path()).await?;
        drop(site);
        browser.value("document.getElementById('afresh').click() ?? true").await?;
        browser.value("document.getElementById('update').click() ?? true").await?;
        browser.wait_for("document.getElementById('notice-problem').textContent.includes('no network')").await?;
        browser.reload().await?;
        browser.wait_for(READY).await
    })
    .await
}

/// The search's worker: one that never answers is stopped by the person, and the next one is asked.
#[tokio::test]
async fn a_search_that_is_stuck_is_stopped_and_asked_again() -> Result<()> {
    in_browser(async |browser| {
        let folder = tempfile::tempdir()?;
        let _site = first_build(&browser, folder.path()).await?;
        // The first worker hears nothing of what it is asked.
        browser
            .value(
                "(() => { const Real = Worker; let count = 0;
                   window.Worker = class extends Real { #deaf = count++ === 0; postMessage(...message) { if (!this.#deaf) super.postMessage(...message); } };
                   return true; })()",
            )
            .await?;
        at_step(&browser, "place").await?;
        browser.wait_for(&format!("!{}.hidden", part(".setout .waiting"))).await?;
        press(&browser, ".setout .stop").await?;
        browser.wait_for(&format!("!{}.hidden", part(".setout .again"))).await?;
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        press(&browser, ".setout .again").await?;
        browser.wait_for(&format!("{}.children.length > 0", part(".setout .set-outs"))).await?;
        element(&browser, ".setout .set-outs").await?;
        Ok(())
    })
    .await
}
