//! What claims to be what somebody typed, and is not: in a file, a link, a host's property. And the version a host is told.

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};

use crate::jobs::{before_the_page, drop_file, open, says};
use crate::page::{READY, part, starting_job};
use crate::versions::CORE;

const CALCULATOR: &str = "document.querySelector('pintle-calculator')";

/// Keeps the core's memory where a test can see it.
pub const SEE_MEMORY: &str = "
    const compile = WebAssembly.instantiateStreaming;
    WebAssembly.instantiateStreaming = async (...given) => {
        const made = await compile.apply(WebAssembly, given);
        window.coreMemory = made.instance.exports.memory;
        return made;
    };";

/// Memory of the core, bytes.
pub async fn core_bytes(browser: &Browser) -> Result<f64> {
    Ok(browser.value("window.coreMemory.buffer.byteLength").await?.as_f64().expect("a number"))
}

/// Records of wrong types, one by one, each with something sound beside it that must come through.
fn odd() -> Vec<(&'static str, Value)> {
    let typed = |text: Value| json!({ "system": "metric", "typed": { "leaf.mass_kg": text, "leaf.length_m": { "text": "3.5", "system": "metric" } } });
    let text = |text: Value| typed(json!({ "text": text, "system": "metric" }));
    let mut all = vec![
        ("a text that claims a length", text(json!({ "length": 1_000_000_000 }))),
        ("a text that is a number", text(json!(210))),
        ("a text that is a list", text(json!(["2", "1"]))),
        ("a text that is nothing", text(json!(null))),
        ("a text without end", text(json!("9".repeat(500_000)))),
        ("units nobody has", typed(json!({ "text": "210", "system": "cubits" }))),
        ("a reading that is none", typed(json!({ "text": "1,234", "system": "metric", "meant": "both" }))),
        ("an entry that is a word", typed(json!("210"))),
        ("an entry that is a list", typed(json!([]))),
    ];
    for (name, key, value) in [
        ("choices that are a list", "choices", json!(["kind"])),
        ("a choice that is a group", "choices", json!({ "hinges.kind": { "toString": 1 } })),
        ("parts without number", "members", json!(vec![json!({}); 5000])),
        ("parts that are a number", "members", json!(7)),
        ("a part that is a word", "members", json!(["tube"])),
        (
            "obstacles without end",
            "obstacles",
            json!(vec![json!({ "kind": "wall", "hinge_post": false, "stops": [] }); 5000]),
        ),
        ("an obstacle that is a number", "obstacles", json!([-1])),
        ("means that are words", "site", json!({ "means": ["edge"] })),
        ("a count that is none", "obstacles", json!(1e12)),
        ("a set-out that is a word", "setout", json!("yes")),
        ("given that is a word", "given", json!("leaf.mass_kg")),
        ("texts that are numbers", "texts", json!({ "record.owner": 5 })),
        ("units nobody has at all", "system", json!(["us"])),
        ("an operator that is a group", "operator", json!({ "id": "demo-c" })),
    ] {
        let mut record = typed(json!({ "text": "160", "system": "metric" }));
        record[key] = value;
        all.push((name, record));
    }
    all
}

#[tokio::test]
async fn a_typed_record_of_wrong_types_is_left_out_and_told() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        before_the_page(&browser, SEE_MEMORY).await?;
        open(&browser, &site.address).await?;
        let before = core_bytes(&browser).await?;
        let told = format!("[...({}?.querySelectorAll('.asks > .error') ?? [])].some((said) => said.textContent.includes('could not be read'))", part(".sheet"));
        for (name, record) in odd() {
            // As a host gives it, and as a file brings it.
            let mut job = starting_job();
            job["entry"] = record.clone();
            job["title"] = json!(name);
            browser.value(&format!("({CALCULATOR}.job = {job}) && {CALCULATOR}.ready.then(() => true)")).await?;
            assert_eq!(browser.value(&told).await?, json!(true), "{name}");
            assert_eq!(browser.value(&format!("{READY} && {CALCULATOR}.job.leaf.mass_kg === 160")).await?, json!(true), "{name}");
            let sound = browser.value(&format!("{CALCULATOR}.job.leaf.length_m")).await?;
            assert_eq!(sound, json!(3.5), "{name}: what is sound beside it comes through");

            browser.value(&format!("({CALCULATOR}.job = {}) && {CALCULATOR}.ready.then(() => true)", starting_job())).await?;
            assert_eq!(browser.value(&told).await?, json!(false), "{name}");
            browser.value(&format!("({CALCULATOR}.record = {record}) && true")).await?;
            assert_eq!(browser.value(&told).await?, json!(true), "{name}: as a property");
        }
        let grown = core_bytes(&browser).await? - before;
        assert!(grown <= 1_048_576.0, "{grown} bytes");

        for (at, (name, record)) in odd().into_iter().enumerate() {
            let mut job = starting_job();
            job["entry"] = record;
            job["title"] = json!(format!("File {at}."));
            drop_file(&browser, "odd.json", &job.to_string()).await?;
            browser.wait_for(&says(&format!("File {at}."))).await.map_err(|error| error.context(name))?;
            browser.wait_for(&told).await.map_err(|error| error.context(name))?;
        }
        browser.wait_for(READY).await
    })
    .await
}

/// Every value of a whole job turned into something else, as a host's script might give it: always an answer, in faults or a plan.
#[tokio::test]
async fn a_job_of_wrong_types_is_answered() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::modules()?, "/")?;
        open(&browser, &site.address).await?;
        let whole: Value = serde_json::from_str(include_str!("../fixtures/schema-1/every-block.json"))?;
        let answered = "(async (whole, from, count) => {
            const at = (name) => new URL(`app/${name}`, document.baseURI);
            const { Session } = await import(at('session.js'));
            const { applyRecord } = await import(at('typed-record.js'));
            const core = await (await import(at('core.js'))).loadCore();
            const wrong = [null, true, -1, 1e300, 'word', '', [], [null, {}], {}, { length: 1e9 }, { toString: null }];
            const failed = [], cases = [];
            const walk = (node, path) => {
                for (const [key, kept] of Object.entries(node)) {
                    for (const value of wrong) cases.push({ node, key, kept, value, path: `${path}${key}` });
                    if (kept && typeof kept === 'object') walk(kept, `${path}${key}.`);
                }
            };
            walk(whole, '');
            for (const { node, key, kept, value, path } of cases.slice(from, from + count)) {
                node[key] = value;
                try {
                    const { entry, ...base } = whole;
                    const session = new Session(core, base, [], 'metric');
                    applyRecord(session, entry);
                    const { calculation, faults } = session.compute();
                    if (!calculation && faults.length === 0) failed.push(`${path} = ${JSON.stringify(value)}: no answer`);
                    calculation?.free();
                } catch (error) { failed.push(`${path} = ${JSON.stringify(value)}: ${error}`); }
                node[key] = kept;
            }
            return { cases: cases.length, failed };
        })";
        // A hundred at a time: together they take longer than a script may.
        let (mut from, mut cases) = (0, 1);
        while from < cases {
            let found = browser.value(&format!("{answered}({whole}, {from}, 100)")).await?;
            cases = found["cases"].as_u64().expect("a number");
            assert_eq!(found["failed"], json!([]), "{found:#}");
            from += 100;
        }
        assert!(cases > 1500, "{cases}");
        Ok(())
    })
    .await
}

#[tokio::test]
async fn a_host_is_told_the_version_that_runs() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&format!("{}embed.html", site.address)).await?;
        browser.wait_for(READY).await?;
        assert_eq!(browser.value(&format!("{CALCULATOR}.version")).await?, json!(CORE));
        // Off the page and before its files are there it has none.
        let unmounted = "document.createElement('pintle-calculator').version";
        assert_eq!(browser.value(unmounted).await?, Value::Null);
        open(&browser, &site.address).await?;
        browser
            .wait_for(&format!("document.getElementById('version').textContent.includes({CALCULATOR}.version)"))
            .await
    })
    .await
}
