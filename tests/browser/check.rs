//! How the leaf moves and what protects people, as a person asks for it: one press for the usual values, then what only the site knows.
//! What is shown is held to the native plan of the same job.

use pintle_core::units::{Quantity, Rounding, System, show, show_limit};
use pintle_core::{
    drive::DrivenState,
    plan::{Plan, WindowState},
};
use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};

use crate::page::{READY, at_step, choose, computed, is_the_plan, open_group, part, planned, press, text, type_into};

fn metric(value: f64, quantity: Quantity) -> String {
    show(value, quantity, System::Metric)
}

async fn opened(browser: &Browser) -> Result<Site> {
    let site = Site::start(&setting::dist()?, "/")?;
    browser.open(&site.address).await?;
    browser.wait_for(READY).await?;
    Ok(site)
}

/// Has a step fill in what is usual.
async fn take_usual(browser: &Browser, step: &str) -> Result<()> {
    at_step(browser, step).await?;
    press(browser, &format!("[data-step={step}] .usual")).await
}

/// What came of what a step asks.
async fn results(browser: &Browser, step: &str) -> Result<String> {
    at_step(browser, step).await?;
    text(browser, &format!("[data-step={step}] [part=check-results]")).await
}

/// The job the page made of what was said, planned natively; the page has the same plan.
async fn held_to_native(browser: &Browser) -> Result<(Value, Plan)> {
    browser.wait_for(READY).await?;
    computed(browser).await?;
    let job = browser.value("JSON.stringify(document.querySelector('pintle-calculator').job)").await?;
    let job: Value = serde_json::from_str(job.as_str().unwrap_or_default())?;
    let (_, plan) = planned(&job);
    is_the_plan(browser, &plan).await?;
    Ok((job, plan))
}

/// Texts of a table's rows, once it is open.
async fn rows(browser: &Browser, caption: &str) -> Result<Value> {
    let table = format!(
        "[...{}.querySelectorAll('details.data')].find((table) => table.textContent.includes('{caption}'))",
        part("[data-step=protection] .tables")
    );
    browser.value(&format!("({table}).open = true")).await?;
    browser.wait_for(&format!("({table}).querySelector('tbody tr') !== null")).await?;
    browser
        .value(&format!(
            "[...({table}).querySelectorAll('tbody tr')].map((row) => [...row.children].map((cell) => cell.textContent))"
        ))
        .await
}

async fn type_all(browser: &Browser, typed: &[(&str, &str)]) -> Result<()> {
    for (path, text) in typed {
        type_into(browser, path, text).await?;
    }
    Ok(())
}

async fn no_axe_fault(browser: &Browser) -> Result<()> {
    assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
    Ok(())
}

#[tokio::test]
async fn movement_and_breakaway_give_the_native_plan() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(1024, 768, 1.0).await?;
        let _site = opened(&browser).await?;
        take_usual(&browser, "protection").await?;
        take_usual(&browser, "movement").await?;
        for group in ["breakaway", "motion"] {
            open_group(&browser, group).await?;
        }
        type_into(&browser, "motion.ramp_up_s", "1.5").await?;
        choose(&browser, "motion.motor.looked_at", "yes").await?;
        let motor =
            [("stall_torque_n_m", "700"), ("no_load_speed_deg_s", "2 rpm"), ("rated_v", "24"), ("supply_v", "20")];
        for (name, typed) in motor {
            type_into(&browser, &format!("motion.motor.{name}"), typed).await?;
        }
        choose(&browser, "motion.duty.looked_at", "yes").await?;
        type_all(&browser, &[("motion.duty.cycles_per_hour", "30"), ("motion.duty.rated_cycles_per_hour", "20")])
            .await?;
        type_all(&browser, &[("breakaway.link_force_n", "6000"), ("breakaway.gearbox_torque_n_m", "900")]).await?;
        let (job, plan) = held_to_native(&browser).await?;
        // What a press and what a person filled in stands in the job.
        assert_eq!(job["motion"]["ramp_up_s"], json!(1.5));
        assert_eq!(job["motion"]["slow_close_deg"], json!(15));
        assert_eq!(job["motion"]["motor"]["no_load_speed_deg_s"], json!(12));
        assert_eq!((&job["breakaway"]["hold_factor"], &job["contact"]["static_limit_n"]), (&json!(1.25), &json!(150)));

        let (motion, breakaway) =
            (plan.motion.as_ref().expect("motion"), plan.breakaway.as_ref().expect("a breakaway"));
        assert_eq!(breakaway.state, WindowState::Open);
        let force = |value, rounding| show_limit(value, Quantity::Force, System::Metric, rounding);
        let window = text(&browser, "[part=push-window]").await?;
        assert!(window.contains(&force(breakaway.trial.must_hold_n, Rounding::Up)), "{window}");
        assert!(window.contains(&force(breakaway.trial.must_slip_n.expect("limits"), Rounding::Down)), "{window}");
        let guarded = results(&browser, "protection").await?;
        let said = results(&browser, "movement").await?;
        let driven = motion.driven.as_ref().expect("a motor");
        assert_eq!(driven.opening.state, DrivenState::Arrives);
        for shown in [
            metric(motion.opening.time_s, Quantity::Time),
            metric(motion.closing.edge_speed_m_s, Quantity::Speed),
            metric(motion.closing.energy_j, Quantity::Energy),
            metric(motion.opening.peak.shaft_torque_n_m, Quantity::Torque),
            metric(motion.closing.shaft_power_w, Quantity::Power),
            metric(motion.held_back.shaft_torque_n_m, Quantity::Torque),
            metric(driven.opening.time_s, Quantity::Time),
            metric(driven.closing.edge_speed_m_s, Quantity::Speed),
            metric(motion.limits.open_deg, Quantity::Angle),
            metric(motion.limits.slow_opening_leaf_deg, Quantity::Angle),
            metric(motion.open_stop.full_force_n.expect("a stiffness"), Quantity::Force),
            metric(motion.hand.calm_n, Quantity::Force),
            metric(motion.duty.expect("cycles").hour_utilisation.expect("rated"), Quantity::Percent),
        ] {
            assert!(said.contains(&shown), "{shown} in {said}");
        }
        no_axe_fault(&browser).await?;
        at_step(&browser, "protection").await?;
        for shown in [
            metric(breakaway.running_torque_n_m, Quantity::Torque),
            metric(breakaway.toggle_to_leaf_deg, Quantity::Angle),
        ] {
            assert!(guarded.contains(&shown), "{shown} in {guarded}");
        }
        assert!(guarded.contains("never counts as protection of people"), "{guarded}");
        let expected: Vec<Vec<String>> = breakaway
            .curve
            .iter()
            .map(|row| {
                let shown = |value: Option<f64>| value.map_or("–".into(), |value| metric(value, Quantity::Force));
                let forces = [row.push_open_n, row.push_close_n, row.edge_force_n, row.link_force_n].map(shown);
                [vec![metric(row.leaf_deg, Quantity::Angle)], forces.to_vec()].concat()
            })
            .collect();
        assert_eq!(rows(&browser, "Push, latch-edge force and link force").await?, json!(expected));
        no_axe_fault(&browser).await?;

        // Less than normal running asks: no window, and what would open one.
        type_into(&browser, "breakaway.gearbox_torque_n_m", "300").await?;
        let (_, plan) = held_to_native(&browser).await?;
        let breakaway = plan.breakaway.as_ref().expect("a breakaway");
        assert_eq!(breakaway.state, WindowState::Shut);
        let said = results(&browser, "protection").await?;
        assert!(said.contains("No window") && said.contains("Another operator"), "{said}");
        for remedy in &breakaway.remedies {
            assert!(said.contains(&metric(remedy.least_slip_n_m, Quantity::Torque)), "{remedy:?} in {said}");
        }
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

#[tokio::test]
async fn people_site_and_storm_give_the_native_plan() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let _site = opened(&browser).await?;
        for step in ["movement", "protection"] {
            take_usual(&browser, step).await?;
        }
        open_group(&browser, "site").await?;
        choose(&browser, "site.public", "no").await?;
        choose(&browser, "site.guarded", "no").await?;
        type_into(&browser, "site.homes", "2").await?;
        open_group(&browser, "room").await?;
        choose(&browser, "obstacles.looked_at", "yes").await?;
        press(&browser, "[data-list=obstacles] > .move").await?;
        for (side, typed) in [("x_m.0", "-400"), ("x_m.1", "200"), ("y_m.0", "3400"), ("y_m.1", "3600")] {
            type_into(&browser, &format!("obstacles.0.{side}"), typed).await?;
        }
        at_step(&browser, "protection").await?;
        press(&browser, "[data-list=means] > .move").await?;
        press(&browser, "[data-list=means] > .move").await?;
        let second = "[data-means='1']";
        browser
            .value(&format!(
                "(() => {{ const list = {}; list.value = 'non_contact'; list.dispatchEvent(new Event('change')); return true; }})()",
                part(&format!("{second} select"))
            ))
            .await?;
        computed(&browser).await?;
        press(&browser, &format!("{second} input[name=monitored]")).await?;
        press(&browser, &format!("{second} input[value=close]")).await?;
        press(&browser, &format!("{second} input[name=leading_edge_closing]")).await?;
        press(&browser, &format!("{second} input[value=ground]")).await?;
        for (name, typed) in [("from_x_m", "3300"), ("from_y_m", "100"), ("to_x_m", "0"), ("to_y_m", "3300")] {
            type_into(&browser, &format!("site.means.1.area.{name}"), typed).await?;
        }
        open_group(&browser, "storm").await?;
        choose(&browser, "storm.looked_at", "yes").await?;
        type_all(&browser, &[("storm.speed_m_s", "30"), ("storm.force_coefficient", "1.5")]).await?;
        open_group(&browser, "holding").await?;
        choose(&browser, "holding.looked_at", "yes").await?;
        type_into(&browser, "holding.shaft_torque_n_m", "300").await?;

        let (job, plan) = held_to_native(&browser).await?;
        assert_eq!(job["obstacles"], json!([{ "x_m": [-0.4, 0.2], "y_m": [3.4, 3.6] }]));
        let means = &job["site"]["means"];
        assert_eq!(means[0]["kind"], json!("inherent"));
        assert_eq!((&means[1]["direction"], &means[1]["monitored"]), (&json!("close"), &json!(true)));
        let (entrapment, person) = (plan.entrapment.as_ref().expect("a site"), plan.person.as_ref().expect("a contact"));
        let holding = plan.holding.expect("a storm");
        assert_eq!(entrapment.means.each_ref().map(|count| count.counted), [1, 2]);
        assert_eq!(text(&browser, "[part=class-of-use]").await?, "US class of use I");
        let said = results(&browser, "protection").await?;
        let zone = entrapment.zones.iter().find(|zone| zone.obstacle == Some(0)).expect("behind the leaf");
        let missed = entrapment.sensors[0].zones.iter().map(|zone| zone.gap_m).fold(0.0, f64::max);
        for shown in [
            metric(person.edge_push_n, Quantity::Force),
            metric(person.blows[1].impact_n.expect("motion"), Quantity::Force),
            metric(person.blows[2].speed_at_limit_m_s.expect("no dead point"), Quantity::Speed),
            metric(person.blows[3].edge_speed_m_s.expect("motion"), Quantity::Speed),
            metric(person.blows[3].dynamic_limit_n, Quantity::Force),
            metric(person.dynamic_time_s, Quantity::Time),
            metric(zone.free_gap_m, Quantity::ShortLength),
            metric(person.edge_travel_m.expect("motion"), Quantity::ShortLength),
            metric(zone.gap_m.expect("a gap"), Quantity::ShortLength),
            metric(zone.leaf_deg, Quantity::Angle),
            metric(missed, Quantity::ShortLength),
            metric(entrapment.edge_unseen[1][1].to_deg, Quantity::Angle),
            metric(holding.torque_n_m, Quantity::Torque),
            metric(holding.link_force_n, Quantity::Force),
        ] {
            assert!(said.contains(&shown), "{shown} in {said}");
        }
        for words in ["calibrated instrument", "not checked against the printed standard", "superseded by a later edition", "licensed practice decide", "Gives way", "lock or a drop bolt", "without the operator’s own inertia", "ISO 13854", "gaps of 50 to 500 mm"] {
            assert!(said.contains(words), "{words} in {said}");
        }
        // A drive is locked off before a hand goes near; a gate is never said to be locked.
        let locked = said.replace("locked off", "").contains(" locked");
        assert!(!said.to_lowercase().contains("compliant") && !locked, "{said}");
        no_axe_fault(&browser).await?;
        for width in [360, 320] {
            browser.resize(width, 740, 2.0).await?;
            let overflow = browser.value("document.documentElement.scrollWidth - innerWidth").await?;
            assert!(overflow.as_i64().expect("a number") <= 0, "{width} px: {overflow} px beyond");
        }

        // The storm taken back takes the holding with it; an obstacle taken away is gone from the job.
        choose(&browser, "storm.looked_at", "no").await?;
        at_step(&browser, "survey").await?;
        press(&browser, "[data-list=obstacles] fieldset > .quiet").await?;
        let (job, plan) = held_to_native(&browser).await?;
        assert!(plan.holding.is_none() && job["obstacles"] == json!([]));
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}
