//! The main job once in a second engine: what is typed is computed as the native plan has it, drawn, and kept without a network.

use pintle_tests::harness::{Result, Site, in_firefox, setting};
use serde_json::json;

use crate::page::{READY, is_the_plan, part, planned, starting_job, take_operator, text, type_into};

#[tokio::test]
async fn the_main_job_in_firefox() -> Result<()> {
    in_firefox(async |browser| {
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        let address = site.address.clone();
        browser.open(&address).await?;
        browser.wait_for(READY).await?;
        type_into(&browser, "leaf.mass_kg", "210").await?;
        type_into(&browser, "leaf.length_m", "3,6").await?;
        type_into(&browser, "leaf.wind_area_m2", "2.3").await?;
        take_operator(&browser, "demo-c").await?;
        browser.wait_for("document.querySelector('pintle-calculator').job.operator.rated_torque_n_m === 600").await?;
        let mut job = starting_job();
        job["hinges"]["collar"] = json!("uniform_pressure");
        for (name, value) in [("mass_kg", 210.0), ("length_m", 3.6), ("wind_area_m2", 2.3)] {
            job["leaf"][name] = json!(value);
        }
        let list: serde_json::Value = serde_json::from_str(include_str!("../../www/data/operators.json"))?;
        for rating in ["rated_torque_n_m", "peak_torque_n_m", "shaft_speed_deg_s", "body"] {
            job["operator"][rating] = list["operators"][2][rating].clone();
        }
        let (_, plan) = planned(&job);
        is_the_plan(&browser, &plan).await?;
        let verdict = text(&browser, "[part=verdict]").await?;
        assert!(verdict.contains("Tight"), "{verdict}");

        // Both drawings have ink of more than one colour.
        for drawing in ["curve", "plan_view"] {
            let colours = format!(
                "(() => {{ const canvas = {}; const {{ data }} = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
                   return new Set(new Uint32Array(data.buffer)).size; }})()",
                part(&format!(".drawing.{drawing} canvas"))
            );
            assert!(browser.value(&colours).await?.as_u64().is_some_and(|colours| colours > 5), "{drawing}");
        }
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());

        browser.wait_for("navigator.serviceWorker.ready.then(() => true)").await?;
        drop(site);
        browser.open(&format!("{address}?again")).await?;
        browser.wait_for(READY).await
    })
    .await
}
