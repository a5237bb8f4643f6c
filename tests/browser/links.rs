//! Links to the page: they bring the job, and a bad one takes nothing away.

use pintle_core::packed;
use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};

use crate::jobs::{drop_file, jobs, keep, names, open, press, rename, show_list};
use crate::page::{NEWER, READY, at_step, computed, is_the_plan, planned, starting_job, steps, type_into};

const JOB: &str = "document.querySelector('pintle-calculator').job";

/// How many values the page marks as assumed; the ratings apart, which are hidden while an operator of the list is taken.
const TAGS: &str = "document.querySelector('pintle-calculator').shadowRoot\
    .querySelectorAll(`.field:not([data-path^='operator.']) .tag:not([hidden])`).length";

/// Opens every group of every step: a step is made when it is first in view, and a closed group is brought up to date when it is opened.
async fn open_groups(browser: &Browser) -> Result<()> {
    for step in steps() {
        at_step(browser, step).await?;
        let groups = "document.querySelector('pintle-calculator').shadowRoot.querySelectorAll('[data-group]')";
        browser.value(&format!("[...{groups}].forEach((group) => {{ group.open = true; }}) ?? true")).await?;
        computed(browser).await?;
    }
    Ok(())
}

/// The link the page gives for the job on show.
async fn link(browser: &Browser) -> Result<String> {
    show_list(browser).await?;
    browser.value(&format!("{}.open = true", jobs(".job-share"))).await?;
    browser.wait_for(&format!("{}.value !== ''", jobs(".job-link"))).await?;
    let link = browser.value(&format!("{}.value", jobs(".job-link"))).await?;
    Ok(link.as_str().unwrap_or_default().to_owned())
}

/// What is on show, without what does not travel.
async fn on_show(browser: &Browser) -> Result<Value> {
    let text = browser.value(&format!("JSON.stringify({JOB}, (key, value) => value ?? undefined)")).await?;
    Ok(serde_json::from_str(text.as_str().unwrap_or_default())?)
}

async fn told(browser: &Browser, part: &str) -> Result<String> {
    let text = browser.value(&format!("{}.textContent", jobs(part))).await?;
    Ok(text.as_str().unwrap_or_default().to_owned())
}

#[tokio::test]
async fn a_link_brings_the_job_to_the_bit() -> Result<()> {
    let site = Site::start(&setting::dist()?, "/a/b/")?;
    let (link, sent, assumed) = in_browser(async |browser| {
        open(&browser, &site.address).await?;
        browser.value("document.querySelector('pintle-calculator').setAttribute('units', 'us') ?? true").await?;
        type_into(&browser, "leaf.mass_kg", "353.7").await?;
        type_into(&browser, "leaf.length_m", "10' 6 1/2\"").await?;
        browser.wait_for(&format!("{JOB}.leaf.mass_kg !== 160 && {JOB}.title.startsWith('Gate of')")).await?;
        let link = link(&browser).await?;
        // The same in the picture: a code of one path, four modules of quiet zone.
        let drawn = browser.value(&format!("{}.getAttribute('d').length > 1000", jobs(".qr path"))).await?;
        assert_eq!(drawn, true);
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        let requests = browser.requests().await?;
        assert!(requests.iter().all(|url| !url.contains("job=")), "{requests:#?}");
        open_groups(&browser).await?;
        let assumed = browser.value(TAGS);
        Ok((link, on_show(&browser).await?, assumed.await?))
    })
    .await?;
    let fragment = link.split_once('#').expect("a fragment").1;
    assert!(fragment.len() < 300, "{} bytes", fragment.len());

    in_browser(async |browser| {
        open(&browser, &link).await?;
        browser.wait_for(&format!("{JOB}.leaf.mass_kg !== 160")).await?;
        browser.wait_for(READY).await?;
        assert_eq!(on_show(&browser).await?, sent);
        is_the_plan(&browser, &planned(&sent).1).await?;
        // What the sender typed is not assumed here either, and the rest still is.
        open_groups(&browser).await?;
        browser.wait_for(&format!("{TAGS} === {assumed}")).await?;
        assert_eq!(browser.value("document.querySelector('pintle-calculator').record.system").await?, "us");
        // The address is clear: a reload brings back what has been typed since, not the link.
        assert_eq!(browser.value("location.hash").await?, "");
        type_into(&browser, "leaf.mass_kg", "400").await?;
        browser.reload().await?;
        browser.wait_for(READY).await?;
        browser
            .wait_for("document.querySelector('pintle-calculator').record.typed['leaf.mass_kg']?.text === '400'")
            .await
    })
    .await
}

/// Damaged, hostile, newer, and no job at all: each is told, and what is typed stays.
#[tokio::test]
async fn a_bad_link_is_told_and_takes_nothing_away() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        let pack = |value: Value| packed::pack(&serde_json::from_value(value).expect("a document"));
        let good = pack(starting_job());
        let newer_frame = include_str!("../fixtures/newer.link").trim();
        let bad = [
            ("".to_owned(), "damaged"),
            (good[..good.len() - 5].to_owned(), "damaged"),
            (format!("{good}<script>"), "damaged"),
            ("A".repeat(3_000), "damaged"),
            (newer_frame.to_owned(), "newer version"),
            (pack(json!({ "schema": NEWER, "gates": [] })), "newer version"),
            (pack(json!([])), "This is not a job"),
            (pack(json!({ "schema": 1 })), "leaf"),
        ];
        // At the start of a visit: the page is there, with its example.
        open(&browser, &format!("{}#job={}", site.address, bad[1].0)).await?;
        browser.wait_for(&format!("!({}?.hidden ?? true)", jobs(".job-refused"))).await?;
        assert_eq!(browser.value(&format!("{JOB}.leaf.mass_kg")).await?, 160);
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        // While something is typed, even half a number.
        type_into(&browser, "leaf.mass_kg", "21x").await?;
        let before = browser.value("JSON.stringify(document.querySelector('pintle-calculator').record)").await?;
        for (packed, word) in bad {
            browser.value(&format!("{}.hidden = true", jobs(".job-refused"))).await?;
            browser.value(&format!("(location.hash = 'job={packed}') && true")).await?;
            browser.wait_for(&format!("!{}.hidden", jobs(".job-refused"))).await?;
            let refused = told(&browser, ".job-refused").await?;
            assert!(refused.contains(word) && refused.contains("stays as it is"), "{word} in {refused}");
            let now = browser.value("JSON.stringify(document.querySelector('pintle-calculator').record)").await?;
            assert_eq!(now, before, "{packed}");
        }
        // A good one then opens beside it, and the way back leads to what was typed.
        browser.value(&format!("(location.hash = 'job={good}') && true")).await?;
        browser.wait_for(&format!("{}.textContent.includes('Opened')", jobs(".job-said"))).await?;
        press(&browser, ".job-line + .job-line .move").await?;
        browser
            .wait_for("document.querySelector('pintle-calculator').record?.typed['leaf.mass_kg']?.text === '21x'")
            .await
    })
    .await
}

/// Opens what stands in the address's fragment, as a click on a link does while the page is open.
async fn follow(browser: &Browser, link: &str, word: &str) -> Result<()> {
    let fragment = link.split_once('#').expect("a fragment").1;
    browser.value(&format!("(location.hash = {}) && true", json!(fragment))).await?;
    browser.wait_for(&format!("{}.textContent.includes({})", jobs(".job-said"), json!(word))).await?;
    browser.wait_for(READY).await
}

/// The job on show as its file has it.
async fn file(browser: &Browser) -> Result<String> {
    let text =
        "(({ job, record }) => JSON.stringify({ ...job, entry: record }))(document.querySelector('pintle-calculator'))";
    Ok(browser.value(text).await?.as_str().unwrap_or_default().to_owned())
}

/// One job stays one, by whichever way it comes back; another version of it is another job, under a name of its own.
#[tokio::test]
async fn a_link_and_a_file_of_one_job_leave_one_job() -> Result<()> {
    let site = Site::start(&setting::dist()?, "/")?;
    let (link, saved) = in_browser(async |browser| {
        open(&browser, &site.address).await?;
        keep(&browser, "210").await?;
        show_list(&browser).await?;
        rename(&browser, "Yard").await?;
        let (link, saved) = (link(&browser).await?, file(&browser).await?);
        follow(&browser, &link, "kept here already").await?;
        drop_file(&browser, "yard.json", &saved).await?;
        browser.wait_for(&format!("{}.textContent.includes('kept here already')", jobs(".job-said"))).await?;
        assert_eq!(names(&browser).await?, json!(["Yard"]));

        keep(&browser, "220").await?;
        browser.wait_for(&format!("{}.textContent === 'Yard'", jobs(".here .job-open"))).await?;
        follow(&browser, &link, "Opened").await?;
        browser.wait_for(&format!("{}.textContent === 'Yard (copy)'", jobs(".here .job-open"))).await?;
        follow(&browser, &link, "kept here already").await?;
        assert_eq!(names(&browser).await?, json!(["Yard (copy)", "Yard"]));
        assert_eq!(browser.value(&format!("{JOB}.leaf.mass_kg")).await?, json!(210));
        Ok((link, saved))
    })
    .await?;

    // On another device, by its first visit, in units of its own: nothing but that job.
    in_browser(async |browser| {
        browser.open(&format!("{}embed.html", site.address)).await?;
        browser.value("localStorage.setItem('pintle-shown', JSON.stringify({ units: 'us' })) ?? true").await?;
        open(&browser, &link).await?;
        browser.wait_for(&format!("{JOB}?.leaf.mass_kg === 210")).await?;
        browser.wait_for(&format!("{}.textContent.includes('Opened')", jobs(".job-said"))).await?;
        show_list(&browser).await?;
        assert_eq!(names(&browser).await?, json!(["Yard"]));
        browser.value("document.querySelector('pintle-calculator').setAttribute('units', 'metric') ?? true").await?;
        follow(&browser, &link, "kept here already").await?;
        assert_eq!(names(&browser).await?, json!(["Yard"]));
        // The file has what was typed besides: it comes to the job there is.
        let typed = "document.querySelector('pintle-calculator').record.typed['leaf.mass_kg']?.text ?? null";
        assert_eq!(browser.value(typed).await?, Value::Null);
        drop_file(&browser, "yard.json", &saved).await?;
        browser.wait_for(&format!("({typed}) === '210'")).await?;
        browser.wait_for(&format!("{}.textContent.includes('kept here already')", jobs(".job-said"))).await?;
        assert_eq!(names(&browser).await?, json!(["Yard"]));
        Ok(())
    })
    .await
}
