//! Where to stand it, on the page: the worker's answers are the native search's, it can be stopped, what it finds goes into the job and
//! comes out again, and where nothing fits the least change is named.

use pintle_core::units::{MarkApart, MarkSide, Quantity, Rounding, System, mark, mark_apart, show, show_limit};
use pintle_core::{
    Document,
    job::Job,
    plan::{PadMap, SetOutAnswer, set_out},
};
use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};
use thirtyfour::Key;

use crate::page::{READY, at_step, element, part, refuse_workers, text};

/// The starting job with the block of an invented yard, changed as a test asks.
pub fn job(change: impl FnOnce(&mut Value)) -> Value {
    let mut job: Value = serde_json::from_str(include_str!("../../www/data/starting-job.json")).expect("JSON");
    let site: Value = serde_json::from_str(include_str!("../setout/sites/yard.json")).expect("JSON");
    for key in ["setout", "obstacles", "arm_half_width_m"] {
        job[key] = site[key].clone();
    }
    change(&mut job);
    job
}

fn read(job: &Value) -> Job {
    let document: Document = serde_json::from_value(job.clone()).expect("a document");
    Job::read(&document).expect("valid")
}

/// Gives the page a job and goes to where it is placed; what job the page has then, with what is known of the operator that it is rated with.
async fn open(browser: &Browser, address: &str, job: &Value) -> Result<Value> {
    browser.open(address).await?;
    browser.wait_for(READY).await?;
    browser.value(&format!("void (document.querySelector('pintle-calculator').job = {job}) ?? true")).await?;
    browser.wait_for("document.querySelector('pintle-calculator').job?.setout != null").await?;
    browser.wait_for(READY).await?;
    at_step(browser, "place").await?;
    of_page(browser).await
}

/// The page's job.
pub async fn of_page(browser: &Browser) -> Result<Value> {
    let text = browser.value("JSON.stringify(document.querySelector('pintle-calculator').job)").await?;
    Ok(serde_json::from_str(text.as_str().unwrap_or_default())?)
}

/// Waits until a part is there and seen.
async fn seen(browser: &Browser, selector: &str) -> Result<()> {
    let found = part(selector);
    browser.wait_for(&format!("({found}?.getClientRects().length ?? 0) > 0")).await
}

async fn press(browser: &Browser, selector: &str) -> Result<()> {
    seen(browser, selector).await?;
    // Clear of the verdict line, which stays above.
    browser.value(&format!("{}.scrollIntoView({{ block: 'center' }})", part(selector))).await?;
    element(browser, selector).await?.click().await?;
    Ok(())
}

/// The arm of the page's job, in the order of the document.
async fn arm(browser: &Browser) -> Result<[f64; 6]> {
    let text = browser.value("JSON.stringify(document.querySelector('pintle-calculator').job.arm)").await?;
    let arm: Value = serde_json::from_str(text.as_str().unwrap_or_default())?;
    let names = ["shaft_x_m", "shaft_y_m", "bracket_u_m", "bracket_v_m", "crank_m", "link_m"];
    Ok(names.map(|name| arm[name].as_f64().unwrap_or(f64::NAN)))
}

fn numbers(arm: &pintle_core::job::Arm) -> [f64; 6] {
    [arm.shaft_x_m, arm.shaft_y_m, arm.bracket_u_m, arm.bracket_v_m, arm.crank_m, arm.link_m]
}

fn same(one: [f64; 6], other: [f64; 6]) -> bool {
    one.iter().zip(other).all(|(one, other)| (one - other).abs() < 1e-9)
}

/// A length from a line, with its side in the page's words.
fn sided(length: f64, line: &str) -> String {
    let words: Value = serde_json::from_str(include_str!("../../www/strings/en.json")).expect("JSON");
    let MarkApart { text, side } = mark_apart(length, System::Metric);
    let side = match side {
        MarkSide::On => return text,
        MarkSide::Minus => &words["sides"][line]["minus"],
        MarkSide::Plus => &words["sides"][line]["plus"],
    };
    format!("{text}, {}", side.as_str().expect("words"))
}

/// The column of what was found, as the page writes it.
fn column(answer: &SetOutAnswer) -> Vec<String> {
    let best = answer.best.expect("the yard has a set-out");
    let shown = |value, quantity| show(value, quantity, System::Metric);
    let [x, y, u, v, crank, link] = numbers(&best.arm);
    let lengths = [
        sided(x, "along"),
        sided(y, "square"),
        sided(u, "along"),
        sided(v, "square"),
        mark(crank, System::Metric),
        mark(link, System::Metric),
    ];
    [vec![shown(best.reserve.expect("a demand"), Quantity::Ratio), shown(best.shaft_torque_n_m, Quantity::Torque)]]
        .into_iter()
        .chain([lengths.to_vec()])
        .flatten()
        .collect()
}

#[tokio::test]
async fn the_worker_finds_what_the_native_search_finds() -> Result<()> {
    in_browser(async |browser| finds_what_the_native_search_finds(&browser).await).await
}

/// A policy may allow no worker: the page's own thread finds the same.
#[tokio::test]
async fn without_a_worker_the_page_finds_the_same() -> Result<()> {
    in_browser(async |browser| {
        refuse_workers(&browser).await?;
        finds_what_the_native_search_finds(&browser).await
    })
    .await
}

async fn finds_what_the_native_search_finds(browser: &Browser) -> Result<()> {
    browser.resize(1024, 768, 1.0).await?;
    let site = Site::start(&setting::dist()?, "/a/b/")?;
    let job = open(browser, &site.address, &job(|_| {})).await?;
    let native = set_out(&read(&job)).expect("valid");
    seen(browser, ".set-outs tbody tr").await?;
    let cells = browser
        .value(&format!(
            "[...{}.querySelectorAll('tbody tr')].map((row) => row.children[1].textContent)",
            part(".set-outs")
        ))
        .await?;
    let expected = column(&native);
    assert_eq!(cells.as_array().map(|cells| &cells[..expected.len()]), json!(expected).as_array().map(|all| &all[..]));

    // A place of the map, by the keys, is the native map's: the one with an arm that the fewest keys lead to from the first.
    seen(browser, ".drawing.map").await?;
    let mut map = PadMap::new(&read(&job), 65, 65).expect("valid");
    while map.step(4096) {}
    let places = (0..65).flat_map(|column| (0..65).map(move |row| (column, row)));
    let with_arm = places.filter(|(column, row)| {
        map.pad(*column, *row).is_some_and(|pad| pad.shaft_torque_n_m.is_some() && pad.reserve > Some(1.5))
    });
    let (column, row) = with_arm.min_by_key(|(column, row)| column + row).expect("an arm somewhere");
    let pad = map.pad(column, row).expect("a finished map");
    let torque = show(pad.shaft_torque_n_m.expect("an arm there"), Quantity::Torque, System::Metric);
    // All of the arm: while the map is still being worked out a place has an arm that differs by millimetres.
    let [bracket, crank, link] =
        [pad.arm.bracket_u_m, pad.arm.crank_m, pad.arm.link_m].map(|length| mark(length, System::Metric));
    let on_map = element(browser, ".drawing.map").await?;
    on_map.send_keys(Key::Home + "").await?;
    for _ in 0..column {
        on_map.send_keys(Key::Right + "").await?;
    }
    for _ in 0..row {
        on_map.send_keys(Key::Up + "").await?;
    }
    browser
        .wait_for(&format!(
            "['{torque}', '{bracket}', '{crank}', '{link}'].every((said) => {}.textContent.includes(said))",
            part(".reading")
        ))
        .await?;
    assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());

    // Taken and given back.
    let before = arm(browser).await?;
    press(browser, ".take.by-search").await?;
    browser.wait_for("document.querySelector('pintle-calculator').plan?.rating.reserve > 1.5").await?;
    let best = native.best.expect("found").arm;
    let taken = arm(browser).await?;
    assert!(same(taken, numbers(&best)), "{taken:?} is not {best:?}");
    press(browser, ".undo").await?;
    browser.wait_for("document.querySelector('pintle-calculator').plan?.rating.reserve < 1.5").await?;
    assert_eq!(arm(browser).await?, before);

    // A place of the map is taken by the Enter key.
    element(browser, ".drawing.map").await?.send_keys(Key::Enter + "").await?;
    browser.wait_for("document.querySelector('pintle-calculator').plan?.rating.reserve > 1.5").await?;
    let taken = arm(browser).await?;
    assert!(same(taken, numbers(&pad.arm)), "{taken:?} is not {:?}", pad.arm);
    assert_eq!(browser.complaints().await?, Vec::<String>::new());
    Ok(())
}

/// Stopped before any answer can have come: in the very task in which the step was made and the question asked. Then, with a search of a second's length and
/// more behind each of its points, the trade-off is stopped as a person does it.
#[tokio::test]
async fn a_search_can_be_stopped_and_asked_again() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        let stop_at_once = format!(
            "new MutationObserver((_, watch) => {{ const stop = {}; if (stop) watch.disconnect(), stop.click(); }})
               .observe({}, {{ childList: true, subtree: true }}) ?? true",
            part("[data-step=place] .waiting .stop"),
            part(".sheet")
        );
        browser.value(&stop_at_once).await?;
        at_step(&browser, "place").await?;
        seen(&browser, ".again").await?;
        assert!(text(&browser, ".said").await?.contains("Stopped"));
        assert_eq!(browser.value(&format!("{} === null", part(".set-outs tbody"))).await?, true);
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        press(&browser, ".again").await?;
        seen(&browser, ".set-outs tbody tr").await?;

        open(&browser, &site.address, &job(|job| job["setout"]["step_m"] = json!(0.0005))).await?;
        seen(&browser, ".set-outs tbody tr").await?;
        press(&browser, ".front .least_shaft_travel").await?;
        // A search is spoken of only once it has taken a while.
        browser.wait_for(&format!("{}.checkVisibility()", part(".waiting .stop"))).await?;
        press(&browser, ".waiting .stop").await?;
        seen(&browser, ".again").await?;
        assert_eq!(browser.value(&format!("{} === null", part(".front tbody"))).await?, true);

        // Another question is answered, and it is that question's answer.
        browser.value(&format!("({}.open = true)", part(".setout > details:has(input[name=setout-step])"))).await?;
        press(&browser, "input[name=setout-step][value=none]").await?;
        let asked = of_page(&browser).await?;
        assert_eq!(asked["setout"]["step_m"], Value::Null);
        let expected = json!(column(&set_out(&read(&asked)).expect("valid")));
        let found = part(".set-outs tbody");
        browser.wait_for(&format!("{expected}.every((shown) => {found}?.textContent.includes(shown))")).await?;
        let overflow = browser.value("document.documentElement.scrollWidth - innerWidth").await?;
        assert!(overflow.as_i64().expect("a number") <= 0, "{overflow} px beyond");
        Ok(())
    })
    .await
}

#[tokio::test]
async fn where_nothing_fits_the_least_change_is_named() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        let asked = job(|job| job["setout"]["shaft_travel_deg"] = json!(60));
        let mut job = open(&browser, &site.address, &asked).await?;
        let answer = set_out(&read(&job)).expect("valid");
        assert!(answer.best.is_none());
        let nearest = answer.nearest.expect("what is nearest");
        seen(&browser, ".set-outs .changes li").await?;
        let said = text(&browser, ".set-outs .changes").await?;
        let travel = nearest
            .changes
            .iter()
            .find(|change| change.limit == pintle_core::arm::Limit::ShaftTravelDeg)
            .expect("travel would do");
        let by = show_limit(travel.by, Quantity::Angle, System::Metric, Rounding::Up);
        assert!(said.contains(&by), "{by} in {said}");
        // What is said is enough: a set-out exists with it.
        let most = 60.0 + by.trim_end_matches('°').parse::<f64>()?;
        job["setout"]["shaft_travel_deg"] = json!(most);
        assert!(set_out(&read(&job)).expect("valid").best.is_some(), "{most}° of travel");
        assert_eq!(browser.accessibility_faults().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

/// What a map of 10,000 places takes in the worker, printed and not judged: a busy machine is no fault of the code.
/// `cargo test -p pintle-tests --features browser --test browser ten_thousand -- --nocapture`
#[tokio::test]
async fn the_worker_maps_ten_thousand_places() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/")?;
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        let job = job(|job| job["setout"]["step_m"] = Value::Null);
        let script = setting::travels_as("app/worker.js")?;
        let ask = format!(
            "void (() => {{
                const worker = new Worker(new URL('{script}', document.baseURI), {{ type: 'module' }});
                const told = (globalThis.told = {{ pictures: 0 }});
                let found = 0;
                worker.onmessage = ({{ data }}) => {{
                    if (data.kind === 'found') found = performance.now();
                    if (data.kind === 'known' && told.pictures++ === 0) told.first = performance.now() - found;
                    if (data.kind === 'known') told.known = [...data.known.slice(0, 10000)].filter(Number.isFinite).length;
                    if (data.kind === 'failed') told.took = -1;
                    if (data.kind === 'done') {{ told.took = performance.now() - found; worker.terminate(); }}
                }};
                worker.postMessage({{ kind: 'search', id: 1, job: {job}, columns: 100, rows: 100 }});
            }})() ?? true"
        );
        browser.value(&ask).await?;
        browser.wait_for("globalThis.told.took !== undefined").await?;
        let told = browser.value("globalThis.told").await?;
        let number = |key: &str| told[key].as_f64().unwrap_or(f64::NAN);
        println!(
            "10,000 places in the worker: {:.0} ms, the first of {} pictures after {:.0} ms",
            number("took"),
            number("pictures"),
            number("first")
        );
        let mut map = PadMap::new(&read(&job), 100, 100).expect("valid");
        while map.step(4096) {}
        let native = map.pads().iter().filter(|pad| pad.is_some_and(|pad| pad.reserve.is_some())).count();
        assert_eq!(number("known"), native as f64, "places with an arm, in the worker and natively");
        Ok(())
    })
    .await
}
