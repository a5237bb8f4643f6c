//! The main job as a person does it: type the three numbers, pick an operator, read, drag, go offline, and again. What the page
//! shows is held to the native plan of the same job.

use pintle_core::units::{Quantity, System, show};
use pintle_core::{job::Job, plan::Plan};
use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};
use thirtyfour::Key;

use crate::page::{
    READY, at_step, computed, element, is_the_plan, part, planned, starting_job, take_operator, text, type_into,
};

/// The same job planned natively: the starting job with three numbers and an operator of the demonstration list.
fn native(mass_kg: f64, length_m: f64, wind_area_m2: f64, operator: usize) -> (Job, Plan) {
    let mut job = starting_job();
    // The page says which collar it takes for granted.
    job["hinges"]["collar"] = json!("uniform_pressure");
    let list: Value = serde_json::from_str(include_str!("../../www/data/operators.json")).expect("JSON");
    let chosen = &list["operators"][operator];
    job["leaf"]["mass_kg"] = json!(mass_kg);
    job["leaf"]["length_m"] = json!(length_m);
    job["leaf"]["wind_area_m2"] = json!(wind_area_m2);
    // The page says which way the collar carries.
    job["hinges"]["collar"] = json!("uniform_pressure");
    for rating in ["rated_torque_n_m", "peak_torque_n_m", "shaft_speed_deg_s"] {
        job["operator"][rating] = chosen[rating].clone();
    }
    planned(&job)
}

/// Types the three numbers and picks the third operator of the list.
async fn fill(browser: &Browser) -> Result<()> {
    browser.wait_for(READY).await?;
    type_into(browser, "leaf.mass_kg", "210").await?;
    type_into(browser, "leaf.length_m", "3,6").await?;
    type_into(browser, "leaf.wind_area_m2", "2.3").await?;
    take_operator(browser, "demo-c").await?;
    browser.wait_for("document.querySelector('pintle-calculator').job.operator.rated_torque_n_m === 600").await?;
    computed(browser).await
}

/// Holds the verdict and the table to the native plan.
async fn shows_the_native_plan(browser: &Browser) -> Result<()> {
    let (_, plan) = native(210.0, 3.6, 2.3, 2);
    let torque = |value| show(value, Quantity::Torque, System::Metric);
    let angle = |value| show(value, Quantity::Angle, System::Metric);
    let reserve = show(plan.rating.reserve.expect("a demand"), Quantity::Ratio, System::Metric);

    is_the_plan(browser, &plan).await?;

    let verdict = text(browser, "[part=verdict]").await?;
    assert!(verdict.contains("Tight") && verdict.contains(&reserve), "{verdict}");
    // After a change the line says what the reserve was and is; the angle and the torque stand in the sentence beside the operator.
    let sentence = text(browser, "[part=sentence]").await?;
    for shown in [angle(plan.peak.leaf_deg), torque(plan.peak.shaft_torque_n_m), reserve] {
        assert!(sentence.contains(&shown), "{shown} in {sentence}");
    }
    assert!(verdict.contains('→') || verdict.contains(&angle(plan.peak.leaf_deg)), "{verdict}");

    let open = format!("{}.open = true", part("[data-step=operator] details[part=table]"));
    browser.value(&open).await?;
    browser.wait_for(&format!("{} !== null", part("[data-step=operator] details[part=table] tbody tr"))).await?;
    let rows = browser
        .value(&format!(
            "[...{}.querySelectorAll('tbody tr')].map((row) => [...row.children].map((cell) => cell.textContent))",
            part("[data-step=operator] details[part=table]")
        ))
        .await?;
    let expected: Vec<Vec<String>> = plan
        .curve
        .iter()
        .map(|row| {
            vec![
                angle(row.leaf_deg),
                torque(row.shaft_torque_open_n_m),
                torque(row.shaft_torque_close_n_m),
                torque(row.leaf_torque_open_n_m),
                torque(row.leaf_torque_close_n_m),
            ]
        })
        .collect();
    assert_eq!(rows, json!(expected));
    Ok(())
}

/// The leaf angle both sliders tell, degrees; they must agree.
async fn cursor_deg(browser: &Browser) -> Result<f64> {
    let both = browser
        .value(&format!(
            "[...{}.getRootNode().querySelectorAll('[role=slider]')].map((slider) => Number(slider.getAttribute('aria-valuenow')))",
            part("[role=slider]")
        ))
        .await?;
    assert_eq!(both[0], both[1], "curve and plan view show one angle");
    Ok(both[0].as_f64().expect("a number"))
}

/// Presses at one point of a drawing and lets go at another, both as shares of its width and height.
async fn drag(browser: &Browser, drawing: &str, from: (f64, f64), to: (f64, f64)) -> Result<()> {
    browser.value(&format!("{}.scrollIntoView({{ block: 'center' }})", part(drawing))).await?;
    let bounds = browser.value(&format!("{}.getBoundingClientRect().toJSON()", part(drawing))).await?;
    let bound = |name: &str| bounds[name].as_f64().expect("a number");
    let point = |(x, y): (f64, f64)| {
        ((bound("x") + x * bound("width")).round() as i64, (bound("y") + y * bound("height")).round() as i64)
    };
    let ((x0, y0), (x1, y1)) = (point(from), point(to));
    let chain = browser.driver.action_chain().move_to(x0, y0).click_and_hold();
    chain.move_to((x0 + x1) / 2, (y0 + y1) / 2).move_to(x1, y1).release().perform().await?;
    Ok(())
}

#[tokio::test]
async fn computes_online_and_offline() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(1024, 768, 1.0).await?;
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        let address = site.address.clone();
        browser.open(&address).await?;
        fill(&browser).await?;
        shows_the_native_plan(&browser).await?;
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());

        browser.wait_for("navigator.serviceWorker.ready.then(() => true)").await?;
        drop(site);
        browser.open(&format!("{address}?again")).await?;
        fill(&browser).await?;
        shows_the_native_plan(&browser).await?;
        Ok(())
    })
    .await
}

#[tokio::test]
async fn one_cursor_is_dragged_tapped_and_moved_by_keys() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(1440, 900, 1.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;

        drag(&browser, ".drawing.curve", (0.3, 0.5), (0.8, 0.4)).await?;
        let dragged = cursor_deg(&browser).await?;
        assert!(dragged > 60.0, "{dragged}");
        // The readout is exact at the cursor: the core's own point at that very angle, not an interpolation.
        let (job, _) = native(160.0, 3.2, 1.9, 1);
        let model = pintle_core::plan::Model::new(&job).expect("valid");
        element(&browser, ".drawing.plan_view").await?.send_keys(Key::Home + "").await?;
        assert_eq!(cursor_deg(&browser).await?, 0.0);
        element(&browser, ".drawing.plan_view").await?.send_keys(Key::PageUp + Key::Right).await?;
        assert_eq!(cursor_deg(&browser).await?, 11.0);
        let at = model.point(11f64.to_radians());
        let readings = text(&browser, "[part=cursor]").await?;
        for shown in [
            show(at.shaft_torque_open_n_m, Quantity::Torque, System::Metric),
            show(at.shaft_deg, Quantity::Angle, System::Metric),
            show(at.lever_m, Quantity::ShortLength, System::Metric),
        ] {
            assert!(readings.contains(&shown), "{shown} in {readings}");
        }
        element(&browser, ".drawing.curve").await?.send_keys(Key::End + "").await?;
        assert_eq!(cursor_deg(&browser).await?, 90.0);
        // A tap: press and let go at one place of the plan view, above the hinge and to its right.
        drag(&browser, ".drawing.plan_view", (0.75, 0.35), (0.75, 0.35)).await?;
        let tapped = cursor_deg(&browser).await?;
        assert!(tapped > 5.0 && tapped < 85.0, "{tapped}");
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_mistake_is_told_and_nothing_typed_is_lost() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        type_into(&browser, "leaf.mass_kg", "0.5").await?;
        // Left by the tabulator key: only then is the fault told.
        element(&browser, "#field-leaf-mass_kg").await?.send_keys(Key::Tab + "").await?;
        browser.wait_for(&format!("{}.getAttribute('aria-invalid') === 'true'", part("#field-leaf-mass_kg"))).await?;
        let told = text(&browser, "#field-leaf-mass_kg-error").await?;
        for needed in ["0.5", "1\u{a0}kg", "5000\u{a0}kg", "160\u{a0}kg"] {
            assert!(told.contains(needed), "{needed} in {told}");
        }
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        assert_eq!(browser.value(&format!("{}.value", part("#field-leaf-mass_kg"))).await?, "0.5");
        assert_eq!(browser.value("document.querySelector('pintle-calculator').plan").await?, Value::Null);
        // No sideways scroll on a narrow phone, nor at 320 px.
        for width in [360, 320] {
            browser.resize(width, 740, 2.0).await?;
            let overflow = browser.value("document.documentElement.scrollWidth - innerWidth").await?;
            assert!(overflow.as_i64().expect("a number") <= 0, "{width} px: {overflow} px beyond");
        }
        type_into(&browser, "leaf.mass_kg", "160").await?;
        browser.wait_for(READY).await
    })
    .await
}

#[tokio::test]
async fn units_change_what_is_shown_and_no_value() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        type_into(&browser, "leaf.length_m", "3.3333").await?;
        browser.wait_for("document.querySelector('pintle-calculator').job.leaf.length_m === 3.3333").await?;
        let toggled = browser
            .value(
                "(() => { const calculator = document.querySelector('pintle-calculator');
                  const before = JSON.stringify(calculator.job);
                  for (let turn = 0; turn < 1000; turn += 1) calculator.setAttribute('units', turn % 2 ? 'metric' : 'us');
                  return before === JSON.stringify(calculator.job); })()",
            )
            .await?;
        assert_eq!(toggled, true);
        browser.value("document.querySelector('pintle-calculator').setAttribute('units', 'us')").await?;
        computed(&browser).await?;
        at_step(&browser, "operator").await?;
        let (_, plan) = native(160.0, 3.3333, 1.9, 1);
        let sentence = text(&browser, "[part=sentence]").await?;
        let shown = show(plan.peak.shaft_torque_n_m, Quantity::Torque, System::Us);
        assert!(sentence.contains(&shown), "{shown} in {sentence}");
        Ok(())
    })
    .await
}

/// The page learns its language while the calculator is still on its way; both end up speaking it.
#[tokio::test]
async fn the_language_of_last_time_is_spoken() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        browser.value("document.querySelector('[data-language=es]').click()").await?;
        browser.wait_for("document.documentElement.lang === 'es'").await?;
        browser.reload().await?;
        browser.wait_for(READY).await?;
        browser.wait_for(&format!("{}.lang === 'es'", part(".sheet"))).await?;
        assert_eq!(text(&browser, "[data-group=wind] .group-name").await?, "Viento de trabajo");
        Ok(())
    })
    .await
}

/// The distributor's page: the same element, their list, their colours, an event with the plan.
#[tokio::test]
async fn a_distributors_page_gets_the_plan_by_event() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        browser.open(&format!("{}embed.html", site.address)).await?;
        browser.wait_for(READY).await?;
        browser
            .value("document.addEventListener('pintle-plan', (event) => { window.got = event.detail; }) ?? true")
            .await?;
        type_into(&browser, "leaf.mass_kg", "180").await?;
        browser.wait_for("(window.got?.job.leaf.mass_kg ?? 0) === 180 && window.got.plan !== null").await?;
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        let requests = browser.requests().await?;
        assert!(requests.iter().all(|url| url.starts_with(&site.address)), "{requests:#?}");
        Ok(())
    })
    .await
}
