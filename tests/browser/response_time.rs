//! How fast the page answers on a slow phone. Times are printed, never asserted, since a busy machine is no fault of the page; what is
//! asserted is how much is asked of the core in one task, which no other program changes.

use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};

use crate::page::{READY, at_step_of, open_group, part, press, type_into};

/// Wraps the core's exports before the page runs: counts the plans made, and the most of them in one task. Watches long tasks, the
/// largest paint and shifts of the layout.
const WATCH: &str = "
    window.seen = { plans: 0, most: 0, drawn: 0, long: [], paint: 0, shift: 0 };
    let inTask = 0, channel = new MessageChannel(), asked = false;
    channel.port1.onmessage = () => { asked = false; inTask = 0; };
    const counted = (name, whole) => (...args) => {
        seen[name] += 1;
        if (name === 'plans') {
            inTask += 1;
            seen.most = Math.max(seen.most, inTask);
            if (!asked) { asked = true; channel.port2.postMessage(0); }
        }
        return whole(...args);
    };
    for (const name of ['instantiate', 'instantiateStreaming']) {
        const whole = WebAssembly[name];
        WebAssembly[name] = async (...args) => {
            const made = await whole.apply(WebAssembly, args), instance = made.instance ?? made;
            const exports = { ...instance.exports };
            exports.calculation_new = counted('plans', exports.calculation_new);
            for (const draw of ['calculation_draw_curve', 'calculation_draw_plan_view']) exports[draw] = counted('drawn', exports[draw]);
            return made.instance ? { module: made.module, instance: { exports } } : { exports };
        };
    }
    const watch = (type, tell) => new PerformanceObserver((list) => list.getEntries().forEach(tell)).observe({ type, buffered: true });
    watch('longtask', ({ duration }) => seen.long.push(Math.round(duration)));
    watch('largest-contentful-paint', ({ startTime }) => (seen.paint = Math.round(startTime)));
    watch('layout-shift', ({ value, hadRecentInput }) => { if (!hadRecentInput) seen.shift += value; });";

const SLOWER: f64 = 4.0;

/// Time the page's thread worked, ms: its own, whatever else the machine does.
async fn worked_ms(browser: &Browser) -> Result<f64> {
    let metrics = browser.driver.cdp().send_raw("Performance.getMetrics", json!({})).await?;
    let task = metrics["metrics"].as_array().and_then(|all| all.iter().find(|metric| metric["name"] == "TaskDuration"));
    Ok(task.and_then(|metric| metric["value"].as_f64()).unwrap_or(f64::NAN) * 1000.0)
}

async fn seen(browser: &Browser, name: &str) -> Result<Value> {
    browser.value(&format!("window.seen.{name}")).await
}

/// Starts counting anew.
async fn anew(browser: &Browser) -> Result<()> {
    browser.value("Object.assign(window.seen, { plans: 0, most: 0, drawn: 0, long: [] })").await?;
    Ok(())
}

async fn rest(browser: &Browser, ms: u32) -> Result<()> {
    browser.value(&format!("new Promise((done) => setTimeout(() => done(true), {ms}))")).await?;
    Ok(())
}

#[tokio::test]
async fn a_keystroke_and_a_move_ask_little_of_the_core() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let cdp = browser.driver.cdp();
        cdp.send_raw("Performance.enable", json!({ "timeDomain": "threadTicks" })).await?;
        cdp.send_raw("Page.addScriptToEvaluateOnNewDocument", json!({ "source": WATCH })).await?;
        cdp.send_raw("Emulation.setCPUThrottlingRate", json!({ "rate": SLOWER })).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        rest(&browser, 1500).await?;
        println!("throttled ×{SLOWER}: largest paint {} ms, layout shift {}", seen(&browser, "paint").await?, seen(&browser, "shift").await?);

        // A key plans once, beside the list as elsewhere: the list is ranked apart.
        for (path, begun, keys) in [("leaf.mass_kg", "1", "60.25"), ("required_reserve", "1", ".2505")] {
            at_step_of(&browser, path).await?;
            if path == "required_reserve" {
                open_group(&browser, "requirement").await?;
            }
            type_into(&browser, path, begun).await?;
            rest(&browser, 1500).await?;
            anew(&browser).await?;
            let before = worked_ms(&browser).await?;
            let typed = keys.len() as u64;
            // From within the page: what the driver itself does for a key is no work of the page's.
            let typing = format!(
                "(async () => {{ const input = {}; for (const key of '{keys}') {{
                    input.value += key; input.dispatchEvent(new Event('input')); await new Promise((done) => setTimeout(done, 150)); }} return true; }})()",
                part(&format!("#field-{}", path.replace('.', "-")))
            );
            browser.value(&typing).await?;
            rest(&browser, 1500).await?;
            let worked = (worked_ms(&browser).await? - before) / typed as f64;
            println!("a keystroke in {path}: {worked:.0} ms of the thread's own time, all that follows included; tasks over 50 ms by the clock: {}", seen(&browser, "long").await?);
            let (plans, most) = (seen(&browser, "plans").await?, seen(&browser, "most").await?);
            assert_eq!(plans.as_u64(), Some(typed), "{path}: {plans} plans");
            assert!(most.as_u64().is_some_and(|most| most <= 2), "{path}: {most} plans in one task");
        }

        press(&browser, ".drawing.curve").await?;
        rest(&browser, 1000).await?;
        anew(&browser).await?;
        let before = worked_ms(&browser).await?;
        const MOVED: u64 = 20;
        let moves = format!(
            "(async () => {{ for (let move = 0; move < {MOVED}; move += 1) {{
                {}.dispatchEvent(new KeyboardEvent('keydown', {{ key: 'ArrowLeft' }})); await new Promise((done) => setTimeout(done, 50)); }} return true; }})()",
            part(".drawing.curve")
        );
        let degrees = part(".drawing.curve");
        let start = browser.value(&format!("Number({degrees}.getAttribute('aria-valuenow'))")).await?;
        browser.value(&moves).await?;
        let end = browser.value(&format!("Number({degrees}.getAttribute('aria-valuenow'))")).await?;
        assert!(start.as_f64() > end.as_f64(), "from {start} to {end}");
        rest(&browser, 300).await?;
        let worked = (worked_ms(&browser).await? - before) / MOVED as f64;
        println!("a move of the leaf: {worked:.0} ms of the thread's own time; tasks over 50 ms by the clock: {}", seen(&browser, "long").await?);
        assert_eq!(seen(&browser, "plans").await?, 0, "a move plans nothing");
        let drawn = seen(&browser, "drawn").await?;
        assert!(drawn.as_u64().is_some_and(|drawn| drawn > 0 && drawn <= 2 * MOVED), "{drawn} drawings for {MOVED} moves");

        // At rest nothing is drawn and nothing planned.
        rest(&browser, 1000).await?;
        anew(&browser).await?;
        rest(&browser, 1000).await?;
        assert_eq!((seen(&browser, "plans").await?, seen(&browser, "drawn").await?), (json!(0), json!(0)));
        assert_eq!(browser.value(&format!("{} !== null", part(".drawing.curve"))).await?, true);
        Ok(())
    })
    .await
}
