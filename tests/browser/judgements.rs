//! What was judged opens from the verdict: a subject at a time, its state, what was found, the one thing to do, the way to the field and back.

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};

use crate::page::{READY, at_step, choose, computed, element, open_group, part, press, starting_job, text, type_into};

const CALCULATOR: &str = "document.querySelector('pintle-calculator')";

async fn begin(browser: &Browser, site: &Site, job: &Value) -> Result<()> {
    browser.resize(360, 740, 2.0).await?;
    browser.open(&site.address).await?;
    browser.wait_for(READY).await?;
    browser
        .value(&format!(
            "void {CALCULATOR}.addEventListener('pintle-plan', (event) => (window.told = event.detail)) ?? true"
        ))
        .await?;
    browser.value(&format!("void ({CALCULATOR}.job = {job}) ?? true")).await?;
    let rated = &job["operator"]["rated_torque_n_m"];
    browser.wait_for(&format!("{CALCULATOR}.job?.operator.rated_torque_n_m === {rated} && {READY}")).await?;
    computed(browser).await
}

fn rated(rated_n_m: f64) -> Value {
    let mut job = starting_job();
    job["operator"]["rated_torque_n_m"] = json!(rated_n_m);
    job["operator"]["peak_torque_n_m"] = json!(1200);
    job
}

/// The mark and the words of the header's line, and what the element and its last event say.
async fn header(browser: &Browser) -> Result<(String, String, Value, Value)> {
    computed(browser).await?;
    let mark = browser.value(&format!("{}.dataset.verdict", part("[part=verdict]"))).await?;
    let says = text(browser, "[part=verdict] .said-words").await?;
    let of = |plan: &str| format!("{plan}?.overall ? [{plan}.overall.about, {plan}.overall.state] : null");
    let element = browser.value(&of(&format!("{CALCULATOR}.plan"))).await?;
    let event = browser.value(&of("window.told?.plan")).await?;
    Ok((mark.as_str().unwrap_or_default().into(), says, element, event))
}

async fn row(browser: &Browser, about: &str) -> Result<String> {
    text(browser, &format!("[part=judgements] [data-about={about}]")).await
}

#[tokio::test]
async fn the_verdict_opens_what_was_judged_and_leads_to_a_field_and_back() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        begin(&browser, &site, &rated(400.0)).await?;
        assert_eq!(header(&browser).await?.1, "Tight: torque");
        browser.value("(window.scrollTo(0, 900), true)").await?;
        computed(&browser).await?;
        let before = browser.value("scrollY").await?;
        element(&browser, "[part=verdict] .says").await?.click().await?;
        browser.wait_for(&format!("{}.open", part("[part=judgements]"))).await?;
        let torque = row(&browser, "torque").await?;
        assert!(
            torque.contains("tight") && torque.contains("asked for") && torque.contains("Choose a stronger operator"),
            "{torque}"
        );
        assert!(row(&browser, "arm").await?.contains("within"));
        let all = text(&browser, "[part=judgements]").await?;
        assert!(all.contains("Not asked for, so not judged: tape errors"), "{all}");
        let wide = browser.value(&format!("{}.scrollWidth - innerWidth", part("[part=judgements]"))).await?;
        assert!(wide.as_i64().is_some_and(|over| over <= 0), "{wide}");
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        // To the field, and back to the very place, the list open again.
        element(&browser, "[part=judgements] [data-to=\"operator.rated_torque_n_m\"]").await?.click().await?;
        let focused = format!("{CALCULATOR}.shadowRoot.activeElement");
        browser
            .wait_for(&format!("{focused}?.id === 'field-operator-rated_torque_n_m' || {focused}?.name === 'operator'"))
            .await?;
        assert_eq!(browser.value(&format!("{}.open", part("[part=judgements]"))).await?, json!(false));
        assert_ne!(browser.value("scrollY").await?, before);
        assert_eq!(browser.value(&format!("{CALCULATOR}.getAttribute('step')")).await?, json!("operator"));
        element(&browser, "[part=verdict] .back").await?.click().await?;
        browser.wait_for(&format!("{}.open", part("[part=judgements]"))).await?;
        assert_eq!(
            browser.value(&format!("{CALCULATOR}.getAttribute('step')")).await?,
            json!("survey"),
            "the step that was left"
        );
        let shown = format!("{}.checkVisibility()", part("[data-step=survey].step"));
        assert_eq!(browser.value(&shown).await?, json!(true));
        assert_eq!(browser.value("scrollY").await?, before);
        element(&browser, "[part=judgements] .close").await?.click().await?;
        assert_eq!(browser.value(&format!("{}.hidden", part("[part=verdict] .back"))).await?, json!(true));
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_part_that_is_begun_is_nowhere_green() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        begin(&browser, &site, &rated(900.0)).await?;
        let (mark, says, element, _) = header(&browser).await?;
        assert_eq!((mark.as_str(), says.as_str()), ("within", "Within: torque and arm"));
        assert_eq!(element, json!(["torque", "within"]));
        open_group(&browser, "storm").await?;
        choose(&browser, "storm.looked_at", "yes").await?;
        type_into(&browser, "storm.speed_m_s", "").await?;
        type_into(&browser, "storm.force_coefficient", "1.3").await?;
        let (mark, says, element, event) = header(&browser).await?;
        assert_eq!((mark.as_str(), says.as_str()), ("none", "Not all counted: storm"));
        assert_eq!((element, event), (json!(["storm", "not_judged"]), json!(["storm", "not_judged"])));
        // The list says what it needs, and leads there.
        press(&browser, "[part=verdict] .says").await?;
        let begun = text(&browser, "[part=judgements] [data-begun=storm]").await?;
        assert!(begun.contains("not yet counted, needs"), "{begun}");
        assert!(row(&browser, "storm").await?.contains("not judged"));
        press(&browser, "[part=judgements] [data-begun=storm] button").await?;
        browser.wait_for(&format!("{CALCULATOR}.shadowRoot.activeElement?.id === 'field-storm-speed_m_s'")).await?;
        // No sheet is made of it.
        at_step(&browser, "hand_over").await?;
        computed(&browser).await?;
        assert_eq!(browser.value(&format!("{}.disabled", part(".show-sheet"))).await?, json!(true));
        type_into(&browser, "storm.speed_m_s", "20").await?;
        browser.wait_for(&format!("{CALCULATOR}.plan?.overall.judged.includes('storm')")).await?;
        let (mark, says, ..) = header(&browser).await?;
        assert!(mark == "within" && says.starts_with("Within: torque, arm") && says.contains("storm"), "{mark} {says}");
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

/// Estimates about people are never green: the header, the element, the event and page 1 of the sheet leave them out of what was judged until both
/// forces are recorded.
#[tokio::test]
async fn people_are_judged_by_recorded_forces_alone() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        let mut job = rated(900.0);
        // Limits that the estimates keep: what is left open is only that nothing was measured.
        job["contact"] = json!({ "static_limit_n": 3000, "dynamic_limit_n": 3000 });
        begin(&browser, &site, &job).await?;
        let state = format!("{CALCULATOR}.plan.judgements.find(({{ about }}) => about === 'people').state");
        assert_eq!(browser.value(&state).await?, json!("not_judged"));
        assert_eq!(header(&browser).await?.1, "Within: torque and arm; not judged: people");
        at_step(&browser, "hand_over").await?;
        computed(&browser).await?;
        let first = async || -> Result<String> {
            press(&browser, ".show-sheet").await?;
            let page = format!("{}?.shadowRoot?.querySelector('.page')", part("[data-pintle-paper]"));
            browser.wait_for(&format!("{page} != null")).await?;
            let said = browser.value(&format!("{page}.textContent")).await?;
            Ok(said.as_str().unwrap_or_default().to_owned())
        };
        let page = first().await?;
        assert!(page.contains("Within: torque and arm; not judged: people"), "{page}");
        assert!(page.contains("Not measured, not judged") && page.contains("Not asked for"), "{page}");
        open_group(&browser, "measured").await?;
        type_into(&browser, "record.dynamic_force_n", "100").await?;
        assert_eq!(browser.value(&state).await?, json!("not_judged"));
        type_into(&browser, "record.static_force_n", "100").await?;
        browser.wait_for(&format!("{state} === 'within'")).await?;
        let (_, says, _, event) = header(&browser).await?;
        assert!(says.contains("people") && !says.contains("not judged"), "{says}");
        assert_eq!(event, json!(["torque", "within"]));
        // A force over its limit is over everywhere.
        type_into(&browser, "record.static_force_n", "4000").await?;
        browser.wait_for(&format!("{state} === 'over'")).await?;
        let (mark, says, _, event) = header(&browser).await?;
        assert_eq!(
            (mark.as_str(), says.as_str(), event),
            ("over", "Stop: what was measured", json!(["record", "over"]))
        );
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}
