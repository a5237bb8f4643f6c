//! The host is killed: right after the first verdict, once everything is kept, and at each moment between. What is opened then for the first
//! time works, or says that it could not be loaded; and where the page says that it is ready to work without a network, all of it works.

use pintle_tests::harness::{Browser, Context, Result, Site, in_browser, setting};
use serde_json::json;

use crate::jobs::{jobs, show_list};
use crate::page::{READY, part, steps};

const KEPT: &str = "navigator.serviceWorker.ready.then(() => true)";
const CALCULATOR: &str = "document.querySelector('pintle-calculator')";
/// What the page says of its working without a network.
const OFFLINE: &str = "document.getElementById('offline').textContent";

/// Whether a part says in words that a file could not be loaded, at its own place or at the page's.
fn told(place: &str) -> String {
    format!("({place}?.innerText ?? '').includes('could not be loaded')")
}

/// Waits until one of two things is there; says whether it is the first.
async fn either(browser: &Browser, works: &str, says: &str) -> Result<bool> {
    browser.wait_for(&format!("({works}) || ({says})")).await?;
    Ok(browser.value(works).await? == json!(true))
}

/// Opens everything that the first verdict did without: says what works.
async fn open_everything(browser: &Browser) -> Result<Vec<(&'static str, bool)>> {
    let mut opened = Vec::new();
    for step in steps() {
        browser.value(&format!("{CALCULATOR}.setAttribute('step', '{step}') ?? true")).await?;
        let shown = format!("{} !== null", part(&format!(".step[data-step={step}]:not([hidden])")));
        let works = either(browser, &shown, &told(&part(".asks"))).await.context(step)?;
        opened.push((step, works));
        if !works {
            continue;
        }
        let folded = format!("[...{}.querySelectorAll('details')]", part(&format!(".step[data-step={step}]")));
        browser.value(&format!("{folded}.forEach((detail) => {{ detail.open = true; }}) ?? true")).await?;
        browser.wait_for(READY).await.context(step)?;
        match step {
            "place" => {
                let found = format!("{}.children.length > 0", part(".setout .set-outs"));
                opened.push(("search", either(browser, &found, &told(&part(".setout"))).await.context("search")?));
            }
            "hand_over" => {
                browser.wait_for(&format!("!{}.disabled", part(".show-sheet"))).await.context("sheet")?;
                browser.value(&format!("{}.click() ?? true", part(".show-sheet"))).await?;
                let shown = format!("{} !== null", part(".handover .preview"));
                opened.push(("sheet", either(browser, &shown, &told(&part(".handover"))).await.context("sheet")?));
            }
            _ => {}
        }
    }

    show_list(browser).await?;
    browser.value(&format!("{}.open = true", jobs(".job-share"))).await?;
    let drawn = format!("({}?.getAttribute('d') ?? '').length > 1000", jobs(".qr path"));
    browser.wait_for(&drawn).await.context("code")?;

    browser.value("document.querySelector('[data-language=es]').click() ?? true").await?;
    let spanish = format!("{}?.lang === 'es'", part(".sheet"));
    let language = either(browser, &spanish, &told("document.getElementById('failed')")).await.context("language")?;
    opened.extend([("code", true), ("language", language)]);
    Ok(opened)
}

#[tokio::test]
async fn what_is_opened_later_works_or_says_that_it_is_not_there() -> Result<()> {
    // How many requests a first verdict takes, and all of it.
    let count = async |before: &str| {
        in_browser(async |browser| {
            let site = Site::start(&setting::dist()?, "/")?;
            site.trouble(before)?;
            browser.open(&site.address).await?;
            browser.wait_for(READY).await?;
            if before == "calm" {
                browser.wait_for(KEPT).await?;
            }
            browser.value("new Promise((done) => setTimeout(done, 500, true))").await?;
            Ok(site.asked()?.values().sum::<usize>())
        })
        .await
    };
    let (verdict, all) = (count("fail sw.js 100000").await?, count("calm").await?);
    assert!(verdict >= 10 && all > verdict + 5, "{verdict} of {all}");
    in_browser(async |browser| {
        for answered in verdict..=all {
            // Each host is another origin: nothing is kept of the one before.
            let site = Site::start(&setting::dist()?, "/")?;
            site.trouble(&format!("die-after {answered}"))?;
            browser.open(&site.address).await?;
            browser.wait_for(READY).await.with_context(|| format!("no verdict after {answered} of {all} answers"))?;
            browser.wait_for(&format!("{OFFLINE} !== ''")).await?;
            let said = browser.value(OFFLINE).await?.as_str().unwrap_or_default().to_owned();
            drop(site);
            let opened =
                open_everything(&browser).await.with_context(|| format!("killed after {answered} of {all}"))?;
            println!("killed after {answered} of {all} answers: {said} {opened:?}");
            let is_kept = said == "Ready to work without a network.";
            assert!(!is_kept || opened.iter().all(|(_, works)| *works), "{said} {opened:?}");
            assert!(is_kept || answered < all, "all was answered, and it says: {said}");
            if is_kept {
                browser.reload().await?;
                browser.wait_for(READY).await.context("a start without the host")?;
            }
        }
        Ok(())
    })
    .await
}
