//! The harness on a page full of faults: a check that finds nothing there would find nothing anywhere.

use std::path::Path;

use pintle_tests::harness::{Result, Site, in_browser};

fn faulty() -> Result<Site> {
    Site::start(&Path::new(env!("CARGO_MANIFEST_DIR")).join("browser/fixtures/faulty"), "/")
}

#[tokio::test]
async fn refusals_and_failures_are_seen() -> Result<()> {
    in_browser(async |browser| {
        let site = faulty()?;
        browser.open(&site.address).await?;
        assert_eq!(browser.value("document.title").await?, "A page with faults");
        let complaints = browser.complaints().await?;
        for part in ["Content Security Policy", "missing.js"] {
            assert!(complaints.iter().any(|line| line.contains(part)), "no {part} in {complaints:#?}");
        }
        Ok(())
    })
    .await
}

#[tokio::test]
async fn requests_to_elsewhere_are_seen() -> Result<()> {
    in_browser(async |browser| {
        let site = faulty()?;
        browser.open(&site.address).await?;
        let requests = browser.requests().await?;
        assert!(requests.contains(&site.address), "{requests:#?}");
        assert!(requests.contains(&"http://localhost:9/elsewhere.png".to_owned()), "{requests:#?}");
        Ok(())
    })
    .await
}

#[tokio::test]
async fn accessibility_faults_are_seen() -> Result<()> {
    in_browser(async |browser| {
        let site = faulty()?;
        browser.open(&site.address).await?;
        let faults = browser.accessibility_faults().await?;
        assert!(faults.len() == 1 && faults[0].starts_with("image-alt:"), "{faults:#?}");
        Ok(())
    })
    .await
}
