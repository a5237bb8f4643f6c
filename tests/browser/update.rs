//! A new version never comes under the user's hands.

use pintle_tests::harness::{Browser, Result, Site, in_browser};

use super::versions::{READY, SHOWN, UPDATE, lay};

const TYPE: &str = "document.getElementById('typed').value = '3.2'";
const TYPED: &str = "document.getElementById('typed').value";

/// Opens version 1, then lays version 2 and waits until the open page is told of it.
async fn old_page_new_build(browser: &Browser, folder: &std::path::Path) -> Result<Site> {
    lay(folder, 1)?;
    let site = Site::start(folder, "/a/b/")?;
    browser.open(&site.address).await?;
    browser.wait_for(READY).await?;
    lay(folder, 2)?;
    browser.reload().await?;
    browser.wait_for(UPDATE).await?;
    Ok(site)
}

#[tokio::test]
async fn it_waits_until_it_is_accepted() -> Result<()> {
    in_browser(async |browser| {
        let folder = tempfile::tempdir()?;
        let _site = old_page_new_build(&browser, folder.path()).await?;
        browser.value(TYPE).await?;
        browser.reload().await?;
        browser.wait_for(UPDATE).await?;
        assert_eq!(browser.value(SHOWN).await?, "version 1", "a reload is no acceptance");
        browser.value("window.accept()").await?;
        browser.wait_for(&format!("{SHOWN} === 'version 2'")).await?;
        browser.wait_for(READY).await?;
        assert_eq!(browser.value(UPDATE).await?, false, "nothing newer is left to offer");
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_page_open_in_another_tab_keeps_what_was_typed() -> Result<()> {
    in_browser(async |browser| {
        let folder = tempfile::tempdir()?;
        let site = old_page_new_build(&browser, folder.path()).await?;
        browser.value(TYPE).await?;
        let first = browser.driver.window().await?;

        let second = browser.driver.new_tab().await?;
        browser.driver.switch_to_window(second).await?;
        browser.open(&site.address).await?;
        browser.wait_for(UPDATE).await?;
        browser.value("window.accept()").await?;
        browser.wait_for(&format!("{SHOWN} === 'version 2'")).await?;

        browser.driver.switch_to_window(first).await?;
        assert_eq!(browser.value(SHOWN).await?, "version 1");
        assert_eq!(browser.value(TYPED).await?, "3.2");
        // Its own offer still stands: the new version is the active one by now, and this page changes to it.
        browser.value("window.accept()").await?;
        browser.wait_for(&format!("{SHOWN} === 'version 2'")).await
    })
    .await
}

/// An offer left open must lead to the newest version, not to the one it was made for.
#[tokio::test]
async fn an_old_offer_leads_to_the_newest() -> Result<()> {
    in_browser(async |browser| {
        let folder = tempfile::tempdir()?;
        let _site = old_page_new_build(&browser, folder.path()).await?;
        browser.value("window.first = window.accept").await?;
        lay(folder.path(), 3)?;
        browser
            .value("navigator.serviceWorker.getRegistration().then((found) => found.update()).then(() => true)")
            .await?;
        browser.wait_for("window.told.filter((word) => word === 'update').length === 2").await?;
        browser.value("window.first()").await?;
        browser.wait_for(&format!("{SHOWN} === 'version 3'")).await
    })
    .await
}
