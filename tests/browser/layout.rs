//! The layouts a person chooses: at the gate with gloves in the sun, and on the wall of a classroom.

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::json;

use crate::page::{READY, at_step, computed, element, part, press, steps};

/// Smaller than a gloved thumb wants, CSS px: interactive elements that are seen, on the page and in the calculator. A radio button's
/// target is its label, and so is that of a box to tick.
const SMALL: &str = "(() => {
    const roots = [document, ...['pintle-calculator', 'pintle-jobs'].map((name) => document.querySelector(name).shadowRoot)];
    const all = roots.flatMap((root) => [...root.querySelectorAll('button, a, summary, select, label.option, textarea, [role=slider], input:not([type=radio], label.option input)')]);
    const small = all.map((target) => [target, target.getBoundingClientRect()])
        .filter(([, { width, height }]) => width > 0 && height > 0 && (width < 64 || height < 64));
    return { seen: all.length, small: small.map(([target, { width, height }]) => `${width} x ${height}: ${target.outerHTML.slice(0, 120)}`) };
})()";

/// Lettering below a size, CSS px: text that is seen.
const LETTERING: &str = "(() => {
    const found = new Set();
    for (const root of [document.body, ...['pintle-calculator', 'pintle-jobs'].map((name) => document.querySelector(name).shadowRoot)]) {
        const texts = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
        while (texts.nextNode()) {
            const { parentElement } = texts.currentNode;
            if (!texts.currentNode.data.trim() || !parentElement?.checkVisibility() || parentElement.closest('.status, style, script')) continue;
            const size = parseFloat(getComputedStyle(parentElement).fontSize);
            if (size < 24) found.add(`${size}: ${parentElement.outerHTML.slice(0, 100)}`);
        }
    }
    return [...found];
})()";

async fn opened(browser: &Browser, query: &str) -> Result<Site> {
    let site = Site::start(&setting::dist()?, "/")?;
    browser.open(&format!("{}{query}", site.address)).await?;
    browser.wait_for(READY).await?;
    browser.wait_for(&format!("{} !== null", part("[part=form]"))).await?;
    Ok(site)
}

/// Opens everything that is folded in a step.
async fn open_everything(browser: &Browser, step: &str) -> Result<()> {
    at_step(browser, step).await?;
    let all = "[...document.querySelector('pintle-calculator').shadowRoot.querySelectorAll('details')]";
    browser.value(&format!("{all}.forEach((group) => (group.open = true)) ?? true")).await?;
    computed(browser).await
}

async fn is_as_wide_as_the_screen(browser: &Browser) -> Result<()> {
    let over = browser.value("document.documentElement.scrollWidth - innerWidth").await?;
    assert!(over.as_i64().expect("a number") <= 0, "{over} px beyond the screen");
    Ok(())
}

#[tokio::test]
async fn at_the_gate_targets_are_large_text_is_strong_and_the_verdict_stays() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let _site = opened(&browser, "").await?;
        // Chosen as a person does, in what the verdict opens, and kept.
        press(&browser, "[part=verdict] .says").await?;
        assert!(element(&browser, "[part=layout] select").await?.is_displayed().await?);
        let choice = part("[part=layout] select");
        browser.value(&format!("(() => {{ const list = {choice}; list.value = 'field'; list.dispatchEvent(new Event('change')); return true; }})()")).await?;
        computed(&browser).await?;
        browser.reload().await?;
        browser.wait_for(READY).await?;
        browser.wait_for("document.querySelector('pintle-calculator').getAttribute('layout') === 'field'").await?;
        let mut seen = 0;
        for (step, (width, height)) in steps().flat_map(|step| [(step, (360, 740)), (step, (320, 568))]) {
            browser.resize(width, height, 2.0).await?;
            open_everything(&browser, step).await?;
            let found = browser.value(SMALL).await?;
            seen += found["seen"].as_u64().unwrap_or(0);
            assert_eq!(found["small"], json!([]), "{step} at {width} px");
            is_as_wide_as_the_screen(&browser).await?;
            // Wherever the calculator is scrolled to, word and figures are on the screen, in its lower half.
            for share in [0.0, 0.3, 0.6, 0.9] {
                let at = format!("(() => {{ const sheet = {}.getBoundingClientRect(); scrollBy(0, sheet.top + {share} * (sheet.height - innerHeight));
                    const {{ top, bottom }} = {}.getBoundingClientRect(); return [top > innerHeight / 2, bottom <= innerHeight]; }})()",
                    part(".sheet"), part("[part=verdict-word]"));
                assert_eq!(browser.value(&at).await?, json!([true, true]), "{step} at {width} px, {share}");
            }
        }
        // More than sixty a width, all steps together.
        assert!(seen > 120, "{seen}");
        for (step, theme) in steps().flat_map(|step| [(step, "light"), (step, "dark")]) {
            browser.prefer(&[("prefers-color-scheme", theme)]).await?;
            at_step(&browser, step).await?;
            // At the end, where the verdict rests in its own place and hides nothing.
            browser.value("scrollTo(0, document.body.scrollHeight) ?? true").await?;
            computed(&browser).await?;
            assert_eq!(browser.strict_faults().await?, Vec::<String>::new(), "{step}, {theme}");
        }
        Ok(())
    })
    .await
}

#[tokio::test]
async fn on_the_wall_all_lettering_is_large() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(1024, 768, 1.0).await?;
        let _site = opened(&browser, "?layout=projector").await?;
        // Everything to be looked at is on one screen; what is asked slides over it when it is wanted.
        for step in steps() {
            at_step(&browser, step).await?;
            assert_eq!(browser.value(LETTERING).await?, json!([]), "{step}");
            let sheet = browser.value(&format!("{}.getBoundingClientRect().height", part(".sheet"))).await?;
            assert!(sheet.as_f64().is_some_and(|high| high <= 768.0), "{step}: {sheet}");
        }
        press(&browser, ".questions").await?;
        for step in steps() {
            open_everything(&browser, step).await?;
            assert!(
                element(&browser, &format!(".step[data-step={step}] .step-title")).await?.is_displayed().await?,
                "{step}"
            );
            assert_eq!(browser.value(LETTERING).await?, json!([]), "{step}");
            is_as_wide_as_the_screen(&browser).await?;
            // A drawing is seen whole beside the verdict, and its letters are as large: the canvas is lettered at 12 px and drawn twice as large.
            let high = format!(
                "[...{}.querySelectorAll('.drawing')].map((one) => one.clientHeight + {}.clientHeight)",
                part(".stage"),
                part("[part=verdict]")
            );
            let high: Vec<f64> = serde_json::from_value(browser.value(&high).await?)?;
            assert!(high.len() >= 3 && high.iter().all(|high| *high <= 768.0), "{step}: {high:?}");
            assert_eq!(browser.faint_text().await?, Vec::<String>::new(), "{step}");
        }
        Ok(())
    })
    .await
}
