//! Nothing is stuck: a file that does not come is told in words, with a way to try again.

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::json;

use crate::jobs::open;
use crate::page::{READY, part, type_into};

/// JavaScript for what tries again, as far as it can be seen: at the page's own place, beside a host's text, or inside the element.
macro_rules! again {
    () => {
        "[...document.querySelectorAll('[data-again], [data-failed] button'),
          ...(document.querySelector('pintle-calculator')?.shadowRoot?.querySelectorAll('[data-failed] button, .error button') ?? [])]
             .filter((button) => button.checkVisibility({ visibilityProperty: true }))"
    };
}

/// JavaScript that is true once the page says that something did not come, and offers to try again.
pub const TOLD: &str = concat!("(", again!(), ".length > 0)");

/// Presses the first button that tries again.
pub async fn press_again(browser: &Browser) -> Result<()> {
    browser.wait_for(TOLD).await?;
    let pressed = concat!("(([button]) => setTimeout(() => button.click()) && true)(", again!(), ")");
    browser.value(pressed).await?;
    Ok(())
}

/// What the page says at its own place; empty while it says nothing.
const SAID: &str =
    "(() => { const said = document.getElementById('failed'); return said.hidden ? '' : said.innerText; })()";

/// The page as text, what is inside its elements too.
const WHOLE: &str = "document.documentElement.outerHTML + [...document.querySelectorAll('*')].map((one) => one.shadowRoot?.innerHTML ?? '').join('')";

const TEXT: &str = "could not be loaded";

async fn says(browser: &Browser, word: &str) -> Result<()> {
    browser.wait_for(&format!("{SAID}.includes(`{word}`)")).await
}

/// Without the worker's copy and the browser's, so that every start asks the host.
async fn site(browser: &Browser) -> Result<Site> {
    browser.keep_no_files().await?;
    let site = Site::start(&setting::dist()?, "/")?;
    site.trouble("fail sw.js 100000")?;
    Ok(site)
}

#[tokio::test]
async fn a_file_that_does_not_come_is_told_and_asked_for_again() -> Result<()> {
    in_browser(async |browser| {
        let site = site(&browser).await?;
        let mut judged = std::collections::BTreeSet::new();
        // Scripts at every depth, the style, words, the core.
        for file in [
            "app/boot.js",
            "app/shared.js",
            "app/pintle-calculator.js",
            "app/jobs.js",
            "style/element.css",
            "strings/en.json",
            "pintle-web_bg.wasm",
        ] {
            // The preload, and the import after it.
            site.trouble(&format!("fail /{file} 2"))?;
            browser.open(&site.address).await?;
            says(&browser, TEXT).await.map_err(|error| error.context(file))?;
            let loading = "document.getElementById('loading').checkVisibility()";
            assert_eq!(browser.value(loading).await?, json!(false), "{file}: it is not loading any more");
            // Most are told by the very same page: that is judged once.
            let page = browser.value(WHOLE).await?;
            if judged.insert(page.to_string()) {
                assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new(), "{file}");
            }
            site.trouble(&format!("fail /{file} 0"))?;
            press_again(&browser).await?;
            browser.wait_for(READY).await.map_err(|error| error.context(file))?;
            browser.wait_for(&format!("{SAID} === ''")).await.map_err(|error| error.context(file))?;
        }
        // The page's own style is told of while the calculator runs.
        site.trouble("fail /page.css 1")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        says(&browser, TEXT).await?;
        // And without its guard it starts as ever.
        site.trouble("fail /app/guard.js 1")?;
        open(&browser, &site.address).await
    })
    .await
}

/// In the language of the page, where its words are there.
#[tokio::test]
async fn it_is_told_in_the_language_of_the_page() -> Result<()> {
    in_browser(async |browser| {
        let site = site(&browser).await?;
        open(&browser, &site.address).await?;
        browser.value("document.querySelector('[data-language=es]').click() ?? true").await?;
        browser.wait_for("document.documentElement.lang.startsWith('es')").await?;
        site.trouble("fail /pintle-web_bg.wasm 2")?;
        browser.reload().await?;
        says(&browser, "No se pudo cargar").await?;
        says(&browser, "Probar otra vez").await
    })
    .await
}

/// A browser that cannot run the calculator at all is told so, and not of a file.
#[tokio::test]
async fn a_browser_that_cannot_is_told_so() -> Result<()> {
    in_browser(async |browser| {
        let site = site(&browser).await?;
        let without = json!({ "source": "delete window.WebAssembly" });
        browser.driver.cdp().send_raw("Page.addScriptToEvaluateOnNewDocument", without).await?;
        browser.open(&site.address).await?;
        says(&browser, "needs a browser with WebAssembly").await?;
        assert_eq!(browser.value(&format!("{SAID}.includes('{TEXT}')")).await?, json!(false));
        Ok(())
    })
    .await
}

/// The page's text alone, and then nothing more: no script runs. And a host that answers nothing: the style sheet's clock tells.
#[tokio::test]
async fn without_any_script_there_is_a_way_to_try_again() -> Result<()> {
    in_browser(async |browser| {
        let site = site(&browser).await?;
        for end in [".js", ".css", ".json", ".wasm"] {
            site.trouble(&format!("fail {end} 100000"))?;
        }
        browser.open(&site.address).await?;
        browser.wait_for(TOLD).await?;
        site.trouble("calm")?;
        site.trouble("fail sw.js 100000")?;
        browser.value("setTimeout(() => document.querySelector('.slow a').click()) && true").await?;
        browser.wait_for(READY).await?;

        site.trouble("fail /app/guard.js 1")?;
        site.trouble("fail /app/shared.js 2")?;
        browser.open(&site.address).await?;
        assert_eq!(browser.value(TOLD).await?, json!(false));
        // Its twenty seconds are let pass at once.
        browser
            .value("document.querySelector('.slow').getAnimations().forEach((clock) => clock.finish()) ?? true")
            .await?;
        browser.wait_for(TOLD).await?;
        press_again(&browser).await?;
        browser.wait_for(READY).await
    })
    .await
}

/// Documents a host names: the example stands in, and the named one is asked for again without what was typed being lost.
#[tokio::test]
async fn a_document_that_does_not_come_is_told_and_asked_for_again() -> Result<()> {
    in_browser(async |browser| {
        let site = site(&browser).await?;
        for (file, word) in [
            ("data/starting-job.json", "example stands in its place"),
            ("data/shop-operators.json", "list of operators"),
        ] {
            site.trouble(&format!("fail /{file} 1"))?;
            browser.open(&format!("{}embed.html", site.address)).await?;
            browser.wait_for(READY).await?;
            let said = format!(
                "[...{}.querySelectorAll('.asks > .error')].some((said) => said.textContent.includes(`{word}`))",
                part(".sheet")
            );
            assert_eq!(browser.value(&said).await?, json!(true), "{file}");
            assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new(), "{file}");
            type_into(&browser, "leaf.mass_kg", "210").await?;
            press_again(&browser).await?;
            browser.wait_for(&format!("!({said}) && ({READY})")).await?;
            let job = "document.querySelector('pintle-calculator').job.leaf.mass_kg";
            assert_eq!(browser.value(job).await?, json!(210), "{file}: what was typed stays");
            let list = browser.value("document.querySelector('pintle-calculator').operators.operators.length").await?;
            assert!(list.as_u64().is_some_and(|operators| operators > 1), "{list}");
        }
        Ok(())
    })
    .await
}

/// The host goes away while the page stands: what is asked for then is told, again and again, until the host is back.
#[tokio::test]
async fn a_host_that_is_gone_is_told_until_it_is_back() -> Result<()> {
    in_browser(async |browser| {
        let site = site(&browser).await?;
        let (address, port) = (site.address.clone(), site.port());
        open(&browser, &address).await?;
        type_into(&browser, "leaf.mass_kg", "210").await?;
        drop(site);
        browser.value("document.querySelector('[data-language=es]').click() ?? true").await?;
        says(&browser, TEXT).await?;
        press_again(&browser).await?;
        says(&browser, TEXT).await?;
        assert_eq!(browser.value("document.querySelector('pintle-calculator').job.leaf.mass_kg").await?, json!(210));
        let _back = Site::start_at(&setting::dist()?, "/", port)?;
        press_again(&browser).await?;
        browser.wait_for(&format!("{}.lang === 'es'", part(".sheet"))).await?;
        browser.wait_for(&format!("{SAID} === ''")).await
    })
    .await
}

/// On a shop's page the element says it itself, beside the shop's own text; a shop that wants to say it in its own way does.
#[tokio::test]
async fn a_shops_page_is_told_by_the_element_or_tells_itself() -> Result<()> {
    in_browser(async |browser| {
        let site = site(&browser).await?;
        let address = format!("{}embed.html", site.address);
        let alert = "[...document.querySelector('pintle-calculator').querySelectorAll('[data-failed]'), \
            ...(document.querySelector('pintle-calculator').shadowRoot?.querySelectorAll('[data-failed]') ?? [])]";
        for file in ["app/shared.js", "style/element.css", "pintle-web_bg.wasm"] {
            // What is asked for ahead, and again where it is needed.
            site.trouble(&format!("fail /{file} 2"))?;
            browser.open(&address).await?;
            browser.wait_for(&format!("{alert}.some((said) => said.textContent.includes('{TEXT}'))")).await?;
            let own = "document.querySelector('pintle-calculator').innerText.includes('Call us')";
            assert_eq!(browser.value(own).await?, json!(true), "{file}: the shop's own text stays");
            assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new(), "{file}");
            site.trouble(&format!("fail /{file} 0"))?;
            press_again(&browser).await?;
            browser.wait_for(READY).await.map_err(|error| error.context(file))?;
        }
        let own = json!({ "source": "addEventListener('pintle-failed', (event) => { event.preventDefault(); window.told = event.detail; })" });
        browser.driver.cdp().send_raw("Page.addScriptToEvaluateOnNewDocument", own).await?;
        site.trouble("fail /strings/en.json 2")?;
        browser.open(&address).await?;
        browser.wait_for("window.told?.error instanceof Error").await?;
        assert_eq!(browser.value(&format!("{alert}.length")).await?, json!(0));
        site.trouble("fail /strings/en.json 0")?;
        browser.value("window.told.retry() && true").await?;
        browser.wait_for(READY).await
    })
    .await
}
