//! Memory is flat: what the page takes off the screen is let go of, by the browser's own counters.

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::json;

use crate::jobs::open;
use crate::page::READY;

/// What the browser counts after a full collection (DevTools Protocol, `HeapProfiler.collectGarbage` and `Performance.getMetrics`), and the
/// memory of the core, bytes.
#[derive(Clone, Copy, Debug)]
struct Held {
    nodes: f64,
    listeners: f64,
    heap_bytes: f64,
    core_bytes: f64,
}

async fn held(browser: &Browser) -> Result<Held> {
    let cdp = browser.driver.cdp();
    // Twice: what the first one lets go of may hold something itself.
    for _ in 0..2 {
        cdp.send_raw("HeapProfiler.collectGarbage", json!({})).await?;
    }
    let metrics = cdp.send_raw("Performance.getMetrics", json!({})).await?;
    let count = |name: &str| {
        let found = metrics["metrics"].as_array().and_then(|all| all.iter().find(|metric| metric["name"] == name));
        found.and_then(|metric| metric["value"].as_f64()).unwrap_or(f64::NAN)
    };
    let memory = "import(new URL('pintle-web.js', document.baseURI)).then((core) => core.default()).then(({ memory }) => memory.buffer.byteLength)";
    let core_bytes = browser.value(memory).await?.as_f64().unwrap_or(f64::NAN);
    Ok(Held {
        nodes: count("Nodes"),
        listeners: count("JSEventListeners"),
        heap_bytes: count("JSHeapUsedSize"),
        core_bytes,
    })
}

/// Often enough that a leak of one view each time stands far above everything else that moves.
const TIMES: u32 = 50;
/// A view has some 3,400 nodes and 640 listeners: one tenth of one each ten times is no leak of views, and anything larger is one.
const MOST_NODES: f64 = 1700.0;
const MOST_LISTENERS: f64 = 320.0;
/// A view is 0.18 MB of heap, so fifty would be 9 MB. The engine's own caches and compiled code come and go by some hundred kB.
const MOST_HEAP_BYTES: f64 = 1.5e6;
/// Memory of the core grows by pages of 64 KiB and never shrinks; a plan is freed before the next is made.
const MOST_CORE_BYTES: f64 = 4.0 * 65_536.0;

/// Does something again and again, the first times to fill every cache, and holds what is held afterwards to what was held before.
async fn stays_flat(browser: &Browser, name: &str, done: &str) -> Result<()> {
    let turns = |times: u32| {
        format!(
            "(async () => {{ const c = document.querySelector('pintle-calculator');
               const frame = () => new Promise((then) => requestAnimationFrame(() => setTimeout(then)));
               const until = async (true_) => {{ while (!true_()) await frame(); }};
               for (let turn = 0; turn < {times}; turn += 1) {{ {done} await frame(); await frame(); }}
               return true; }})()"
        )
    };
    browser.value(&turns(10)).await?;
    let before = held(browser).await?;
    for _ in 0..TIMES / 10 {
        browser.value(&turns(10)).await?;
    }
    let after = held(browser).await?;
    let grown = Held {
        nodes: after.nodes - before.nodes,
        listeners: after.listeners - before.listeners,
        heap_bytes: after.heap_bytes - before.heap_bytes,
        core_bytes: after.core_bytes - before.core_bytes,
    };
    println!("{TIMES} × {name}: {grown:?} over {before:?}");
    assert!(grown.nodes <= MOST_NODES, "{name}: {grown:?}");
    assert!(grown.listeners <= MOST_LISTENERS, "{name}: {grown:?}");
    assert!(grown.heap_bytes <= MOST_HEAP_BYTES, "{name}: {grown:?}");
    assert!(grown.core_bytes <= MOST_CORE_BYTES, "{name}: {grown:?}");
    Ok(())
}

#[tokio::test]
async fn remounts_jobs_and_languages_leave_nothing_behind() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        browser.driver.cdp().send_raw("Performance.enable", json!({})).await?;
        open(&browser, &site.address).await?;
        // Everything unfolded: what is closed has made nothing yet.
        let unfold = "[...document.querySelector('pintle-calculator').shadowRoot.querySelectorAll('details')].forEach((one) => (one.open = true)) ?? true";
        browser.value(unfold).await?;
        stays_flat(
            &browser,
            "remounts",
            "const place = c.parentNode, next = c.nextSibling; c.remove(); place.insertBefore(c, next); await until(() => c.plan);",
        )
        .await?;
        stays_flat(
            &browser,
            "job changes",
            "const job = c.job; job.leaf.mass_kg = 150 + turn; c.job = job; await c.ready; await until(() => c.plan?.loads);",
        )
        .await?;
        stays_flat(
            &browser,
            "language switches",
            "const to = turn % 2 ? 'en' : 'es'; c.lang = to; await until(() => c.shadowRoot.querySelector('.sheet')?.lang === to);",
        )
        .await?;
        stays_flat(
            &browser,
            "remounts of the list of jobs",
            "const list = document.querySelector('pintle-jobs'), place = list.parentNode, next = list.nextSibling; list.remove();
             place.insertBefore(list, next); await until(() => list.shadowRoot.querySelector('summary') && c.plan);",
        )
        .await?;
        browser.wait_for(READY).await
    })
    .await
}
