//! A person does a whole job by the words that are seen: no name, path or selector of the page is known to them. What it takes in taps, keys, fields
//! and screens is printed, not asserted; asserted is that they get there, and that what stands at the end is of what they typed.

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::Value;
use thirtyfour::Key;

use crate::page::{READY, computed, is_the_plan, planned};

/// Height and width of the phone, CSS px.
const SCREEN: (u32, u32) = (360, 740);

/// Finds what is seen by its words: a button, the head of a group, a box to tick, a field by its label; from the place in view downwards first, as
/// somebody reads.
const SEEN: &str = "window.seen ??= (words, field, more) => {
    const roots = [document, ...['pintle-jobs', 'pintle-calculator'].map((name) => document.querySelector(name)?.shadowRoot).filter(Boolean)];
    const dialog = roots.map((root) => root.querySelector('dialog[open]')).find(Boolean);
    const kinds = field ? 'label[for]' : 'button, summary, label.option, a';
    const all = (dialog ? [dialog] : roots).flatMap((root) => [...root.querySelectorAll(kinds)]);
    const text = (one) => one.innerText.replace(/\\s+/g, ' ').replace(/^[‹›▶ ]+|[‹› ]+$/g, '').trim();
    const within = (one) => !more || (one.closest('fieldset, details, section')?.innerText ?? '').includes(more);
    const found = all.filter((one) => one.checkVisibility() && text(one).startsWith(words) && within(one));
    const best = found.find((one) => text(one) === words) ?? found[0];
    if (!best) throw new Error(`nothing seen that says ${words}: ${all.filter((one) => one.checkVisibility()).map(text).join(' | ').slice(0, 900)}`);
    return field ? best.getRootNode().getElementById(best.htmlFor) : best;
};";

/// What it took.
#[derive(Default)]
struct Person {
    taps: u32,
    keys: usize,
    fields: u32,
    scrolled_px: f64,
}

impl Person {
    /// Brings something into view as a finger does, and taps its middle.
    async fn reach(&mut self, browser: &Browser, words: &str, field: bool, more: &str) -> Result<()> {
        let find = format!("(() => {{ {SEEN} return window.seen({words:?}, {field}, {more:?}); }})()");
        let way = browser
            .value(&format!(
                "(() => {{ const before = scrollY, one = {find}; const {{ top, bottom }} = one.getBoundingClientRect();
                    if (top < 60 || bottom > innerHeight - 70) one.scrollIntoView({{ block: 'center', behavior: 'instant' }});
                    return Math.abs(scrollY - before); }})()"
            ))
            .await?;
        self.scrolled_px += way.as_f64().unwrap_or(0.0);
        let found = browser.driver.execute(format!("return {find}"), Vec::new()).await?.element()?;
        found.click().await?;
        self.taps += 1;
        computed(browser).await
    }

    async fn tap(&mut self, browser: &Browser, words: &str) -> Result<()> {
        self.reach(browser, words, false, "").await
    }

    /// Taps what stands in a group of these words.
    async fn tap_in(&mut self, browser: &Browser, group: &str, words: &str) -> Result<()> {
        self.reach(browser, words, false, group).await
    }

    async fn fill(&mut self, browser: &Browser, label: &str, typed: &str) -> Result<()> {
        self.reach(browser, label, true, "").await?;
        browser.driver.execute("let one = document.activeElement; while (one.shadowRoot) one = one.shadowRoot.activeElement; one.select()", Vec::new()).await?;
        browser.driver.action_chain().send_keys(typed).send_keys(Key::Enter + "").perform().await?;
        self.fields += 1;
        self.keys += typed.chars().count() + 1;
        computed(browser).await
    }

    async fn fill_all(&mut self, browser: &Browser, typed: &[(&str, &str)]) -> Result<()> {
        for (label, text) in typed {
            self.fill(browser, label, text).await?;
        }
        Ok(())
    }

    /// Adds something that stands around, from and to along the closed leaf and square to it.
    async fn add_obstacle(&mut self, browser: &Browser, number: u32, sides: [&str; 4]) -> Result<()> {
        self.tap(browser, "Add an obstacle").await?;
        let lines = ["along the closed leaf, from the hinge line", "square to the closed leaf, from the axis line"];
        let ends = lines.iter().flat_map(|line| ["from", "to"].map(|end| format!("Obstacle {number}: {line}, {end}")));
        for (label, typed) in ends.zip(sides) {
            self.fill(browser, &label, typed).await?;
        }
        Ok(())
    }

    fn tell(&self, what: &str) {
        let screens = (self.scrolled_px / f64::from(SCREEN.1)).ceil();
        println!("{what}: {} taps, {} keys, {} fields, {screens} screens scrolled", self.taps, self.keys, self.fields);
    }
}

async fn opened(browser: &Browser) -> Result<Site> {
    browser.resize(SCREEN.0, SCREEN.1, 2.0).await?;
    let site = Site::start(&setting::dist()?, "/")?;
    browser.open(&site.address).await?;
    browser.wait_for(READY).await?;
    Ok(site)
}

/// The job the page made of it, planned natively: the page has the same plan.
async fn job_of(browser: &Browser) -> Result<Value> {
    browser.wait_for(READY).await?;
    let job = browser.value("JSON.stringify(document.querySelector('pintle-calculator').job)").await?;
    let job: Value = serde_json::from_str(job.as_str().unwrap_or_default())?;
    is_the_plan(browser, &planned(&job).1).await?;
    Ok(job)
}

/// Text of the step in view.
async fn in_view(browser: &Browser) -> Result<String> {
    let said = "document.querySelector('pintle-calculator').shadowRoot.querySelector('.step:not([hidden])').innerText";
    Ok(browser.value(said).await?.as_str().unwrap_or_default().replace('\u{a0}', " "))
}

/// Waits for what the search found.
async fn found(browser: &Browser) -> Result<()> {
    browser
        .wait_for("document.querySelector('pintle-calculator').shadowRoot.querySelector('.take.by-search') !== null")
        .await
}

/// Three numbers, an operator, "where do I drill", on stated assumptions.
#[tokio::test]
async fn the_first_minute_leads_to_marks() -> Result<()> {
    in_browser(async |browser| {
        let _site = opened(&browser).await?;
        let mut person = Person::default();
        person.fill(&browser, "Leaf weight", "180").await?;
        person.fill(&browser, "Leaf length", "3.4").await?;
        person.fill(&browser, "Area the wind meets", "1.6").await?;
        person.tap(&browser, "Operator").await?;
        person.tap(&browser, "Demo operator C").await?;
        person.tap(&browser, "Place").await?;
        found(&browser).await?;
        person.tap(&browser, "Take the arm found").await?;
        person.tap(&browser, "Mark out").await?;
        person.tell("the first minute");
        let said = in_view(&browser).await?;
        assert!(said.contains("along, from the hinge line") && said.contains("Not to be drilled yet"), "{said}");
        let job = job_of(&browser).await?;
        assert_eq!(
            (job["leaf"]["mass_kg"].as_f64(), job["operator"]["rated_torque_n_m"].as_f64()),
            (Some(180.0), Some(600.0))
        );
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

/// A leaf of 14 ft, pulls measured, a post and a wall; in US units, up to numbered marks.
#[tokio::test]
async fn a_survey_in_feet_and_inches_leads_to_numbered_marks() -> Result<()> {
    in_browser(async |browser| {
        let _site = opened(&browser).await?;
        let mut person = Person::default();
        person.tap(&browser, "US").await?;
        person.fill_all(&browser, &[("Leaf weight", "234"), ("Leaf length", "14'"), ("Area the wind meets", "12")]).await?;
        person.tap(&browser, "Hinges").await?;
        person.tap(&browser, "Pulls measured on the leaf").await?;
        person.fill_all(&browser, &[("Steady pull to open", "12"), ("Steady pull to close", "11"), ("Hinge to the point of pull", "13' 6"), ("Leaf angle while pulling", "45")]).await?;
        person.tap(&browser, "Working wind").await?;
        person.fill(&browser, "Gust speed at the gate", "25").await?;
        person.tap(&browser, "What stands around").await?;
        person.tap_in(&browser, "Include what stands around", "Yes").await?;
        person.fill_all(&browser, &[("Leaf’s face on the opening side", "1"), ("Thickness of the leaf", "2")]).await?;
        person.add_obstacle(&browser, 1, ["-10", "-4", "-3", "3"]).await?;
        person.add_obstacle(&browser, 2, ["-70", "-45", "-40", "60"]).await?;
        person.tap(&browser, "Operator").await?;
        person.tap(&browser, "Demo operator C").await?;
        person.tap(&browser, "Place").await?;
        found(&browser).await?;
        person.tap(&browser, "Take the arm found").await?;
        person.tap(&browser, "Mark out").await?;
        person.tap(&browser, "Base, levels and tubes").await?;
        person.tap_in(&browser, "Include base, levels and tubes", "Yes").await?;
        person.fill_all(&browser, &[("Anchor holes, spacing along the crank", "10"), ("Anchor holes, spacing across", "6")]).await?;
        person.tell("from opening to numbered marks");
        let said = in_view(&browser).await?;
        for hole in 1..=4 {
            assert!(said.contains(&format!("Anchor hole {hole}")), "{hole} in {said}");
        }
        assert!(said.contains("check: to the latch end") && !said.contains("Not to be drilled yet"), "{said}");
        // As a tape has it: feet, inches and fractions, never a decimal inch, never a minus.
        let marks = "[...document.querySelector('pintle-calculator').shadowRoot.querySelectorAll('.mark-card dd')].map((one) => one.innerText)";
        let marks: Vec<String> = serde_json::from_value(browser.value(marks).await?)?;
        assert!(marks.len() >= 20 && marks.iter().all(|mark| !mark.replace("'-", "'").contains(['.', '−', '-'])), "{marks:?}");
        let job = job_of(&browser).await?;
        assert_eq!(job["obstacles"].as_array().map(Vec::len), Some(2));
        assert!((job["leaf"]["length_m"].as_f64().unwrap_or_default() - 14.0 * 0.3048).abs() < 1e-12);
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}
