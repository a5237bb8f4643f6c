//! What the service worker keeps, and for whom.

use std::fs;

use pintle_tests::harness::{Result, Site, in_browser};

use super::versions::{READY, SHOWN, lay};

async fn survives_the_host(base: &str) -> Result<()> {
    in_browser(async |browser| {
        let folder = tempfile::tempdir()?;
        lay(folder.path(), 1)?;
        let site = Site::start(folder.path(), base)?;
        let address = site.address.clone();
        browser.open(&address).await?;
        browser.wait_for(READY).await?;
        drop(site);
        browser.reload().await?;
        browser.wait_for(READY).await?;
        for part in ["", "index.html", "?query", "#fragment"] {
            browser.open(&format!("{address}{part}")).await?;
            assert_eq!(browser.value(SHOWN).await?, "version 1", "{address}{part}");
        }
        // A page that was never there leads to the one that is, at its own address, so that its relative links hold.
        browser.open(&format!("{address}no/such/page")).await?;
        assert_eq!(browser.value("location.href").await?, address.as_str());
        Ok(())
    })
    .await
}

#[tokio::test]
async fn the_page_survives_the_host_at_the_root() -> Result<()> {
    survives_the_host("/").await
}

#[tokio::test]
async fn the_page_survives_the_host_under_a_path() -> Result<()> {
    survives_the_host("/a/b/").await
}

#[tokio::test]
async fn while_there_is_a_host_a_missing_file_is_missing() -> Result<()> {
    in_browser(async |browser| {
        let folder = tempfile::tempdir()?;
        lay(folder.path(), 1)?;
        let site = Site::start(folder.path(), "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        browser.reload().await?;
        assert_eq!(browser.value("fetch('missing.json').then((answer) => answer.status)").await?, 404);
        browser.open(&format!("{}no/such/page", site.address)).await?;
        assert_eq!(browser.value("document.body.textContent").await?, "not found");
        Ok(())
    })
    .await
}

/// Half of a new build on the host, or a file mangled on its way, must not become a kept version.
#[tokio::test]
async fn a_file_with_another_content_than_listed_is_not_kept() -> Result<()> {
    in_browser(async |browser| {
        let folder = tempfile::tempdir()?;
        lay(folder.path(), 1)?;
        let page = fs::read_to_string(folder.path().join("index.html"))?;
        fs::write(folder.path().join("index.html"), page.replace("version 1", "version 7"))?;
        let site = Site::start(folder.path(), "/")?;
        browser.open(&site.address).await?;
        browser.wait_for("window.told?.some((word) => word.startsWith('unable')) ?? false").await?;
        assert_eq!(browser.value(SHOWN).await?, "version 7");
        browser.wait_for("navigator.serviceWorker.getRegistration().then((found) => found === undefined)").await?;
        Ok(())
    })
    .await
}

/// One origin, two copies of the page under two paths, and a cache of someone else's: each keeps its own.
#[tokio::test]
async fn neighbours_on_the_same_origin_are_left_alone() -> Result<()> {
    in_browser(async |browser| {
        let folder = tempfile::tempdir()?;
        lay(folder.path(), 1)?;
        let inner = folder.path().join("a/b");
        lay(&inner, 1)?;
        let site = Site::start(folder.path(), "/")?;
        for part in ["", "a/b/"] {
            browser.open(&format!("{}{part}", site.address)).await?;
            browser.wait_for(READY).await?;
        }
        browser.value("caches.open('of someone else').then(() => true)").await?;

        lay(&inner, 2)?;
        browser.reload().await?;
        browser.wait_for(super::versions::UPDATE).await?;
        browser.value("window.accept()").await?;
        browser.wait_for(&format!("{SHOWN} === 'version 2'")).await?;

        // Someone else's, the outer page's, and one of the inner page's two.
        browser.wait_for("caches.keys().then((names) => names.length === 3)").await?;
        let names =
            browser.value("caches.keys().then((names) => names.map((name) => name.split(':')[1] ?? name).sort())");
        assert_eq!(names.await?, serde_json::json!(["/", "/a/b/", "of someone else"]));
        drop(site);
        browser.reload().await?;
        assert_eq!(browser.value(SHOWN).await?, "version 2");
        Ok(())
    })
    .await
}
