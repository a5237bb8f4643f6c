//! What stands around and how the arm is marked out, asked for by the page: thickness of the leaf, post at the hinge, base, levels and tubes.
//! The plan is held to the native one of the same job, and the set-out's tables to its figures.

use pintle_core::units::{System, mark};
use pintle_tests::harness::{Result, Site, in_browser, setting};
use serde_json::json;

use crate::page::{
    READY, at_step, choose, computed, is_the_plan, open_group, part, planned, press, starting_job, text, type_into,
};

#[tokio::test]
async fn post_and_marks_give_the_native_plan() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;

        open_group(&browser, "room").await?;
        choose(&browser, "obstacles.looked_at", "yes").await?;
        for (path, millimetres) in
            [("leaf.face_m", "20"), ("leaf.thickness_m", "45"), ("leaf.heel_m", "45"), ("arm_half_width_m", "30")]
        {
            type_into(&browser, path, millimetres).await?;
        }
        press(&browser, "[data-list=obstacles] > .move").await?;
        press(&browser, "[data-obstacle='0'] input[name=hinge_post]").await?;
        for (end, millimetres) in [("x_m.0", "-160"), ("x_m.1", "-60"), ("y_m.0", "-80"), ("y_m.1", "80")] {
            type_into(&browser, &format!("obstacles.0.{end}"), millimetres).await?;
        }
        open_group(&browser, "marks").await?;
        choose(&browser, "marks.looked_at", "yes").await?;
        for (name, typed) in [
            ("anchor_along_m", "250"),
            ("anchor_across_m", "150"),
            ("anchor_offset_along_m", "-40"),
            ("anchor_offset_across_m", "10"),
            ("anchor_turn_deg", "15"),
            ("pad_level_m", "0.12"),
            ("crossbar_level_m", "0.65"),
            ("arm_height_m", "180"),
            ("overlap_m", "120"),
            ("crank_ends_m", "90"),
            ("link_ends_m", "110"),
        ] {
            type_into(&browser, &format!("marks.{name}"), typed).await?;
        }

        let mut job = starting_job();
        // The page says which collar it takes for granted.
        job["hinges"]["collar"] = json!("uniform_pressure");
        for (key, value) in [("face_m", 0.02), ("thickness_m", 0.045), ("heel_m", 0.045)] {
            job["leaf"][key] = json!(value);
        }
        job["arm_half_width_m"] = json!(0.03);
        job["obstacles"] = json!([{ "hinge_post": true, "x_m": [-0.16, -0.06], "y_m": [-0.08, 0.08] }]);
        job["marks"] = json!({ "anchor_along_m": 0.25, "anchor_across_m": 0.15, "anchor_offset_along_m": -0.04,
            "anchor_offset_across_m": 0.01, "anchor_turn_deg": 15, "pad_level_m": 0.12, "crossbar_level_m": 0.65,
            "arm_height_m": 0.18, "overlap_m": 0.12, "crank_ends_m": 0.09, "link_ends_m": 0.11 });
        browser.wait_for("document.querySelector('pintle-calculator').job.marks?.link_ends_m === 0.11").await?;
        browser.wait_for(READY).await?;
        computed(&browser).await?;
        let (_, plan) = planned(&job);
        is_the_plan(&browser, &plan).await?;

        at_step(&browser, "mark_out").await?;
        let said = text(&browser, "[data-step=mark_out] .fit").await?;
        let marks = plan.mark_out.expect("asked for");
        let lengths = [Some(marks.crank.pivots_m), marks.crank.cut_m, marks.link.cut_m, marks.riser_m];
        for length in lengths.into_iter().chain(marks.anchors.iter().map(|anchor| Some(anchor.from_axis_line_m))) {
            let shown = mark(length.expect("known"), System::Metric);
            assert!(said.contains(&shown), "{shown} in {said}");
        }
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        at_step(&browser, "place").await?;
        let words = "'hinge post'";
        browser
            .wait_for(&format!(
                "[...{}.querySelectorAll('.fit td')].some((cell) => cell.textContent === {words})",
                part(".step[data-step=place]:not([hidden])")
            ))
            .await?;
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}
