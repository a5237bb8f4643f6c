//! Marking out, on the page: two views of the drawing, and the page to take out to the gate, which has the numbers of the cards and the base at
//! its true size.

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};

use crate::page::{READY, at_step, computed, part, press, starting_job, text};

/// The starting job with an invented base of 250 × 150 mm.
fn job() -> Value {
    let mut job = starting_job();
    job["marks"] =
        json!({ "anchor_along_m": 0.25, "anchor_across_m": 0.15, "pad_level_m": 0.1, "crossbar_level_m": 0.62 });
    job
}

async fn open(browser: &Browser, address: &str) -> Result<()> {
    browser.open(address).await?;
    browser.wait_for(READY).await?;
    browser.value(&format!("void (document.querySelector('pintle-calculator').job = {}) ?? true", job())).await?;
    browser.wait_for("document.querySelector('pintle-calculator').job?.marks != null").await?;
    at_step(browser, "mark_out").await?;
    computed(browser).await
}

/// What an expression of the paper's tree is, `paper` in it.
async fn on_paper(browser: &Browser, expression: &str) -> Result<Value> {
    let paper = part("[data-pintle-paper]");
    browser.value(&format!("(paper => {expression})({paper}.shadowRoot)")).await
}

#[tokio::test]
async fn what_is_taken_out_has_the_numbers_of_the_cards_and_the_base_at_its_true_size() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        for (language, button, template) in
            [("en", "One page", "Template of the base"), ("es", "Una página", "Plantilla de la base")]
         {
            open(&browser, &site.address).await?;
            browser.value(&format!("document.querySelector('pintle-calculator').lang = '{language}'")).await?;
            browser.wait_for(&format!("{}?.textContent.includes(`{button}`)", part(".show-marks-page"))).await?;
            press(&browser, ".show-marks-page").await?;
            let paper = part("[data-pintle-paper]");
            browser.wait_for(&format!("({paper}?.shadowRoot.querySelectorAll('.page').length ?? 0) > 1")).await?;

            // Whatever a card says of a mark stands in its row, too.
            let cards = browser
                .value(&format!(
                    "JSON.stringify([...{}.querySelectorAll('.mark-card')].map(card => [card.querySelector('h3').textContent.trim(), \
                     [...card.querySelectorAll('dd .quantity')].map(length => length.textContent)]))",
                    part(".fit")
                ))
                .await?;
            let cards: Vec<(String, Vec<String>)> = serde_json::from_str(cards.as_str().unwrap_or_default())?;
            assert_eq!(cards.len(), 5, "four holes and the shaft");
            for (name, lengths) in cards {
                let row = on_paper(
                    &browser,
                    &format!("[...paper.querySelectorAll('table.numbers tr')].find(row => row.cells[0].textContent === '{name}')?.textContent"),
                )
                .await?;
                let row = row.as_str().unwrap_or_default();
                for length in lengths {
                    assert!(row.contains(&length), "{name}: {length} is not in “{row}”");
                }
            }

            // All of it on one sheet; the base on two more, as wide as its drawing says, whatever the room.
            let sheets = on_paper(
                &browser,
                "JSON.stringify([...paper.querySelectorAll('.page')].map(page => [page.querySelectorAll('table').length, \
                 page.querySelector('.true-size svg')?.getAttribute('width') ?? '', \
                 page.querySelector('.true-size svg') ? getComputedStyle(page.querySelector('.true-size svg')).width : '', \
                 page.querySelector('h3')?.textContent ?? '', page.querySelector('.title-block').textContent.includes('1:1')]))",
            )
            .await?;
            let sheets: Vec<(u32, String, String, String, bool)> = serde_json::from_str(sheets.as_str().unwrap_or_default())?;
            assert_eq!(sheets.iter().map(|sheet| sheet.0).collect::<Vec<_>>(), [2, 0, 0], "{language}: {sheets:?}");
            for (_, width, drawn, title, is_true) in &sheets[1..] {
                assert_eq!(format!("{width}px"), *drawn);
                assert!(title.starts_with(template) && *is_true, "{title}");
            }
            assert!(!sheets[0].4, "the drawing on the first sheet is not to scale");
        }
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

#[tokio::test]
async fn the_drawing_shows_all_of_the_gate_or_the_arm() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        open(&browser, &site.address).await?;
        let canvas = part(".of-plan_view canvas");
        let drawn = async || browser.value(&format!("{canvas}.toDataURL()")).await;
        let pressed = async |index: u32| {
            browser
                .value(&format!(
                    "{}.getAttribute('aria-pressed')",
                    part(&format!(".plan-parts button:nth-child({index})"))
                ))
                .await
        };
        assert_eq!(
            (pressed(1).await?, pressed(2).await?),
            (json!("false"), json!("true")),
            "marking out begins with the arm"
        );
        let arm = drawn().await?;
        press(&browser, ".plan-parts button:nth-child(1)").await?;
        computed(&browser).await?;
        assert_eq!((pressed(1).await?, pressed(2).await?), (json!("true"), json!("false")));
        assert_ne!(drawn().await?, arm);
        press(&browser, ".plan-parts button:nth-child(2)").await?;
        computed(&browser).await?;
        assert_eq!(drawn().await?, arm, "the same again");
        assert!(!text(&browser, ".plan-parts").await?.is_empty());
        Ok(())
    })
    .await
}
