//! One step at a time: made when it is first in view, found again by its address, led to and back; what is changed in one is taken back in any.

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};

use crate::page::{READY, at_step, computed, element, part, press, steps, type_into};

const CALCULATOR: &str = "document.querySelector('pintle-calculator')";

/// Names of the steps that were made, in their order on the page, and of those in view.
async fn made(browser: &Browser) -> Result<(Value, Value)> {
    let all = |which: &str| {
        format!("[...{CALCULATOR}.shadowRoot.querySelectorAll('.step{which}')].map((one) => one.dataset.step)")
    };
    Ok((browser.value(&all("")).await?, browser.value(&all(":not([hidden])")).await?))
}

async fn in_view(browser: &Browser, step: &str) -> Result<()> {
    browser.wait_for(&format!("{}?.checkVisibility() === true", part(&format!(".step[data-step={step}]")))).await?;
    computed(browser).await
}

#[tokio::test]
async fn a_step_is_made_when_it_is_in_view_and_kept_in_the_address() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        browser.open(&format!("{}?step=place", site.address)).await?;
        browser.wait_for(READY).await?;
        in_view(&browser, "place").await?;
        assert_eq!(made(&browser).await?, (json!(["place"]), json!(["place"])));
        // The hazards are named, and spelled out before any work on the gate.
        let spelled = format!("{}.checkVisibility()", part(".cautions"));
        assert_eq!(browser.value(&spelled).await?, json!(false));
        assert!(element(&browser, ".cautions-named").await?.is_displayed().await?);
        // On by the bar under the thumb: the title has the keyboard, and the address names the step.
        element(&browser, ".bar-row .next").await?.click().await?;
        in_view(&browser, "mark_out").await?;
        assert_eq!(browser.value(&spelled).await?, json!(true));
        let focused = format!("{CALCULATOR}.shadowRoot.activeElement?.closest('.step')?.dataset.step");
        assert_eq!(browser.value(&focused).await?, json!("mark_out"));
        assert_eq!(browser.value("new URLSearchParams(location.search).get('step')").await?, json!("mark_out"));
        // Back by the browser's own way, to the step before what was made later; a reload stays there.
        at_step(&browser, "survey").await?;
        assert_eq!(made(&browser).await?, (json!(["survey", "place", "mark_out"]), json!(["survey"])));
        for earlier in ["mark_out", "place"] {
            browser.value("history.back() ?? true").await?;
            in_view(&browser, earlier).await?;
        }
        browser.reload().await?;
        browser.wait_for(READY).await?;
        in_view(&browser, "place").await?;
        assert_eq!(made(&browser).await?.1, json!(["place"]));
        // With room all of them stand along the top, each with its state.
        browser.resize(1440, 900, 1.0).await?;
        let ways = format!("[...{}.querySelectorAll('button')].filter((one) => one.checkVisibility() && one.querySelector('.step-state').textContent.trim() !== '')", part(".steps-nav"));
        assert_eq!(browser.value(&format!("{ways}.map((one) => one.dataset.step)")).await?, json!(steps().collect::<Vec<_>>()));
        assert_eq!(browser.value(&format!("{ways}.filter((one) => one.ariaCurrent === 'step').map((one) => one.dataset.step)")).await?, json!(["place"]));
        press(&browser, ".steps-nav [data-step=hand_over]").await?;
        in_view(&browser, "hand_over").await?;
        // An address that names none is that of the first.
        browser.open(&format!("{}?step=nowhere", site.address)).await?;
        browser.wait_for(READY).await?;
        in_view(&browser, "survey").await?;
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

#[tokio::test]
async fn what_was_changed_is_told_and_taken_back_from_any_step() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        let undo = format!("{}.checkVisibility()", part(".undo-last"));
        assert_eq!(browser.value(&undo).await?, json!(false), "nothing was changed yet");
        // The name of the job is no answer to a question: it is kept, and comes of itself.
        let said = format!("JSON.stringify({{ ...{CALCULATOR}.job, title: null }})");
        let before = browser.value(&said).await?;
        // Keys in one field are one change; another field is another.
        type_into(&browser, "leaf.mass_kg", "210").await?;
        type_into(&browser, "leaf.length_m", "3.6").await?;
        let reserve = format!("{}.textContent", part("[part=verdict] .reserve"));
        assert!(browser.value(&reserve).await?.as_str().is_some_and(|said| said.contains('→')), "was and is");
        at_step(&browser, "protection").await?;
        press(&browser, ".undo-last").await?;
        browser.wait_for(&format!("{CALCULATOR}.job.leaf.length_m === 3.2")).await?;
        assert_eq!(browser.value(&format!("{CALCULATOR}.job.leaf.mass_kg")).await?, json!(210));
        in_view(&browser, "protection").await?;
        press(&browser, ".undo-last").await?;
        browser.wait_for(&format!("{said} === {before}")).await?;
        assert_eq!(browser.value(&undo).await?, json!(false), "nothing is left to take back");
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}
