//! The page in a real browser: a static host, a browser with its driver, and what the browser complains of.
//!
//! `cargo xtask test page` builds the page, finds or installs the browser, and says where all of it is through the
//! environment ([`setting`]); `cargo xtask test "page in"` runs the browser's tests alone. A test reads like this:
//!
//! ```no_run
//! # use pintle_tests::harness::{Result, Site, in_browser, setting};
//! # async fn shown() -> Result<()> {
//! in_browser(async |browser| {
//!     let site = Site::start(&setting::dist()?, "/a/b/")?;
//!     browser.open(&site.address).await?;
//!     browser.wait_for("document.readyState === 'complete'").await?;
//!     assert_eq!(browser.complaints().await?, Vec::<String>::new());
//!     Ok(())
//! })
//! .await
//! # }
//! ```

mod axe;
mod browser;
mod process;
pub mod setting;
mod site;

pub use anyhow::{Context, Error, Result};
pub use browser::{Browser, in_browser, in_firefox};
pub use site::Site;
