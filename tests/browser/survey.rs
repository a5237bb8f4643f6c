//! What a person brings from the gate and from a standard: winds, hinges, the leaf's parts, lean and ground. What the page makes of it
//! is held to the native plan of the same job; what cannot be is told beside its field and stays as it was typed.

use pintle_core::units::{Quantity, System, show};
use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};
use thirtyfour::Key;

use crate::page::{
    READY, at_step, choose, computed, element, is_the_plan, open_group, part, planned, press, starting_job, text,
    type_into,
};

async fn opened(browser: &Browser) -> Result<Site> {
    let site = Site::start(&setting::dist()?, "/")?;
    browser.open(&site.address).await?;
    browser.wait_for(READY).await?;
    Ok(site)
}

/// Leaves a field by the tabulator key, so that its fault may be told.
async fn leave(browser: &Browser, path: &str) -> Result<()> {
    element(browser, &format!("#field-{}", path.replace('.', "-"))).await?.send_keys(Key::Tab + "").await?;
    computed(browser).await
}

async fn keeps_to_the_screen(browser: &Browser) -> Result<()> {
    for width in [360, 320] {
        browser.resize(width, 740, 2.0).await?;
        let overflow = browser.value("document.documentElement.scrollWidth - innerWidth").await?;
        assert!(overflow.as_i64().expect("a number") <= 0, "{width} px: {overflow} px beyond");
    }
    Ok(())
}

#[tokio::test]
async fn winds_hinges_lean_and_ground_give_the_native_plan() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let _site = opened(&browser).await?;
        let mut job = starting_job();

        open_group(&browser, "wind").await?;
        choose(&browser, "wind.from.kind", "beaufort").await?;
        for (path, typed) in [("number", "7"), ("gust_factor", "1.6"), ("height_factor", "0,7")] {
            type_into(&browser, &format!("wind.from.{path}"), typed).await?;
        }
        choose(&browser, "wind.shape.kind", "asce7_open").await?;
        type_into(&browser, "wind.shape.bar_m", "40").await?;
        type_into(&browser, "wind.shape.pitch_m", "120").await?;
        job["wind"] = json!({ "air_density_kg_m3": 1.225,
            "from": { "kind": "beaufort", "number": 7, "gust_factor": 1.6, "height_factor": 0.7 },
            "shape": { "kind": "asce7_open", "bars": "flat", "bar_m": 0.04, "pitch_m": 0.12 } });

        open_group(&browser, "storm").await?;
        choose(&browser, "storm.looked_at", "yes").await?;
        type_into(&browser, "storm.speed_m_s", "35").await?;
        type_into(&browser, "storm.force_coefficient", "1.5").await?;
        job["storm"] = json!({ "speed_m_s": 35, "force_coefficient": 1.5, "air_density_kg_m3": 1.225 });

        open_group(&browser, "hinges").await?;
        choose(&browser, "hinges.friction_by", "pairing").await?;
        let hinges = job["hinges"].as_object_mut().expect("an object");
        hinges.remove("friction_coefficient");
        hinges.insert("pairing".into(), json!("steel_steel_greased"));
        hinges.insert("collar".into(), json!("uniform_pressure"));

        open_group(&browser, "lean").await?;
        choose(&browser, "lean.by", "plumb").await?;
        type_into(&browser, "lean.plumb_offset_m", "12").await?;
        type_into(&browser, "lean.plumb_height_m", "1.5").await?;
        job["lean"] = json!({ "plumb_offset_m": 0.012, "plumb_height_m": 1.5, "downhill_deg": 0 });

        open_group(&browser, "ground").await?;
        choose(&browser, "ground.looked_at", "yes").await?;
        type_into(&browser, "ground.gap_m", "60").await?;
        type_into(&browser, "ground.slope_deg", "2").await?;
        job["ground"] = json!({ "gap_m": 0.06, "slope_deg": 2, "uphill_deg": 0, "bottom_rise_m": 0 });

        browser.wait_for("document.querySelector('pintle-calculator').job.ground?.slope_deg === 2").await?;
        browser.wait_for(READY).await?;
        computed(&browser).await?;
        let (_, plan) = planned(&job);
        is_the_plan(&browser, &plan).await?;

        // What came out stands under its group, in the core's own numbers.
        let metric = |value, quantity| show(value, quantity, System::Metric);
        let wind = plan.wind.as_ref().expect("a wind of a standard");
        let (ground, band) = (plan.ground.as_ref().expect("ground"), plan.band.as_ref().expect("a band"));
        for (group, shown) in [
            ("wind", metric(wind.gust.pressure_pa, Quantity::Pressure)),
            ("wind", metric(wind.gust.force_coefficient, Quantity::Ratio)),
            ("hinges", metric(band.peak_n_m.high, Quantity::Torque)),
            ("ground", metric(ground.bracket_rise_m, Quantity::ShortLength)),
        ] {
            let said = text(&browser, &format!("[data-group={group}] [part=outcome]")).await?;
            assert!(said.contains(&shown), "{shown} in {said}");
        }
        at_step(&browser, "operator").await?;
        let sentence = text(&browser, "[part=sentence]").await?;
        assert!(sentence.contains(&metric(band.peak_n_m.low, Quantity::Torque)), "{sentence}");
        at_step(&browser, "protection").await?;
        let storm = text(&browser, "[part=storm]").await?;
        let held = plan.storm.as_ref().expect("a storm").hinge_n;
        assert!(storm.contains(&metric(held, Quantity::Force)), "{storm}");

        for step in ["protection", "survey"] {
            at_step(&browser, step).await?;
            assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new(), "{step}");
            keeps_to_the_screen(&browser).await?;
        }
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

#[tokio::test]
async fn the_leafs_parts_are_added_up() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(1024, 768, 1.0).await?;
        let _site = opened(&browser).await?;
        choose(&browser, "leaf.by", "parts").await?;
        browser.value(&format!("{}.open = true", part("[data-member='0']"))).await?;
        let typed = [("face_m", "60"), ("depth_m", "40"), ("wall_m", "2.5"), ("place.count", "2")];
        for (name, typed) in typed {
            type_into(&browser, &format!("leaf.members.0.{name}"), typed).await?;
        }
        press(&browser, ".members > .move").await?;
        computed(&browser).await?;
        type_into(&browser, "leaf.members.1.wall_m", "3").await?;

        let tube = |face: f64, depth: Option<f64>, wall: f64, count: u32| {
            json!({ "section": "tube", "face_m": face, "depth_m": depth, "wall_m": wall, "corners": "en10219", "density_kg_m3": 7850,
                "place": { "from_m": 0, "to_m": 3.2, "rise_m": 0, "count": count } })
        };
        let mut job = starting_job();
        job["leaf"] = json!({ "length_m": 3.2, "height_m": 1.6,
            "members": [tube(0.06, Some(0.04), 0.0025, 2), tube(0.05, None, 0.003, 1)] });
        job["hinges"]["collar"] = json!("uniform_pressure");
        browser.wait_for(READY).await?;
        let (_, plan) = planned(&job);
        is_the_plan(&browser, &plan).await?;
        let members = plan.members.expect("members");
        let mass = text(&browser, "[data-total=mass_kg]").await?;
        assert_eq!(mass, show(members.mass_kg, Quantity::Mass, System::Metric));

        // Taken away and put back, a part is the same.
        press(&browser, "[data-member='0'] > .quiet").await?;
        browser.wait_for("document.querySelector('pintle-calculator').job.leaf.members.length === 1").await?;
        assert_eq!(browser.value("document.querySelector('pintle-calculator').job.leaf.members[0].wall_m").await?, 0.003);
        press(&browser, ".removed .quiet").await?;
        computed(&browser).await?;
        is_the_plan(&browser, &plan).await?;

        // A wall that cannot be: told at its part, and the text stays.
        type_into(&browser, "leaf.members.1.wall_m", "30").await?;
        leave(&browser, "leaf.members.1.wall_m").await?;
        let told = text(&browser, "#field-leaf-members-1-wall_m-error").await?;
        assert!(told.contains("Part 2") && told.contains("30\u{a0}mm"), "{told}");
        assert_eq!(browser.value(&format!("{}.value", part("#field-leaf-members-1-wall_m"))).await?, "30");
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());

        // And back to the numbers, which are as they were.
        choose(&browser, "leaf.by", "numbers").await?;
        let (_, plan) = planned(&starting_job());
        let given = browser.value("document.querySelector('pintle-calculator').plan.peak.shaft_torque_n_m").await?;
        assert_eq!(given, json!(plan.peak.shaft_torque_n_m));
        Ok(())
    })
    .await
}

#[tokio::test]
async fn what_cannot_be_is_told_and_stays() -> Result<()> {
    in_browser(async |browser| {
        let _site = opened(&browser).await?;
        open_group(&browser, "wind").await?;
        choose(&browser, "wind.shape.kind", "en1991_wall").await?;
        type_into(&browser, "wind.shape.solidity", "1.2").await?;
        leave(&browser, "wind.shape.solidity").await?;
        let told = text(&browser, "#field-wind-shape-solidity-error").await?;
        assert!(told.contains("1.2") && told.contains("0 to 1"), "{told}");
        assert_eq!(browser.value(&format!("{}.value", part("#field-wind-shape-solidity"))).await?, "1.2");
        assert_eq!(browser.value("document.querySelector('pintle-calculator').plan").await?, Value::Null);

        // A terrain there is none of comes in with a document; it is told beside the choice, and the document keeps it.
        let mut job = starting_job();
        job["wind"]["speed_m_s"] = Value::Null;
        job["wind"]["from"] = json!({ "kind": "en1991", "terrain": "V", "basic_m_s": 26, "height_m": 2 });
        let given = format!("(() => {{ document.querySelector('pintle-calculator').job = {job}; return true; }})()");
        browser.value(&given).await?;
        browser.wait_for("document.querySelector('pintle-calculator').job.wind.from?.terrain === 'V'").await?;
        let choice = "[data-path='wind.from.terrain']";
        browser.wait_for(&format!("({}?.textContent ?? '') !== ''", part(&format!("{choice} .error")))).await?;
        let told = text(&browser, &format!("{choice} .error")).await?;
        assert!(told.contains('V') && told.contains("IV: towns"), "{told}");
        choose(&browser, "wind.from.terrain", "III").await?;
        browser.wait_for(READY).await
    })
    .await
}

/// Every input has a bar, widest first, and words beside it that say the same.
#[tokio::test]
async fn inputs_are_ranked_by_what_they_do_to_the_reserve() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(1440, 900, 1.0).await?;
        let _site = opened(&browser).await?;
        at_step(&browser, "operator").await?;
        // It stands behind the verdict, folded.
        press(&browser, "[part=figures] > summary").await?;
        let rows = format!("[...{}.querySelectorAll('[data-input]')]", part("[part=sensitivity]"));
        browser.wait_for(&format!("{rows}.length > 0")).await?;
        let mut job = starting_job();
        job["uncertainty"] = json!({});
        job["hinges"]["collar"] = json!("uniform_pressure");
        let (_, plan) = planned(&job);
        let list = plan.sensitivity.expect("asked for");
        let paths: Vec<&str> = list.iter().map(|entry| entry.path).collect();
        assert_eq!(browser.value(&format!("{rows}.map((row) => row.dataset.input)")).await?, json!(paths));
        let said = text(&browser, "[data-input] .says-range").await?;
        for end in [list[0].low, list[0].high].into_iter().flatten() {
            assert!(said.contains(&show(end, Quantity::Ratio, System::Metric)), "{end} in {said}");
        }
        // Stated better than assumed: the job says so, and the row follows.
        let first = format!("[data-input='{}']", list[0].path);
        press(&browser, &format!("{first} button")).await?;
        type_into(&browser, &format!("uncertainty.{}", list[0].path), "5").await?;
        browser
            .wait_for(&format!(
                "document.querySelector('pintle-calculator').job.uncertainty?.['{}'] === 0.05",
                list[0].path
            ))
            .await?;
        browser.wait_for(&format!("{}.textContent.includes('5')", part(&format!("{first} button")))).await?;
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}
