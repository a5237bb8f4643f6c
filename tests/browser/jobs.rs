//! Jobs in the browser: kept, several, deleted and brought back; in files; and what happens where storage is denied, full or wiped.

use pintle_core::job::SCHEMA;
use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};
use thirtyfour::Key;

use crate::page::{NEWER, READY, element, part, starting_job, type_into};

/// JavaScript for a part of the list of jobs.
pub fn jobs(selector: &str) -> String {
    format!("document.querySelector('pintle-jobs').shadowRoot.querySelector(`{selector}`)")
}

/// JavaScript that is true once the line above the calculator says a word.
pub fn says(word: &str) -> String {
    format!("({} ?? {{}}).textContent?.includes(`{word}`) ?? false", jobs("summary"))
}

/// Opens the page at an address and waits for a result and for the jobs.
pub async fn open(browser: &Browser, address: &str) -> Result<()> {
    browser.open(address).await?;
    browser.wait_for(READY).await?;
    browser.wait_for(&format!("{} !== null", jobs("summary"))).await
}

/// Clicks a part of the list of jobs.
pub async fn press(browser: &Browser, selector: &str) -> Result<()> {
    browser.value(&format!("{}.scrollIntoView({{ block: 'center' }})", jobs(selector))).await?;
    let found = browser.driver.execute(format!("return {}", jobs(selector)), Vec::new()).await?;
    Ok(found.element()?.click().await?)
}

pub async fn show_list(browser: &Browser) -> Result<()> {
    browser.value(&format!("{}.open = true", jobs(".jobs-opens"))).await?;
    Ok(())
}

/// The mass of the job on show.
async fn mass(browser: &Browser) -> Result<Value> {
    browser.value("document.querySelector('pintle-calculator').job.leaf.mass_kg").await
}

/// Names of the jobs in the list, in its order.
pub async fn names(browser: &Browser) -> Result<Value> {
    let list =
        "[...document.querySelector('pintle-jobs').shadowRoot.querySelectorAll('.job-list:first-child .job-open')]";
    browser.value(&format!("{list}.map((open) => open.textContent)")).await
}

async fn clean(browser: &Browser) -> Result<()> {
    assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
    Ok(())
}

/// Types a mass and waits until the job is kept under some name.
pub async fn keep(browser: &Browser, typed: &str) -> Result<()> {
    type_into(browser, "leaf.mass_kg", typed).await?;
    browser.wait_for(&says("kept on this device")).await
}

/// Renames the job on show.
pub async fn rename(browser: &Browser, name: &str) -> Result<()> {
    press(browser, ".here [data-act=rename]").await?;
    browser.driver.action_chain().send_keys(name).send_keys(Key::Enter + "").perform().await?;
    browser.wait_for(&says(name)).await?;
    browser.wait_for(&format!("{}.textContent === `{name}`", jobs(".here .job-open"))).await
}

#[tokio::test]
async fn what_was_typed_is_there_next_time() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        open(&browser, &site.address).await?;
        browser.wait_for(&says("example")).await?;
        keep(&browser, "210,5").await?;
        browser.value("document.querySelector('pintle-calculator').setAttribute('units', 'us') ?? true").await?;
        // A text that is no number is kept as well, and so is the moment before leaving.
        type_into(&browser, "leaf.length_m", "about 12 ft").await?;
        browser.open("about:blank").await?;
        browser.open(&site.address).await?;
        browser.wait_for(&format!("{}?.value === 'about 12 ft'", part("#field-leaf-length_m"))).await?;
        assert_eq!(mass(&browser).await?, 210.5);
        let typed = browser.value("document.querySelector('pintle-calculator').record.typed['leaf.mass_kg']").await?;
        assert_eq!((&typed["text"], &typed["system"]), (&json!("210,5"), &json!("metric")));
        Ok(())
    })
    .await
}

#[tokio::test]
async fn jobs_are_named_duplicated_deleted_and_brought_back() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        open(&browser, &site.address).await?;
        clean(&browser).await?;
        keep(&browser, "210").await?;
        show_list(&browser).await?;
        rename(&browser, "Yard").await?;
        press(&browser, ".here [data-act=duplicate]").await?;
        browser.wait_for(&says("Yard (copy)")).await?;
        keep(&browser, "220").await?;
        rename(&browser, "Ranch").await?;
        assert_eq!(names(&browser).await?, json!(["Ranch", "Yard"]));
        clean(&browser).await?;

        press(&browser, "li:not(.here) .job-open").await?;
        browser.wait_for(&says("Yard")).await?;
        assert_eq!(mass(&browser).await?, 210.0);
        press(&browser, ".here [data-act=delete]").await?;
        browser.wait_for(&says("Ranch")).await?;
        assert_eq!(mass(&browser).await?, 220.0);
        assert_eq!(names(&browser).await?, json!(["Ranch"]));
        clean(&browser).await?;
        // The way back is under the finger: the keyboard is on it.
        browser.driver.action_chain().send_keys(Key::Enter + "").perform().await?;
        browser.wait_for(&says("Yard")).await?;
        assert_eq!(mass(&browser).await?, 210.0);

        // Deleted for good only after a month: it can be brought back after a reload too.
        press(&browser, ".here [data-act=delete]").await?;
        browser.wait_for(&says("Ranch")).await?;
        browser.reload().await?;
        browser.wait_for(READY).await?;
        browser.wait_for(&says("Ranch")).await?;
        show_list(&browser).await?;
        browser.value(&format!("{}.open = true", jobs(".job-bin"))).await?;
        clean(&browser).await?;
        press(&browser, ".job-bin [data-act=restore]").await?;
        browser.wait_for(&says("Yard")).await?;
        assert_eq!(mass(&browser).await?, 210.0);

        press(&browser, "[data-act=new]").await?;
        browser.wait_for(&says("example")).await?;
        assert_eq!(mass(&browser).await?, 160.0);
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

/// A job is written a moment after somebody pauses: not over the name that is being typed by then, and the keyboard stays on it.
#[tokio::test]
async fn a_name_half_typed_outlives_the_saving() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        open(&browser, &site.address).await?;
        keep(&browser, "210").await?;
        show_list(&browser).await?;
        press(&browser, ".here [data-act=duplicate]").await?;
        browser.wait_for(&format!("{}?.textContent.includes('(copy)') === true", jobs(".here .job-open"))).await?;
        // The other one again, so that the list gets another order when it is written.
        press(&browser, "li:not(.here) .job-open").await?;
        browser.wait_for(&format!("{}.textContent.includes('(copy)')", jobs("li:not(.here) .job-open"))).await?;
        let second = format!("{}.classList.contains('here')", jobs(".job-list li:nth-child(2)"));
        assert_eq!(browser.value(&second).await?, true);

        type_into(&browser, "leaf.mass_kg", "220").await?;
        press(&browser, ".here [data-act=rename]").await?;
        browser.driver.action_chain().send_keys("Ya").perform().await?;
        browser.wait_for(&format!("{}.classList.contains('here')", jobs(".job-list li:nth-child(1)"))).await?;
        browser.driver.action_chain().send_keys("rd").send_keys(Key::Enter + "").perform().await?;
        browser.wait_for(&format!("{}.textContent === 'Yard'", jobs(".here .job-open"))).await?;
        assert_eq!(mass(&browser).await?, 220.0);
        Ok(())
    })
    .await
}

/// Two windows with one job: nothing of either is lost.
#[tokio::test]
async fn a_second_window_does_not_overwrite_the_first() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        open(&browser, &site.address).await?;
        keep(&browser, "210").await?;
        let first = browser.driver.window().await?;
        let second = browser.driver.new_tab().await?;
        browser.driver.switch_to_window(second).await?;
        open(&browser, &site.address).await?;
        browser.wait_for("document.querySelector('pintle-calculator').job.leaf.mass_kg === 210").await?;
        keep(&browser, "300").await?;
        let kept = "new Promise((done) => { indexedDB.open('pintle-jobs:/').onsuccess = ({ target }) => {
            target.result.transaction('jobs').objectStore('jobs').getAll().onsuccess = (got) => {
              target.result.close();
              done(got.target.result.map((row) => row.document.leaf.mass_kg).sort()); }; }; })";
        browser.wait_for(&format!("({kept}).then((all) => JSON.stringify(all) === '[300]')")).await?;
        browser.driver.switch_to_window(first).await?;
        type_into(&browser, "leaf.mass_kg", "400").await?;
        browser.wait_for(&says("(copy)")).await?;
        assert!(trouble(&browser).await?.contains("another window"));
        clean(&browser).await?;
        browser.wait_for(&format!("({kept}).then((all) => JSON.stringify(all) === '[300,400]')")).await?;
        Ok(())
    })
    .await
}

async fn trouble(browser: &Browser) -> Result<String> {
    let text = browser.value(&format!("{}.textContent", jobs(".error"))).await?;
    Ok(text.as_str().unwrap_or_default().to_owned())
}

/// Puts a script before everything the page runs.
pub async fn before_the_page(browser: &Browser, script: &str) -> Result<()> {
    let asked = json!({ "source": script });
    browser.driver.cdp().send_raw("Page.addScriptToEvaluateOnNewDocument", asked).await?;
    Ok(())
}

/// Still computes, says so, and the button beside it gives the file.
pub async fn says_so_and_offers_the_file(browser: &Browser, word: &str) -> Result<()> {
    type_into(browser, "leaf.mass_kg", "210").await?;
    browser.wait_for(&format!("{}.textContent.includes(`{word}`)", jobs(".error"))).await?;
    browser.wait_for("document.querySelector('pintle-calculator').plan.loads.inertia_kg_m2 > 0").await?;
    clean(browser).await?;
    // Without a picker the browser downloads; what it is given is caught on its way.
    browser
        .value(
            "delete window.showSaveFilePicker && (URL.createObjectURL = (blob) => {
               blob.text().then((text) => { window.given = JSON.parse(text); }); return 'blob:none'; }) && true",
        )
        .await?;
    press(browser, ".job-line .move").await?;
    browser
        .wait_for("window.given?.leaf.mass_kg === 210 && window.given.entry.typed['leaf.mass_kg'].text === '210'")
        .await
}

#[tokio::test]
async fn where_storage_is_denied_it_computes_and_offers_the_file() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        // As browsers that block all storage do it: the accessors throw.
        before_the_page(
            &browser,
            "for (const name of ['indexedDB', 'localStorage', 'sessionStorage'])
               Object.defineProperty(window, name, { get() { throw new DOMException('denied', 'SecurityError'); } });",
        )
        .await?;
        open(&browser, &site.address).await?;
        says_so_and_offers_the_file(&browser, "lets the page keep nothing").await
    })
    .await
}

/// The browser's own quota, set to less than a job takes (DevTools Protocol, `Storage.overrideQuotaForOrigin`).
#[tokio::test]
async fn where_storage_is_full_it_computes_and_offers_the_file() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        open(&browser, &site.address).await?;
        browser.wait_for("navigator.serviceWorker.ready.then(() => true)").await?;
        let origin = site.address.trim_end_matches('/');
        let quota = json!({ "origin": origin, "quotaSize": 1 });
        browser.driver.cdp().send_raw("Storage.overrideQuotaForOrigin", quota).await?;
        says_so_and_offers_the_file(&browser, "no room left").await
    })
    .await
}

/// "Clear site data" while the page is open (DevTools Protocol, `Storage.clearDataForOrigin`).
#[tokio::test]
async fn what_was_wiped_is_kept_anew_and_told() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        open(&browser, &site.address).await?;
        keep(&browser, "210").await?;
        let wiped = json!({ "origin": site.address.trim_end_matches('/'), "storageTypes": "indexeddb" });
        browser.driver.cdp().send_raw("Storage.clearDataForOrigin", wiped).await?;
        type_into(&browser, "leaf.mass_kg", "211").await?;
        browser.wait_for(&format!("{}.textContent.includes('wiped')", jobs(".error"))).await?;
        clean(&browser).await?;
        browser.wait_for(&says("kept on this device")).await?;
        browser.open("about:blank").await?;
        open(&browser, &site.address).await?;
        browser.wait_for("document.querySelector('pintle-calculator').job.leaf.mass_kg === 211").await
    })
    .await
}

/// Drops a file on the page, as far as a script can: the same event with the same content.
pub async fn drop_file(browser: &Browser, name: &str, text: &str) -> Result<()> {
    let dropped = format!(
        "(() => {{ const held = new DataTransfer(); held.items.add(new File([{}], {}));
           document.body.dispatchEvent(new DragEvent('drop', {{ dataTransfer: held, bubbles: true, cancelable: true }})); return true; }})()",
        json!(text),
        json!(name)
    );
    browser.value(&dropped).await?;
    Ok(())
}

#[tokio::test]
async fn a_file_brings_everything_back_and_a_bad_one_is_told() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        open(&browser, &site.address).await?;
        keep(&browser, "210").await?;
        // By the picker's input, like a person's choice of a file.
        let file = tempfile::Builder::new().suffix(".json").tempfile()?;
        let mut saved: Value = serde_json::from_str(include_str!("../fixtures/schema-1/every-block.json"))?;
        saved["title"] = json!("From a file");
        std::fs::write(file.path(), saved.to_string())?;
        let input =
            browser.driver.execute(format!("return {}", jobs("input[type=file]")), Vec::new()).await?.element()?;
        input.send_keys(file.path().to_string_lossy()).await?;
        browser.wait_for(&says("From a file")).await?;
        browser.wait_for(READY).await?;
        let there = browser.value("document.querySelector('pintle-calculator').job").await?;
        assert_eq!(there["record"], saved["record"], "what is measured is carried along");
        assert_eq!(there["setout"]["aim"], "least_shaft_torque");
        assert_eq!(there["leaf"]["members"][0]["section"], "tube");
        let typed =
            browser.value("document.querySelector('pintle-calculator').record.typed['swing.open_deg'].text").await?;
        assert_eq!(typed, "90 °");
        clean(&browser).await?;

        let mut odd = starting_job();
        odd["colour"] = json!("red");
        let newer = json!({ "schema": NEWER });
        let deep = format!("{}1{}", "[".repeat(5000), "]".repeat(5000));
        for (name, text, told) in [
            ("photo.json", "GIF89a…", "This is not a job. Found: photo.json"),
            ("newer.json", &newer.to_string(), "newer version"),
            ("odd.json", &odd.to_string(), "colour"),
            ("null.json", "null", "This is not a job. Found: null"),
            ("deep.json", &deep, "was not opened"),
        ] {
            drop_file(&browser, name, text).await?;
            browser
                .wait_for(&format!("!{0}.hidden && {0}.textContent.includes(`{told}`)", jobs(".job-refused")))
                .await?;
            assert_eq!(browser.value("document.querySelector('pintle-calculator').job").await?, there, "{name}");
        }
        clean(&browser).await?;
        press(&browser, ".job-refused button").await?;
        browser.wait_for(&format!("{}.hidden", jobs(".job-refused"))).await?;

        // A job whose record is broken opens without it, and says so.
        saved["title"] = json!("Broken record");
        saved["entry"] = json!({ "system": "us", "typed": { "leaf.length_m": null }, "members": 7 });
        drop_file(&browser, "broken.json", &saved.to_string()).await?;
        browser.wait_for(&says("Broken record")).await?;
        browser.wait_for(&format!("{}.textContent.includes('could not be read')", part(".asks"))).await?;
        // And the one before is one press away.
        press(&browser, ".job-line + .job-line .move").await?;
        browser.wait_for(&says("From a file")).await
    })
    .await
}

/// A picker saves where there is one; where there is none, another program; the person who gives up is told nothing.
#[tokio::test]
async fn a_file_is_saved_the_best_way_there_is() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        open(&browser, &site.address).await?;
        keep(&browser, "210").await?;
        show_list(&browser).await?;
        rename(&browser, "Yard / north").await?;
        browser
            .value(
                "(window.showSaveFilePicker = async (asked) => { window.asked = asked; return { createWritable: async () => ({
                   write: async (text) => { window.wrote = JSON.parse(text); }, close: async () => { window.finished = true; } }) }; }) && true",
            )
            .await?;
        press(&browser, "[data-act=save]").await?;
        browser.wait_for("window.finished === true").await?;
        assert_eq!(browser.value("window.asked.suggestedName").await?, "Yard  north.json");
        let wrote = browser.value("window.wrote").await?;
        assert_eq!((&wrote["schema"], &wrote["leaf"]["mass_kg"]), (&json!(SCHEMA), &json!(210)));
        browser.wait_for(&format!("{}.textContent === 'Saved.'", jobs(".job-said"))).await?;

        browser
            .value(
                "delete window.showSaveFilePicker && (Object.defineProperties(navigator, {
                   canShare: { value: ({ files }) => files[0].type === 'text/plain' },
                   share: { value: async ({ files }) => { window.shared = files[0].name; } } })) && true",
            )
            .await?;
        press(&browser, "[data-act=save]").await?;
        browser.wait_for("window.shared === 'Yard  north.json.txt'").await?;
        browser.wait_for(&format!("{}.textContent === 'Handed on.'", jobs(".job-said"))).await?;
        Ok(())
    })
    .await
}

/// A shop's page has neither a list of jobs nor a storage of its own.
#[tokio::test]
async fn a_shops_page_keeps_nothing() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&format!("{}embed.html", site.address)).await?;
        browser.wait_for(READY).await?;
        type_into(&browser, "leaf.mass_kg", "210").await?;
        element(&browser, "#field-leaf-mass_kg").await?.send_keys(Key::Tab + "").await?;
        browser.wait_for("document.querySelector('pintle-calculator').job.leaf.mass_kg === 210").await?;
        assert_eq!(browser.value("indexedDB.databases()").await?, json!([]));
        assert_eq!(browser.value("[localStorage.length, sessionStorage.length]").await?, json!([0, 0]));
        let requests = browser.requests().await?;
        assert!(requests.iter().all(|url| !url.contains("/jobs/")), "{requests:#?}");
        Ok(())
    })
    .await
}
