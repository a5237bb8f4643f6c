//! Numbers as people type them at the gate: every spelling is understood and echoed in both systems, what could be two numbers is asked
//! about, the text typed stays, and neither the wheel nor a change of units touches a value.

use pintle_core::units::{Quantity, System, feet_inches, show};
use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::json;
use thirtyfour::Key;

use crate::page::{READY, at_step_of, computed, element, open_group, part, press, text, type_into};

const JOB: &str = "document.querySelector('pintle-calculator').job";

async fn opened(browser: &Browser, units: &str) -> Result<Site> {
    let site = Site::start(&setting::dist()?, "/")?;
    browser.open(&site.address).await?;
    browser.wait_for(READY).await?;
    units_shown(browser, units).await?;
    Ok(site)
}

async fn units_shown(browser: &Browser, units: &str) -> Result<()> {
    browser.value(&format!("document.querySelector('pintle-calculator').setAttribute('units', '{units}')")).await?;
    computed(browser).await
}

fn id(path: &str) -> String {
    format!("#field-{}", path.replace('.', "-"))
}

async fn leave(browser: &Browser, path: &str) -> Result<()> {
    element(browser, &id(path)).await?.send_keys(Key::Tab + "").await?;
    computed(browser).await
}

async fn note(browser: &Browser, path: &str) -> Result<String> {
    text(browser, &format!("{}-note", id(path))).await
}

/// 75 1/2 in is 1.9177 m by the inch of 25.4 mm; the leaf's length takes feet first.
#[tokio::test]
async fn every_spelling_is_understood_and_echoed() -> Result<()> {
    in_browser(async |browser| {
        let _site = opened(&browser, "us").await?;
        open_group(&browser, "arm").await?;
        for typed in ["6' 3-1/2\"", "6ft 3.5in", "75 1/2", "6′3½″", "75,5", "1917.7 mm", "1,9177 m"] {
            type_into(&browser, "arm.bracket_u_m", typed).await?;
            leave(&browser, "arm.bracket_u_m").await?;
            let value = browser.value(&format!("{JOB}.arm.bracket_u_m")).await?.as_f64().expect("a number");
            assert!((value - 1.9177).abs() < 1e-12, "{typed}: {value}");
            // 1.9177 m to three digits is 1918 mm.
            assert_eq!(note(&browser, "arm.bracket_u_m").await?, "= 6'-3 1/2\" (1918\u{a0}mm)", "{typed}");
            assert_eq!(browser.value(&format!("{}.value", part(&id("arm.bracket_u_m")))).await?, typed);
        }
        // Rounded to the tape's sixteenths, then split: 35.99 in is three feet.
        type_into(&browser, "arm.bracket_u_m", "35.99").await?;
        leave(&browser, "arm.bracket_u_m").await?;
        assert!(note(&browser, "arm.bracket_u_m").await?.starts_with("= 3'-0\" ("));
        // The other way round: typed in feet while metric is shown.
        units_shown(&browser, "metric").await?;
        type_into(&browser, "leaf.length_m", "10' 6\"").await?;
        assert_eq!(note(&browser, "leaf.length_m").await?, "= 3.2\u{a0}m (10'-6\")");
        type_into(&browser, "leaf.mass_kg", "400 lb").await?;
        let pounds = 400.0 * 0.453_592_37;
        let [kg, lb] = [System::Metric, System::Us].map(|system| show(pounds, Quantity::Mass, system));
        assert_eq!(note(&browser, "leaf.mass_kg").await?, format!("= {kg} ({lb})"));
        Ok(())
    })
    .await
}

#[tokio::test]
async fn what_could_be_two_numbers_is_asked_about() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let _site = opened(&browser, "metric").await?;
        open_group(&browser, "arm").await?;
        let field = id("arm.bracket_u_m");
        let asked = "[data-path='arm.bracket_u_m'] .meant";
        type_into(&browser, "arm.bracket_u_m", "1,199").await?;
        // Half a number is no reason to ask.
        assert_eq!(browser.value(&format!("{}.hidden", part(asked))).await?, true);
        leave(&browser, "arm.bracket_u_m").await?;
        assert_eq!(browser.value("document.querySelector('pintle-calculator').plan").await?, serde_json::Value::Null);
        let answers = browser.value(&format!("[...{}.children].map((answer) => answer.textContent)", part(asked))).await?;
        assert_eq!(answers, json!(["1199 mm", "1.199 mm"]));
        let summary = text(&browser, "[part=errors]").await?;
        assert!(summary.contains("1,199"), "{summary}");
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());

        press(&browser, &format!("{asked} button:first-child")).await?;
        browser.wait_for(&format!("{JOB}.arm.bracket_u_m === 1.199")).await?;
        browser.wait_for(READY).await?;
        assert_eq!(browser.value(&format!("{}.value", part(&field))).await?, "1,199");
        assert_eq!(browser.value(&format!("{}.hidden", part(asked))).await?, true);
        // The answer belongs to the text: it is kept with it, over a reload of the page as over a new build of the element.
        browser
            .value(
                "(() => { const from = document.querySelector('pintle-calculator'), record = JSON.parse(JSON.stringify(from.record));
                  from.job = from.getAttribute('job'); from.record = record; return true; })()",
            )
            .await?;
        browser.wait_for(&format!("{JOB}.arm.bracket_u_m === 1.199")).await?;
        // Typed again, it is asked again.
        browser.wait_for(&format!("{} !== null", part(&field))).await?;
        open_group(&browser, "arm").await?;
        type_into(&browser, "arm.bracket_u_m", "1,235").await?;
        leave(&browser, "arm.bracket_u_m").await?;
        press(&browser, &format!("{asked} button:last-child")).await?;
        browser.wait_for(&format!("Math.abs({JOB}.arm.bracket_u_m - 0.001235) < 1e-15")).await
    })
    .await
}

/// −250 mm is 9.84 in, which a tape shows as nine and thirteen sixteenths; 3.2 m is 10 ft 5.98 in. Shown, looked into and left, in a
/// thousand changes of units, the number stays what it was: only typing changes a job.
#[tokio::test]
async fn a_length_nobody_typed_is_shown_by_the_tape_and_stays() -> Result<()> {
    in_browser(async |browser| {
        let _site = opened(&browser, "us").await?;
        open_group(&browser, "arm").await?;
        computed(&browser).await?;
        let before = browser.value(&format!("JSON.stringify({JOB})")).await?;
        for (path, shown) in [
            ("arm.shaft_x_m", "−9 13/16\""),
            ("arm.shaft_y_m", "1'-5 11/16\""),
            ("arm.bracket_v_m", "2 3/8\""),
            ("leaf.length_m", "10'-6\""),
        ] {
            at_step_of(&browser, path).await?;
            let value = format!("{}.value", part(&id(path)));
            assert_eq!(browser.value(&value).await?, shown, "{path}");
            // The text says its own units: none stands behind it.
            assert_eq!(text(&browser, &format!("{}-unit", id(path))).await?, "", "{path}");
            press(&browser, &id(path)).await?;
            leave(&browser, path).await?;
            assert_eq!(browser.value(&value).await?, shown, "{path}");
        }
        browser
            .value(
                "(() => { const calculator = document.querySelector('pintle-calculator');
                  for (let turn = 0; turn < 1000; turn += 1) calculator.setAttribute('units', turn % 2 ? 'us' : 'metric'); return true; })()",
            )
            .await?;
        computed(&browser).await?;
        assert_eq!(browser.value(&format!("JSON.stringify({JOB})")).await?, before);
        // What is typed over it is a plain number of the unit that then stands there.
        type_into(&browser, "arm.bracket_v_m", "2.5").await?;
        assert_eq!(text(&browser, &format!("{}-unit", id("arm.bracket_v_m"))).await?, "in");
        let value = browser.value(&format!("{JOB}.arm.bracket_v_m")).await?.as_f64().expect("a number");
        assert!((value - 0.0635).abs() < 1e-12, "{value}");
        Ok(())
    })
    .await
}

#[tokio::test]
async fn neither_units_nor_the_wheel_change_a_value() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(1024, 768, 1.0).await?;
        let _site = opened(&browser, "us").await?;
        open_group(&browser, "arm").await?;
        for (path, typed) in [
            ("arm.crank_m", "2' 10-3/8\""),
            ("arm.link_m", "25 1/16"),
            ("arm.bracket_v_m", "2⅜"),
            ("leaf.length_m", "10ft 5.98in"),
            ("leaf.mass_kg", "353.1"),
        ] {
            type_into(&browser, path, typed).await?;
        }
        // Once somebody has paused, the job gets a name of its own.
        browser.wait_for(&format!("{JOB}.title.startsWith('Gate of')")).await?;
        let before = browser.value(&format!("JSON.stringify({JOB})")).await?;
        let fields = "['crank_m', 'link_m', 'bracket_v_m'].map((name) => document.querySelector('pintle-calculator').shadowRoot.getElementById(`field-arm-${name}`).value)";
        let typed = browser.value(fields).await?;
        browser
            .value(
                "(() => { const calculator = document.querySelector('pintle-calculator');
                  for (let turn = 0; turn < 1000; turn += 1) calculator.setAttribute('units', turn % 2 ? 'us' : 'metric'); return true; })()",
            )
            .await?;
        assert_eq!(browser.value(&format!("JSON.stringify({JOB})")).await?, before);
        assert_eq!(browser.value(fields).await?, typed, "the text typed stays");

        // A wheel turned over a field that has the focus.
        at_step_of(&browser, "arm").await?;
        press(&browser, &id("arm.crank_m")).await?;
        let at = browser.value(&format!("{}.getBoundingClientRect().toJSON()", part(&id("arm.crank_m")))).await?;
        let (x, y) = (at["x"].as_f64().expect("x") + 20.0, at["y"].as_f64().expect("y") + 20.0);
        for turned in [120, -120] {
            let wheel = json!({ "type": "mouseWheel", "x": x, "y": y, "deltaX": 0, "deltaY": turned });
            browser.driver.cdp().send_raw("Input.dispatchMouseEvent", wheel).await?;
        }
        computed(&browser).await?;
        assert_eq!(browser.value(&format!("JSON.stringify({JOB})")).await?, before);
        let kinds = browser.value("[...document.querySelector('pintle-calculator').shadowRoot.querySelectorAll('.field input')].map(({ type }) => type)").await?;
        assert!(kinds.as_array().is_some_and(|kinds| kinds.len() > 10 && kinds.iter().all(|kind| kind == "text" || kind == "date")), "{kinds}");
        Ok(())
    })
    .await
}

/// Limits are told in the units shown, and what is told is itself allowed: 1 to 5,000 kg is 2.3 to 11,023 lb (1 kg = 2.2046 lb).
#[tokio::test]
async fn a_range_is_told_in_the_units_shown() -> Result<()> {
    in_browser(async |browser| {
        let _site = opened(&browser, "us").await?;
        type_into(&browser, "leaf.mass_kg", "2").await?;
        assert_eq!(
            browser.value(&format!("{}.hidden", part("#field-leaf-mass_kg-error"))).await?,
            true,
            "not while typing"
        );
        leave(&browser, "leaf.mass_kg").await?;
        let told = text(&browser, "#field-leaf-mass_kg-error").await?;
        for needed in ["Leaf weight", "2\u{a0}lb", "2.3\u{a0}lb", "11023\u{a0}lb", "353\u{a0}lb"] {
            assert!(told.contains(needed), "{needed} in {told}");
        }
        // The summary leads to the field.
        press(&browser, "[part=errors] .link").await?;
        let focused = "document.querySelector('pintle-calculator').shadowRoot.activeElement?.id";
        assert_eq!(browser.value(focused).await?, "field-leaf-mass_kg");
        type_into(&browser, "leaf.mass_kg", "2.3").await?;
        leave(&browser, "leaf.mass_kg").await?;
        browser.wait_for(READY).await
    })
    .await
}

/// Numbers are written as the nearest `lang` has them, its region included; what is typed may have either mark.
#[tokio::test]
async fn numbers_follow_the_language() -> Result<()> {
    in_browser(async |browser| {
        let _site = opened(&browser, "metric").await?;
        let lang = "document.querySelector('pintle-calculator').setAttribute";
        let value = format!("{}.value", part("#field-leaf-length_m"));
        for (tag, shown, typed) in [("es", "3,2", "3.45"), ("es-MX", "3.2", "3,45"), ("en", "3.2", "3,45")] {
            browser.value(&format!("{lang}('lang', '{tag}')")).await?;
            browser.wait_for(&format!("{value} === '{shown}'")).await?;
            type_into(&browser, "leaf.length_m", typed).await?;
            browser.wait_for(&format!("{JOB}.leaf.length_m === 3.45")).await?;
            let feet = feet_inches(3.45, 16);
            let metres = if tag == "es" { "3,45\u{a0}m" } else { "3.45\u{a0}m" };
            assert_eq!(note(&browser, "leaf.length_m").await?, format!("= {metres} ({feet})"));
            press(&browser, "[data-path='leaf.length_m'] .quiet").await?;
        }
        Ok(())
    })
    .await
}
