//! The leaf played through time. The page's clock is turned by hand, so that nothing here waits for a moment or hurries past one.

use pintle_core::plan::{Model, Run};
use pintle_core::units::{Quantity, System, show};
use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};
use thirtyfour::Key;

use crate::page::{READY, at_step, computed, element, is_the_plan, part, planned, starting_job, text};

/// The demonstration job with ramps, slow zones and a motor that has torque to spare.
fn moving() -> Value {
    let mut job = starting_job();
    job["motion"] = json!({ "slow_open_deg": 15, "slow_close_deg": 20,
        "motor": { "stall_torque_n_m": 900, "no_load_speed_deg_s": 12, "rated_v": 24 } });
    job
}

fn runs(job: &Value) -> Vec<Run> {
    Model::new(&planned(job).0).expect("valid").fine_runs()
}

/// Opens the page with a job.
async fn open(browser: &Browser, site: &Site, job: &Value) -> Result<()> {
    browser.open(&site.address).await?;
    browser.wait_for(READY).await?;
    browser.value(&format!("(document.querySelector('pintle-calculator').job = {job}) && true")).await?;
    let asked = "document.querySelector('pintle-calculator')";
    browser
        .wait_for(&format!("JSON.stringify({asked}.job?.motion ?? null) !== 'null' && {asked}.plan?.motion != null"))
        .await?;
    // The element is built anew for another job.
    browser.wait_for(&format!("{} !== null", part(".play-bar select option"))).await?;
    at_step(browser, "movement").await
}

/// Takes the clock away from the page: frames and intervals wait until they are asked for.
async fn take_clock(browser: &Browser) -> Result<()> {
    browser
        .value(
            "(() => { window.frames_asked = 0; window.waiting = new Map(); window.ticks = new Map(); let next = 1;
              window.requestAnimationFrame = (call) => { window.frames_asked += 1; waiting.set(++next, call); return next; };
              window.cancelAnimationFrame = (id) => waiting.delete(id);
              window.setInterval = (call, ms) => { ticks.set(++next, [call, ms]); return next; };
              window.clearInterval = (id) => ticks.delete(id);
              window.frame_at = (ms) => { for (const [id, call] of [...waiting]) if (waiting.delete(id)) call(ms); };
              return true; })()",
        )
        .await?;
    Ok(())
}

/// Lets the page have frames at some times, ms.
async fn frames(browser: &Browser, times: &[f64]) -> Result<()> {
    browser.value(&format!("{times:?}.forEach((ms) => frame_at(ms)) ?? true")).await?;
    Ok(())
}

/// The leaf angle every drawing tells, which has to be one.
async fn leaf_deg(browser: &Browser) -> Result<f64> {
    let told = browser
        .value("['.curve', '.plan_view', '.time'].map((name) => Number(document.querySelector('pintle-calculator').shadowRoot.querySelector('.drawing' + name).getAttribute('aria-valuenow')))")
        .await?;
    let told: Vec<f64> = serde_json::from_value(told)?;
    assert!(told.iter().all(|angle| *angle == told[0]), "three drawings, three states: {told:?}");
    let angle = text(browser, ".cursor-bar .angle").await?;
    assert!(
        (angle.trim_end_matches('°').replace('\u{2212}', "-").parse::<f64>()? - told[0]).abs() < 0.051,
        "{angle} {told:?}"
    );
    Ok(told[0])
}

/// What the drawings of the step show.
async fn pictures(browser: &Browser) -> Result<Vec<String>> {
    let all = browser
        .value("['.plan_view', '.time'].map((name) => document.querySelector('pintle-calculator').shadowRoot.querySelector('.drawing' + name + ' canvas').toDataURL())")
        .await?;
    Ok(serde_json::from_value(all)?)
}

async fn playing(browser: &Browser) -> Result<bool> {
    Ok(text(browser, "button.play").await?.contains("Pause"))
}

/// Two seconds of the clock at 1× are two of the run, at 2× one is; what is said then is the core's own.
#[tokio::test]
async fn it_plays_at_its_true_speed_and_all_show_one_state() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(1440, 900, 1.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        let job = moving();
        open(&browser, &site, &job).await?;
        let opening = &runs(&job)[0];
        take_clock(&browser).await?;
        for (factor, clock_ms) in [("1", 2000.0), ("2", 1000.0), ("0.5", 4000.0)] {
            element(&browser, ".drawing.plan_view").await?.send_keys(Key::Home + "").await?;
            choose(&browser, 1, factor).await?;
            press_now(&browser, "button.play").await?;
            assert!(playing(&browser).await?);
            frames(&browser, &[100.0, 100.0 + clock_ms / 4.0]).await?;
            let before = pictures(&browser).await?;
            frames(&browser, &[100.0 + clock_ms / 2.0, 100.0 + clock_ms]).await?;
            let after = pictures(&browser).await?;
            assert!(
                before.iter().zip(&after).all(|(before, after)| before != after),
                "every drawing is drawn as it plays"
            );
            let at = opening.at(2.0).expect("rows");
            let told = leaf_deg(&browser).await?;
            assert!((told - at.leaf_deg).abs() < 0.051, "{factor}×: {told} for {at:?}");
            let reading = text(&browser, "[part=time-reading]").await?;
            for (value, quantity) in [
                (at.time_s, Quantity::Time),
                (at.edge_speed_m_s, Quantity::Speed),
                (at.shaft_torque_n_m, Quantity::Torque),
            ] {
                let shown = show(value, quantity, System::Metric);
                assert!(reading.contains(&shown), "{shown} in {reading}");
            }
            press_now(&browser, "button.play").await?;
            assert!(!playing(&browser).await?);
        }
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

/// At the end it stops and offers the way back; at rest it asks for no frame.
#[tokio::test]
async fn it_stops_at_the_end_and_idle_means_no_frames() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        let job = moving();
        open(&browser, &site, &job).await?;
        element(&browser, ".drawing.plan_view").await?.send_keys(Key::Home + "").await?;
        take_clock(&browser).await?;
        press_now(&browser, "button.play").await?;
        let long = runs(&job)[0].time_s() * 1000.0 + 500.0;
        frames(&browser, &[0.0, 0.5 * long]).await?;
        assert!(playing(&browser).await?);
        frames(&browser, &[long]).await?;
        assert_eq!(leaf_deg(&browser).await?, 90.0);
        assert!(!playing(&browser).await?);
        // What was still to be drawn is drawn; after that nobody asks for a frame again.
        frames(&browser, &[long + 16.0]).await?;
        let idle = browser.value("[frames_asked, waiting.size, ticks.size]").await?;
        frames(&browser, &[long + 32.0, long + 1000.0]).await?;
        assert_eq!(browser.value("[frames_asked, waiting.size, ticks.size]").await?, json!([idle[0], 0, 0]));
        assert!(text(&browser, "button.play").await?.contains("Closing"));
        // And back, by the space bar on a drawing.
        element(&browser, ".drawing.time").await?.send_keys(Key::Space + "").await?;
        frames(&browser, &[2e6, 2e6 + 3000.0]).await?;
        let back = runs(&job)[1].at(3.0).expect("rows").leaf_deg;
        assert!((leaf_deg(&browser).await? - back).abs() < 0.051);
        Ok(())
    })
    .await
}

/// A hand on the leaf, a key, a hidden tab: each stops it where it is.
#[tokio::test]
async fn it_pauses_for_whoever_takes_over() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        open(&browser, &site, &moving()).await?;
        take_clock(&browser).await?;
        press_now(&browser, "button.play").await?;
        frames(&browser, &[0.0, 500.0]).await?;
        element(&browser, ".drawing.plan_view").await?.send_keys(Key::PageUp + "").await?;
        assert!(!playing(&browser).await?, "a key");

        press_now(&browser, "button.play").await?;
        frames(&browser, &[2000.0, 2500.0]).await?;
        assert!(playing(&browser).await?);
        let box_of = browser.value(&format!("{}.getBoundingClientRect().toJSON()", part(".drawing.time canvas"))).await?;
        let middle = |start: &str, length: &str| box_of[start].as_f64().unwrap_or(0.0) + 0.5 * box_of[length].as_f64().unwrap_or(0.0);
        browser
            .value(&format!(
                "{}.dispatchEvent(new PointerEvent('pointerdown', {{ pointerId: 1, button: 0, bubbles: true, clientX: {}, clientY: {} }})) || true",
                part(".drawing.time"),
                middle("x", "width"),
                middle("y", "height"),
            ))
            .await?;
        assert!(!playing(&browser).await?, "a hand");

        press_now(&browser, "button.play").await?;
        frames(&browser, &[4000.0, 4500.0]).await?;
        assert!(playing(&browser).await?);
        browser
            .value("Object.defineProperty(document, 'hidden', { configurable: true, get: () => true }) && document.dispatchEvent(new Event('visibilitychange'))")
            .await?;
        assert!(!playing(&browser).await?, "a hidden tab");
        Ok(())
    })
    .await
}

/// Whoever asked for less motion gets one picture a second.
#[tokio::test]
async fn reduced_motion_steps() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        let job = moving();
        open(&browser, &site, &job).await?;
        let reduce = json!({ "features": [{ "name": "prefers-reduced-motion", "value": "reduce" }] });
        browser.driver.cdp().send_raw("Emulation.setEmulatedMedia", reduce).await?;
        element(&browser, ".drawing.plan_view").await?.send_keys(Key::Home + "").await?;
        take_clock(&browser).await?;
        press_now(&browser, "button.play").await?;
        assert!(playing(&browser).await?);
        let every = browser.value("[...ticks.values()].map(([, ms]) => ms)").await?;
        assert_eq!(every, json!([1000]));
        for second in 1..=3 {
            browser.value("[...ticks.values()].forEach(([call]) => call()) ?? true").await?;
            frames(&browser, &[f64::from(second) * 1000.0]).await?;
            assert_eq!(browser.value("waiting.size").await?, 0, "no frame between two pictures");
            let at = runs(&job)[0].at(f64::from(second)).expect("rows").leaf_deg;
            assert!((leaf_deg(&browser).await? - at).abs() < 0.051);
        }
        Ok(())
    })
    .await
}

/// Where nothing is known of the motion, it says why it cannot be played; the plan and its tables are the native ones.
#[tokio::test]
async fn it_says_why_not_and_its_tables_are_the_core_s() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        at_step(&browser, "movement").await?;
        assert_eq!(browser.value(&format!("{}.disabled", part("button.play"))).await?, true);
        assert!(element(&browser, "button.play").await?.is_displayed().await?);
        assert!(text(&browser, ".play-bar .note").await?.contains("starts and stops"));
        assert_eq!(browser.value(&format!("{}.getBoundingClientRect().height", part(".drawing.time"))).await?, 0);

        let job = moving();
        open(&browser, &site, &job).await?;
        // The page's own job: its form may say in numbers what the document leaves to be assumed.
        let asked = browser.value("JSON.stringify(document.querySelector('pintle-calculator').job)").await?;
        let (_, plan) = planned(&serde_json::from_str(asked.as_str().unwrap_or_default())?);
        is_the_plan(&browser, &plan).await?;
        let motion = plan.motion.expect("motion");
        let tables = format!("[...{}.querySelectorAll('details[part=table]')]", part("[data-step=movement] .tables"));
        browser.value(&format!("{tables}.forEach((table) => {{ table.open = true; }}) ?? true")).await?;
        browser.wait_for(&format!("{tables}[0].querySelector('tbody tr') !== null")).await?;
        let rows = browser
            .value(&format!("[...{tables}[0].querySelectorAll('tbody tr')].map((row) => [...row.children].map((cell) => cell.textContent))"))
            .await?;
        let metric = |value, quantity| show(value, quantity, System::Metric);
        let expected: Vec<Vec<String>> = motion
            .opening
            .curve
            .iter()
            .map(|row| {
                vec![
                    metric(row.time_s, Quantity::Time),
                    metric(row.leaf_deg, Quantity::Angle),
                    metric(row.shaft_deg, Quantity::Angle),
                    metric(row.edge_speed_m_s, Quantity::Speed),
                    metric(row.shaft_torque_n_m, Quantity::Torque),
                ]
            })
            .collect();
        assert_eq!(rows, json!(expected));
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        let overflow = browser.value("document.documentElement.scrollWidth - innerWidth").await?;
        assert!(overflow.as_i64().expect("a number") <= 0, "{overflow} px beyond");
        Ok(())
    })
    .await
}

/// Presses a button without waiting for a frame, which the page may not have.
async fn press_now(browser: &Browser, selector: &str) -> Result<()> {
    browser.value(&format!("{}.click() ?? true", part(selector))).await?;
    Ok(())
}

/// Takes an option of the play bar's first or second list.
async fn choose(browser: &Browser, list: usize, value: &str) -> Result<()> {
    let list = format!("[...{}.querySelectorAll('select')][{list}]", part(".play-bar"));
    browser.value(&format!("(({list}.value = '{value}'), {list}.dispatchEvent(new Event('change')))")).await?;
    Ok(())
}

/// Zones are lines to be pressed: each brings the leaf to its worst angle, is marked as the one looked at, and says the core's numbers.
#[tokio::test]
async fn a_zone_s_line_brings_the_leaf_to_its_angle() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        let mut job = moving();
        job["site"] = json!({ "latch_gap_m": 0.02 });
        job["obstacles"] = json!([{ "x_m": [-0.9, -0.35], "y_m": [0.9, 4.0] }]);
        open(&browser, &site, &job).await?;
        let zones = planned(&job).1.entrapment.expect("a site").zones;
        let lines = format!("[...{}.querySelectorAll('button')]", part(".zones"));
        // They stand with what protects people, at once.
        at_step(&browser, "protection").await?;
        let high = browser.value(&format!("{}.getBoundingClientRect().height", part(".zones"))).await?;
        assert!(high.as_f64().is_some_and(|high| high > 0.0), "{high}");
        assert_eq!(browser.value(&format!("{}.getAttribute('aria-pressed')", part(".zones-of .move"))).await?, "true");
        let said: Vec<String> =
            serde_json::from_value(browser.value(&format!("{lines}.map((line) => line.textContent)")).await?)?;
        assert_eq!(said.len(), zones.len());
        for (index, zone) in zones.iter().enumerate() {
            let angle = show(zone.leaf_deg, Quantity::Angle, System::Metric);
            assert!(
                said[index].starts_with(&format!("{}: ", index + 1)) && said[index].contains(&angle),
                "{}",
                said[index]
            );
            if let Some(gap) = zone.gap_m {
                assert!(said[index].contains(&show(gap, Quantity::ShortLength, System::Metric)), "{}", said[index]);
            }
            browser.value(&format!("{lines}[{index}].focus() ?? true")).await?;
            browser.driver.action_chain().send_keys(Key::Enter + "").perform().await?;
            computed(&browser).await?;
            assert!((leaf_deg(&browser).await? - zone.leaf_deg).abs() < 0.051, "{}", said[index]);
            assert_eq!(browser.value(&format!("{lines}[{index}].getAttribute('aria-current')")).await?, "true");
        }
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

/// The wind from behind is off until somebody wants it, and then said at the cursor and in a table as the core has it.
#[tokio::test]
async fn the_wind_from_behind_is_shown_when_wanted() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        at_step(&browser, "operator").await?;
        let (job, plan) = planned(&starting_job());
        let toggle = ".drawing.curve ~ .move";
        let pressed = format!("{}.getAttribute('aria-pressed')", part(toggle));
        assert_eq!(browser.value(&pressed).await?, "false");
        press_now(&browser, toggle).await?;
        assert_eq!(browser.value(&pressed).await?, "true");
        element(&browser, ".drawing.curve").await?.send_keys(Key::Home + "").await?;
        computed(&browser).await?;
        let at = Model::new(&job).expect("valid").point(0.0);
        let shown = browser
            .value(&format!(
                "[...{}.querySelectorAll('.readings > div')].filter((row) => !row.hidden).map((row) => row.lastChild.textContent)",
                part(".cursor-bar")
            ))
            .await?;
        let shown: Vec<String> = serde_json::from_value(shown)?;
        let torque = |value| show(value, Quantity::Torque, System::Metric);
        assert_eq!(shown[8..], [at.overrun_open_n_m, at.overrun_close_n_m, at.holding_n_m].map(torque));
        let tables = format!("[...{}.querySelectorAll('details[part=table]')]", part("[data-step=operator] .tables"));
        browser.value(&format!("({tables}[1].open = true)")).await?;
        browser.wait_for(&format!("{tables}[1].querySelector('tbody tr') !== null")).await?;
        let rows = browser
            .value(&format!("[...{tables}[1].querySelectorAll('tbody tr')].map((row) => row.lastChild.textContent)"))
            .await?;
        assert_eq!(rows, json!(plan.curve.iter().map(|row| torque(row.holding_n_m)).collect::<Vec<_>>()));
        Ok(())
    })
    .await
}
