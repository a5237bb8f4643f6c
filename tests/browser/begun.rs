//! A part that is begun spoils nothing: the verdict stands, and the page says what is not counted and what it needs.

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};

use crate::page::{READY, choose, computed, open_group, part, text, type_into};

const CALCULATOR: &str = "document.querySelector('pintle-calculator')";

async fn storm(browser: &Browser) -> Result<Value> {
    browser.value(&format!("{CALCULATOR}.plan.storm?.wind_n_m ?? null")).await
}

async fn begun(browser: &Browser) -> Result<String> {
    computed(browser).await?;
    let hidden = browser.value(&format!("{}.hidden", part("[part=begun]"))).await?;
    if hidden == json!(true) { Ok(String::new()) } else { text(browser, "[part=begun]").await }
}

#[tokio::test]
async fn a_storm_begun_is_not_counted_and_the_verdict_stands() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        let reserve = format!("{CALCULATOR}.plan.rating.reserve");
        let before = browser.value(&reserve).await?;
        assert_eq!(begun(&browser).await?, "");
        open_group(&browser, "storm").await?;
        choose(&browser, "storm.looked_at", "yes").await?;
        // Whatever the page asks first has no number yet.
        type_into(&browser, "storm.speed_m_s", "").await?;
        type_into(&browser, "storm.force_coefficient", "1.3").await?;
        let said = begun(&browser).await?;
        // The rest stands, and nothing is green.
        let line = part("[part=verdict]");
        assert_eq!(browser.value(&format!("{line}.classList.contains('stale')")).await?, json!(false));
        assert!(said.starts_with("Not yet counted: ") && said.contains("torm") && said.contains("needs"), "{said}");
        assert_eq!((browser.value(&reserve).await?, storm(&browser).await?), (before.clone(), Value::Null));
        // However much that is, the bar leaves four fifths of the screen to what is asked.
        let high = browser.value(&format!("{line}.getBoundingClientRect().height / innerHeight")).await?;
        assert!(high.as_f64().is_some_and(|share| share > 0.05 && share <= 0.2), "{high}");
        // A text that is no number is a mistake of its own field, and still none of the rest.
        type_into(&browser, "storm.speed_m_s", "fast").await?;
        assert!(begun(&browser).await?.contains("torm"));
        assert_eq!((browser.value(&reserve).await?, storm(&browser).await?), (before.clone(), Value::Null));
        type_into(&browser, "storm.speed_m_s", "30").await?;
        browser.wait_for(&format!("{CALCULATOR}.plan.storm?.wind_n_m > 0")).await?;
        assert_eq!(begun(&browser).await?, "");
        assert_eq!(browser.value(&reserve).await?, before);
        // Half open and open are told beside the closed leaf.
        assert_eq!(browser.value(&format!("{}.children.length", part("[part=stranded]"))).await?, json!(3));
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}
