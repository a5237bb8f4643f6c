//! Hand over: what is measured is compared as the core compares it, and the sheet is printed whole and alone, on both papers, in both
//! languages and both systems of units, from the page and from a host's.

use std::fs;
use std::process::Command;

use pintle_core::units::{Quantity, System, show};
use pintle_core::{
    Document,
    job::Job,
    plan::{CheckVerdict, Model},
};
use pintle_tests::harness::{Browser, Context, Result, Site, in_browser, setting};
use serde_json::{Value, json};

use crate::page::{READY, at_step, choose, computed, element, open_group, part, press, starting_job, text, type_into};

/// Points of a mm.
const MM: f64 = 72.0 / 25.4;

/// The starting job with everything that has a place on the sheet. Invented.
fn job() -> Value {
    let mut job = starting_job();
    for (block, said) in [
        (
            "marks",
            json!({ "anchor_along_m": 0.25, "anchor_across_m": 0.15, "pad_level_m": 0.1, "crossbar_level_m": 0.62, "overlap_m": 0.15 }),
        ),
        ("storm", json!({ "speed_m_s": 28, "force_coefficient": 1.4 })),
        ("ground", json!({ "gap_m": 0.08, "slope_deg": 2, "uphill_deg": 90 })),
        ("drag", json!({ "seal_n_m": 5 })),
        ("obstacles", json!([{ "x_m": [-0.3, 0.2], "y_m": [2, 3] }])),
        ("breakaway", json!({ "link_force_n": 6000, "slip_torque_n_m": 420 })),
        ("motion", json!({ "slow_close_deg": 25, "slow_open_deg": 20 })),
        ("settings", json!({ "close_timer_s": 30 })),
        (
            "site",
            json!({ "public": false, "guarded": false, "homes": 1,
            "means": [{ "kind": "inherent" }, { "kind": "contact", "monitored": true, "reaches": ["leading_edge_closing"] }] }),
        ),
        ("as_built", json!({ "shaft_x_m": -0.252, "shaft_y_m": 0.458 })),
        (
            "record",
            json!({ "number": "0001", "date": "2026-03-31", "installer": "Nobody in particular", "opening_s": 15.2, "rod_ohm": 32 }),
        ),
    ] {
        job[block] = said;
    }
    job
}

/// The same of a person who leaves nothing short: words without an end, many parts, obstacles and means.
fn long_job() -> Value {
    let mut job = job();
    let part = json!({ "section": "tube", "face_m": 0.06, "depth_m": 0.04, "wall_m": 0.003, "place": { "from_m": 0, "to_m": 3.1 } });
    job["title"] = json!("W".repeat(90));
    job["leaf"] = json!({ "length_m": 3.2, "height_m": 1.6, "members": vec![part; 14] });
    let obstacle = |index: usize| json!({ "x_m": [-0.3, 0.2], "y_m": [2.0 + 0.1 * index as f64, 4] });
    job["obstacles"] = (0..12).map(obstacle).collect();
    job["site"]["means"] = json!(vec![json!({ "kind": "contact", "reaches": ["bottom"] }); 20]);
    job["record"]["installer"] = json!("X".repeat(80));
    job
}

async fn open_part(browser: &Browser) -> Result<()> {
    at_step(browser, "hand_over").await?;
    computed(browser).await
}

async fn open_sheet(browser: &Browser) -> Result<()> {
    open_part(browser).await?;
    press(browser, ".show-sheet").await?;
    browser.wait_for(&format!("({}?.querySelectorAll('.page').length ?? 0) > 5", inside("*"))).await
}

/// JavaScript for a part inside the sheet, which has a tree of its own.
fn inside(selector: &str) -> String {
    let paper = part("[data-pintle-paper]");
    if selector == "*" {
        return format!("{paper}?.shadowRoot");
    }
    format!("{paper}.shadowRoot.querySelector(`{selector}`)")
}

/// Prints the page as it stands, and has the print read: one entry a page.
async fn printed(browser: &Browser) -> Result<Vec<Value>> {
    let asked = json!({ "preferCSSPageSize": true, "printBackground": true });
    let answer = browser.driver.cdp().send_raw("Page.printToPDF", asked).await?;
    let folder = tempfile::tempdir()?;
    let file = folder.path().join("sheet.pdf.base64");
    fs::write(&file, answer["data"].as_str().context("no print")?)?;
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/python/sheet.py");
    let read = Command::new(setting::python()?).arg(script).arg(&file).output()?;
    assert!(read.status.success(), "{}", String::from_utf8_lossy(&read.stderr));
    Ok(serde_json::from_slice(&read.stdout)?)
}

fn number(value: &Value) -> f64 {
    value.as_f64().expect("a number")
}

/// A line without its spaces, and the height of its letters where all are bold.
fn lines(page: &Value) -> Vec<(String, f64)> {
    let lines = page["lines"].as_array().expect("lines");
    lines.iter().map(|line| (line[0].as_str().expect("text").to_owned(), number(&line[1]))).collect()
}

/// Letters of a heading are bold and higher than those of a table's head (8 pt).
const HEADING: f64 = 10.0;

/// Everything that holds for every printed sheet.
fn is_a_sheet(pages: &[Value], paper_mm: [f64; 2], sheet_of: impl Fn(usize, usize) -> String) {
    // Every optional part is on this sheet; an ordinary job has far fewer.
    assert!((7..=20).contains(&pages.len()), "{} pages", pages.len());
    for (index, page) in pages.iter().enumerate() {
        let name = format!("page {}", index + 1);
        for (side, expected) in paper_mm.into_iter().enumerate() {
            assert!((number(&page["size"][side]) - expected * MM).abs() < 1.0, "{name}: {}", page["size"]);
        }
        assert_eq!(page["images"], 0, "{name} has pixels");
        for margin in page["margins"].as_array().expect("four") {
            assert!(number(margin) > 8.0 * MM, "{name}: letters near the edge, {}", page["margins"]);
        }
        let lines = lines(page);
        let numbered = lines.iter().any(|(text, _)| text.contains(&sheet_of(index + 1, pages.len())));
        assert!(numbered, "{name} has no number: {lines:?}");
        // The title block begins with its names: revision, revisión.
        let last = lines.iter().rposition(|(text, _)| text.contains("Revisi")).expect("a title block");
        assert!(last > 2, "{name} is empty: {lines:?}");
        assert!(lines[last - 1].1 < HEADING, "{name} ends with a heading: {:?}", lines[last - 1]);
        for (text, _) in &lines {
            assert!(!text.contains("handover.") && !text.contains("{") && !text.contains("NaN"), "{name}: {text}");
        }
    }
}

/// Every page of the preview holds its blocks, and no table, figure or heading is cut by one.
async fn nothing_runs_over(browser: &Browser) -> Result<()> {
    let over = browser
        .value(&format!(
            "[...{}.querySelectorAll('.body')].map((body) => body.scrollHeight - body.clientHeight).filter((over) => over > 1)",
            inside("*")
        ))
        .await?;
    assert_eq!(over, json!([]));
    let wide = browser
        .value(&format!(
            "[...{}.querySelectorAll('.body *')].filter((part) => part.scrollWidth > part.clientWidth + 1 && part.clientWidth > 0 && !part.closest('svg')).map((part) => part.outerHTML)",
            inside("*")
        ))
        .await?;
    assert_eq!(wide, json!([]));
    Ok(())
}

#[tokio::test]
async fn the_sheet_prints_whole_on_both_papers() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(1024, 768, 1.0).await?;
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        for (job, language, units, size, paper, word, of) in [
            (job(), "en", "metric", "a4", [210.0, 297.0], "Sheet", "of"),
            (job(), "es", "us", "letter", [215.9, 279.4], "Pág.", "de"),
            (job(), "es", "metric", "a4", [210.0, 297.0], "Pág.", "de"),
            (job(), "en", "us", "letter", [215.9, 279.4], "Sheet", "of"),
            (long_job(), "es", "us", "letter", [215.9, 279.4], "Pág.", "de"),
        ] {
            browser.open(&site.address).await?;
            browser.wait_for(READY).await?;
            let calculator = "document.querySelector('pintle-calculator')";
            browser
                .value(&format!("void ({calculator}.lang = '{language}', {calculator}.job = {job}) ?? true"))
                .await?;
            browser.value(&format!("void {calculator}.setAttribute('units', '{units}') ?? true")).await?;
            browser.wait_for(&format!("{calculator}.job?.record?.number === '0001' && {READY}")).await?;
            browser.wait_for(&format!("{}.lang === '{language}'", part(".sheet"))).await?;
            open_sheet(&browser).await?;
            assert_eq!(browser.value(&format!("{}.checked", part(&format!("input[value={size}]")))).await?, true);
            nothing_runs_over(&browser).await?;
            // The code that brings the job back is a path, and no module of it is finer than 0.4 mm.
            let code = inside(".link svg");
            let fine = browser
                .value(&format!(
                    "(({code}?.getBoundingClientRect().width ?? 99) / 96 * 25.4) / ({code}?.viewBox.baseVal.width ?? 1)"
                ))
                .await?;
            assert!(number(&fine) > 0.39, "{fine}");
            let count = browser.value(&format!("{}.querySelectorAll('.page').length", inside("*"))).await?;
            let pages = printed(&browser).await?;
            assert_eq!(json!(pages.len()), count, "{language} {units}");
            is_a_sheet(&pages, paper, |page, pages| format!("{word}{page}{of}{pages}"));
            // Two drawings, of lines.
            assert!(pages.iter().filter(|page| number(&page["paths"]) > 60.0).count() >= 2);
            // After printing it is back in its place.
            assert_eq!(browser.value("document.body.lastElementChild.hasAttribute('data-pintle-paper')").await?, false);
            assert_eq!(browser.value("document.adoptedStyleSheets.length").await?, 0);
        }
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

#[tokio::test]
async fn only_the_sheet_leaves_a_hosts_page() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(1024, 768, 1.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&format!("{}embed.html", site.address)).await?;
        browser.wait_for(READY).await?;
        let host = browser.value("document.querySelector('h1').textContent.replace(/\\s/g, '')").await?;
        let host = host.as_str().expect("a heading").to_owned();
        // What the print has without the sheet is the host's page.
        assert!(printed(&browser).await?.iter().flat_map(lines).any(|(text, _)| text.contains(&host)));
        open_sheet(&browser).await?;
        let pages = printed(&browser).await?;
        is_a_sheet(&pages, [210.0, 297.0], |page, pages| format!("Sheet{page}of{pages}"));
        assert!(!pages.iter().flat_map(lines).any(|(text, _)| text.contains(&host)));
        press(&browser, ".paper-bar .move:last-child").await?;
        assert!(printed(&browser).await?.iter().flat_map(lines).any(|(text, _)| text.contains(&host)));
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

/// The row of a measured number: its cells as the page shows them.
async fn row(browser: &Browser, name: &str) -> Result<Vec<String>> {
    let cells = browser
        .value(&format!(
            "[...[...{}.rows].find((row) => row.cells[0].textContent === '{name}').cells].map((cell) => cell.textContent)",
            part(".compared table")
        ))
        .await?;
    Ok(serde_json::from_value(cells)?)
}

#[tokio::test]
async fn what_is_measured_stands_beside_its_plan() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        open_part(&browser).await?;
        for group in ["measured", "tried"] {
            open_group(&browser, group).await?;
        }
        type_into(&browser, "record.opening_s", "15.5").await?;
        type_into(&browser, "record.rod_ohm", "32").await?;
        type_into(&browser, "record.number", "0001").await?;
        choose(&browser, "record.signs_fixed", "no").await?;

        let mut job = starting_job();
        job["record"] = json!({ "opening_s": 15.5, "rod_ohm": 32.0, "number": "0001", "signs_fixed": false });
        let given = browser.value("JSON.stringify(document.querySelector('pintle-calculator').job.record)").await?;
        let given: Value = serde_json::from_str(given.as_str().unwrap_or_default())?;
        let plain = |value: &Value| serde_json::from_value::<Document>(value.clone()).expect("a document");
        assert_eq!(
            serde_json::to_value(&job["record"])?.as_object().map(serde_json::Map::len),
            given.as_object().map(serde_json::Map::len)
        );
        job["record"] = given;
        // The comparison reckons with a motion where the shaft's speed is known.
        job["motion"] = json!({});
        let model = Model::new(&Job::read(&plain(&job)).expect("valid")).expect("valid");
        let native = model.commissioning(&model.plan());
        let check = |path: &str| native.checks.iter().find(|check| check.path == path).expect("a row");
        let opening = check("record.opening_s");
        let shown = |value: Option<f64>| show(value.expect("a number"), Quantity::Time, System::Metric);
        assert_eq!(opening.verdict, CheckVerdict::Pass);
        assert_eq!(
            row(&browser, "Opening time").await?,
            [
                "Opening time".into(),
                "within range".into(),
                shown(opening.measured),
                shown(opening.planned),
                format!("{} to {}", shown(opening.least), shown(opening.most)),
            ]
        );
        assert_eq!(row(&browser, "Resistance of the earth rod").await?[1], "look again");
        assert_eq!(row(&browser, "Closing time").await?[1], "not measured");
        let differs = text(&browser, ".differs").await?;
        assert!(
            differs.contains("Rod:") && differs.contains("Signs:") && !differs.contains("Opening time:"),
            "{differs}"
        );

        // A fault stays beside its field, and the sheet waits.
        type_into(&browser, "record.rod_ohm", "-3").await?;
        press(&browser, "[data-step=hand_over] .step-title").await?;
        browser.wait_for(&format!("{}.disabled", part(".show-sheet"))).await?;
        type_into(&browser, "record.rod_ohm", "18").await?;
        browser.wait_for(&format!("!{}.disabled", part(".show-sheet"))).await?;

        // What was recorded outlives an update of the page.
        let kept = browser.value("JSON.stringify(document.querySelector('pintle-calculator').record)").await?;
        let kept: Value = serde_json::from_str(kept.as_str().unwrap_or_default())?;
        assert_eq!(
            (&kept["texts"]["record.number"], &kept["typed"]["record.rod_ohm"]["text"]),
            (&json!("0001"), &json!("18"))
        );
        Ok(())
    })
    .await
}

#[tokio::test]
async fn the_part_and_the_preview_are_for_everybody() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        open_sheet(&browser).await?;
        browser
            .value(&format!(
                "[...{}.querySelectorAll('details')].forEach((part) => (part.open = true)) ?? true",
                part(".handover")
            ))
            .await?;
        computed(&browser).await?;
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        for width in [360, 320] {
            browser.resize(width, 740, 2.0).await?;
            computed(&browser).await?;
            let beyond = browser.value("document.documentElement.scrollWidth - innerWidth").await?;
            assert!(beyond.as_i64().expect("a number") <= 0, "{width} px: {beyond} px beyond");
        }
        assert!(element(&browser, ".show-sheet").await?.is_displayed().await?);
        Ok(())
    })
    .await
}
