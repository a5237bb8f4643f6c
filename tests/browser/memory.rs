//! Memory is flat: what the page takes off the screen is let go of, by the browser's own counters.

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::json;

use crate::jobs::{before_the_page, open};
use crate::page::{READY, steps};
use crate::records::{SEE_MEMORY, core_bytes};

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
    let core_bytes = core_bytes(browser).await?;
    Ok(Held {
        nodes: count("Nodes"),
        listeners: count("JSEventListeners"),
        heap_bytes: count("JSHeapUsedSize"),
        core_bytes,
    })
}

/// Often enough that a leak of one view each time stands far above everything else that moves.
const TIMES: u32 = 50;
/// Times before, to fill every cache.
const FIRST: u32 = 10;
/// Times in one script.
const AT_ONCE: usize = 5;
/// A view has 500 to 2,900 nodes, by the step that is in view: fifty have some 70,000, and if the smallest step alone stayed behind, in view seven
/// times of fifty, that would be 3,300. Listeners are a fifth of that.
const MOST_NODES: f64 = 1700.0;
const MOST_LISTENERS: f64 = 320.0;
/// A view is 0.18 MB of heap, so fifty would be 9 MB. The engine's own caches and compiled code come and go by some hundred kB.
const MOST_HEAP_BYTES: f64 = 1.5e6;
/// Memory of the core grows by pages of 64 KiB and never shrinks; a plan is freed before the next is made.
const MOST_CORE_BYTES: f64 = 4.0 * 65_536.0;

async fn grown_over(browser: &Browser, before: Held) -> Result<Held> {
    let after = held(browser).await?;
    Ok(Held {
        nodes: after.nodes - before.nodes,
        listeners: after.listeners - before.listeners,
        heap_bytes: after.heap_bytes - before.heap_bytes,
        core_bytes: after.core_bytes - before.core_bytes,
    })
}

fn is_flat(grown: Held) -> bool {
    grown.nodes <= MOST_NODES
        && grown.listeners <= MOST_LISTENERS
        && grown.heap_bytes <= MOST_HEAP_BYTES
        && grown.core_bytes <= MOST_CORE_BYTES
}

/// Does something again and again, the first times to fill every cache, and holds what is held afterwards to what was held before.
async fn stays_flat(browser: &Browser, name: &str, done: &str) -> Result<()> {
    let turns = |from: u32| {
        format!(
            "(async () => {{ const c = document.querySelector('pintle-calculator');
               const frame = () => new Promise((then) => requestAnimationFrame(() => setTimeout(then)));
               const until = async (true_) => {{ while (!true_()) await frame(); }};
               for (let turn = {from}; turn < {from} + {AT_ONCE}; turn += 1) {{ {done} await frame(); await frame(); }}
               return true; }})()"
        )
    };
    // A few at a time: the driver waits for a script only so long, and a machine may be busy.
    for from in (0..FIRST).step_by(AT_ONCE) {
        browser.value(&turns(from)).await?;
    }
    let before = held(browser).await?;
    for from in (FIRST..FIRST + TIMES).step_by(AT_ONCE) {
        browser.value(&turns(from)).await?;
    }
    // What is still on its way (a search, a frame, a language) holds its view until it has come; what is held for good stays.
    let mut grown = grown_over(browser, before).await?;
    for _ in 0..20 {
        if is_flat(grown) {
            break;
        }
        tokio::time::sleep(std::time::Duration::from_millis(500)).await;
        grown = grown_over(browser, before).await?;
    }
    println!("{TIMES} × {name}: {grown:?} over {before:?}");
    assert!(is_flat(grown), "{name}: {grown:?}");
    Ok(())
}

#[tokio::test]
async fn remounts_jobs_and_languages_leave_nothing_behind() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        browser.driver.cdp().send_raw("Performance.enable", json!({})).await?;
        before_the_page(&browser, SEE_MEMORY).await?;
        open(&browser, &site.address).await?;
        // Every step made once and unfolded, in turn: what is closed has made nothing yet.
        let names: Vec<_> = steps().collect();
        let visit = format!(
            "const names = {names:?}, name = names[turn % names.length]; c.setAttribute('step', name);
             const there = () => c.shadowRoot.querySelector(`.step[data-step=${{name}}]:not([hidden])`);
             await until(there); for (const one of there().querySelectorAll('details')) one.open = true; await frame();"
        );
        stays_flat(&browser, "steps", &visit).await?;
        stays_flat(
            &browser,
            "remounts",
            &format!("{visit} {}", "const place = c.parentNode, next = c.nextSibling; c.remove(); place.insertBefore(c, next); await until(() => c.plan);"),
        )
        .await?;
        stays_flat(
            &browser,
            "job changes",
            &format!("{visit} const job = c.job; job.leaf.mass_kg = 150 + turn; c.job = job; await c.ready; await until(() => c.plan?.loads);"),
        )
        .await?;
        stays_flat(
            &browser,
            "language switches",
            &format!("{visit} const to = turn % 2 ? 'en' : 'es'; c.lang = to; await until(() => c.shadowRoot.querySelector('.sheet')?.lang === to);"),
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
