//! Nothing is lost: the page is reloaded at every moment of a slow start, and every file it is made of fails once.

use std::collections::BTreeSet;

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};

use crate::failing::{TOLD, press_again};
use crate::jobs::{before_the_page, keep, open};
use crate::page::{READY, type_into};

/// Reloads the page a quarter of a second after it has begun to load, then after half a second, and so on, until a start has had time to
/// its end. The turn is kept in the window's name, which a reload leaves alone.
const STORM: &str = "
    const storm = /^storm:(\\d+)$/.exec(window.name);
    if (storm && Number(storm[1]) < 12) {
        window.name = `storm:${Number(storm[1]) + 1}`;
        setTimeout(() => location.reload(), 250 * (Number(storm[1]) + 1));
    } else if (storm) {
        // The page that no reload is waiting for.
        window.stormIsOver = true;
    }";
const OVER: &str = "window.stormIsOver === true";

/// The page, what it names, and what that asks for, six at a time: with this delay of each a start takes some three seconds, as on a slow
/// phone network.
const DELAY: &str = "delay 600";

/// Files of a start, but for the page itself: what the bundling is for.
const MOST_FILES: usize = 18;

async fn storm(browser: &Browser) -> Result<()> {
    browser.value("(window.name = 'storm:0') && setTimeout(() => location.reload()) && true").await?;
    browser.wait_for(OVER).await?;
    browser.wait_for(READY).await
}

/// Rows kept in the browser.
const ROWS: &str = "new Promise((done) => { indexedDB.open('pintle-jobs:/').onsuccess = ({ target }) => {
    target.result.transaction('jobs').objectStore('jobs').getAll().onsuccess = (got) => {
        target.result.close(); done(got.target.result); }; }; })";
const HELD: &str = "sessionStorage.getItem('pintle-typed')";
const JOB: &str = "document.querySelector('pintle-calculator').job";

/// Waits until what is kept is one job of that mass, and nothing is left in the tab.
async fn one_job_of(browser: &Browser, mass_kg: f64) -> Result<()> {
    browser.wait_for(&format!("{JOB}?.leaf.mass_kg === {mass_kg}")).await?;
    let one = format!("rows.length === 1 && rows[0].document.leaf.mass_kg === {mass_kg}");
    browser.wait_for(&format!("({ROWS}).then((rows) => {one} && {HELD} === null)")).await
}

#[tokio::test]
async fn a_reload_at_any_moment_of_a_slow_start_loses_nothing() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        // Without the worker's copy every start is slow.
        site.trouble("fail sw.js 1000")?;
        browser.keep_no_files().await?;
        before_the_page(&browser, STORM).await?;
        open(&browser, &site.address).await?;
        site.trouble(DELAY)?;
        storm(&browser).await?;
        // Nobody typed anything: the example, and nothing kept that is no job.
        assert_eq!(browser.value(&format!("{JOB}.leaf.mass_kg")).await?, json!(160));
        assert_eq!(browser.value("document.querySelector('pintle-calculator').errors").await?, json!([]));
        browser.wait_for(&format!("({ROWS}).then((rows) => rows.length === 0 && {HELD} === null)")).await?;

        keep(&browser, "210").await?;
        // The last moment before the storm: not written yet.
        type_into(&browser, "leaf.mass_kg", "222").await?;
        storm(&browser).await?;
        one_job_of(&browser, 222.0).await
    })
    .await
}

/// What an older page held before it had a job is thrown away, and so is what it kept of it.
#[tokio::test]
async fn what_is_no_job_is_discarded() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        open(&browser, &site.address).await?;
        keep(&browser, "210").await?;
        browser
            .value(
                "new Promise((done) => { indexedDB.open('pintle-jobs:/').onsuccess = ({ target }) => {
                   const rows = target.result.transaction('jobs', 'readwrite').objectStore('jobs');
                   rows.put({ id: 'broken', saved: 1, at: Date.now() + 1000, deleted: null, document: { entry: null } }).onsuccess = () => {
                     target.result.close(); done(true); }; }; })",
            )
            .await?;
        browser.open("about:blank").await?;
        for held in ["{\"id\":\"broken\",\"seen\":null,\"dirty\":true,\"document\":{\"entry\":null}}", "{", "7"] {
            let before = format!("if (location.protocol === 'http:') sessionStorage.setItem('pintle-typed', {})", json!(held));
            let asked = json!({ "source": before });
            let added = browser.driver.cdp().send_raw("Page.addScriptToEvaluateOnNewDocument", asked).await?;
            open(&browser, &site.address).await?;
            one_job_of(&browser, 210.0).await?;
            browser.driver.cdp().send_raw("Page.removeScriptToEvaluateOnNewDocument", added).await?;
        }
        Ok(())
    })
    .await
}

/// Modules that the page names beforehand.
const NAMED: &str =
    "[...document.querySelectorAll('link[rel=modulepreload]')].map((link) => new URL(link.href).pathname.slice(1))";

/// All at once, then one by one: each start that fails says so, and the job is there in the end.
#[tokio::test]
async fn every_file_fails_once_and_the_job_is_there() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        site.trouble("fail sw.js 100000")?;
        browser.keep_no_files().await?;
        open(&browser, &site.address).await?;
        keep(&browser, "210").await?;
        type_into(&browser, "leaf.mass_kg", "222").await?;
        one_job_of(&browser, 222.0).await?;
        browser.requests().await?;
        browser.reload().await?;
        browser.wait_for(READY).await?;
        let files: BTreeSet<String> = browser
            .requests()
            .await?
            .into_iter()
            .filter_map(|url| url.strip_prefix(&site.address).map(str::to_owned))
            .filter(|name| !name.is_empty() && name != "sw.js")
            .collect();
        assert!(files.len() > 10 && files.len() <= MOST_FILES, "{files:?}");

        site.trouble("fail-each")?;
        let mut starts = 1;
        browser.reload().await?;
        while browser.value(READY).await? != json!(true) {
            starts += 1;
            assert!(starts < 12, "it never starts");
            let page = browser.value("document.querySelector('pintle-calculator') !== null").await?;
            if page == json!(true) {
                browser.wait_for(&format!("{TOLD} || ({READY})")).await?;
            }
            browser.reload().await?;
            browser.value("new Promise((done) => setTimeout(done, 500, true))").await?;
        }
        println!("every file failing once: it starts at the {starts}th time");
        site.trouble("calm")?;
        site.trouble("fail sw.js 100000")?;
        one_job_of(&browser, 222.0).await?;

        // A module that the page names beforehand is fetched again by the script that imports it, each by itself: all of them fail in one
        // start, and none of them is told. A start that stood still for one of them would stand still here.
        let named = browser.value(NAMED).await?;
        let named: BTreeSet<String> = serde_json::from_value(named)?;
        let (by_themselves, others): (Vec<_>, Vec<_>) = files.iter().partition(|file| named.contains(*file));
        assert!(!by_themselves.is_empty() && others.len() < 40, "{others:?}");
        for file in &by_themselves {
            site.trouble(&format!("fail /{file} 1"))?;
        }
        browser.requests().await?;
        browser.reload().await?;
        browser.wait_for(&format!("{TOLD} || ({READY})")).await?;
        assert_eq!(browser.value(TOLD).await?, json!(false), "{}", browser.value("document.body.innerText").await?);
        browser.wait_for(&format!("{JOB}?.leaf.mass_kg === 222")).await?;
        // Every one of them did fail.
        let again = browser.requests().await?;
        let asked = |file: &str| again.iter().filter(|url| url.strip_prefix(&site.address) == Some(file)).count();
        let once: Vec<_> = by_themselves.iter().filter(|file| asked(file) < 2).collect();
        assert_eq!(once, Vec::<&&String>::new(), "asked for once: it did not fail");

        // What is told is told for one file: each of the others has a start of its own.
        let mut told = Vec::new();
        for file in others {
            let of = |error: pintle_tests::harness::Error| error.context(file.clone());
            site.trouble(&format!("fail /{file} 1"))?;
            browser.reload().await?;
            browser.wait_for(&format!("{TOLD} || ({READY})")).await.map_err(of)?;
            if browser.value(READY).await? != Value::Bool(true) {
                told.push(file.as_str());
                press_again(&browser).await?;
                browser.wait_for(READY).await.map_err(of)?;
            }
            browser.wait_for(&format!("{JOB}?.leaf.mass_kg === 222")).await.map_err(of)?;
        }
        println!("{} files failed once each; told, and got by pressing again: {told:?}", files.len());
        let is_told = |name: &&str| told.iter().any(|file| file.starts_with(*name));
        assert!(["app/boot-", "pintle-web_bg-"].iter().all(is_told), "{told:?}");
        one_job_of(&browser, 222.0).await
    })
    .await
}
