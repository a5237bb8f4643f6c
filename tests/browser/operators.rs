//! Which operator will do, on the page: ranked as the core ranks it natively, taken with its best place and put back, without a worker too; and what
//! a host hears of a faulty list.

use pintle_core::units::{Quantity, System, show};
use pintle_core::{
    Document,
    job::Job,
    operators,
    plan::{OperatorRanking, RankAsked, Ranking},
};
use pintle_tests::harness::{Browser, Result, Site, in_browser, setting};
use serde_json::{Value, json};

use crate::page::{READY, at_step, computed, part, press, refuse_workers, take_operator, text, type_into};
use crate::setout::{job, of_page};

const CALCULATOR: &str = "document.querySelector('pintle-calculator')";

/// Gives the page a job and goes to the list; the job as the page then has it.
async fn open(browser: &Browser, address: &str, job: &Value) -> Result<Value> {
    browser.open(address).await?;
    browser.wait_for(READY).await?;
    browser.value(&format!("void ({CALCULATOR}.job = {job}) ?? true")).await?;
    browser.wait_for(&format!("{CALCULATOR}.job?.setout != null")).await?;
    browser.wait_for(READY).await?;
    at_step(browser, "operator").await?;
    of_page(browser).await
}

/// The demonstration list against a job, natively.
fn native(job: &Value) -> OperatorRanking {
    let list: Document = serde_json::from_str(include_str!("../../www/data/operators.json")).expect("JSON");
    let document: Document = serde_json::from_value(job.clone()).expect("a document");
    let job = Job::read(&document).expect("valid");
    let mut ranking = Ranking::new(&job, &operators::read(&list).operators, RankAsked::default()).expect("valid");
    while ranking.step(1000) {}
    ranking.answer()
}

/// JavaScript for the rows: of each the id, and the reserves as they are written.
fn rows() -> String {
    format!(
        "JSON.stringify([...{}.querySelectorAll('.ranked-operator')].map(row => [row.dataset.operator, \
         [...row.querySelectorAll('.row-verdict > span:last-child')].map(cell => cell.textContent)]))",
        part(".operators")
    )
}

/// What the rows of a ranking say.
fn expected(ranking: &OperatorRanking) -> Vec<(String, Vec<String>)> {
    let shown =
        |reserve: Option<f64>| format!("×{}", show(reserve.expect("a demand"), Quantity::Ratio, System::Metric));
    let row = |one: &pintle_core::plan::RankedOperator| {
        let stands = [one.as_placed.as_ref(), one.best.as_ref()];
        (one.id.clone(), stands.into_iter().flatten().map(|stands| shown(stands.rating.reserve)).collect())
    };
    ranking.operators.iter().map(row).collect()
}

async fn rows_are(browser: &Browser, ranking: &OperatorRanking) -> Result<()> {
    browser.wait_for(&format!("{} !== null", part(".ranked-operator .take"))).await?;
    let wanted = expected(ranking);
    browser
        .wait_for(&format!("{} === `{}`", rows(), serde_json::to_string(&wanted)?))
        .await
        .map_err(|error| error.context(format!("wanted {wanted:?}")))
}

#[tokio::test]
async fn the_list_is_ranked_as_the_core_ranks_it() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(1024, 768, 1.0).await?;
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        let job = open(&browser, &site.address, &job(|_| {})).await?;
        let ranking = native(&job);
        rows_are(&browser, &ranking).await?;
        // Each that will not do says why.
        for one in ranking.operators.iter().filter(|one| !one.does) {
            let said = text(&browser, &format!("[data-operator={}] .refusal", one.id)).await?;
            assert!(said.ends_with('.') && !said.contains('{'), "{}: {said}", one.id);
        }
        // Only those that do; the smallest first.
        press(&browser, ".only-those").await?;
        let doing = ranking.operators.iter().filter(|one| one.does).count();
        let chosen = 1 - ranking.operators.iter().filter(|one| one.does && one.rated_torque_n_m == 400.0).count();
        browser
            .wait_for(&format!(
                "{}.querySelectorAll('.ranked-operator').length === {}",
                part(".operators"),
                doing + chosen
            ))
            .await?;
        let change = format!(
            "(select => {{ select.value = 'torque'; select.dispatchEvent(new Event('change')); return true; }})({})",
            part(".order select")
        );
        browser.value(&change).await?;
        let mut smallest: Vec<_> = ranking.operators.iter().filter(|one| one.does).collect();
        smallest.sort_by(|one, other| one.rated_torque_n_m.total_cmp(&other.rated_torque_n_m));
        let first = part(".ranked-operator");
        browser.wait_for(&format!("{first}.dataset.operator === '{}'", smallest[0].id)).await?;
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}

#[tokio::test]
async fn without_a_worker_the_page_ranks_the_same() -> Result<()> {
    in_browser(async |browser| {
        refuse_workers(&browser).await?;
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        let job = open(&browser, &site.address, &job(|_| {})).await?;
        rows_are(&browser, &native(&job)).await
    })
    .await
}

/// What a person says of the arm's losses holds for every operator, in its row as in the verdict; and no operator has the outline of the one that is
/// chosen.
#[tokio::test]
async fn rows_and_verdict_say_one_reserve() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        open(&browser, &site.address, &job(|_| {})).await?;
        crate::page::open_group(&browser, "requirement").await?;
        type_into(&browser, "operator.arm_efficiency", "0.8").await?;
        browser.wait_for(&format!("{CALCULATOR}.job.operator.arm_efficiency === 0.8")).await?;
        for (id, rated_n_m) in [("demo-b", 400), ("demo-c", 600)] {
            take_operator(&browser, id).await?;
            browser.wait_for(&format!("{CALCULATOR}.job.operator.rated_torque_n_m === {rated_n_m} && {READY}")).await?;
            let reserve = browser.value(&format!("{CALCULATOR}.plan.rating.reserve")).await?;
            let shown = format!("×{}", show(reserve.as_f64().expect("a number"), Quantity::Ratio, System::Metric));
            let row = part(&format!("[data-operator={id}] .row-verdict > span:last-child"));
            browser.wait_for(&format!("{row}?.textContent === '{shown}'")).await?;
        }
        // One of which nothing is known but its torque stands as well beside a large one as beside a small one.
        let bare = json!({ "operators": [
            { "id": "bare", "name": "Invented, bare", "rated_torque_n_m": 700 },
            { "id": "large", "name": "Invented, large", "rated_torque_n_m": 650, "body": { "along_m": [-0.9, 0.9], "across_m": [-0.9, 0.9] } },
        ]});
        browser.value(&format!("void ({CALCULATOR}.operators = {bare}) ?? true")).await?;
        let first = part("[data-operator=bare] .row-verdict");
        browser.wait_for(&format!("{first} != null")).await?;
        let alone = text(&browser, "[data-operator=bare]").await?;
        take_operator(&browser, "large").await?;
        browser.wait_for(&format!("{CALCULATOR}.job.operator.rated_torque_n_m === 650")).await?;
        browser.wait_for(&format!("{}.querySelector('.ranked.stale') === null", part(".operators"))).await?;
        assert_eq!(text(&browser, "[data-operator=bare]").await?, alone);
        Ok(())
    })
    .await
}

#[tokio::test]
async fn one_is_taken_with_its_best_place_and_put_back() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        let before = open(&browser, &site.address, &job(|_| {})).await?;
        let ranking = native(&before);
        rows_are(&browser, &ranking).await?;
        let one = ranking.operators.iter().find(|one| one.id == "demo-c").expect("it is there");
        let best = one.best.as_ref().expect("it has a place");
        for undone_by in [".put-back", ".undo-last"] {
            press(&browser, "[data-operator=demo-c] .take").await?;
            browser.wait_for(&format!("{CALCULATOR}.job.operator.rated_torque_n_m === 600")).await?;
            computed(&browser).await?;
            let taken = of_page(&browser).await?;
            let arm: Value = serde_json::to_value(best.arm)?;
            for (name, value) in arm.as_object().expect("an arm") {
                match value.as_f64() {
                    Some(value) => {
                        let found = taken["arm"][name].as_f64().expect("a number");
                        assert!((found - value).abs() < 1e-9, "{name}: {found}, {value}");
                    }
                    None => assert_eq!(&taken["arm"][name], value, "{name}"),
                }
            }
            // The page's own answer is what the list promised.
            let reserve = browser.value(&format!("{CALCULATOR}.plan.rating.reserve")).await?;
            let promised = best.rating.reserve.expect("a demand");
            assert!((reserve.as_f64().expect("a number") - promised).abs() < 1e-6 * promised, "{reserve}, {promised}");
            press(&browser, undone_by).await?;
            browser.wait_for(&format!("{CALCULATOR}.job.operator.rated_torque_n_m === 400")).await?;
            computed(&browser).await?;
            // Who keeps jobs may have given it another name meanwhile.
            let mut after = of_page(&browser).await?;
            after["title"] = before["title"].clone();
            assert_eq!(after, before, "{undone_by}");
            at_step(&browser, "operator").await?;
            rows_are(&browser, &ranking).await?;
        }
        Ok(())
    })
    .await
}

#[tokio::test]
async fn two_stand_side_by_side() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        let job = open(&browser, &site.address, &job(|_| {})).await?;
        let ranking = native(&job);
        rows_are(&browser, &ranking).await?;
        for id in ["demo-b", "demo-d"] {
            press(&browser, &format!("[data-operator={id}] .row-acts input")).await?;
        }
        browser.wait_for(&format!("{} !== null", part(".two-operators"))).await?;
        let table = text(&browser, ".two-operators").await?;
        for id in ["demo-b", "demo-d"] {
            let one = ranking.operators.iter().find(|one| one.id == id).expect("it is there");
            let best = one.best.as_ref().expect("it has a place");
            let shown = |value, quantity| show(value, quantity, System::Metric);
            for wanted in [
                shown(one.rated_torque_n_m, Quantity::Torque),
                shown(best.rating.reserve.expect("a demand"), Quantity::Ratio),
                shown(best.shaft_torque_n_m, Quantity::Torque),
                shown(best.shaft_travel_deg, Quantity::Angle),
            ] {
                let wanted = wanted.replace(' ', "\u{a0}");
                assert!(table.contains(&wanted), "{id}: {wanted} in {table}");
            }
        }
        Ok(())
    })
    .await
}

/// Customers read that entries are left out; who keeps the list hears which, why and what would do. Invented.
#[tokio::test]
async fn who_keeps_a_faulty_list_hears_of_it() -> Result<()> {
    in_browser(async |browser| {
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        let list = json!({ "title": "Invented list with faults", "operators": [
            { "id": "good", "name": "Invented, good", "rated_torque_n_m": 500 },
            { "id": "minus", "name": "Invented, minus", "rated_torque_n_m": -300 },
            { "id": "good", "name": "Invented, again", "rated_torque_n_m": 700 },
            { "id": "peak", "name": "Invented, peak", "rated_torque_n_m": 500, "peak_torque_n_m": 400 },
            { "id": "key", "name": "Invented, key", "rated_torque_n_m": 500, "shaft_sped_deg_s": 9 },
        ]});
        browser.open(&site.address).await?;
        browser.wait_for(READY).await?;
        let give = format!(
            "(async () => {{ const heard = new Promise(done => addEventListener('pintle-faults', done, {{ once: true }})); \
             {CALCULATOR}.operators = {list}; return JSON.stringify((await heard).detail); }})()"
        );
        let heard = browser.value(&give).await?;
        let heard: Value = serde_json::from_str(heard.as_str().unwrap_or_default())?;
        let paths = |key: &str| -> Vec<&str> {
            heard[key].as_array().expect("a list").iter().filter_map(|fault| fault["path"].as_str()).collect()
        };
        assert_eq!(paths("faults"), ["operators.1.rated_torque_n_m", "operators.2.id", "operators.3.peak_torque_n_m"]);
        assert_eq!(paths("warnings"), ["operators.4.shaft_sped_deg_s"]);
        let sentence = heard["faults"][0]["text"].as_str().unwrap_or_default();
        assert!(sentence.contains("-300") || sentence.contains("−300"), "found: {sentence}");
        assert!(sentence.contains("Allowed") && sentence.contains("Example"), "{sentence}");
        take_operator(&browser, "good").await?;
        let customer = text(&browser, ".operators .left-out").await?;
        assert!(customer.contains('3') && !customer.contains("operators."), "{customer}");
        // Once for a list: another job says nothing new of it.
        let again = format!(
            "(async () => {{ let heard = 0; addEventListener('pintle-faults', () => (heard += 1)); \
             {CALCULATOR}.job = {}; await {CALCULATOR}.ready; return heard; }})()",
            job(|_| {})
        );
        assert_eq!(browser.value(&again).await?, json!(0));
        let ids = browser.value(&format!("{CALCULATOR}.operators.operators?.length ?? 0")).await?;
        assert_eq!(ids, json!(5), "the host's own list is given back as it is");
        Ok(())
    })
    .await
}

/// An invented list with so many kits between them.
fn long_list(count: usize, kits: usize) -> Value {
    let one = |index: usize| {
        let crank_m = 0.8 + 0.02 * (index % kits) as f64 / kits as f64;
        json!({ "id": format!("invented-{index}"), "name": format!("Invented {index}"),
            "rated_torque_n_m": 100 + index, "peak_torque_n_m": 200 + index, "shaft_speed_deg_s": 9,
            "kit": { "crank_m": [0.5, crank_m], "link_m": [0.45, 0.9] } })
    };
    json!({ "title": "Invented, long", "operators": (0..count).map(one).collect::<Vec<_>>() })
}

/// What a long list costs is printed, not asserted; that it is shown in part, that none is lost, and that giving up leaves the page at work is.
#[tokio::test]
async fn a_long_list_is_shown_in_part() -> Result<()> {
    in_browser(async |browser| {
        browser.resize(360, 740, 2.0).await?;
        let site = Site::start(&setting::dist()?, "/a/b/")?;
        open(&browser, &site.address, &job(|_| {})).await?;
        browser
            .value("globalThis.tasks = [], new PerformanceObserver(list => tasks.push(...list.getEntries().map(entry => entry.duration))).observe({ type: 'longtask' }) ?? true")
            .await?;
        let longest = || browser.value("Math.round(Math.max(0, ...tasks.splice(0)))");
        let more = part(".operators .more");
        let whole = |count: usize| format!("{more}?.textContent.includes('{}') && {} === null", count - 12, part(".operators progress"));
        for (count, kits, slower) in [(500, 8, 1), (5000, 1, 4)] {
            browser.driver.cdp().send_raw("Emulation.setCPUThrottlingRate", json!({ "rate": slower })).await?;
            let give = format!("void ({CALCULATOR}.operators = {}) ?? performance.now()", long_list(count, kits));
            let list = browser.value(&give).await?;
            let _ = longest().await?;
            browser.wait_for(&format!("{CALCULATOR}.operators.operators.length === {count} && {READY}")).await?;
            browser.wait_for(&whole(count)).await?;
            let took = browser.value(&format!("Math.round(performance.now() - {list})")).await?;
            println!("{count} operators, {kits} kits, processor ×{slower} slower: ranked {took} ms after they were given, longest task {} ms", longest().await?);
            let rows = browser.value(&format!("{}.querySelectorAll('.ranked-operator').length", part(".operators"))).await?;
            assert!(rows.as_u64().is_some_and(|rows| (12..=13).contains(&rows)), "{rows} rows");
        }
        press(&browser, ".operators .more").await?;
        browser.wait_for(&format!("{}.querySelectorAll('.ranked-operator').length >= 24", part(".operators"))).await?;
        println!("twelve rows more: longest task {} ms", longest().await?);

        // Many kits take a while: it is given up, and asked again.
        browser.driver.cdp().send_raw("Emulation.setCPUThrottlingRate", json!({ "rate": 1 })).await?;
        let worker = setting::travels_as("app/worker.js")?;
        for (count, kits) in [(500, 8), (500, 500)] {
            browser.value(&format!("void (globalThis.long = {}) ?? true", long_list(count, kits))).await?;
            let time = format!(
                "new Promise(done => {{ const worker = new Worker(new URL('{worker}', location.href), {{ type: 'module' }}); let began = 0; \
                 const ask = (id, list) => worker.postMessage({{ kind: 'rank', id, job: {CALCULATOR}.job, own: {{ efficiency: false, body: false }}, list, \
                   looked: {{ only: false, order: 'reserve', most: 12, ids: [] }} }}); \
                 worker.onmessage = ({{ data }}) => {{ if (!data.ranked?.whole) return; \
                   if (data.id === 2) {{ worker.terminate(); done(Math.round(performance.now() - began)); }} \
                   else {{ began = performance.now(); ask(2, long); }} }}; \
                 ask(1, {{ operators: long.operators.slice(0, 1) }}); }})"
            );
            println!("{count} operators, {kits} kits: {} ms in a worker that stands", browser.value(&time).await?);
        }
        browser.value(&format!("void ({CALCULATOR}.operators = {}) ?? true", long_list(500, 500))).await?;
        browser.wait_for(&format!("{} !== null", part(".operators .waiting button"))).await?;
        press(&browser, ".operators .waiting button").await?;
        browser.wait_for(&format!("{} === null && {} !== null", part(".operators progress"), part(".operators .again"))).await?;
        press(&browser, ".operators .again").await?;
        browser.wait_for(&format!("{} !== null", part(".operators progress"))).await?;
        press(&browser, ".operators .waiting button").await?;
        assert_eq!(browser.complaints().await?, Vec::<String>::new());
        Ok(())
    })
    .await
}
