//! The steps of the job: one in view, each reached from any other, forwards and back, by its place in the address too; what was said is taken back
//! across them, and what a change did is told.

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::json;
use thirtyfour::Key;

use crate::page::{READY, at_step, computed, part, press, text, type_into};

const NAMES: [&str; 7] = ["survey", "operator", "place", "mark_out", "movement", "protection", "hand_over"];

async fn opened(browser: &Browser, width: u32, query: &str) -> Result<Site> {
    browser.resize(width, if width < 500 { 740 } else { 900 }, 1.0).await?;
    let site = Site::start(&setting::dist()?, "/")?;
    browser.open(&format!("{}{query}", site.address)).await?;
    browser.wait_for(READY).await?;
    Ok(site)
}

async fn in_view(browser: &Browser) -> Result<Vec<String>> {
    let seen = "[...document.querySelector('pintle-calculator').shadowRoot.querySelectorAll('.step')].filter((one) => one.checkVisibility()).map((one) => one.dataset.step)";
    Ok(serde_json::from_value(browser.value(seen).await?)?)
}

async fn wait_at(browser: &Browser, name: &str) -> Result<()> {
    browser.wait_for(&format!("{}?.checkVisibility() === true", part(&format!(".step[data-step={name}]")))).await?;
    assert_eq!(in_view(browser).await?, [name]);
    Ok(())
}

#[tokio::test]
async fn one_step_is_in_view_and_every_other_one_tap_or_two_away() -> Result<()> {
    in_browser(async |browser| {
        let _site = opened(&browser, 360, "").await?;
        assert_eq!(in_view(&browser).await?, ["survey"]);
        // Forwards under the thumb, and back again; nothing of a step is made before it is first in view.
        for name in &NAMES[1..] {
            assert_eq!(browser.value(&format!("{} === null", part(&format!(".step[data-step={name}]")))).await?, true);
            press(&browser, ".bar-row .next").await?;
            wait_at(&browser, name).await?;
            let title = browser.value("document.querySelector('pintle-calculator').shadowRoot.activeElement?.className").await?;
            assert_eq!(title, "step-title", "{name}");
            let over = browser.value("document.documentElement.scrollWidth - innerWidth").await?;
            assert!(over.as_i64().is_some_and(|over| over <= 0), "{name}: {over} px beyond");
        }
        assert_eq!(browser.value(&format!("{} === null", part(".bar-row button.next"))).await?, true);
        press(&browser, ".bar-row .previous").await?;
        wait_at(&browser, "protection").await?;
        // By the list behind the verdict.
        press(&browser, "[part=verdict] .says").await?;
        press(&browser, "[part=judgements] [data-step=place]").await?;
        wait_at(&browser, "place").await?;
        // The address says where: a reload stays, and the browser's way back goes back.
        assert_eq!(browser.value("new URLSearchParams(location.search).get('step')").await?, "place");
        browser.reload().await?;
        browser.wait_for(READY).await?;
        wait_at(&browser, "place").await?;
        browser.value("history.back() ?? true").await?;
        wait_at(&browser, "protection").await?;
        // With room for them they stand along the top.
        browser.resize(1440, 900, 1.0).await?;
        computed(&browser).await?;
        press(&browser, ".steps-nav [data-step=movement]").await?;
        wait_at(&browser, "movement").await?;
        let current = "[...document.querySelector('pintle-calculator').shadowRoot.querySelectorAll('.steps-nav [aria-current=step]')].map((one) => one.dataset.step)";
        assert_eq!(browser.value(current).await?, json!(["movement"]));
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_change_is_told_and_taken_back_across_steps() -> Result<()> {
    in_browser(async |browser| {
        let _site = opened(&browser, 360, "").await?;
        // A job gets its name from the list of jobs, whatever is said in it.
        let job = "(({ title, ...said }) => JSON.stringify(said))(document.querySelector('pintle-calculator').job)";
        let first = browser.value(job).await?;
        let undo = format!("{}.hidden", part(".undo-last"));
        assert_eq!(browser.value(&undo).await?, true);
        type_into(&browser, "leaf.wind_area_m2", "1.25").await?;
        browser.driver.action_chain().send_keys(Key::Tab + "").perform().await?;
        computed(&browser).await?;
        let second = browser.value(job).await?;
        assert!(text(&browser, ".says .reserve").await?.contains(" → ×"), "was and is");
        assert_eq!(browser.value(&undo).await?, false);
        at_step(&browser, "operator").await?;
        press(&browser, "input[name=operator][value=demo-c]").await?;
        assert_ne!(browser.value(job).await?, second);
        at_step(&browser, "place").await?;
        // Which units are shown is nothing that was said: they stay.
        browser.value("document.querySelector('pintle-calculator').setAttribute('units', 'us') ?? true").await?;
        computed(&browser).await?;
        // Four keys in one field were one change; the operator was another.
        press(&browser, ".undo-last").await?;
        let now = format!("{job} === {second}");
        browser.wait_for(&now).await.map_err(|error| error.context("the operator taken back"))?;
        assert_eq!(in_view(&browser).await?, ["place"], "taken back where one stands");
        let us = format!("{}.checked", part("[part=units] input[value=us]"));
        assert_eq!(browser.value(&us).await?, true, "units");
        press(&browser, ".undo-last").await?;
        browser.wait_for(&format!("{job} === {first}")).await?;
        assert_eq!(browser.value(&undo).await?, true);
        at_step(&browser, "survey").await?;
        browser.value("document.querySelector('pintle-calculator').setAttribute('units', 'metric') ?? true").await?;
        computed(&browser).await?;
        assert_eq!(browser.value(&format!("{}.value", part("#field-leaf-wind_area_m2"))).await?, "1.9");
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

/// How high each step is on a phone, everything in it open: printed beside the screens it makes.
#[tokio::test]
async fn heights_of_the_steps_are_told() -> Result<()> {
    in_browser(async |browser| {
        let _site = opened(&browser, 360, "").await?;
        for name in NAMES {
            at_step(&browser, name).await?;
            let high = "document.documentElement.scrollHeight";
            let folded = browser.value(high).await?;
            let all = part(&format!(".step[data-step={name}]"));
            browser
                .value(&format!("[...{all}.querySelectorAll('details')].forEach((one) => (one.open = true)) ?? true"))
                .await?;
            computed(&browser).await?;
            println!("{name}: {folded} px, all of it open {} px", browser.value(high).await?);
            let over = browser.value("document.documentElement.scrollWidth - innerWidth").await?;
            assert!(over.as_i64().is_some_and(|over| over <= 0), "{name}: {over} px beyond");
        }
        Ok(())
    })
    .await
}
