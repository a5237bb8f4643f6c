//! The built page as it comes: asks nobody else for anything, breaks no policy, excludes nobody, and is kept.

use pintle_tests::harness::{Result, Site, in_browser, setting};

const KEPT: &str = "navigator.serviceWorker.ready.then(() => true)";

async fn comes_clean(base: &str) -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, base)?;
        browser.open(&site.address).await?;
        browser.wait_for(KEPT).await?;
        let requests = browser.requests().await?;
        let elsewhere: Vec<_> = requests.iter().filter(|url| !url.starts_with(&site.address)).collect();
        assert!(elsewhere.is_empty(), "requests to elsewhere: {elsewhere:#?}");
        assert!(requests.iter().any(|url| url.ends_with(".wasm")), "the wasm was not loaded: {requests:#?}");
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

#[tokio::test]
async fn comes_clean_at_the_root() -> Result<()> {
    comes_clean("/").await
}

#[tokio::test]
async fn comes_clean_under_a_path() -> Result<()> {
    comes_clean("/a/b/").await
}

#[tokio::test]
async fn has_no_accessibility_fault() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(KEPT).await?;
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

/// Installable: the browser's own check (Chrome DevTools Protocol, `Page.getInstallabilityErrors`) finds nothing.
#[tokio::test]
async fn is_installable() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        browser.open(&site.address).await?;
        browser.wait_for(KEPT).await?;
        let cdp = browser.driver.cdp();
        let answer = cdp.send_raw("Page.getInstallabilityErrors", serde_json::json!({})).await?;
        assert_eq!(answer["installabilityErrors"], serde_json::json!([]));
        let manifest = cdp.send_raw("Page.getAppManifest", serde_json::json!({})).await?;
        assert_eq!(manifest["url"], format!("{}manifest.webmanifest", site.address));
        assert_eq!(manifest["errors"], serde_json::json!([]));
        Ok(())
    })
    .await
}
